/** The segment that names the food: sizes and preparations before and inside it go out, a purpose or remark ends it. */
import { numberAt, unitAt } from "./amounts.ts";
import type { FoodPart } from "./food.ts";
import { phraseAt } from "./phrases.ts";
import { isWord } from "./token-tests.ts";
import type { Token } from "./tokens.ts";
import type { MeasureTables } from "./types.ts";

export function readName(tokens: readonly Token[], part: FoodPart, tables: MeasureTables): void {
  const kept: Token[] = [];
  let at = 0;
  while (at < tokens.length) {
    const token = tokens[at] as Token;
    const set = phraseAt(tokens, at, tables.setPhrases);
    if (set > 0) {
      kept.push(...tokens.slice(at, at + set));
      at += set;
      continue;
    }
    if (kept.length > 0 && ends(tokens, at, tables)) {
      part.comment.push(...tokens.slice(at));
      break;
    }
    // after "red" or "plain" the name has not begun yet
    const prepared = preparedAt(tokens, at, kept.some((word) => !word.entry?.roles.has("leading-adjective")));
    if (prepared > at) {
      part.preparation.push(...tokens.slice(at, prepared));
      at = prepared;
      continue;
    }
    const sized = sizeAt(tokens, at, kept);
    if (sized > at) part.sizes.push(...tokens.slice(at, sized));
    else if (token.kind !== "mark" || ((token.text === "/" || token.text === "&") && kept.length > 0)) kept.push(token);
    at = Math.max(sized, at + 1);
  }
  while (kept.length > 1 && kept[kept.length - 1]?.entry?.roles.has("preparation") && kept[kept.length - 2]?.low !== "and") part.preparation.push(kept.pop() as Token);
  while (kept.length > 1 && kept[kept.length - 1]?.entry?.roles.has("adverb")) part.preparation.push(kept.pop() as Token);
  part.name.push(...kept);
}

/** Joins that open a purpose or a remark in the middle of a name. */
const CUTS: ReadonlySet<string> = new Set(["for", "if", "per", "about", "approximately", "plus", "preferably", "see"]);
const CUT_INTO: ReadonlySet<string> = new Set(["in", "into", "to", "on", "across", "through", "at", "as", "lengthwise", "lengthways", "crosswise", "from"]);

/** Made up with something else: cornflour mixed with 1 tbsp water, gelatine soaked in cold water. */
const MADE_UP: ReadonlySet<string> = new Set(["mixed", "dissolved", "blended", "soaked", "whisked", "beaten", "mashed", "combined", "diluted", "stirred", "thinned", "tossed", "cooked", "warmed", "crushed", "pounded", "ground", "chopped", "sliced", "torn", "broken"]);
const MADE_UP_WITH: ReadonlySet<string> = new Set(["with", "in", "into", "to", "from", "together", "until"]);

function ends(tokens: readonly Token[], at: number, tables: MeasureTables): boolean {
  const token = tokens[at] as Token;
  const then = tokens[at + 1];
  if (CUTS.has(token.low) || (token.kind === "mark" && token.text === "+")) return true;
  if (token.low === "cut") return then !== undefined && (CUT_INTO.has(then.low) || then.entry?.roles.has("adverb") === true);
  if (MADE_UP.has(token.low)) return then !== undefined && MADE_UP_WITH.has(then.low);
  if (token.kind === "number") {
    const number = numberAt(tokens, at);
    return number !== null && unitAt(tokens, number.next, true)?.kind === "length";
  }
  if (token.low === "or" && numberAt(tokens, at + 1)) return true;
  return token.low !== "recipe" && token.low !== "like" && phraseAt(tokens, at, tables.remarks) > 0;
}

/** Where a preparation that begins here ends: finely chopped, peeled and sliced, freshly ground; `at` itself when none does. */
function preparedAt(tokens: readonly Token[], at: number, begun: boolean): number {
  if (isWord(tokens[at], "room") && isWord(tokens[at + 1], "temperature")) return at + 2;
  let next = at;
  while (tokens[next]?.entry?.roles.has("adverb")) next++;
  // "fresh ground pepper" is ground, "fresh pepper" is fresh
  if (next === at && isWord(tokens[at], "fresh") && tokens[at + 1]?.entry?.roles.has("ground") && !tokens[at + 1]?.entry?.roles.has("preparation")) next++;
  const adverbs = next - at;
  const token = tokens[next];
  const isPrepared = token?.entry?.roles.has("preparation") || (adverbs > 0 && token?.entry?.roles.has("ground"));
  if (!isPrepared || (begun && adverbs === 0) || next >= tokens.length - 1) return at;
  next++;
  const joins = isWord(tokens[next], "and") || isWord(tokens[next], "or");
  const then = joins ? next + 1 : next;
  const further = preparedAt(tokens, then, false);
  if (further > then) return further;
  // toasted and ground cumin
  return joins && tokens[then]?.entry?.roles.has("ground") && then < tokens.length - 1 ? then + 1 : next;
}

/** A size near the head of the name: large, extra large, medium. */
function sizeAt(tokens: readonly Token[], at: number, kept: readonly Token[]): number {
  if (kept.length > 2 || kept.some((word) => word.low === "or" || word.low === "and")) return at;
  const extra = isWord(tokens[at], "extra") && tokens[at + 1]?.entry?.roles.has("size") ? 1 : 0;
  return tokens[at + extra]?.entry?.roles.has("size") && at + extra < tokens.length - 1 ? at + extra + 1 : at;
}
