/** Middle of the scenarios, by column of a scenario-major grid. Definition: quantile 0.5 of Hyndman and Fan 1996, type 7, as in the kernel. */
import { quantile } from "../../kernel/band.ts";

/** One middle for each week. Weeks with nothing in any scenario cost no sorting. */
export function middles(grid: Float64Array, scenarios: number, weeks: number): Float64Array {
  const out = new Float64Array(weeks);
  const column = new Float64Array(scenarios);
  for (let w = 0; w < weeks; w++) {
    let above = 0;
    for (let s = 0; s < scenarios; s++) {
      const value = grid[s * weeks + w] as number;
      column[s] = value;
      if (value > 0) above++;
    }
    // nothing is ever below nothing, so with fewer than half above it the middle is nothing
    out[w] = above * 2 < scenarios ? 0 : middleOf(column);
  }
  return out;
}

/** Middle of values that may be reordered. */
export function middleOf(values: Float64Array): number {
  return quantile(values.sort(), 0.5);
}
