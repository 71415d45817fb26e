/**
 * The standard normal distribution: quantile by P. J. Acklam's rational approximation (2003, relative error below 1.2e-9;
 * coefficients from memory, checked in the tests against printed tables), probability by Abramowitz & Stegun 1964, 7.1.26 (error below 1.5e-7).
 */
const A = [-39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716, 2.506628277459239] as const;
const B = [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572] as const;
const C = [-0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968, 2.938163982698783] as const;
const D = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416] as const;
const LOW = 0.02425;

/** z with P(Z < z) = p, for 0 < p < 1. */
export function normalQuantile(p: number): number {
  if (p < LOW) return tail(Math.sqrt(-2 * Math.log(p)));
  if (p > 1 - LOW) return -tail(Math.sqrt(-2 * Math.log(1 - p)));
  const q = p - 0.5;
  const r = q * q;
  const above = ((((A[0] * r + A[1]) * r + A[2]) * r + A[3]) * r + A[4]) * r + A[5];
  const below = ((((B[0] * r + B[1]) * r + B[2]) * r + B[3]) * r + B[4]) * r + 1;
  return (above * q) / below;
}

function tail(q: number): number {
  const above = ((((C[0] * q + C[1]) * q + C[2]) * q + C[3]) * q + C[4]) * q + C[5];
  return above / ((((D[0] * q + D[1]) * q + D[2]) * q + D[3]) * q + 1);
}

/** P(Z < z). */
export function normalProbability(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const series = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  const half = (series * Math.exp(-x * x)) / 2;
  return z > 0 ? 1 - half : half;
}

/** Quantiles at equal steps of chance, (i + ½) / n for i = 0 … n − 1, rising; not to be changed by the caller. */
export function equalSteps(n: number): Float64Array {
  let found = STEPS.get(n);
  if (!found) STEPS.set(n, (found = Float64Array.from({ length: n }, (_, i) => normalQuantile((i + 0.5) / n))));
  return found;
}

/** Kept because a calendar asks for the same steps sixty times. */
const STEPS = new Map<number, Float64Array>();
