import { isMark } from "./token-tests.ts";
import type { Token } from "./tokens.ts";
import type { Phrases } from "./types.ts";

/** How many tokens the longest phrase takes that begins at this place; 0 when none does. */
export function phraseAt(tokens: readonly Token[], at: number, phrases: Phrases): number {
  const token = tokens[at];
  if (token?.kind !== "word") return 0;
  for (const phrase of phrases.get(token.low) ?? []) {
    if (phrase.every((low, i) => tokens[at + i]?.low === low)) return phrase.length;
  }
  return 0;
}

/** What may stand before a number without being part of it. Common practice, no source. */
const BOUNDS: readonly (readonly string[])[] = [["at", "least"], ["at", "most"], ["up", "to"], ["no", "more", "than"], ["more", "than"], ["less", "than"], ["just", "under"], ["just", "over"], ["a", "little", "over"], ["a", "little", "under"], ["a", "scant"], ["a", "generous"], ["a", "good"], ["a", "heaping"], ["scant"], ["generous"], ["good"], ["heaping"], ["heaped"], ["rounded"], ["level"], ["just"], ["only"], ["another"]];

const BOUND_OPENS: ReadonlySet<string> = new Set(BOUNDS.map(([first]) => first as string));

function skipBound(tokens: readonly Token[], from: number, remarks: string[]): number {
  if (!BOUND_OPENS.has(tokens[from]?.low ?? "")) return from;
  const bound = BOUNDS.find((words) => words.every((word, i) => tokens[from + i]?.low === word) && tokens[from + words.length]?.kind === "number");
  if (!bound) return from;
  remarks.push(...tokens.slice(from, from + bound.length).map(({ text }) => text));
  return from + bound.length;
}

/** Passes over about, roughly and ~, which go to the remarks. */
export function skipAbout(tokens: readonly Token[], from: number, remarks: string[]): number {
  let at = skipBound(tokens, from, remarks);
  while (tokens[at]?.entry?.roles.has("about") || isMark(tokens[at], "~")) {
    remarks.push((tokens[at] as Token).text);
    at++;
    if (isMark(tokens[at], ".")) at++;
  }
  return at;
}
