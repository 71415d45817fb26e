/**
 * What a cover does to the day's minimum and maximum, °C. The gains are uncertain by about half either way;
 * on some clear nights a fleece is colder than the open air (Oregon State, see the row).
 */
import type { Cover } from "../../kernel/way.ts";

export interface CoverShift {
  readonly minC: number;
  readonly maxC: number;
  /** The cover is opened when the maximum reaches this, so it warms no further. */
  readonly ventC: number | null;
  /** The gains lie within so much of the figures in eight cases of ten, °C: half of each. */
  readonly minHalfWidthC: number;
  readonly maxHalfWidthC: number;
  /** Codes of seed-data/crop-sources.csv. */
  readonly sources: readonly string[];
}

type Sourced = Omit<CoverShift, "minHalfWidthC" | "maxHalfWidthC">;

const SHIFTS: Readonly<Record<Exclude<Cover, "indoors">, Sourced>> = {
  open: { minC: 0, maxC: 0, ventC: null, sources: [] },
  // CMG722: 2–4 °F of frost protection; OSR: mean minimum +0.3 to +1.8 °C over two springs; maximum CP
  fleece: { minC: 1, maxC: 2, ventC: null, sources: ["CMG722", "OSR", "CP"] },
  // CMG722: plastic on a low frame 2–4 °F; the rest CP
  "cold-frame": { minC: 2, maxC: 5, ventC: 28, sources: ["CMG722", "CP"] },
  // SAV: mean of days, maxima +4.2, minima +1.3; MSHT: monthly maxima +3.2 to +10.4, minima up to +3.0; vent CP
  polytunnel: { minC: 1.3, maxC: 4.2, ventC: 32, sources: ["SAV", "MSHT", "CP"] },
  greenhouse: { minC: 2, maxC: 5, ventC: 30, sources: ["CP"] },
};

/** Indoors the weather does not count: constant 16 °C by night and 20 °C by day (CP). */
const INDOORS = { minC: 16, maxC: 20 };

/** A fleece measured at +0.3 to +1.8 °C by night, a tunnel at +3.2 to +10.4 °C by day (OSR, MSHT): the figures hold give or take half. */
const UNCERTAIN_BY = 0.5;

export function coverShift(cover: Cover): CoverShift {
  if (cover === "indoors") return { ...INDOORS, ventC: null, minHalfWidthC: 0, maxHalfWidthC: 0, sources: ["CP"] };
  const shift = SHIFTS[cover];
  return { ...shift, minHalfWidthC: UNCERTAIN_BY * shift.minC, maxHalfWidthC: UNCERTAIN_BY * shift.maxC };
}

/** Maximum and minimum under a cover; missing days stay missing, except indoors. */
export function underCover(cover: Cover, tmaxC: Float64Array, tminC: Float64Array): { tmaxC: Float64Array; tminC: Float64Array } {
  if (cover === "open") return { tmaxC, tminC };
  if (cover === "indoors") return { tmaxC: new Float64Array(tmaxC.length).fill(INDOORS.maxC), tminC: new Float64Array(tminC.length).fill(INDOORS.minC) };
  const { minC, maxC, ventC } = SHIFTS[cover];
  const vent = ventC ?? Infinity;
  const max = tmaxC.map((t) => Math.max(t, Math.min(t + maxC, vent)));
  const min = tminC.map((t, d) => Math.min(t + minC, max[d] as number));
  return { tmaxC: max, tminC: min };
}
