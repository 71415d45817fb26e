/** Text out of a page's markup: tags fall away, blocks become lines, named signs become signs. One pass; nothing in it is ever run. */
import type { Work } from "./types.ts";

const BLOCKS: ReadonlySet<string> = new Set(["p", "br", "li", "ul", "ol", "div", "h1", "h2", "h3", "h4", "tr"]);
const SIGNS: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'", nbsp: " ", deg: "°", frac12: "½", frac14: "¼", frac34: "¾", ndash: "–", mdash: "—", rsquo: "’", lsquo: "‘", ldquo: "“", rdquo: "”", eacute: "é", egrave: "è", times: "×" };
/** No tag of a recipe is longer; what is, is text. */
const LONGEST_TAG = 500;
const LONGEST_SIGN = 10;

export function plainText(text: string, work: Work): string {
  work.looks += text.length;
  if (!text.includes("<") && !text.includes("&")) return text;
  const parts: string[] = [];
  let from = 0;
  for (let at = 0; at < text.length; ) {
    const part = text[at] === "<" ? tagAt(text, at, work) : text[at] === "&" ? signAt(text, at) : null;
    if (!part) {
      at++;
      continue;
    }
    parts.push(text.slice(from, at), part.stands);
    at = part.end;
    from = at;
  }
  parts.push(text.slice(from));
  return parts.join("");
}

interface Part {
  readonly stands: string;
  readonly end: number;
}

function tagAt(text: string, at: number, work: Work): Part | null {
  if (!/[a-z/!]/i.test(text[at + 1] ?? "")) return null;
  let end = at + 1;
  while (end < text.length && end - at < LONGEST_TAG && text[end] !== ">" && text[end] !== "<") end++;
  work.looks += end - at;
  if (text[end] !== ">") return null;
  const name = (/^\/?([a-z0-9]{1,12})/i.exec(text.slice(at + 1, at + 16))?.[1] ?? "").toLowerCase();
  return { stands: BLOCKS.has(name) ? "\n" : "", end: end + 1 };
}

function signAt(text: string, at: number): Part | null {
  const stop = text.slice(at, at + LONGEST_SIGN + 2).indexOf(";");
  if (stop < 2) return null;
  const name = text.slice(at + 1, at + stop);
  const numbered = /^#(?:x([0-9a-f]{1,6})|(\d{1,7}))$/i.exec(name);
  const code = numbered ? (numbered[1] !== undefined ? parseInt(numbered[1], 16) : Number(numbered[2])) : 0;
  const sign = numbered ? (code > 31 && code <= 0x10ffff && (code < 0xd800 || code > 0xdfff) ? String.fromCodePoint(code) : undefined) : Object.hasOwn(SIGNS, name) ? SIGNS[name] : undefined;
  return sign === undefined ? null : { stands: sign, end: at + stop + 1 };
}
