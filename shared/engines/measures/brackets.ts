/** Amounts that stand in brackets: (240 ml), (1 stick/113g), (about 1½ pounds each), (24 sheets). */
import { draftOf, numberAt, unitAt } from "./amounts.ts";
import type { Draft } from "./amounts.ts";
import { isMark, isMeasure } from "./token-tests.ts";
import type { Token } from "./tokens.ts";

/** The bracket that closes the one at `at`, or the end of the line. */
export function closing(tokens: readonly Token[], at: number): number {
  let depth = 0;
  for (let i = at; i < tokens.length; i++) {
    const token = tokens[i] as Token;
    if (isMark(token, "(") || isMark(token, "[")) depth++;
    else if (isMark(token, ")") || isMark(token, "]")) {
      depth--;
      if (depth === 0) return i;
    }
  }
  return tokens.length;
}

/** Words that may stand between a bracket and its first amount. */
const BEFORE_AMOUNT: ReadonlySet<string> = new Set([
  "about", "approximately", "approx", "around", "roughly", "each", "total", "weighing", "minimum", "min", "at", "least", "for", "to", "make", "yield", "yields",
  "makes", "a", "scant", "generous", "slightly", "less", "more", "than", "just", "over", "under", "of", "heaping", "heaped", "the", "equivalent", "equal", "from",
]);
/** Counted things that measure as a weight does. */
const MEASURES: ReadonlySet<string> = new Set(["stick", "can", "tin", "package", "packet", "jar", "bottle"]);

/** All amounts with a measure between two places, and the words that are left. */
export function amountsBetween(tokens: readonly Token[], from: number, until: number): { drafts: Draft[]; words: string[] } {
  const drafts: Draft[] = [];
  const words: string[] = [];
  let at = from;
  while (at < until) {
    const token = tokens[at] as Token;
    const number = token.kind === "number" ? numberAt(tokens, at) : null;
    const unit = number && unitAt(tokens, number.next, true);
    const ends = number !== null && (unit?.next ?? number.next) >= until;
    if (number && number.next <= until && unit && (isMeasure(unit) || MEASURES.has(unit.unit) || (ends && drafts.length === 0))) {
      drafts.push(draftOf(number, unit, "remark"));
      at = unit.next;
      continue;
    }
    // (about 8): how many that makes
    if (number && ends && drafts.length === 0 && at > from) {
      drafts.push(draftOf(number, null, "remark"));
      return { drafts, words };
    }
    if (token.kind !== "mark") {
      if (drafts.length === 0 && (token.kind === "number" || !BEFORE_AMOUNT.has(token.low))) return { drafts: [], words: [] };
      words.push(token.text);
    }
    at++;
  }
  return { drafts, words };
}
