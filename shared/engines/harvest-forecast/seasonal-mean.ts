/**
 * A smooth year through twelve monthly figures: mean and three harmonics by exact least squares on the mid-months, then the
 * remainder of each month, so that the days of a month average to its figure.
 */
import { MONTH_SLOTS, SLOTS } from "./calendar-days.ts";

const HARMONICS = 3;

/** 366 daily means from twelve monthly ones, same unit. */
export function dailyMeans(monthly: readonly number[]): Float64Array {
  const weights = leastSquares(monthly.map((_, m) => terms(midMonth(m))), monthly);
  const days = Float64Array.from({ length: SLOTS }, (_, slot) => dot(weights, terms(slot + 0.5)));
  for (let m = 0; m < 12; m++) {
    const from = MONTH_SLOTS[m] as number;
    const until = MONTH_SLOTS[m + 1] as number;
    const remainder = (monthly[m] as number) - days.subarray(from, until).reduce((a, b) => a + b, 0) / (until - from);
    for (let d = from; d < until; d++) days[d] = (days[d] as number) + remainder;
  }
  return days;
}

/** 366 daily figures on straight lines between mid-months. */
export function dailyByStraightLines(monthly: readonly number[]): Float64Array {
  return Float64Array.from({ length: SLOTS }, (_, slot) => {
    const at = slot + 0.5;
    const before = at < midMonth(0) ? 11 : Math.max(...monthly.map((_, m) => (midMonth(m) <= at ? m : 0)));
    const after = (before + 1) % 12;
    const start = midMonth(before) - (at < midMonth(0) ? SLOTS : 0);
    const end = midMonth(after) + (before === 11 && at >= midMonth(0) ? SLOTS : 0);
    const share = (at - start) / (end - start);
    return (monthly[before] as number) * (1 - share) + (monthly[after] as number) * share;
  });
}

function midMonth(month: number): number {
  return ((MONTH_SLOTS[month] as number) + (MONTH_SLOTS[month + 1] as number)) / 2;
}

function terms(at: number): number[] {
  const row = [1];
  for (let h = 1; h <= HARMONICS; h++) row.push(Math.cos((2 * Math.PI * h * at) / SLOTS), Math.sin((2 * Math.PI * h * at) / SLOTS));
  return row;
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);

/** Solves the normal equations by Gauss–Jordan elimination with pivoting; the rows are well conditioned here. */
function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]): number[] {
  const n = rows[0]?.length ?? 0;
  const system = Array.from({ length: n }, (_, i) => [
    ...Array.from({ length: n }, (_, j) => rows.reduce((sum, row) => sum + (row[i] as number) * (row[j] as number), 0)),
    rows.reduce((sum, row, k) => sum + (row[i] as number) * (values[k] as number), 0),
  ]);
  for (let c = 0; c < n; c++) {
    const pivot = system.slice(c).reduce((best, row, i) => (Math.abs(row[c] as number) > Math.abs(system[best]?.[c] as number) ? i + c : best), c);
    [system[c], system[pivot]] = [system[pivot] as number[], system[c] as number[]];
    const head = system[c] as number[];
    for (const row of system) {
      if (row === head) continue;
      const factor = (row[c] as number) / (head[c] as number);
      for (let j = c; j <= n; j++) row[j] = (row[j] as number) - factor * (head[j] as number);
    }
  }
  return system.map((row, i) => (row[n] as number) / (row[i] as number));
}
