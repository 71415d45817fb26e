/** Middle of the scenarios. Definition: quantile 0.5 of Hyndman and Fan 1996, type 7, as in the kernel; found by partial sorting (Hoare 1961, FIND). */

/** One middle for each of `all` weeks, of a scenario-major grid that begins at week `from` and holds `weeks` of them. */
export function middles(grid: Float64Array, scenarios: number, { from, weeks }: { readonly from: number; readonly weeks: number }, all: number): Float64Array {
  const out = new Float64Array(all);
  const column = new Float64Array(scenarios);
  for (let w = 0; w < weeks; w++) {
    let above = 0;
    for (let s = 0, i = w; s < scenarios; s++, i += weeks) {
      const value = grid[i] as number;
      column[s] = value;
      if (value > 0) above++;
    }
    // nothing is ever below nothing, so with fewer than half above it the middle is nothing
    out[from + w] = above * 2 < scenarios ? 0 : middleOf(column);
  }
  return out;
}

/** Middle of values that may be reordered; 0 of none. */
export function middleOf(values: Float64Array): number {
  const n = values.length;
  if (n === 0) return 0;
  const upper = Math.floor(n / 2);
  const high = select(values, upper);
  if (n % 2 === 1) return high;
  // everything before the upper middle is at most as large: the greatest of it is the lower middle
  let low = values[0] as number;
  for (let i = 1; i < upper; i++) low = Math.max(low, values[i] as number);
  return low + (high - low) / 2;
}

/** Reorders so that the k-th smallest stands at k with nothing larger before it, and returns it. */
function select(values: Float64Array, k: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1] as number;
    let i = left;
    let j = right;
    while (i <= j) {
      while ((values[i] as number) < pivot) i++;
      while ((values[j] as number) > pivot) j--;
      if (i > j) break;
      const kept = values[i] as number;
      values[i++] = values[j] as number;
      values[j--] = kept;
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else break;
  }
  return values[k] as number;
}
