/** Grams of every scenario: the book's amount under the curve, moved by what was picked. */
import type { DayNumber } from "../../kernel/local-date.ts";
import { pickCorrection } from "./amounts.ts";
import type { SeasonYield } from "./amounts.ts";
import type { KnownFacts } from "./known-facts.ts";
import type { Deal } from "./scenario-deal.ts";
import type { Seasons } from "./seasons.ts";
import type { CurveShape, HarvestCurve } from "./types.ts";
import { shareBy } from "./yield-curve.ts";

/** Nothing is history where nothing was logged. */
const ALWAYS_OPEN = -1_000_000;
/** What is ripe stays good on the plant for about so long, days; what was left longer has gone over (common practice). */
const HANGS_DAYS = 7;

export function harvestCurve(seasons: Seasons, yields: SeasonYield, facts: KnownFacts, deal: Deal, shape: CurveShape, waits: boolean, asOf: DayNumber): HarvestCurve {
  const n = seasons.first.length;
  const startDay = Int32Array.from(seasons.first);
  const spanDays = Float64Array.from(seasons.spanDays);
  const wholeGrams = new Float64Array(n);
  const logged = facts.picks.length > 0;
  const openFrom = logged ? asOf + 1 : ALWAYS_OPEN;
  const lastPick = facts.lastPick ?? openFrom;
  const hangsFrom = logged ? Math.min(openFrom, Math.max(lastPick + 1, openFrom - HANGS_DAYS)) : ALWAYS_OPEN;
  for (let s = 0; s < n; s++) {
    const first = seasons.first[s] as number;
    if (first < 0) continue;
    const z = deal.yieldZ[s] as number;
    const whole = yields.likelyGrams * (seasons.share[s] as number) * Math.exp(yields.sigmaLn * z);
    if (!logged) wholeGrams[s] = whole;
    else if (waits) {
      // a stock on the stem: what was taken is gone, the rest stands until the end
      const begins = Math.max(first, openFrom);
      startDay[s] = begins;
      spanDays[s] = Math.max(1, (seasons.until[s] as number) - begins);
      wholeGrams[s] = Math.max(0, whole - facts.pickedGrams);
    } else {
      // picks answer for what had ripened by the last of them; whoever picks seldom has not been shown a poor crop
      const passed = lastPick + 1 - first;
      const share = shareBy(shape, passed, spanDays[s] as number);
      const { factor, sigmaLn } = pickCorrection(facts.pickedGrams, share, yields.likelyGrams, passed / 7, yields.sigmaLn);
      wholeGrams[s] = yields.likelyGrams * factor * Math.exp(sigmaLn * z);
    }
  }
  return { shape, startDay, spanDays, untilDay: Int32Array.from(seasons.until), wholeGrams, openFrom, hangsFrom, picks: facts.picks };
}

/** Grams of the curve that a scenario brings before a day, history left out. */
export function gramsBefore(curve: HarvestCurve, s: number, day: DayNumber): number {
  const whole = curve.wholeGrams[s] as number;
  const start = curve.startDay[s] as number;
  const end = Math.min(day, curve.untilDay[s] as number);
  if (whole === 0 || end <= Math.max(curve.openFrom, start)) return 0;
  return whole * (shareBy(curve.shape, end - start, curve.spanDays[s] as number) - shareGone(curve, s));
}

/** Part of a scenario's whole that is history: picked, or gone over. */
export function shareGone(curve: HarvestCurve, s: number): number {
  const start = curve.startDay[s] as number;
  return curve.hangsFrom > start ? shareBy(curve.shape, curve.hangsFrom - start, curve.spanDays[s] as number) : 0;
}

/** Whole season of every scenario: picked so far and still to come. */
export function seasonGrams(curve: HarvestCurve): Float64Array {
  const picked = curve.picks.reduce((sum, pick) => sum + pick.grams, 0);
  return curve.wholeGrams.map((_, s) => picked + gramsBefore(curve, s, curve.untilDay[s] as number));
}
