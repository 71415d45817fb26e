import type { FoundUnit } from "./amounts.ts";
import type { Token } from "./tokens.ts";

export const isMark = (token: Token | undefined, text: string): boolean => token?.kind === "mark" && token.text === text;
export const isWord = (token: Token | undefined, low: string): boolean => token?.kind === "word" && token.low === low;
/** A weight, a volume or a length, not a count. */
export const isMeasure = (unit: FoundUnit): boolean => unit.kind === "mass" || unit.kind === "volume" || unit.kind === "length";

/** Whether a word is left that could be the food. */
export function hasFood(tokens: readonly Token[], at: number): boolean {
  for (let i = at; i < tokens.length; i++) {
    const token = tokens[i] as Token;
    if (isMark(token, ",") || isMark(token, ")")) return false;
    if (token.kind === "word" && token.low !== "of") return true;
    if (token.kind === "number" || isMark(token, "(")) return true;
  }
  return false;
}
