/**
 * The amounts at the head of a line: 2 cups, 2 x 400g tins, 1 (14 oz) can, 200 g/7 oz, 1 lb 2 oz, 1 cup plus 2 tablespoons, a pinch.
 * Reads on while amounts follow and answers where the food begins.
 */
import type { Rational } from "../../kernel/quantity.ts";
import { draftOf, numberAt, unitAt } from "./amounts.ts";
import type { Draft, FoundUnit } from "./amounts.ts";
import { amountsBetween, closing } from "./brackets.ts";
import { readMore, readParens } from "./further.ts";
import { skipAbout } from "./phrases.ts";
import { hasFood, isMark, isMeasure, isWord } from "./token-tests.ts";
import type { Token } from "./tokens.ts";

export interface Lead {
  readonly drafts: Draft[];
  /** Sizes that stand between number and number: 2 small or 1½ large eggs. */
  readonly sizes: string[];
  readonly remarks: string[];
  /** What is taken from the food: juice of 2 limes. */
  readonly parts: string[];
  readonly next: number;
}

const ONE: Rational = { n: 1, d: 1 };
/** Words that begin a line as a unit without a number; other units need a number or an "of". */
const ALONE: ReadonlySet<string> = new Set(["bunch", "sprig", "sheet", "packet", "knob", "tablespoon", "teaspoon"]);

/** What food is sold in or grows as: "large pack", "small head". */
const SOLD_IN: ReadonlySet<string> = new Set(["pack", "packet", "package", "bag", "tin", "can", "jar", "tub", "pot", "carton", "box", "bottle", "head", "bulb", "piece", "slice", "wedge", "punnet", "loaf", "block"]);

export function readLead(tokens: readonly Token[]): Lead {
  const lead = { drafts: [] as Draft[], sizes: [] as string[], remarks: [] as string[], parts: [] as string[], next: 0 };
  let at = 0;
  while (tokens[at]?.kind === "mark" && "-*•·".includes((tokens[at] as Token).text)) at++;
  at = skipHeading(tokens, at, lead);
  at = skipAbout(tokens, at, lead.remarks);
  if ((isWord(tokens[at], "a") || isWord(tokens[at], "an")) && tokens[at + 1]?.kind === "number") return readOneOfSize(tokens, at + 1, lead);
  const number = numberAt(tokens, at);
  if (!number) {
    lead.next = readImplicit(tokens, at, lead);
    return lead;
  }
  const first = isSizeOfOne(tokens, number.next) ? { ...NO_NUMBER } : draftOf(number, null, "first");
  lead.drafts.push(first);
  if (first.text !== "") at = number.next;
  // ½ a lemon, ½ of an onion, ½ of 1 onion
  if (first.amount && first.amount.n < first.amount.d) at = skipWhole(tokens, at);
  // 3 or so cups
  if (isWord(tokens[at], "or") && isWord(tokens[at + 1], "so")) lead.remarks.push(...tokens.slice(at, (at += 2)).map(({ text }) => text));
  if (isTimes(tokens[at])) {
    first.role = "times";
    first.text += "x";
    at++;
  }
  at = readSizes(tokens, at, lead);
  if (isMark(tokens[at], ",") && unitAt(tokens, at + 1, true)?.kind === "volume") at++;
  const unit = unitAt(tokens, at, true);
  if (unit && (hasFood(tokens, unit.next) || unit.kind !== "count")) at = take(first, unit);
  else at = readOtherSize(tokens, at, lead);
  at = readMore(tokens, at, lead);
  lead.next = skipOf(tokens, at, lead.remarks);
  return lead;
}

/** The one thing of which a part is taken. */
function skipWhole(tokens: readonly Token[], at: number): number {
  const of = isWord(tokens[at], "of") ? at + 1 : at;
  const one = tokens[of];
  const whole = isWord(one, "a") || isWord(one, "an") || (of > at && (isWord(one, "one") || (one?.kind === "number" && one.n === 1 && one.d === 1 && tokens[of + 1]?.kind === "word" && !tokens[of + 1]?.entry?.unit)));
  return whole ? of + 1 : at;
}

/** A 400g tin of tomatoes. */
function readOneOfSize(tokens: readonly Token[], at: number, lead: Lead & { next: number }): Lead {
  const first = { ...NO_NUMBER };
  lead.drafts.push(first);
  const sized = readSizes(tokens, at, lead);
  const unit = unitAt(tokens, sized, true);
  lead.next = skipOf(tokens, unit && hasFood(tokens, unit.next) ? take(first, unit) : sized, lead.remarks);
  return lead;
}

/** One thing that no number counts. */
const NO_NUMBER: Draft = { amount: ONE, max: null, text: "", unit: null, kind: null, unitWords: [], role: "first" };

/** A 14-ounce can, a 4-pound chicken: a number tied to its unit by a hyphen is the size of one. */
function isSizeOfOne(tokens: readonly Token[], at: number): boolean {
  const unit = isMark(tokens[at], "-") && tokens[at]?.glued && tokens[at + 1]?.glued ? unitAt(tokens, at, true) : null;
  return unit !== null && isMeasure(unit) && hasFood(tokens, unit.next);
}

/** Pinch of salt, small bunch coriander, jar of chutney: one of them, though no number says so. */
function readImplicit(tokens: readonly Token[], at: number, lead: Lead): number {
  const article = isWord(tokens[at], "a") || isWord(tokens[at], "an");
  const unit = unitAt(tokens, article ? at + 1 : at, false);
  if (!unit || !hasFood(tokens, unit.next)) return at;
  const of = isWord(tokens[unit.next], "of");
  const sized = unit.words.length > 1 && SOLD_IN.has(unit.unit);
  if (!article && !of && unit.kind !== "vague" && !ALONE.has(unit.unit) && !sized) return at;
  if (article) lead.remarks.push((tokens[at] as Token).text);
  lead.drafts.push({ amount: ONE, max: null, text: "", unit: unit.unit, kind: unit.kind, unitWords: unit.words, role: "first" });
  // a pinch or two of salt
  const orTwo = isWord(tokens[unit.next], "or") && isWord(tokens[unit.next + 1], "two") ? unit.next + 2 : unit.next;
  lead.remarks.push(...tokens.slice(unit.next, orTwo).map(({ text }) => text));
  if (orTwo > unit.next) return skipOf(tokens, orTwo, lead.remarks);
  return skipOf(tokens, readMore(tokens, unit.next, lead), lead.remarks);
}

/** Parts of a food that a line names before its number: zest and juice of 1 lemon, leaves from 2 sprigs mint. */
const PARTS_OF: ReadonlySet<string> = new Set(["juice", "zest", "rind", "peel", "grated", "finely", "freshly", "squeezed", "and", "leaves", "seeds", "the", "flesh", "pulp", "strip", "strips"]);

const TAKEN_FROM: ReadonlySet<string> = new Set(["juice", "zest", "rind", "peel"]);

/** Passes over "Optional:" and over "juice of" when a number follows. */
function skipHeading(tokens: readonly Token[], from: number, lead: Lead): number {
  if (isMark(tokens[from + 1], ":") && tokens[from]?.kind === "word" && tokens.length > from + 2) {
    lead.remarks.push((tokens[from]).text);
    return from + 2;
  }
  let at = from;
  while (tokens[at]?.kind === "word" && PARTS_OF.has((tokens[at] as Token).low)) at++;
  // zest 1 lemon
  if (at > from && tokens[at]?.kind === "number" && TAKEN_FROM.has(tokens[at - 1]?.low ?? "")) {
    for (let i = from; i < at; i++) lead.parts.push((tokens[i] as Token).text);
    return at;
  }
  const of = isWord(tokens[at], "of") || isWord(tokens[at], "from");
  if (at === from || !of || !numberAt(tokens, skipAbout(tokens, at + 1, []))) return from;
  for (let i = from; i <= at; i++) lead.parts.push((tokens[i] as Token).text);
  return at + 1;
}

function isTimes(token: Token | undefined): boolean {
  return isWord(token, "x") || isMark(token, "×");
}

/** What one piece holds, between the number of pieces and their name: 400g, 14-ounce, (14 oz), (1-inch [2.5 cm]). */
function readSizes(tokens: readonly Token[], from: number, lead: Lead): number {
  let at = skipAbout(tokens, from, []);
  if (isMark(tokens[at], "(")) {
    const closes = closing(tokens, at);
    const inside = amountsBetween(tokens, at + 1, closes);
    if (inside.drafts.length === 0 || inside.drafts.some((draft) => draft.unit === null)) return from;
    lead.drafts.push(...inside.drafts.map((draft) => ({ ...draft, role: "each" as const })));
    lead.remarks.push(...inside.words);
    return closes + 1;
  }
  let read = from;
  for (;;) {
    const number = numberAt(tokens, at);
    const unit = number && tokens[at]?.kind === "number" ? unitAt(tokens, number.next, true) : null;
    if (!number || !unit || !isMeasure(unit)) return read;
    lead.drafts.push(draftOf(number, unit, "each"));
    read = readParens(tokens, unit.next, lead, "each");
    if (!isMark(tokens[read], "/")) return read;
    at = read + 1;
  }
}

/** 2 small or 1½ large eggs. */
function readOtherSize(tokens: readonly Token[], at: number, lead: Lead): number {
  const size = tokens[at];
  if (!size?.entry?.roles.has("size") || !isWord(tokens[at + 1], "or")) return at;
  const number = numberAt(tokens, at + 2);
  const other = number && tokens[number.next];
  if (!number || !other?.entry?.roles.has("size")) return at;
  lead.sizes.push(size.text, "or", other.text);
  lead.drafts.push(draftOf(number, null, "same"));
  return number.next + 1;
}

function take(draft: Draft, unit: FoundUnit): number {
  draft.unit = unit.unit;
  draft.kind = unit.kind;
  draft.unitWords = unit.words;
  return unit.next;
}

/** "of", and "each of" where one amount holds for several foods. */
function skipOf(tokens: readonly Token[], from: number, remarks: string[]): number {
  let at = from;
  while ((isWord(tokens[at], "of") || isWord(tokens[at], "each")) && at < tokens.length - 1) remarks.push((tokens[at++] as Token).text);
  return at;
}
