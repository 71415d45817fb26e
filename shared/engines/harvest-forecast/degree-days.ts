/**
 * Degree-days of one day from its maximum and minimum: the warmth between a lower and an upper temperature.
 * Any unit of temperature, as long as all four are in the same one. Single sine: Baskerville & Emin 1969, Ecology 50:514–517;
 * single triangle and both cut-offs: as defined by the University of California degree-day documentation.
 */

/** Above the upper temperature development holds its pace (horizontal) or stops (vertical). */
export type CutOff = "horizontal" | "vertical";

/** max(0, mean − lower). */
export function simpleAverage(max: number, min: number, lower: number): number {
  return Math.max(0, (max + min) / 2 - lower);
}

/** Both ends clipped to [lower, upper] before the mean is taken; clipping the mean itself is another method. */
export function simpleAverageClipped(max: number, min: number, lower: number, upper: number): number {
  const clip = (value: number): number => Math.min(upper, Math.max(lower, value));
  return (clip(max) + clip(min)) / 2 - lower;
}

export function singleTriangle(max: number, min: number, lower: number, upper: number, cutOff: CutOff = "horizontal"): number {
  const between = triangleAbove(max, min, lower) - triangleAbove(max, min, upper);
  if (cutOff === "horizontal") return Math.max(0, between);
  const share = max <= upper ? 0 : min >= upper ? 1 : (max - upper) / (max - min);
  return Math.max(0, between - (upper - lower) * share);
}

/** The default of the forecast, with the horizontal cut-off. */
export function singleSine(max: number, min: number, lower: number, upper: number, cutOff: CutOff = "horizontal"): number {
  const between = sineAbove(max, min, lower) - sineAbove(max, min, upper);
  if (cutOff === "horizontal") return Math.max(0, between);
  const share = max <= upper ? 0 : min >= upper ? 1 : 0.5 - Math.asin((upper - (max + min) / 2) / ((max - min) / 2)) / Math.PI;
  return Math.max(0, between - (upper - lower) * share);
}

/** Area of the triangle above a threshold. */
function triangleAbove(max: number, min: number, threshold: number): number {
  if (max <= threshold) return 0;
  if (min >= threshold) return (max + min) / 2 - threshold;
  return (max - threshold) ** 2 / (2 * (max - min));
}

/** Area of the sine curve above a threshold. */
function sineAbove(max: number, min: number, threshold: number): number {
  if (max <= threshold) return 0;
  const mean = (max + min) / 2;
  if (min >= threshold) return mean - threshold;
  const half = (max - min) / 2;
  const theta = Math.asin((threshold - mean) / half);
  return ((mean - threshold) * (Math.PI / 2 - theta) + half * Math.cos(theta)) / Math.PI;
}
