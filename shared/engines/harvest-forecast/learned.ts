/**
 * What the household's own finished sowings teach about a crop's requirement and yield, shrunk towards the book (normal means with known variances:
 * a variety part that stays, a season part that does not). Spreads are of the logarithm.
 */
import type { FinishedSowing } from "./types.ts";

/** Spread of the variety part, and of one season around it (bean, Oregon Vegetable Digest 1969; cauliflower, Wurr et al. 1988). */
const VARIETY_SD = 0.16;
const SEASON_SD = 0.1;
/** A single odd sowing may not move the book by more than this (common practice). */
const CLIP = 0.5;

export interface Learned {
  /** To be added to the logarithm of the book's figure. */
  readonly shiftLn: number;
  /** Null where only other varieties were grown: they move the middle, they do not narrow the spread. */
  readonly sigmaLn: number | null;
  readonly count: number;
  readonly sameVariety: boolean;
}

/** The same of amounts: what stays with garden and variety, and what one season adds (common practice); a wild one is cut. */
const YIELD = { staysSd: 0.5, seasonSd: 0.35, clip: 1.5 };

/** What own sowings say about the requirement. Null without any whose first pick came by ripeness. */
export function learnedFrom(sowings: readonly FinishedSowing[]): Learned | null {
  return shrunk(sowings, (sowing) => sowing.lnRequirementRatio, { staysSd: VARIETY_SD, seasonSd: SEASON_SD, clip: CLIP });
}

/** What own sowings say about the yield. Null without any whose season is over and was not a failure. */
export function learnedYield(sowings: readonly FinishedSowing[]): Learned | null {
  return shrunk(sowings, (sowing) => sowing.lnYieldRatio ?? null, YIELD);
}

/** Sowings of the same variety if there are any; else of the crop, with half of what stays. */
function shrunk(sowings: readonly FinishedSowing[], ratioOf: (sowing: FinishedSowing) => number | null, spread: { readonly staysSd: number; readonly seasonSd: number; readonly clip: number }): Learned | null {
  const telling = sowings.filter((sowing) => ratioOf(sowing) !== null);
  const same = telling.filter((sowing) => sowing.sameVariety);
  const used = same.length > 0 ? same : telling;
  if (used.length === 0) return null;
  const stays = same.length > 0 ? spread.staysSd : spread.staysSd / 2;
  const n = used.length;
  const mean = used.reduce((sum, sowing) => sum + Math.min(spread.clip, Math.max(-spread.clip, ratioOf(sowing) as number)), 0) / n;
  const weight = (n * stays ** 2) / (n * stays ** 2 + spread.seasonSd ** 2);
  const predictive = Math.sqrt(1 / (1 / stays ** 2 + n / spread.seasonSd ** 2) + spread.seasonSd ** 2);
  return { shiftLn: weight * mean, sigmaLn: same.length > 0 ? predictive : null, count: n, sameVariety: same.length > 0 };
}
