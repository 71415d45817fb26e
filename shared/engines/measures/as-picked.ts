/**
 * Question: how much must be picked for so many grams that go into the pot?
 * As picked = as used / (1 − refuse). Refuse is USDA's share of the whole food that is not eaten (SR26, table FOOD_DES, field Refuse).
 */
import type { Outcome } from "../../kernel/outcome.ts";
import { sourceOf } from "./citing.ts";
import type { MeasureTables, ReadLine } from "./types.ts";

/** Grams as picked, unrounded. Where no share is known the grams come back unchanged with a note. */
export function asPicked(gramsUsed: number, food: string, tables: MeasureTables): Outcome<number> {
  const row = tables.produce.get(food);
  if (!row) return { value: gramsUsed, basis: [], notes: [`No figure for what is trimmed from ${food}: taken as picked.`] };
  return { value: gramsUsed / (1 - row.refusePercent / 100), basis: [sourceOf(row, tables)], notes: [] };
}

/** The other way about: grams that are left of so many as picked. */
export const asUsed = (gramsPicked: number, { refusePercent }: { readonly refusePercent: number }): number => gramsPicked * (1 - refusePercent / 100);

/**
 * Whether a bare weight in this line is of the crop as it comes from the bed. 500 g carrots are; 200 g peas are shelled, 1 kg peas in
 * the pod are not. Common practice, no source.
 */
export function weighsWhole(line: ReadLine, food: string, tables: MeasureTables): boolean {
  const said = (role: "ready" | "unready"): boolean => wordsOf(line).some((word) => tables.words.get(word)?.roles.has(role));
  if (said("unready")) return true;
  if (said("ready")) return false;
  return tables.produce.get(food)?.weighed !== "used";
}

/** Every word of a line but its numbers, in lower case; a packed cup says packed. */
export function wordsOf(line: ReadLine): string[] {
  return `${(line.amounts[0]?.unitWords ?? []).join(" ")} ${line.food} ${line.preparation} ${line.comment}`.toLowerCase().split(/[^\p{L}'-]+/u).filter(Boolean);
}
