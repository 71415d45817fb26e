/** Where in a recipe the heat ends, and whether what comes of it goes into the cold. */
import type { Hold, Keeping, RecipeStep } from "../kernel/recipe.ts";

/** The last step on a burner, in the oven or in something that heats by itself, in the order the recipe is written; undefined where nothing is heated. */
export function lastHotStep({ steps, holds }: { readonly steps: readonly RecipeStep[]; readonly holds: readonly Hold[] }): string | undefined {
  const onBurner = new Set(holds.filter((hold) => hold.what === "burners").flatMap((hold) => [hold.from, hold.to]));
  return steps.filter((step) => step.needs.oven || (step.needs.burners ?? 0) > 0 || HEATS.test(step.needs.appliance ?? "") || onBurner.has(step.id)).at(-1)?.id;
}

/** Of things asked for by name, those that heat (common practice, no source). */
const HEATS = /pot|pan|skillet|steamer|canner|cooker|fryer|grill|kettle|oven|boiler/i;

export const goesCold = ({ keeps }: { readonly keeps: readonly Keeping[] }): boolean => keeps.some((keep) => keep.place === "fridge" || keep.place === "freezer");
