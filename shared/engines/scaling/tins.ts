/**
 * Question: by how much does another tin change the amount? New volume ÷ old volume; without depths the depth stays the same and the areas decide.
 * Source: changing pans, household tables of measures (University of Nebraska-Lincoln Extension, Reducing the Size of Recipes): straight sides, depth kept.
 */
import type { Tin } from "./types.ts";

export function areaCm2(tin: Tin): number {
  const one = tin.shape === "round" ? (Math.PI * tin.acrossCm ** 2) / 4 : tin.shape === "square" ? tin.sideCm ** 2 : tin.longCm * tin.wideCm;
  return one * (tin.tins ?? 1);
}

/** Straight-sided millilitres; null without a depth. */
export const volumeMl = (tin: Tin): number | null => (tin.deepCm === undefined ? null : areaCm2(tin) * tin.deepCm);

export function tinFactor(from: Tin, to: Tin): number {
  const [before, after] = [volumeMl(from), volumeMl(to)];
  return before !== null && after !== null ? after / before : areaCm2(to) / areaCm2(from);
}

/** A tin of a chart: inside inches, US cups to the rim. */
export interface PublishedTin {
  readonly shape: string;
  readonly longIn: number;
  readonly wideIn: number;
  readonly deepIn: number;
  readonly cups: readonly [number, number];
}

/** Within this a tin is the one of the chart: tins are sold to the whole centimetre and to the half inch. */
const SAME_CM = 0.35;
const INCH_CM = 2.54;
/** 16 × 14.786… ml (UCUM [cup_us]). */
const US_CUP_ML = 236.5882365;
/** Rounded corners take from the straight-sided volume: published capacities are mostly 86 to 96 % of it (seventeen tins of five charts). */
const TO_THE_RIM = [0.86, 0.96] as const;

/** What the tins hold to the rim, millilitres: as a chart has it, else a share of the straight-sided volume; null without a depth. */
export function heldMl(tin: Tin, charts: readonly PublishedTin[]): { readonly low: number; readonly high: number; readonly charted: PublishedTin | null } | null {
  const straight = volumeMl(tin);
  if (straight === null) return null;
  const charted = charts.find((one) => isSame(tin, one)) ?? null;
  const many = tin.tins ?? 1;
  return charted ? { low: charted.cups[0] * US_CUP_ML * many, high: charted.cups[1] * US_CUP_ML * many, charted } : { low: straight * TO_THE_RIM[0], high: straight * TO_THE_RIM[1], charted };
}

function isSame(tin: Tin, { shape, longIn, wideIn, deepIn }: PublishedTin): boolean {
  if ((tin.shape === "round") !== (shape === "round")) return false;
  const [long, wide] = tin.shape === "round" ? [tin.acrossCm, tin.acrossCm] : tin.shape === "square" ? [tin.sideCm, tin.sideCm] : [Math.max(tin.longCm, tin.wideCm), Math.min(tin.longCm, tin.wideCm)];
  const near = (cm: number, inch: number): boolean => Math.abs(cm - inch * INCH_CM) <= SAME_CM;
  return near(long, longIn) && near(wide, wideIn) && near(tin.deepCm ?? NaN, deepIn);
}

/** 24 cm round, 20 × 30 cm, two 20 cm square. */
export function tinWords(tin: Tin): string {
  const size = tin.shape === "round" ? `${tin.acrossCm} cm round` : tin.shape === "square" ? `${tin.sideCm} cm square` : `${tin.longCm} × ${tin.wideCm} cm`;
  const many = tin.tins ?? 1;
  return many === 1 ? size : `${many} tins of ${size}`;
}
