/**
 * How chance is dealt to the scenarios of one planting. Scenario s belongs to weather year ⌊s / perYear⌋; every year gets one requirement from
 * each of perYear equal parts of its distribution, and all years together every one of the equal steps (i + ½) / n once. The order is
 * shuffled by the planting's id, so that plantings do not move together by accident. Nothing is drawn at random: equal steps of chance need
 * far fewer scenarios.
 */
import { seededRandom, seedOf } from "../../kernel/seeded-random.ts";
import type { Random } from "../../kernel/seeded-random.ts";
import { equalSteps } from "./normal-quantile.ts";

export interface Deal {
  /** By scenario, which part of the requirement's distribution it takes, 0 … perYear − 1, earliest first. */
  readonly part: Int32Array;
  /** By year, which step within each part, 0 … years − 1. */
  readonly step: Int32Array;
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
  const part = new Int32Array(n);
  const inOrder = Int32Array.from({ length: perYear }, (_, i) => i);
  for (let y = 0; y < years; y++) {
    part.set(inOrder, y * perYear);
    shuffle(part.subarray(y * perYear, (y + 1) * perYear), random);
  }
  const step = shuffle(Int32Array.from({ length: years }, (_, y) => y), random);
  const { steps, common, lengths } = stepsOf(n);
  const own = shuffle(steps.slice(), random);
  const yieldZ = common.map((z, s) => Math.sqrt(SHARED_FACTOR) * z + Math.sqrt(1 - SHARED_FACTOR) * (own[s] as number));
  return { part, step, yieldZ, length: shuffle(lengths.slice(), random) };
}

/** In place (Fisher–Yates). */
function shuffle<T extends Int32Array | Float64Array>(values: T, random: Random): T {
  for (let i = values.length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    const kept = values[i] as number;
    values[i] = values[j] as number;
    values[j] = kept;
  }
  return values;
}

interface Steps {
  readonly steps: Float64Array;
  /** The factor that all plantings share, scenario by scenario. */
  readonly common: Float64Array;
  readonly lengths: Float64Array;
}

/** The same for every planting of a size; kept because a calendar asks for them sixty times. */
const STEPS = new Map<number, Steps>();

function stepsOf(n: number): Steps {
  let found = STEPS.get(n);
  if (!found) {
    const steps = equalSteps(n);
    const common = shuffle(steps.slice(), seededRandom(seedOf("a good or a poor year")));
    found = { steps, common, lengths: Float64Array.from({ length: n }, (_, i) => (i + 0.5) / n) };
    STEPS.set(n, found);
  }
  return found;
}
