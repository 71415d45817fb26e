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

/** 24 cm round, 20 × 30 cm, two 20 cm square. */
export function tinWords(tin: Tin): string {
  const size = tin.shape === "round" ? `${tin.acrossCm} cm round` : tin.shape === "square" ? `${tin.sideCm} cm square` : `${tin.longCm} × ${tin.wideCm} cm`;
  const many = tin.tins ?? 1;
  return many === 1 ? size : `${many} tins of ${size}`;
}
