/** A stored recipe in the words of planning and of the cook day. */
import type { NewRecipe, Recipe } from "#shared/contracts/recipes.ts";
import type { Limit, RecipeStep, RecipeUse } from "#shared/kernel/recipe.ts";
import type { CookableRecipe } from "#shared/planning/facts.ts";
import type { Reference } from "./reference.ts";
import { recipeOf, type RecipeRow } from "./stored-recipe.ts";

type Ingredient = Recipe["ingredients"][number];

/** Each line as read, in the order of the recipe. */
export function readIngredients(recipe: NewRecipe, _book: Reference): Ingredient[] {
  return recipe.ingredients.map(({ text, crop, food, madeBy }) => ({
    text,
    ...(crop === undefined ? {} : { crop }),
    ...(food === undefined ? {} : { food }),
    ...(madeBy === undefined ? {} : { madeBy }),
    grams: null,
    read: null,
    byWeight: null,
    byMeasure: null,
  }));
}

export function recipeUse(row: RecipeRow, book: Reference): RecipeUse {
  return useOf(row.id, recipeOf(row), book);
}

export function cookableRecipe(row: RecipeRow, book: Reference): CookableRecipe {
  const recipe = recipeOf(row);
  return {
    ...useOf(row.id, recipe, book),
    steps: recipe.steps as RecipeStep[],
    holds: recipe.holds ?? [],
    limits: recipe.limits as Limit[] ?? [],
    ingredientTexts: recipe.ingredients.map(({ text }) => text),
  };
}

export function useOf(id: string, recipe: NewRecipe, book: Reference): RecipeUse {
  const { title, way, makes, keeps, process } = recipe;
  return { id, title, way, makes, uses: usesOf(readIngredients(recipe, book)), handsOnMin: handsOnMin(recipe), keeps, process: process ?? null };
}

/** Grams as picked that one batch takes, by crop. A line whose weight is not known takes nothing that could be reckoned with. */
export function usesOf(ingredients: readonly Ingredient[]): { crop: string; grams: number }[] {
  const grams = new Map<string, number>();
  for (const line of ingredients) if (line.crop !== undefined && line.grams !== null) grams.set(line.crop, (grams.get(line.crop) ?? 0) + line.grams);
  return [...grams].map(([crop, sum]) => ({ crop, grams: sum }));
}

/** Minutes of work in one batch; a step that comes in loads is done once for each. */
export function handsOnMin({ steps }: Pick<NewRecipe, "steps">): number {
  return steps.reduce((sum, { handsOnMin: minutes, loads }) => sum + minutes * (loads ? Math.ceil(loads.of / loads.holds) : 1), 0);
}
