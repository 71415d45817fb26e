/** Round figures for an axis: multiples of 1, 2 or 5 times a power of ten, about `wanted` of them, above nothing and up to `most`. */
export function roundSteps(most: number, wanted: number): number[] {
  if (!(most > 0)) return [];
  const raw = most / wanted;
  const power = 10 ** Math.floor(Math.log10(raw));
  // where the next round step lies nearer by ratio
  const ratio = raw / power;
  const step = power * (ratio >= Math.sqrt(50) ? 10 : ratio >= Math.sqrt(10) ? 5 : ratio >= Math.sqrt(2) ? 2 : 1);
  const count = Math.floor(most / step + 1e-9);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Array.from({ length: count }, (_, n) => Number(((n + 1) * step).toFixed(decimals)));
}
