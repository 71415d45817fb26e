/** How long something keeps, as bars from the day it is made: best as solid and pale, the end of safety as a stroke. Pixels; pure. */
import type { KeepingAnswer } from "#shared/contracts/keeping.ts";

type Keeps = KeepingAnswer["keeps"][number];

export interface KeepsBar {
  readonly place: string;
  /** Solid to here, pale to there. */
  readonly bestLow: number | null;
  readonly bestHigh: number | null;
  readonly safe: number | null;
}

export interface KeepsScale {
  readonly bars: readonly KeepsBar[];
  readonly marks: readonly { readonly x: number; readonly words: string }[];
}

const DAYS_PER_MONTH = 30;
/** The longest step that leaves at least two marks: days, then months, then years. */
const STEPS = [1, 2, 7, 14, DAYS_PER_MONTH, 2 * DAYS_PER_MONTH, 3 * DAYS_PER_MONTH, 6 * DAYS_PER_MONTH, 365] as const;

export function layOutKeeps(keeps: readonly Keeps[], left: number, width: number, leastPx: number): KeepsScale {
  const longest = Math.max(1, ...keeps.flatMap(({ best, safe }) => [best?.high ?? 0, safe?.high ?? 0]));
  const x = (days: number): number => left + (days / (longest * 1.08)) * (width - left);
  const step = STEPS.find((days) => x(days) - left >= leastPx) ?? 730;
  const marks: { x: number; words: string }[] = [];
  for (let days = step; days <= longest * 1.05; days += step) marks.push({ x: x(days), words: daysWords(days) });
  const bars = keeps.map(({ place, best, safe }) => ({ place, bestLow: best ? x(best.low) : null, bestHigh: best ? x(best.high) : null, safe: safe ? x(safe.high) : null }));
  return { bars, marks };
}

/** “6 days”, “3 weeks”, “8 months”, “1 year”, for a mark of the scale. */
export function daysWords(days: number): string {
  const say = (n: number, one: string): string => `${n} ${one}${n === 1 ? "" : "s"}`;
  if (days >= 365 && days % 365 === 0) return say(days / 365, "year");
  if (days >= DAYS_PER_MONTH && days % DAYS_PER_MONTH === 0) return say(days / DAYS_PER_MONTH, "month");
  return days >= 7 && days % 7 === 0 ? say(days / 7, "week") : say(days, "day");
}
