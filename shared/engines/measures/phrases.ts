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

/** Passes over about, roughly and ~, which go to the remarks. */
export function skipAbout(tokens: readonly Token[], from: number, remarks: string[]): number {
  let at = from;
  while (tokens[at]?.entry?.roles.has("about") || isMark(tokens[at], "~")) {
    remarks.push((tokens[at] as Token).text);
    at++;
    if (isMark(tokens[at], ".")) at++;
  }
  return at;
}
