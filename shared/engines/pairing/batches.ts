/**
 * How many whole batches of a recipe a week's produce allows, and what they are made of. Grams as picked.
 * Only the main crops decide: an onion or a sprig that a dish takes beside them comes from the store or the shop.
 */
import type { RecipeUse } from "../../kernel/recipe.ts";
import type { RipeCrop } from "./types.ts";

/** Main is what makes up at least this share of the garden produce in a batch; common practice, no source. */
const MAIN_SHARE = 0.25;
/** One and the same dish comes fresh to the table at most so often in a week; common practice, no source. */
const MEALS_A_WEEK = 2;
/** What one cook day can be asked for. */
const MOST_BATCHES = 20;

/** `over`: from what is over. `meal`: one dish of what ripens anyway. `lift`: what is lifted this week goes to the store. `waits`: stands in the ground. */
export type MadeOf = "over" | "meal" | "lift" | "waits";

export interface Allowed {
  readonly batches: number;
  readonly madeOf: MadeOf;
  readonly mains: readonly { readonly ripe: RipeCrop; readonly grams: number }[];
}

/** Null when a main crop is not there or too little for a batch. `loadJars` is what a canner holds at once. */
export function allowedBatches(recipe: RecipeUse, ripe: ReadonlyMap<string, RipeCrop>, loadJars: number): Allowed | null {
  const mains = mainCrops(recipe, ripe);
  if (mains.length === 0) return null;
  const fit = (grams: (crop: RipeCrop) => number): number => Math.min(...mains.map((main) => Math.floor(grams(main.ripe) / main.grams)));

  const mustGo = mains.some((main) => !main.ripe.waits);
  const over = mustGo ? fit((crop) => (crop.waits ? crop.availableGrams : crop.surplusGrams)) : 0;
  if (over >= 1) return { batches: Math.min(over, mostBatches(recipe, loadJars)), madeOf: "over", mains };
  if (fit((crop) => crop.availableGrams) < 1) return null;
  if (recipe.way === "eat" || recipe.way === "cook") return { batches: 1, madeOf: "meal", mains };
  if (mustGo || recipe.way === "give") return null;
  const lifted = fit((crop) => crop.ripensGrams);
  if (recipe.way === "store") return lifted >= 1 ? { batches: Math.min(lifted, mostBatches(recipe, loadJars)), madeOf: "lift", mains } : null;
  return mains.every((main) => main.ripe.ripensGrams > 0) ? { batches: 1, madeOf: "waits", mains } : null;
}

/** Hands-on minutes of so many batches. */
export function handsOnMinFor(recipe: RecipeUse, batches: number): number {
  return recipe.handsOnMin + (batches - 1) * (recipe.handsOnNextMin ?? recipe.handsOnMin);
}

/** A tested process is worked through one canner load at a time; whoever wants a second load plans it as another. */
function mostBatches({ way, process, makes }: RecipeUse, loadJars: number): number {
  if (process !== null) return JAR_UNIT.test(makes.unit) ? Math.max(1, Math.floor(loadJars / makes.amount)) : 1;
  return way === "eat" ? MEALS_A_WEEK : MOST_BATCHES;
}

const JAR_UNIT = /^jars?\b/i;

/** The main crops; none when one of them is not there at all. A whole book of recipes is asked in each of some fifty weeks, so this is plain. */
function mainCrops(recipe: RecipeUse, ripe: ReadonlyMap<string, RipeCrop>): { ripe: RipeCrop; grams: number }[] {
  let whole = 0;
  for (const use of recipe.uses) whole += use.grams;
  const mains: { ripe: RipeCrop; grams: number }[] = [];
  for (const { crop, grams } of recipe.uses) {
    if (grams <= 0 || grams < MAIN_SHARE * whole) continue;
    const found = ripe.get(crop);
    if (!found) return [];
    mains.push({ ripe: found, grams });
  }
  return mains;
}
