/** What is left of a line behind its amounts: the food's name, its size, how it is prepared, and remarks. */
import { draftOf, numberAt, unitAt } from "./amounts.ts";
import type { Draft } from "./amounts.ts";
import { amountsBetween, closing } from "./brackets.ts";
import { readName } from "./food-name.ts";
import { phraseAt, skipAbout } from "./phrases.ts";
import { isMark, isMeasure, isWord } from "./token-tests.ts";
import type { Token } from "./tokens.ts";
import type { MeasureTables } from "./types.ts";

export interface FoodPart {
  readonly name: Token[];
  readonly sizes: Token[];
  readonly preparation: Token[];
  readonly comment: Token[];
  readonly drafts: Draft[];
}

/** Splits the tokens from `from` on. */
export function readFood(tokens: readonly Token[], from: number, tables: MeasureTables): FoodPart {
  const part: FoodPart = { name: [], sizes: [], preparation: [], comment: [], drafts: [] };
  const flat = withoutLastAmount(withoutBrackets(tokens, from, part), part);
  const segments = segmentsOf(flat);
  let named = 0;
  // "boneless, skinless chicken" and "peeled, chopped apple": the name begins behind the commas
  while (named < segments.length - 1 && onlyDescribes((segments[named] as Segment).tokens)) named++;
  named = listEnd(segments, endOfAdjectives(segments, named, tables), tables);
  if (from === 0) named = Math.max(named, endOfList(segments, named, tables));
  for (const segment of segments.slice(named + 1)) readTail(segment.tokens, part, tables);
  readName(segments.slice(0, named + 1).flatMap((segment) => segment.tokens), part, tables);
  return part;
}

/** Takes brackets out: amounts become drafts, an alternative stays in the name, the rest is a remark. */
function withoutBrackets(tokens: readonly Token[], from: number, part: FoodPart): Token[] {
  const flat: Token[] = [];
  let comma = false;
  for (let at = from; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    if (!isMark(token, "(") && !isMark(token, "[")) {
      comma ||= isMark(token, ",");
      flat.push(token);
      continue;
    }
    const closes = closing(tokens, at);
    const inside = tokens.slice(at + 1, closes);
    const amounts = amountsBetween(tokens, at + 1, closes);
    if (amounts.drafts.length > 0 && !amounts.drafts.every((draft) => draft.kind === "length")) {
      part.drafts.push(...amounts.drafts);
      part.comment.push(...inside.filter((t) => t.kind === "word" && amounts.words.includes(t.text)));
    } else if (!comma && (staysInName(inside, tokens[closes + 1]) || isOtherName(inside, flat[flat.length - 1]))) flat.push(...inside);
    else part.comment.push(...inside.filter((t) => t.kind !== "mark"));
    at = closes;
  }
  return flat;
}

/** "(or ghee)", "homogenized (whole) milk", "(savoiardi) or biscotti". */
function staysInName(inside: readonly Token[], then: Token | undefined): boolean {
  const first = inside[0];
  if (!first || inside.some((token) => token.kind === "number" || isMark(token, ","))) return false;
  if (first.low === "or") return inside.length <= 6 && !REMARKS_AFTER_OR.has(inside[1]?.low ?? "");
  return inside.length === 1 && then?.kind === "word" && !first.entry?.roles.has("preparation") && first.low !== "optional" && !first.low.endsWith("%");
}

/** "mirin (rice wine)", "asafetida (hing)": a second name, not a remark about the first. */
function isOtherName(inside: readonly Token[], before: Token | undefined): boolean {
  if (before?.kind !== "word" || inside.length === 0 || inside.length > LONGEST_OTHER_NAME || NO_NAME.has(inside[0]?.low ?? "")) return false;
  return inside.every(({ kind, low, entry }) => kind === "word" && !low.endsWith("%") && !NO_NAME.has(low) && !(entry && (entry.unit !== null || NO_NAME_ROLES.some((role) => entry.roles.has(role)))));
}

const LONGEST_OTHER_NAME = 2;
/** Words that open or hold a remark in brackets. Common practice, no source. */
const NO_NAME: ReadonlySet<string> = new Set([
  "optional", "see", "or", "and", "and/or", "not", "no", "a", "an", "the", "any", "all", "as", "at", "by", "for", "from", "if", "in", "of", "on", "to", "with", "without", "your", "you", "my", "our", "it", "its", "i", "we", "is", "are", "was", "can", "may", "use", "used", "using",
  "recipe", "recipes", "follows", "note", "notes", "below", "above", "page", "tip", "headnote", "sidebar", "available", "preferably", "about", "each", "total", "homemade", "home-made", "store-bought", "shop-bought", "bought", "only", "more", "less", "extra", "plus", "also", "like", "eg", "e.g", "ie", "i.e", "etc",
  "square", "round", "separated", "thawed", "divided", "reserved", "leftover", "heaping", "heaped", "scant", "generous", "packed", "loosely", "white", "green", "brown", "black", "red", "yellow", "parts", "part", "half", "halves", "quarter", "dozen", "weight", "size", "sized", "brand", "kind", "type", "variety", "style", "serving", "servings", "garnish", "topping", "filling", "taste", "choice", "substitute", "instead", "boxed", "canned", "tinned", "bottled", "jarred", "sold", "called", "labeled", "labelled", "sometimes", "usually",
  "needed", "desired", "wanted", "preferred", "recommended", "required", "necessary", "approximately", "approx", "roughly", "around", "minimum", "maximum",
]);
const NO_NAME_ROLES = ["preparation", "adverb", "about", "adjective", "number", "size", "ground", "tail-preparation"] as const;

const REMARKS_AFTER_OR: ReadonlySet<string> = new Set(["more", "less", "to", "your", "any", "a", "an", "as", "use", "so"]);

/** "diced ham 125 mL": an amount that ends the line says the first again. */
function withoutLastAmount(tokens: Token[], part: FoodPart): Token[] {
  const at = tokens.length - 2;
  if (at < 1 || tokens[at]?.kind !== "number") return tokens;
  const number = numberAt(tokens, at);
  const unit = number && unitAt(tokens, number.next, true);
  if (!number || !unit || unit.next !== tokens.length || unit.kind === "length" || !isMeasure(unit) || NOT_BEFORE.has(tokens[at - 1]?.low ?? "") || isAmountBefore(tokens, at - 1)) return tokens;
  part.drafts.push(draftOf(number, unit, "remark"));
  return tokens.slice(0, at);
}

/** The pounds of 3 lb 5 oz. */
const isAmountBefore = (tokens: readonly Token[], at: number): boolean => tokens[at - 1]?.kind === "number" && tokens[at]?.entry?.unit != null;

/** Before an amount of something else: mixed with 2 tbsp, about 8 oz, plus 1 cup. */
const NOT_BEFORE: ReadonlySet<string> = new Set(["with", "about", "plus", "or", "each", "in", "to", "of", "and", "-", "/", ",", "extra", "by", "from", "than"]);

interface Segment {
  readonly tokens: Token[];
  /** What stands before it. */
  readonly after: string;
}

/** At commas, semicolons, colons and spaced dashes. */
function segmentsOf(tokens: readonly Token[]): Segment[] {
  const segments: Segment[] = [{ tokens: [], after: "" }];
  tokens.forEach((token, i) => {
    const splits = token.kind === "mark" && (",;:—.".includes(token.text) || (token.text === "-" && !token.glued));
    if (splits) segments.push({ tokens: [], after: token.text });
    else if (token.kind !== "mark" || token.text === "&" || token.text === "+" || (token.text === "/" && i > 0) || (token.text === "-" && tokens[i + 1]?.glued)) segments[segments.length - 1]?.tokens.push(token);
  });
  return segments.filter((segment, i) => segment.tokens.length > 0 || i === 0);
}

const DESCRIBES = ["leading-adjective", "preparation", "adverb", "size", "ground"] as const;
const describes = (token: Token): boolean => token.low === "and" || token.low === "or" || DESCRIBES.some((role) => token.entry?.roles.has(role));
const onlyDescribes = (tokens: readonly Token[]): boolean => tokens.every(describes);

/** Without an amount the commas may part foods: "Salt, pepper, and olive oil"; without "and" it takes three or more to be a list. */
function endOfList(segments: readonly Segment[], named: number, tables: MeasureTables): number {
  const others = segments.slice(named + 1);
  const foods = (some: readonly Segment[]): boolean => some.every(({ tokens, after }) => after === "," && tokens[0]?.kind === "word" && !onlyDescribes(tokens) && phraseAt(tokens, 0, tables.remarks) === 0);
  const last = others.findLastIndex(({ tokens }) => tokens.length > 1 && (tokens[0]?.low === "and" || tokens[0]?.low === "and/or"));
  if (last >= 0 && foods(others.slice(0, last + 1))) return named + 1 + last;
  return others.length >= LEAST_OF_A_LIST - 1 && foods(others) && !others.some(({ tokens }) => isTail(tokens, tables)) ? segments.length - 1 : named;
}

const LEAST_OF_A_LIST = 3;

/** "sherry or other sweet, fortified wine": a segment that stops on an adjective goes on behind the comma. */
function endOfAdjectives(segments: readonly Segment[], named: number, tables: MeasureTables): number {
  const { tokens } = segments[named] as Segment;
  const next = segments[named + 1];
  const last = tokens[tokens.length - 1];
  const open = tokens.length > 1 && last?.entry?.roles.has("leading-adjective") === true && (tokens[tokens.length - 2] as Token).entry?.roles.has("unit-size") !== true;
  return open && next?.after === "," && !isTail(next.tokens, tables) && !onlyDescribes(next.tokens) && tokens.some(({ low }) => low === "or" || low === "and" || low === "other") ? named + 1 : named;
}

/** "white wine, water, or stock": the last segment of a list of foods, or the place itself when no list follows. */
function listEnd(segments: readonly Segment[], named: number, tables: MeasureTables): number {
  if ((segments[named] as Segment).tokens.some((token) => token.low === "or")) return named;
  for (let i = named + 1; i < segments.length; i++) {
    const { tokens, after } = segments[i] as Segment;
    if (after === ":" || after === ";" || isTail(tokens, tables) || onlyDescribes(tokens)) return named;
    const joins = tokens.findIndex((token) => token.low === "or" || token.low === "and/or");
    if (joins === -1) continue;
    return numberAt(tokens, joins + 1) || phraseAt(tokens, joins, tables.remarks) > 0 ? named : i;
  }
  return named;
}

/** Whether a segment behind a comma speaks about the food instead of naming another. */
function isTail(segment: readonly Token[], tables: MeasureTables): boolean {
  const first = segment[0];
  if (!first || first.kind === "number" || phraseAt(segment, 0, tables.remarks) > 0) return true;
  const roles = first.entry?.roles;
  if (roles?.has("tail-preparation") || roles?.has("preparation")) return true;
  const second = segment[1]?.entry?.roles;
  if (roles?.has("adverb") && (second?.has("preparation") || second?.has("ground") || second?.has("adverb") || second?.has("tail-preparation"))) return true;
  const last = segment[segment.length - 1] as Token;
  return segment.length > 1 && (last.entry?.roles.has("preparation") === true || last.low === "only" || last.low === "removed");
}

/** A segment behind the name: an amount, a preparation or a remark. */
function readTail(segment: readonly Token[], part: FoodPart, tables: MeasureTables): void {
  const start = skipAbout(segment, isWord(segment[0], "each") ? 1 : 0, []);
  const number = segment[start]?.kind === "number" ? numberAt(segment, start) : null;
  const unit = number && unitAt(segment, number.next, true);
  if (number && unit && unit.kind !== "length" && (unit.next >= segment.length || MAY_FOLLOW.has(segment[unit.next]?.low ?? ""))) {
    part.drafts.push(...amountsBetween(segment, start, segment.length).drafts.filter((draft) => draft.kind !== "length"));
    return;
  }
  const prepares = segment[0]?.kind === "word" && phraseAt(segment, 0, tables.remarks) === 0 && isTail(segment, tables);
  (prepares ? part.preparation : part.comment).push(...segment);
}

/** What comes after an amount behind a comma when the amount is of the food: 8 to 10 ounces each. */
const MAY_FOLLOW: ReadonlySet<string> = new Set(["each", "/", "or", "in", "total", "(", "and", "weight", "altogether"]);
