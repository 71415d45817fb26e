/**
 * How a crop's grams lie over its picking season, as a share 0–1 of the whole by a share 0–1 of the season (common practice, no source:
 * a rise, a flat top and a longer fall for what is picked repeatedly).
 */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import type { CurveShape } from "./types.ts";

const STEPS = 1024;

/** Beta distributions by shape; head+shoots and even are straight lines and stand below. */
const BETAS: Readonly<Partial<Record<CurveShape, readonly [number, number]>>> = {
  repeat: [2, 2.5],
  concentrated: [1.6, 2.6],
  "cut-again": [1.5, 1.5],
  // the plants of one sowing come ready around the middle of the span
  "one-cut": [2, 2],
};

/** Crops whose season is a short burst whatever their habit: sets of pods, ears or berries that ripen together. */
const CONCENTRATED = new Set(
  "french-bean pea sweetcorn strawberry raspberry raspberry-autumn blackberry blueberry blackcurrant redcurrant gooseberry".split(" "),
);

export function shapeOf(crop: CropFacts): CurveShape {
  if (CONCENTRATED.has(crop.slug)) return "concentrated";
  // stands in the ground or in store: supply on the stem, taken evenly
  return waitsForTheGrower(crop) || crop.habit === "stands" ? "even" : crop.habit;
}

/** Head: 60 % in the first ten days; shoots: the rest evenly. */
const HEAD = { share: 0.6, days: 10 };

/** Share of the whole that has come by `days` into a season of `spanDays`. */
export function shareBy(shape: CurveShape, days: number, spanDays: number): number {
  const t = days / spanDays;
  if (t <= 0) return 0;
  if (t >= 1) return 1;
  if (shape === "even") return t;
  if (shape === "head+shoots") {
    const head = Math.min(HEAD.days, spanDays / 2);
    return days <= head ? (HEAD.share * days) / head : HEAD.share + ((1 - HEAD.share) * (days - head)) / (spanDays - head);
  }
  const table = TABLES[shape];
  const at = t * STEPS;
  const below = at | 0;
  const low = table[below] as number;
  return low + ((table[below + 1] as number) - low) * (at - below);
}

type Tabled = "repeat" | "concentrated" | "cut-again" | "one-cut";
const TABLES: Readonly<Record<Tabled, Float64Array>> = {
  repeat: betaTable("repeat"),
  concentrated: betaTable("concentrated"),
  "cut-again": betaTable("cut-again"),
  "one-cut": betaTable("one-cut"),
};

/**
 * Distribution function of Beta(a, b) at STEPS + 1 equal steps. With t = sin²θ the density becomes 2 sin^(2a−1)θ cos^(2b−1)θ,
 * smooth at both ends, so Simpson's rule between neighbouring steps is exact enough (error below 1e-6).
 */
function betaTable(shape: Tabled): Float64Array {
  const [a, b] = BETAS[shape] as readonly [number, number];
  const density = (theta: number): number => 2 * Math.sin(theta) ** (2 * a - 1) * Math.cos(theta) ** (2 * b - 1);
  const table = new Float64Array(STEPS + 1);
  for (let i = 1; i <= STEPS; i++) {
    const from = Math.asin(Math.sqrt((i - 1) / STEPS));
    const to = Math.asin(Math.sqrt(i / STEPS));
    table[i] = (table[i - 1] as number) + ((to - from) / 6) * (density(from) + 4 * density((from + to) / 2) + density(to));
  }
  const whole = table[STEPS] as number;
  return table.map((share) => share / whole);
}
