/** Question: how long does this step take, how much of it with the cook's hands, in how hot an oven, and must it follow at once? */
import type { MinuteRange, RecipeStep, StepNeeds } from "../../kernel/recipe.ts";
import { minutesWords } from "../../kernel/words.ts";
import { durationsIn, type Duration } from "./durations.ts";
import { ovenHeat } from "./heat.ts";
import { wordsOf, type Word } from "./scan.ts";
import { LONGEST, type Doubt, type Found, type Work } from "./types.ts";
import { atOnceAt, handsFor, isHobWork, isOvenWork, isPreheat, runsByItself, takesLargePot, traysIn } from "./verbs.ts";

/** Seeing to something that runs by itself, and work of which the text gives no time. Common practice, no source. */
const SEEING_TO_MIN = 2;
const UNSAID_MIN = 5;
/** What follows at once may wait so long. Common practice, no source. */
const AT_ONCE_MIN = 5;
/** A first rise at 27 °C (a bread cookbook, section on rising: 60 to 90 min to double). */
const RISE: MinuteRange = { low: 60, likely: 75, high: 90 };

interface Sums {
  onMin: number;
  off: MinuteRange;
  stated: boolean;
}

export interface StepReading {
  readonly step: Omit<RecipeStep, "id" | "after">;
  readonly found: readonly Found[];
  /** With paths inside the step. */
  readonly doubts: readonly Doubt[];
  /** Set by a sentence that heats the oven, for the steps to come. */
  readonly ovenC: number | null;
  /** No time for the hands is stated. */
  readonly handsUnsaid: boolean;
  /** The words that put it beside the step before; null where it follows. */
  readonly beside: string | null;
}

/** `ovenC` is what the oven was set to in an earlier step. */
export function readStep(text: string, ovenC: number | null, work: Work): StepReading {
  const words = wordsOf(text, work);
  const found: Found[] = [];
  const doubts: Doubt[] = [];
  const heat = ovenHeat(words, work);
  if (heat) {
    const phrase = spoken(text, words, heat);
    found.push({ text: phrase, means: `oven at ${heat.c} °C` });
    if (heat.by === "unsaid") doubts.push({ path: "needs.oven", text: phrase, why: `It does not say °C or °F: ${heat.c} °C is taken.` });
    if (heat.by === "fan") doubts.push({ path: "needs.oven", text: phrase, why: `Only a fan oven's figure is given: a still oven is set 20 °C higher, ${heat.c} °C.` });
  }
  const sums = addUp(text, words, found, doubts, work);
  const off = sums.off.high > 0 ? sums.off : untilDoubled(text, words, found, doubts);
  const atOnce = atOnceAt(words);
  if (atOnce) found.push({ text: spoken(text, words, atOnce), means: "must follow at once" });
  const set = heat?.c ?? ovenC;
  const handsOnMin = sums.onMin > 0 ? sums.onMin : off.high > 0 ? SEEING_TO_MIN : isPreheat(words) ? 1 : UNSAID_MIN;
  return {
    step: {
      text,
      handsOnMin: Math.min(handsOnMin, LONGEST.minutes),
      handsOffMin: off.low === off.high ? off.likely : off,
      needs: needsOf(text, words, off.high > 0 || sums.onMin > 0, set, doubts),
      ...(atOnce ? { maxWaitMin: AT_ONCE_MIN } : {}),
    },
    found,
    doubts,
    ovenC: heat ? heat.c : null,
    handsUnsaid: sums.onMin === 0,
    beside: besideIn(text),
  };
}

const BESIDE = /^(?:meanwhile|in the meantime|at the same time|(?:while|whilst|as) (?:the|it|they|this|these|your|that)\b[^,.]{0,80}\b(?:is|are|rises?|proves?|proofs?|bakes?|cooks?|cools?|chills?|rests?|simmers?|roasts?|boils?|soaks?|stands?|drains?|marinates?)\b[^,.]{0,40},)/i;

/** "Meanwhile, slice the leeks", "While the dough rises, make the filling": not "while it is still hot". */
function besideIn(text: string): string | null {
  const phrase = BESIDE.exec(text.slice(0, 200))?.[0] ?? null;
  return phrase !== null && /\bstill\b/i.test(phrase) ? null : phrase;
}

function addUp(text: string, words: readonly Word[], found: Found[], doubts: Doubt[], work: Work): Sums {
  const sums: Sums = { onMin: 0, off: { low: 0, likely: 0, high: 0 }, stated: false };
  for (const duration of durationsIn(words, work)) {
    const phrase = spoken(text, words, duration);
    const other = otherTime(words, duration);
    if (other !== null) {
      found.push({ text: phrase, means: other });
      continue;
    }
    if (duration.tooLong) {
      doubts.push({ path: "handsOffMin", text: phrase, why: "Longer than a week: it stays in the words, the step's minutes leave it out." });
      continue;
    }
    const sides = isPerSide(words, duration.to) ? 2 : 1;
    const hands = handsFor(words, duration.from);
    const range = { low: duration.lowMin * sides, high: duration.highMin * sides };
    const likely = Math.round((range.low + range.high) / 2);
    sums.stated = true;
    if (hands === "on") sums.onMin += likely;
    else sums.off = capped({ low: sums.off.low + range.low, likely: sums.off.likely + likely, high: sums.off.high + range.high });
    found.push({ text: phrase, means: `${spanWords(range)}, hands ${hands === "on" ? "on" : "off"}${sides === 2 ? ", both sides" : ""}` });
    doubts.push(...doubtsOf(duration, phrase, hands === "unknown", words));
  }
  return sums;
}

const capped = ({ low, likely, high }: MinuteRange): MinuteRange => ({ low: Math.min(low, LONGEST.minutes), likely: Math.min(likely, LONGEST.minutes), high: Math.min(high, LONGEST.minutes) });

function doubtsOf(duration: Duration, phrase: string, unknown: boolean, words: readonly Word[]): Doubt[] {
  const doubt = (why: string): Doubt => ({ path: "handsOffMin", text: phrase, why });
  return [
    ...(duration.vague ? [doubt(`No figure is given: ${spanWords({ low: duration.lowMin, high: duration.highMin })} is taken.`)] : []),
    ...(duration.atLeast ? [doubt("At least so long; the longest is not said.")] : []),
    ...(unknown ? [doubt("It does not say what goes on meanwhile: taken as time without hands.")] : []),
    ...(saysAbout(words, duration.from) ? [doubt("About so long; the spread is not said.")] : []),
  ];
}

const saysAbout = (words: readonly Word[], at: number): boolean => ["about", "around", "approximately", "roughly", "approx"].includes(words[at - 1]?.low ?? "") || (words[at - 1]?.low === "." && words[at - 2]?.low === "approx");

/** A time that is not the step's own: between stirs, before serving, in the larder. Null for the step's own. */
function otherTime(words: readonly Word[], { from, to }: Duration): string | null {
  const before = words[from - 1]?.low ?? "";
  const earlier = words.slice(Math.max(0, from - 4), from).map(({ low }) => low);
  const behind = words.slice(to, to + 3).map(({ low }) => low);
  if (before === "every" || before === "each") return "how often, not how long";
  if (before === "after") return "a moment within the time, not a time of its own";
  if (before === "last" || before === "first" || before === "final" || before === "remaining") return "part of the time";
  if (before === "within" || (earlier.includes("no") && earlier.includes("longer"))) return "a limit, not how long it takes";
  if (behind[0] === "before" || behind[0] === "ahead" || (behind[0] === "in" && behind[1] === "advance") || behind[0] === "beforehand" || behind[0] === "old") return "when, not how long";
  if (words.slice(Math.max(0, from - 12), from).some(({ low }) => low === "keep" || low === "keeps" || low === "store" || low === "stored") && words.some(({ low }) => KEPT.has(low))) return "how long it keeps, not how long it takes";
  return null;
}

const KEPT: ReadonlySet<string> = new Set(["fridge", "freezer", "refrigerator", "refrigerated", "airtight", "jar", "container", "days", "months", "weeks"]);
const isPerSide = (words: readonly Word[], at: number): boolean => ["per", "each", "a", "on"].includes(words[at]?.low ?? "") && words.slice(at, at + 4).some(({ low }) => low === "side" || low === "sides");

/** "Until doubled" ends by eye. A dough that rises is given the usual time; any other end without a time stays open. */
function untilDoubled(text: string, words: readonly Word[], found: Found[], doubts: Doubt[]): MinuteRange {
  const at = words.findIndex(({ low }) => low === "until" || low === "till");
  if (at < 0 || !runsByItself(words)) return { low: 0, likely: 0, high: 0 };
  const phrase = spoken(text, words, { from: at, to: Math.min(at + 4, words.length) });
  if (words.some(({ low }) => low === "doubled" || low === "double") && words.some(({ low }) => low === "rise" || low === "prove" || low === "proof" || low === "leave" || low === "dough" || low === "stand")) {
    found.push({ text: phrase, means: `${spanWords(RISE)}, hands off` });
    doubts.push({ path: "handsOffMin", text: phrase, why: "Ends by eye and no time is given: the usual 60 to 90 min of a rise in a warm place is taken." });
    return RISE;
  }
  doubts.push({ path: "handsOffMin", text: phrase, why: "Ends by eye and no time is given." });
  return { low: 0, likely: 0, high: 0 };
}

function needsOf(text: string, words: readonly Word[], timed: boolean, ovenC: number | null, doubts: Doubt[]): StepNeeds {
  if (isOvenWork(words) && timed) {
    if (ovenC !== null) return { oven: { c: ovenC, trays: traysIn(words) } };
    doubts.push({ path: "needs.oven", text: text.slice(0, 80), why: "It goes into the oven, and no temperature is given." });
    return {};
  }
  const large = takesLargePot(words);
  if (isHobWork(words) && timed && !words.some(({ low }) => low === "oven")) return { burners: 1, ...(large ? { pots: 1 } : {}) };
  return {};
}

const spoken = (text: string, words: readonly Word[], { from, to }: { readonly from: number; readonly to: number }): string => text.slice(words[from]?.start ?? 0, words[to - 1]?.end ?? text.length);
const spanWords = ({ low, high }: { readonly low: number; readonly high: number }): string => (low === high ? minutesWords(low) : high < 60 ? `${low} to ${minutesWords(high)}` : `${minutesWords(low)} to ${minutesWords(high)}`);
