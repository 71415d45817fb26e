/**
 * How chance is dealt to the scenarios of one planting. Scenario s belongs to weather year ⌊s / perYear⌋; every year gets each quantile of the
 * requirement once, in an order shuffled by the planting's id, so that plantings do not move together by accident. Nothing is drawn at random:
 * equal steps of chance need far fewer scenarios.
 */
import { seededRandom, seedOf, shuffledIndexes } from "../../kernel/seeded-random.ts";
import type { Random } from "../../kernel/seeded-random.ts";
import { equalSteps } from "./normal-quantile.ts";

export interface Deal {
  /** Quantile of the requirement by scenario, 0 … perYear − 1. */
  readonly quantile: Int32Array;
  /** Standard normal yield factor by scenario; two plantings correlate by SHARED_FACTOR. */
  readonly yieldZ: Float64Array;
  /** Length of the season between its shortest and longest, 0–1. */
  readonly length: Float64Array;
}

/** About this many scenarios in all, and never fewer than eleven quantiles a year. */
const SCENARIOS = 360;
const FEWEST_QUANTILES = 11;
/** Correlation of the good-or-poor-year factor between plantings of one household (common practice). */
export const SHARED_FACTOR = 0.5;

export function quantilesAYear(years: number): number {
  return Math.max(FEWEST_QUANTILES, Math.round(SCENARIOS / Math.max(1, years)));
}

export function dealFor(plantingId: string, years: number, perYear: number): Deal {
  const n = years * perYear;
  const random = seededRandom(seedOf(plantingId));
  const quantile = new Int32Array(n);
  for (let y = 0; y < years; y++) quantile.set(shuffledIndexes(perYear, random), y * perYear);
  const common = shuffledSteps(n, seededRandom(seedOf("a good or a poor year")));
  const own = shuffledSteps(n, random);
  const yieldZ = common.map((z, s) => Math.sqrt(SHARED_FACTOR) * z + Math.sqrt(1 - SHARED_FACTOR) * (own[s] as number));
  const length = Float64Array.from(shuffledIndexes(n, random), (i) => (i + 0.5) / n);
  return { quantile, yieldZ, length };
}

function shuffledSteps(n: number, random: Random): Float64Array {
  const steps = STEPS.get(n) ?? equalSteps(n);
  STEPS.set(n, steps);
  return Float64Array.from(shuffledIndexes(n, random), (i) => steps[i] as number);
}

/** The steps of a size are always the same; kept because a calendar asks for them sixty times. */
const STEPS = new Map<number, Float64Array>();
