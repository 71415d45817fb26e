/**
 * A small generator that takes its seed as an argument, so that one seed gives the same numbers on any machine.
 * Algorithm: mulberry32, a 32-bit state with full period (public domain, T. Ettinger 2017; written from memory).
 * Fit for weather and orders to try, not for secrets.
 */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
  /** Whole number in [0, below). */
  below(below: number): number;
  /** Standard normal, by the polar method (Marsaglia and Bray 1964). */
  normal(): number;
}

export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  let spare: number | undefined;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    next,
    below: (below) => Math.floor(next() * below),
    normal: () => {
      if (spare !== undefined) {
        const kept = spare;
        spare = undefined;
        return kept;
      }
      for (;;) {
        const u = 2 * next() - 1;
        const v = 2 * next() - 1;
        const s = u * u + v * v;
        if (s === 0 || s >= 1) continue;
        const scale = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * scale;
        return u * scale;
      }
    },
  };
}

/** A seed from a text such as an id (FNV-1a, 32 bit). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** A shuffled copy of 0 … length − 1 (Fisher–Yates). */
export function shuffledIndexes(length: number, random: Random): number[] {
  const order = Array.from({ length }, (_, i) => i);
  for (let i = length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    const kept = order[i] as number;
    order[i] = order[j] as number;
    order[j] = kept;
  }
  return order;
}
