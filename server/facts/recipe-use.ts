/** A stored recipe in the words of planning and of the cook day. */
import type { NewRecipe } from "#shared/contracts/recipes.ts";
import { handsOnMinOf, type RecipeStep, type RecipeUse } from "#shared/kernel/recipe.ts";
import type { MeasureSystem } from "#shared/kernel/units.ts";
import type { CookableRecipe } from "#shared/planning/facts.ts";
import type { Ingredient } from "./ingredients.ts";
import type { Reference } from "./reference.ts";
import { recipeOf, type RecipeRow } from "./stored-recipe.ts";

export function readIngredients(recipe: NewRecipe, book: Reference, system: MeasureSystem): Ingredient[] {
  return recipe.ingredients.map((line) => book.readLine(line, system, recipe.measures));
}

export function recipeUse(row: RecipeRow, book: Reference, system: MeasureSystem): RecipeUse {
  return useOf(row.id, recipeOf(row), book, system);
}

export function cookableRecipe(row: RecipeRow, book: Reference, system: MeasureSystem): CookableRecipe {
  const recipe = recipeOf(row);
  return {
    ...useOf(row.id, recipe, book, system),
    steps: recipe.steps as RecipeStep[],
    holds: recipe.holds ?? [],
    limits: (recipe.limits ?? []) as CookableRecipe["limits"],
    ingredientTexts: recipe.ingredients.map(({ text }) => text),
  };
}

export function useOf(id: string, recipe: NewRecipe, book: Reference, system: MeasureSystem): RecipeUse {
  const { title, way, makes, keeps, process } = recipe;
  return { id, title, way, makes, uses: usesOf(readIngredients(recipe, book, system)), ...handsOn(recipe), keeps, process: process ?? null };
}

/** Grams as picked that one batch takes, by crop. A line whose weight is not known takes nothing that could be reckoned with. */
function usesOf(ingredients: readonly Ingredient[]): { crop: string; grams: number }[] {
  const grams = new Map<string, number>();
  for (const line of ingredients) if (line.crop !== undefined && line.grams !== null) grams.set(line.crop, (grams.get(line.crop) ?? 0) + line.grams);
  return [...grams].map(([crop, sum]) => ({ crop, grams: sum }));
}

/** Minutes of hands for the first batch, and for each further one. */
function handsOn({ steps }: Pick<NewRecipe, "steps">): Pick<RecipeUse, "handsOnMin" | "handsOnNextMin"> {
  const handsOnMin = handsOnMinOf(steps, 1);
  return { handsOnMin, handsOnNextMin: handsOnMinOf(steps, 2) - handsOnMin };
}
