/** Between a recipe as people write it and the row that holds it: what it is found by stands in columns, the rest in the body. */
import { recipes } from "#db/schema/index.ts";
import type { NewRecipe } from "#shared/contracts/recipes.ts";

export type RecipeRow = typeof recipes.$inferSelect;

type Columns = Pick<typeof recipes.$inferInsert, "title" | "way" | "makesAmount" | "makesUnit" | "process" | "body">;

export function columnsOf(recipe: NewRecipe): Columns {
  const { title, way, makes, process, ...body } = recipe;
  return { title, way, makesAmount: makes.amount, makesUnit: makes.unit, process: process ?? null, body };
}

/** The body that would have stored this row. Was checked by the contract on its way in, and by the seed for the book's own. */
export function recipeOf(row: RecipeRow): NewRecipe {
  return {
    ...(row.body as Omit<NewRecipe, "title" | "way" | "makes" | "process">),
    title: row.title,
    way: row.way as NewRecipe["way"],
    makes: { amount: row.makesAmount, unit: row.makesUnit },
    process: row.process ?? undefined,
  };
}

/** Recipes that this one takes something from, each once. */
export function partsOf(recipe: NewRecipe): string[] {
  return [...new Set(recipe.ingredients.flatMap(({ madeBy }) => (madeBy === undefined ? [] : [madeBy])))];
}
