/** An ingredient line as numbers, words and marks. A word keeps its hyphens and apostrophes: all-purpose, bird’s. */
import { isDigit, isVulgar, scanNumber } from "./numbers.ts";
import type { MeasureTables, WordEntry } from "./types.ts";

export interface Token {
  readonly kind: "number" | "word" | "mark";
  /** As printed; a number in one spelling. */
  readonly text: string;
  readonly low: string;
  readonly n: number;
  readonly d: number;
  /** No space before it. */
  readonly glued: boolean;
  readonly entry: WordEntry | undefined;
}

const ENTITIES: Readonly<Record<string, string>> = { frac12: "½", frac14: "¼", frac34: "¾", amp: "&", nbsp: " ", quot: '"', "#39": "'", deg: "°", eacute: "é", egrave: "è", rsquo: "’", ndash: "–", times: "×" };
const DASHES = "-–—‐‑−";

export function tokensOf(line: string, words: MeasureTables["words"]): Token[] {
  const text = line.includes("&") ? line.replace(/&(#?\w+);/g, (whole, name: string) => ENTITIES[name] ?? whole) : line;
  const tokens: Token[] = [];
  let at = 0;
  let glued = false;
  while (at < text.length) {
    const code = text.charCodeAt(at);
    if (code === 32 || code === 160 || code === 9 || code === 10 || code === 13 || code === 0x2009) {
      at++;
      glued = false;
      continue;
    }
    const begins = isDigit(code) || (code > 127 && isVulgar(text[at] as string)) || (code === 46 && isDigit(text.charCodeAt(at + 1)));
    const number = begins ? scanNumber(text, at) : null;
    if (number && text[number.end] !== "%") {
      tokens.push({ kind: "number", text: number.text, low: number.text, n: number.n, d: number.d, glued, entry: undefined });
      at = number.end;
    } else if (begins || isLetter(code)) {
      const end = wordEnd(text, at);
      const word = text.slice(at, end);
      tokens.push(...(spelledSize(word, glued, words) ?? [wordToken(word, glued, words)]));
      // the full stop of an abbreviation is part of it
      at = text[end] === "." && (word === "fl" || tokens[tokens.length - 1]?.entry?.unit) ? end + 1 : end;
    } else {
      const mark = DASHES.includes(text[at] as string) ? (text[at] === "—" ? "—" : "-") : (text[at] as string);
      tokens.push({ kind: "mark", text: mark, low: mark, n: 0, d: 0, glued, entry: undefined });
      at++;
    }
    glued = true;
  }
  return tokens;
}

const isLetter = (code: number): boolean => (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || (code >= 0xc0 && code !== 0xd7 && code !== 0xf7 && (code < 0x2000 || code > 0x2bff));

/** Letters, with hyphens, apostrophes, strokes as in and/or, and per cent signs inside. */
function wordEnd(text: string, at: number): number {
  let end = at;
  while (end < text.length) {
    const code = text.charCodeAt(end);
    if (code === 0x2013 || code === 0x2014 || code === 0x201c || code === 0x201d) break;
    if (isLetter(code) || (isDigit(code) && !isLetter(text.charCodeAt(at))) || code === 37) end++;
    else if ((code === 39 || code === 0x2019 || code === 45 || code === 0x2010 || code === 0x2011) && isLetter(text.charCodeAt(end + 1))) end += 2;
    else if (code === 47 && text.slice(at, end) === "and" && text.startsWith("or", end + 1)) end += 3;
    else if ((code === 39 || code === 0x2019) && text[end - 1] === "s") end++;
    else break;
  }
  return Math.max(end, at + 1);
}

/** "two-inch" as its number, hyphen and unit; null for any other word. */
function spelledSize(word: string, glued: boolean, words: MeasureTables["words"]): Token[] | null {
  const hyphen = word.indexOf("-");
  if (hyphen < 0) return null;
  const number = words.get(word.slice(0, hyphen).toLowerCase())?.number;
  const unit = wordToken(word.slice(hyphen + 1), true, words);
  if (!number || (unit.entry?.unitKind !== "length" && unit.entry?.unitKind !== "mass")) return null;
  const text = word.slice(0, hyphen);
  return [{ kind: "number", text: text.toLowerCase(), low: text.toLowerCase(), n: number.n, d: number.d, glued, entry: undefined }, { kind: "mark", text: "-", low: "-", n: 0, d: 0, glued: true, entry: undefined }, unit];
}

/** T is a tablespoon and t a teaspoon: the only two spellings in which the case counts. */
function wordToken(word: string, glued: boolean, words: MeasureTables["words"]): Token {
  const low = word.toLowerCase();
  const entry = word === "T" ? words.get("tablespoon") : word === "t" ? words.get("teaspoon") : words.get(low);
  return { kind: "word", text: word, low, n: 0, d: 0, glued, entry };
}
