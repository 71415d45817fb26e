/** Low, likely and high: the 10th, 50th and 90th percentile of a set of scenarios. */
export interface Band {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * Quantile with linear interpolation between order statistics (Hyndman and Fan 1996, type 7),
 * the definition of the worked example in the forecast's README.
 */
export function quantile(sorted: ArrayLike<number>, p: number): number {
  if (sorted.length === 0) throw new RangeError("no values");
  const at = (sorted.length - 1) * p;
  const below = Math.floor(at);
  const low = sorted[below] as number;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return low + (high - low) * (at - below);
}

/** The band of unsorted values; the values are copied, not reordered. */
export function bandOf(values: ArrayLike<number>): Band {
  const sorted = Float64Array.from(values).sort();
  return { low: quantile(sorted, 0.1), likely: quantile(sorted, 0.5), high: quantile(sorted, 0.9) };
}

export function mapBand(band: Band, change: (value: number) => number): Band {
  return { low: change(band.low), likely: change(band.likely), high: change(band.high) };
}
