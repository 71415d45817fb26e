/** What a recipe for more or for less says. Pure. */
import type { Recipe } from "#shared/contracts/recipes.ts";
import type { Dish, Scaled } from "#shared/contracts/scaling.ts";
import { cropWord } from "#shared/kernel/crop-words.ts";
import { count, made, measured, plain } from "../../format.ts";
import { kitchenNumber, type ScaleFields } from "./scale-form.ts";

/** “Courgette gratin for 12 portions takes 1½ times the amounts.” */
export function scaledSentence(recipe: Recipe, scaled: Scaled, fields: ScaleFields, names: ReadonlyMap<string, string>): string {
  const makes = madeAbout(scaled);
  if (scaled.apart && scaled.batches > 1) return `${recipe.title}: ${count(scaled.batches, "batch", "batches")}, one after the other, make ${makes}.`;
  if (fields.hand !== "") {
    const used = scaled.uses.find(({ crop }) => crop === fields.crop)?.grams ?? 0;
    const left = scaled.leftGrams === null || scaled.leftGrams <= 0 ? "" : `; ${measured(scaled.leftGrams)} are left`;
    return `${measured(used)} of ${cropWord(names.get(fields.crop) ?? fields.crop)} make ${makes}${left}.`;
  }
  if (scaled.batches === 1) return `${recipe.title} makes ${makes}.`;
  return `${recipe.title} for ${makes} takes ${scaled.batches === 2 ? "twice" : `${kitchenNumber(scaled.batches)} times`} the amounts.`;
}

/** “for 12 portions”, over the ingredients. */
export const headOf = (scaled: Scaled): string => (scaled.batches === 1 ? "For one batch" : `For ${madeAbout(scaled)}`);

/** A tenth of a portion is as close as a ladle comes. */
const madeAbout = ({ makes }: Scaled): string => made({ amount: Math.round(makes.amount * 10) / 10, unit: makes.unit });

/** Length and breadth as seen from above, in cm. */
export function sizeOf(dish: Dish): { readonly wideCm: number; readonly highCm: number } {
  if (dish.shape === "round") return { wideCm: dish.acrossCm, highCm: dish.acrossCm };
  if (dish.shape === "square") return { wideCm: dish.sideCm, highCm: dish.sideCm };
  return { wideCm: dish.longCm, highCm: dish.wideCm };
}

/** “24 cm round”, “20 × 34 cm”; “2 of 20 cm round”. */
export function dishWords(dish: Dish): string {
  const { wideCm, highCm } = sizeOf(dish);
  const size = dish.shape === "rectangle" ? `${plain(highCm)} × ${plain(wideCm)}\u00a0cm` : `${plain(wideCm)}\u00a0cm ${dish.shape}`;
  return (dish.tins ?? 1) > 1 ? `${dish.tins} of ${size}` : size;
}

/** Worth a word from 5 per cent on: less is within what a spoon does. Own choice. */
const WORTH_SAYING_PERCENT = 5;

export function errorWords(percent: number | null): string {
  if (percent === null || Math.abs(percent) < WORTH_SAYING_PERCENT) return "";
  return percent > 0 ? "a little over" : "a little under";
}
