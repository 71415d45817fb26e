import { and, asc, eq, inArray } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { cookDayDishes, cookDays, recipes, supplies } from "#db/schema/index.ts";
import type { RecipeRow } from "../facts/stored-recipe.ts";

export async function recipesOf(tx: Tx, ids: readonly string[]): Promise<RecipeRow[]> {
  return ids.length === 0 ? [] : tx.select().from(recipes).where(inArray(recipes.id, [...ids])).orderBy(asc(recipes.title), asc(recipes.id));
}

export const suppliesThere = (tx: Tx): Promise<{ kind: string; amount: number }[]> => tx.select({ kind: supplies.kind, amount: supplies.amount }).from(supplies);

/** Recipes of the dishes of one day. */
export async function dishesOn(tx: Tx, day: string): Promise<string[]> {
  const rows = await tx.selectDistinct({ id: cookDayDishes.recipeId }).from(cookDayDishes).innerJoin(cookDays, and(eq(cookDays.householdId, cookDayDishes.householdId), eq(cookDays.id, cookDayDishes.cookDayId))).where(eq(cookDays.on, day));
  return rows.map(({ id }) => id);
}
