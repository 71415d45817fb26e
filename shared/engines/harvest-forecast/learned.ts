/**
 * What the household's own finished sowings teach about a crop's requirement, shrunk towards the book (normal means with known variances:
 * a variety part that stays, a season part that does not). Spreads are of the logarithm.
 */
import type { FinishedSowing } from "./types.ts";

/** Spread of the variety part, and of one season around it (bean, Oregon Vegetable Digest 1969; cauliflower, Wurr et al. 1988). */
const VARIETY_SD = 0.16;
const SEASON_SD = 0.1;
/** A single odd sowing may not move the book by more than this (common practice). */
const CLIP = 0.5;

export interface Learned {
  /** To be added to the logarithm of the book requirement. */
  readonly shiftLn: number;
  /** Null where only other varieties were grown: they move the middle, they do not narrow the spread. */
  readonly sigmaLn: number | null;
  readonly count: number;
  readonly sameVariety: boolean;
}

/** Sowings of the same variety if there are any; else of the crop, with half the variety spread. Null without sowings. */
export function learnedFrom(sowings: readonly FinishedSowing[]): Learned | null {
  const same = sowings.filter((sowing) => sowing.sameVariety);
  const used = same.length > 0 ? same : sowings;
  if (used.length === 0) return null;
  const prior = same.length > 0 ? VARIETY_SD : VARIETY_SD / 2;
  const n = used.length;
  const mean = used.reduce((sum, sowing) => sum + Math.min(CLIP, Math.max(-CLIP, sowing.lnRequirementRatio)), 0) / n;
  const weight = (n * prior ** 2) / (n * prior ** 2 + SEASON_SD ** 2);
  const predictive = Math.sqrt(1 / (1 / prior ** 2 + n / SEASON_SD ** 2) + SEASON_SD ** 2);
  return { shiftLn: weight * mean, sigmaLn: same.length > 0 ? predictive : null, count: n, sameVariety: same.length > 0 };
}
