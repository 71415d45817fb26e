/** Single amounts: a number or its word, a range, and the unit behind it. Each reader takes a place in the line and answers where it stopped. */
import type { Rational } from "../../kernel/quantity.ts";
import { isMark, isWord } from "./token-tests.ts";
import type { Token } from "./tokens.ts";
import type { ReadAmount } from "./types.ts";

export interface FoundNumber {
  readonly amount: Rational | null;
  readonly max: Rational | null;
  readonly text: string;
  readonly next: number;
}

export interface FoundUnit {
  readonly unit: string;
  readonly kind: string;
  readonly words: readonly string[];
  readonly next: number;
}

const ratio = (token: Token): Rational => ({ n: token.n, d: token.d });

/** An amount while it is being read. */
export interface Draft {
  amount: Rational | null;
  max: Rational | null;
  text: string;
  unit: string | null;
  kind: string | null;
  unitWords: readonly string[];
  role: ReadAmount["role"];
}

export function draftOf(number: FoundNumber, unit: FoundUnit | null, role: Draft["role"]): Draft {
  return { amount: number.amount, max: number.max, text: number.text, unit: unit?.unit ?? null, kind: unit?.kind ?? null, unitWords: unit?.words ?? [], role };
}

/** Spelled out, they are no number but not none either. */
const VAGUE: ReadonlySet<string> = new Set(["few", "several", "couple"]);
/** Units that are also plain words: they count as units only straight after a number. */
const SHORT: ReadonlySet<string> = new Set(["c", "l", "g", "t", "in", "pt", "gal", "stone", "count", "gr", "cl", "dl", "tb", "can", "part", "parts", "long", "length"]);

/** A number at this place: 2, 2-3, 2 to 3, one, half a, two dozen, a few; null where there is none. */
export function numberAt(tokens: readonly Token[], at: number): FoundNumber | null {
  const token = tokens[at];
  if (!token) return null;
  if (token.kind === "number") return withRange(tokens, at);
  if (token.kind !== "word") return null;
  const number = token.entry?.number;
  if (number) return spelledFraction(tokens, at, number) ?? wordNumber(tokens, at, number);
  const hyphen = token.low.indexOf("-");
  const parts = hyphen < 0 ? undefined : PARTS[token.low.slice(hyphen + 1)];
  const over = COUNTS[token.low.slice(0, Math.max(0, hyphen))];
  if (parts && over && over < parts) return { amount: { n: over, d: parts }, max: null, text: token.low, next: skipOf(tokens, at + 1) };
  if (token.low === "a" || token.low === "an") {
    const then = tokens[at + 1];
    if (isWord(then, "dozen")) return { amount: { n: 12, d: 1 }, max: null, text: "12", next: skipOf(tokens, at + 2) };
    if (then?.kind === "word" && (then.low === "half" || then.low === "quarter")) return wordNumber(tokens, at + 1, then.entry?.number ?? { n: 1, d: 2 });
    if (then?.kind === "word" && VAGUE.has(then.low)) return { ...numberAt(tokens, at + 1), next: skipOf(tokens, at + 2) } as FoundNumber;
    return null;
  }
  if (token.low === "dozen") return { amount: { n: 12, d: 1 }, max: null, text: "12", next: at + 1 };
  if (VAGUE.has(token.low)) return { amount: token.low === "couple" ? { n: 2, d: 1 } : null, max: null, text: token.low, next: skipOf(tokens, at + 1) };
  return null;
}

const COUNTS: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3 };
const PARTS: Readonly<Record<string, number>> = { half: 2, third: 3, thirds: 3, quarter: 4, quarters: 4, fourth: 4, fourths: 4, eighth: 8, eighths: 8 };

/** "one and a half", "two thirds". */
function spelledFraction(tokens: readonly Token[], at: number, number: Rational): FoundNumber | null {
  const token = tokens[at] as Token;
  if (number.d !== 1) return null;
  if (isWord(tokens[at + 1], "and") && isWord(tokens[at + 2], "a") && tokens[at + 3]?.low !== undefined) {
    const parts = PARTS[(tokens[at + 3] as Token).low];
    return parts ? { amount: { n: number.n * parts + 1, d: parts }, max: null, text: `${token.low} and a ${(tokens[at + 3] as Token).low}`, next: skipOf(tokens, at + 4) } : null;
  }
  const over = COUNTS[token.low];
  const parts = PARTS[tokens[at + 1]?.low ?? ""];
  return over && parts && over < parts ? { amount: { n: over, d: parts }, max: null, text: `${token.low} ${(tokens[at + 1] as Token).low}`, next: skipOf(tokens, at + 2) } : null;
}

const skipOf = (tokens: readonly Token[], at: number): number => (isWord(tokens[at], "of") ? at + 1 : at);

function wordNumber(tokens: readonly Token[], at: number, number: Rational): FoundNumber {
  const token = tokens[at] as Token;
  if (number.n === 1 && number.d > 1) {
    const next = isWord(tokens[at + 1], "a") || isWord(tokens[at + 1], "an") || isWord(tokens[at + 1], "of") ? at + 2 : at + 1;
    return { amount: number, max: null, text: token.low, next };
  }
  if (isWord(tokens[at + 1], "dozen")) return { amount: { n: number.n * 12, d: number.d }, max: null, text: String((number.n * 12) / number.d), next: at + 2 };
  const joiner = tokens[at + 1];
  const upper = tokens[at + 2];
  if (joiner && (joiner.low === "to" || joiner.low === "or") && upper?.entry?.number) return { amount: number, max: upper.entry.number, text: `${token.low}-${upper.low}`, next: at + 3 };
  return { amount: number, max: null, text: token.low, next: at + 1 };
}

/** 2-3, 2 to 3, 2 or 3, 4- to 5- and 100-150g; it must rise, else the second number is another amount. */
function withRange(tokens: readonly Token[], at: number): FoundNumber {
  const token = tokens[at] as Token;
  if (isWord(tokens[at + 1], "dozen")) return { amount: { n: token.n * 12, d: token.d }, max: null, text: String((token.n * 12) / token.d), next: at + 2 };
  let next = at + 1;
  if (isMark(tokens[next], "-")) next++;
  const joined = next > at + 1;
  if (isWord(tokens[next], "to") || isWord(tokens[next], "or")) {
    next++;
    if (joined && isMark(tokens[next], "-")) next++;
  } else if (!joined) return { amount: ratio(token), max: null, text: token.text, next: at + 1 };
  const upper = tokens[next];
  if (upper?.kind !== "number" || upper.n * token.d <= token.n * upper.d) return { amount: ratio(token), max: null, text: token.text, next: at + 1 };
  return { amount: ratio(token), max: ratio(upper), text: `${token.text}-${upper.text}`, next: next + 1 };
}

/**
 * A unit at this place, with the words that qualify it: large bunch, heaped tbsp, fl oz. `afterNumber` lets one-letter units in.
 * A hyphen between number and unit is passed over: 14-ounce.
 */
export function unitAt(tokens: readonly Token[], at: number, afterNumber: boolean): FoundUnit | null {
  let next = at;
  if (afterNumber && isMark(tokens[next], "-") && tokens[next]?.glued) next++;
  const words: string[] = [];
  const first = tokens[next];
  if (afterNumber && (isMark(first, '"') || isMark(first, "″"))) return { unit: "inch", kind: "length", words: ["inch"], next: next + 1 };
  while (tokens[next]?.entry?.roles.has("unit-size") && words.length < 3) {
    words.push((tokens[next] as Token).text);
    next++;
  }
  const token = tokens[next];
  if (!token || token.kind !== "word") return null;
  const two = twoWords(token, tokens[next + 1], afterNumber);
  if (two) return { unit: two, kind: "volume", words: [...words, token.text, (tokens[next + 1] as Token).text], next: next + 2 };
  const unit = token.entry?.unit;
  if (!unit || (SHORT.has(token.low) && !afterNumber)) return null;
  // "in" is an inch only where it is stuck to its number or counts pieces
  if (token.low === "in" && !token.glued && !tokens[next + 1]?.low.startsWith("piece")) return null;
  const measures = token.entry?.unitKind !== "count" && token.entry?.unitKind !== "vague";
  if (words.length > 0 && measures && words.some((word) => !SPOON_HEAPS.has(word.toLowerCase()))) return null;
  return { unit, kind: token.entry?.unitKind ?? "count", words: [...words, token.text], next: next + 1 };
}

/** A spoon can be heaped; it cannot be thick. */
const SPOON_HEAPS: ReadonlySet<string> = new Set(["heaped", "heaping", "scant", "level", "rounded", "generous", "good", "big", "full", "packed", "loosely", "tightly", "lightly", "firmly", "overflowing", "brimming", "small", "large"]);

/** A fluid ounce is no weight, and a dry pint of berries is a sixth larger than a pint of milk. */
function twoWords(token: Token, then: Token | undefined, afterNumber: boolean): string | null {
  if (then?.kind !== "word") return null;
  if ((token.low === "fl" || token.low === "fluid") && then.entry?.unit === "ounce") return "fluid ounce";
  return afterNumber && token.low === "dry" && (then.entry?.unit === "pint" || then.entry?.unit === "quart") ? `dry ${then.entry.unit}` : null;
}
