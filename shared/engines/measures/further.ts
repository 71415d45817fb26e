/** What follows the first amount of a line: the same in another system, what is added or taken off, and the container behind a size. */
import type { Rational } from "../../kernel/quantity.ts";
import { draftOf, numberAt, unitAt } from "./amounts.ts";
import type { Draft, FoundNumber, FoundUnit } from "./amounts.ts";
import { amountsBetween, closing } from "./brackets.ts";
import type { Lead } from "./lead.ts";
import { hasFood, isMark, isMeasure, isWord } from "./token-tests.ts";
import type { Token } from "./tokens.ts";

const ONE: Rational = { n: 1, d: 1 };

/** Amounts that go on after the first: dual measures, compounds, plus and minus, and a container at the end. */
export function readMore(tokens: readonly Token[], from: number, lead: Lead): number {
  const first = lead.drafts[0] as Draft;
  let at = from;
  for (;;) {
    const before = at;
    at = readParens(tokens, at, lead, "same");
    at = readFurther(tokens, readUpperEnd(tokens, at, first), lead);
    if (at === before && isWord(tokens[at], "or") && first.unit !== null) at = skipAlternative(tokens, at, lead.remarks);
    if (at === before && at === from && isMark(tokens[at], ",") && first.unit !== null && first.kind !== "count" && tokens[at + 1]?.kind === "word" && !tokens[at + 1]?.entry) at++;
    if (at === before) at = readContainer(tokens, at, lead);
    if (at === before) return at;
  }
}

/** 5 oz - 8 oz: a range whose unit is said twice. */
function readUpperEnd(tokens: readonly Token[], at: number, first: Draft): number {
  if ((!isMark(tokens[at], "-") && !isWord(tokens[at], "to")) || tokens[at + 1]?.kind !== "number" || !first.amount || first.max) return at;
  const upper = numberAt(tokens, at + 1);
  const unit = upper && unitAt(tokens, upper.next, true);
  if (!upper?.amount || unit?.unit !== first.unit || upper.amount.n * first.amount.d <= first.amount.n * upper.amount.d) return at;
  first.max = upper.amount;
  first.text += `-${upper.text}`;
  return unit.next;
}

/** One more amount behind a stroke, a sign or nothing: /7 oz, plus 2 tablespoons, 2 oz. */
function readFurther(tokens: readonly Token[], at: number, lead: Lead): number {
  const slash = isMark(tokens[at], "/");
  const sign = signAt(tokens, at);
  if ((lead.drafts[0] as Draft).unit === null && !slash) return at;
  let start = slash || sign ? at + 1 : at;
  const heaps: string[] = [];
  while (sign && tokens[start]?.entry?.roles.has("unit-size")) heaps.push((tokens[start++] as Token).text);
  const number = signedNumber(tokens, start, sign !== null);
  if (!number) return at;
  const unit = unitAt(tokens, number.next, true);
  if (!slash && (!unit || (!isMeasure(unit) && !sign))) return at;
  const draft = draftOf(number, unit, roleOf(sign, slash, unit, lead));
  draft.unitWords = [...heaps, ...draft.unitWords];
  lead.drafts.push(draft);
  if (sign) lead.remarks.push(sign.text);
  return unit?.next ?? number.next;
}

function roleOf(sign: Token | null, slash: boolean, unit: FoundUnit | null, lead: Lead): Draft["role"] {
  if (sign) return sign.low === "minus" || sign.low === "less" ? "minus" : "plus";
  const last = lead.drafts[lead.drafts.length - 1] as Draft;
  // 1 lb 2 oz is one amount; 225 g 8 oz says the same twice, and so does the 4 oz of 1 kg/2 lb 4 oz
  return !slash && last.role !== "same" && isSmaller(unit, last) ? "plus" : "same";
}

/** 400g tin tomatoes and 2 x 400g tins: the container behind the size. */
function readContainer(tokens: readonly Token[], at: number, lead: Lead): number {
  const first = lead.drafts[0] as Draft;
  const unit = unitAt(tokens, at, first.unit !== null);
  if (!unit || !hasFood(tokens, unit.next)) return at;
  if (unit.unit === first.unit && tokens[at]?.kind === "word") {
    first.unitWords = [...first.unitWords, ...unit.words];
    return unit.next;
  }
  if (isMeasure(unit) || first.kind === "count" || first.kind === "vague" || lead.drafts.some((draft) => draft.text === "" && draft !== first)) return at;
  if (first.unit === null) {
    Object.assign(first, { unit: unit.unit, kind: unit.kind, unitWords: unit.words });
    return unit.next;
  }
  if (!HOLDS.has(unit.unit)) return at;
  lead.drafts.push({ amount: ONE, max: null, text: "", unit: unit.unit, kind: unit.kind, unitWords: unit.words, role: "remark" });
  return unit.next;
}

/** What food is sold in or cut to, so that it can follow a weight: 400g tin, 200g piece. */
const HOLDS: ReadonlySet<string> = new Set(["can", "tin", "jar", "packet", "package", "pack", "bag", "box", "carton", "tub", "pot", "bottle", "tube", "block", "piece", "punnet", "sachet", "slice", "sheet", "bar", "ball", "stick", "container", "log", "knob", "bunch", "wedge", "strip", "chunk"]);

export function readParens(tokens: readonly Token[], at: number, lead: Lead, role: Draft["role"]): number {
  if (!isMark(tokens[at], "(") && !isMark(tokens[at], "[")) return at;
  const closes = closing(tokens, at);
  const inside = amountsBetween(tokens, at + 1, closes);
  if (inside.drafts.length === 0 || inside.drafts.every((draft) => draft.kind === "length")) return at;
  lead.drafts.push(...inside.drafts.map((draft) => ({ ...draft, role })));
  lead.remarks.push(...inside.words);
  return closes + 1;
}

function signAt(tokens: readonly Token[], at: number): Token | null {
  const token = tokens[at];
  if (!token) return null;
  if (isMark(token, "+") || isWord(token, "plus") || isWord(token, "minus") || isWord(token, "less")) return token;
  return (isWord(token, "and") || isMark(token, "&")) && tokens[at + 1]?.kind === "number" ? token : null;
}

function signedNumber(tokens: readonly Token[], at: number, signed: boolean): FoundNumber | null {
  if (signed && (isWord(tokens[at], "a") || isWord(tokens[at], "an"))) {
    return unitAt(tokens, at + 1, false) ? { amount: ONE, max: null, text: (tokens[at] as Token).low, next: at + 1 } : null;
  }
  return tokens[at]?.kind === "number" ? numberAt(tokens, at) : null;
}

const SMALLER: Readonly<Record<string, string>> = { pound: "ounce", kilogram: "gram", litre: "millilitre", pint: "fluid ounce", cup: "tablespoon", tablespoon: "teaspoon", stone: "pound" };
const isSmaller = (unit: FoundUnit | null, last: Draft): boolean => last.unit !== null && unit !== null && SMALLER[last.unit] === unit.unit;

/** "or 2 large handfuls": another amount of the same food, kept as a remark. */
function skipAlternative(tokens: readonly Token[], at: number, remarks: string[]): number {
  const number = numberAt(tokens, at + 1);
  const unit = number && unitAt(tokens, number.next, true);
  if (!number || !unit || !hasFood(tokens, unit.next)) return at;
  for (let i = at; i < unit.next; i++) remarks.push((tokens[i] as Token).text);
  return unit.next;
}
