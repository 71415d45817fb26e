/**
 * Question: which stretches of time does a sentence of a recipe name? Minutes, as a range.
 * Spelled times are read, never guessed. What a word like overnight stands for is common practice, no source, and is marked `vague`.
 */
import type { Word } from "./scan.ts";
import { LONGEST, type Work } from "./types.ts";

export interface Duration {
  readonly lowMin: number;
  readonly highMin: number;
  /** Places in the words, the end not included. */
  readonly from: number;
  readonly to: number;
  /** The word stands for a span that the recipe does not give. */
  readonly vague: boolean;
  /** "at least": longer does no harm by the recipe. */
  readonly atLeast: boolean;
  /** Longer than a week is no step of a day's work. */
  readonly tooLong: boolean;
}

const UNIT_MIN: Readonly<Record<string, number>> = {
  s: 1 / 60, sec: 1 / 60, secs: 1 / 60, second: 1 / 60, seconds: 1 / 60,
  m: 1, min: 1, mins: 1, minute: 1, minutes: 1,
  h: 60, hr: 60, hrs: 60, hour: 60, hours: 60,
  day: 1440, days: 1440, week: 10080, weeks: 10080, month: 43200, months: 43200,
};
/** One letter is a unit only where it sticks to its number. */
const STICKS: ReadonlySet<string> = new Set(["s", "m", "h"]);
const NUMBERS: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, eleven: 11, twelve: 12, fifteen: 15, twenty: 20, thirty: 30, forty: 40, fifty: 50, sixty: 60, ninety: 90 };
/** Soaking beans by night: 480 to 720 min, as household tables of cook-day tasks have it; common practice, no source. */
const NIGHT = { low: 480, high: 720 } as const;

interface Amount {
  readonly low: number;
  readonly high: number;
  readonly next: number;
  readonly vague: boolean;
}

interface Stretch {
  readonly lowMin: number;
  readonly highMin: number;
  readonly next: number;
  readonly vague: boolean;
}

export function durationsIn(words: readonly Word[], work: Work): Duration[] {
  const found: Duration[] = [];
  for (let at = 0; at < words.length; ) {
    work.looks++;
    const first = stretchAt(words, at);
    if (!first) {
      at++;
      continue;
    }
    const whole = rangeFrom(words, first);
    found.push({
      lowMin: Math.min(inMinutes(whole.lowMin), LONGEST.minutes),
      highMin: Math.min(inMinutes(whole.highMin), LONGEST.minutes),
      from: at,
      to: whole.next,
      vague: whole.vague,
      atLeast: isAtLeast(words, at),
      tooLong: whole.highMin > LONGEST.minutes,
    });
    at = whole.next;
  }
  return found;
}

/** Half a minute is the least a plan can hold, and that is one. */
const inMinutes = (minutes: number): number => Math.max(1, Math.round(minutes));

/** "45 min to 1 hour", "2 hours or overnight", "1 hour and 20 minutes", "an hour and a half". */
function rangeFrom(words: readonly Word[], first: Stretch): Stretch {
  const then = words[first.next];
  if (then && (then.low === "to" || then.low === "or" || then.low === "-")) {
    const upper = stretchAt(words, first.next + 1);
    if (upper && upper.highMin > first.highMin) return { lowMin: first.lowMin, highMin: upper.highMin, next: upper.next, vague: first.vague || upper.vague };
  }
  return first;
}

function stretchAt(words: readonly Word[], at: number): Stretch | null {
  const word = words[at];
  if (word?.low === "overnight") return { lowMin: NIGHT.low, highMin: NIGHT.high, next: at + 1, vague: true };
  const amount = amountAt(words, at);
  if (!amount) return null;
  const next = words[amount.next]?.low === "-" ? amount.next + 1 : amount.next;
  const unit = unitAt(words, next);
  if (unit === null) return null;
  let stretch: Stretch = { lowMin: amount.low * unit, highMin: amount.high * unit, next: next + 1, vague: amount.vague };
  if (words[stretch.next]?.low === ".") stretch = dotPassed(words, stretch);
  return withSmaller(words, stretch, unit);
}

/** The full stop of "min." belongs to it where the sentence goes on with a number or a small word. */
const dotPassed = (words: readonly Word[], stretch: Stretch): Stretch => (words[stretch.next + 1]?.kind === "number" ? { ...stretch, next: stretch.next + 1 } : stretch);

/** 1 hour 20 minutes, 1 hour and 20 minutes, an hour and a half. */
function withSmaller(words: readonly Word[], stretch: Stretch, unit: number): Stretch {
  let at = stretch.next;
  if (words[at]?.low === ",") at++;
  const joined = words[at]?.low === "and";
  if (joined) at++;
  if (joined && words[at]?.low === "a" && (words[at + 1]?.low === "half" || words[at + 1]?.low === "quarter")) {
    const part = words[at + 1]?.low === "half" ? unit / 2 : unit / 4;
    return { ...stretch, lowMin: stretch.lowMin + part, highMin: stretch.highMin + part, next: at + 2 };
  }
  const amount = amountAt(words, at);
  const smaller = amount && unitAt(words, amount.next);
  if (!amount || smaller === null || smaller >= unit) return stretch;
  return { ...stretch, lowMin: stretch.lowMin + amount.low * smaller, highMin: stretch.highMin + amount.high * smaller, next: amount.next + 1 };
}

function unitAt(words: readonly Word[], at: number): number | null {
  const word = words[at];
  if (word?.kind !== "word") return null;
  if (STICKS.has(word.low) && words[at - 1]?.end !== word.start) return null;
  return UNIT_MIN[word.low] ?? null;
}

/** 35, 35–40, 35 to 40, one or two, a, half an, three quarters of an, a couple of, a few. */
function amountAt(words: readonly Word[], at: number): Amount | null {
  const single = oneAmount(words, at);
  if (!single) return null;
  const joiner = words[single.next]?.low;
  if (joiner !== "-" && joiner !== "to" && joiner !== "or" && joiner !== "and") return single;
  if (joiner === "and" && words[at - 1]?.low !== "between") return single;
  const upper = oneAmount(words, single.next + 1);
  if (!upper || upper.low <= single.low) return single;
  return { low: single.low, high: upper.high, next: upper.next, vague: false };
}

function oneAmount(words: readonly Word[], at: number): Amount | null {
  const word = words[at];
  if (!word) return null;
  const then = words[at + 1]?.low;
  if (word.kind === "number") return plain(word.value, at + 1);
  if (word.low === "half") return plain(1 / 2, then === "an" || then === "a" ? at + 2 : at + 1);
  if (word.low === "quarter" || word.low === "quarters") return null;
  if (word.low === "three" && then === "quarters") return plain(3 / 4, ofAn(words, at + 2));
  if (word.low === "a" || word.low === "an") {
    if (then === "couple") return plain(2, words[at + 2]?.low === "of" ? at + 3 : at + 2);
    // a few: two to five, common practice, no source
    if (then === "few") return { low: 2, high: 5, next: at + 2, vague: true };
    if (then === "half") return plain(1 / 2, at + 2);
    if (then === "quarter") return plain(1 / 4, ofAn(words, at + 2));
    return plain(1, at + 1);
  }
  const number = NUMBERS[word.low];
  if (number === undefined) return null;
  if (then === "and" && words[at + 2]?.low === "a" && words[at + 3]?.low === "half") return plain(number + 1 / 2, at + 4);
  if (then === "-" && NUMBERS[words[at + 2]?.low ?? ""] !== undefined && number >= 20 && (NUMBERS[words[at + 2]?.low ?? ""] ?? 0) < 10) return plain(number + (NUMBERS[words[at + 2]?.low ?? ""] ?? 0), at + 3);
  return plain(number, at + 1);
}

const plain = (value: number, next: number): Amount => ({ low: value, high: value, next, vague: false });
const ofAn = (words: readonly Word[], at: number): number => (words[at]?.low === "of" && (words[at + 1]?.low === "an" || words[at + 1]?.low === "a") ? at + 2 : at);
const isAtLeast = (words: readonly Word[], at: number): boolean => (words[at - 1]?.low === "least" && words[at - 2]?.low === "at") || (words[at - 1]?.low === "of" && words[at - 2]?.low === "minimum");
