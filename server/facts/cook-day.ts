/** Loads a cook day with its recipes in two questions, and in a third what those take from other recipes. */
import { and, asc, eq, inArray } from "drizzle-orm";
import { cookDayDishes, cookDays, recipes } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { CookDayFacts, Part } from "#shared/planning/facts.ts";
import { storeWords } from "#shared/planning/larder-overview.ts";
import { systemOf, type House } from "./house.ts";
import { loadLarder } from "./larder.ts";
import { cookableRecipe } from "./recipe-use.ts";
import type { Reference } from "./reference.ts";
import { partsOf, recipeOf } from "./stored-recipe.ts";

export async function loadCookDayFacts(tx: Tx, house: House, id: string, book: Reference): Promise<CookDayFacts | undefined> {
  const { householdId } = house;
  const [day] = await tx.select().from(cookDays).where(and(eq(cookDays.householdId, householdId), eq(cookDays.id, id)));
  if (!day) return undefined;
  const dishes = await tx
    .select({ batches: cookDayDishes.batches, recipe: recipes })
    .from(cookDayDishes)
    .innerJoin(recipes, and(eq(recipes.householdId, cookDayDishes.householdId), eq(recipes.id, cookDayDishes.recipeId)))
    .where(and(eq(cookDayDishes.householdId, householdId), eq(cookDayDishes.cookDayId, id)))
    .orderBy(asc(cookDayDishes.position));
  const { startsAt, endsBy, cooks, kitchen, unavailable } = day;
  const partIds = new Map(dishes.map(({ recipe }) => [recipe.id, partsOf(recipeOf(recipe))]));
  const titles = await titlesOf(tx, householdId, [...partIds.values()].flat());
  // what will still be good on the day itself
  const store = titles.size === 0 ? new Map<string, string>() : storeWords(await loadLarder(tx, book, day.on));
  const parts = (id: string) =>
    (partIds.get(id) ?? []).flatMap((part): Part[] => {
      const [title, inStore] = [titles.get(part), store.get(part)];
      return title === undefined ? [] : [{ id: part, title, ...(inStore === undefined ? {} : { inStore }) }];
    });
  return { startsAt, endsBy, cooks, kitchen, unavailable, dishes: dishes.map(({ batches, recipe }) => ({ batches, recipe: { ...cookableRecipe(recipe, book, systemOf(house)), parts: parts(recipe.id) } })) };
}

/** One recipe as a dish of a day. */
export async function loadDish(tx: Tx, house: House, recipeId: string, batches: number, book: Reference): Promise<CookDayFacts["dishes"][number] | undefined> {
  const [row] = await tx.select().from(recipes).where(and(eq(recipes.householdId, house.householdId), eq(recipes.id, recipeId))).for("key share");
  return row && { batches, recipe: cookableRecipe(row, book, systemOf(house)) };
}

async function titlesOf(tx: Tx, householdId: string, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await tx.select({ id: recipes.id, title: recipes.title }).from(recipes).where(and(eq(recipes.householdId, householdId), inArray(recipes.id, [...ids])));
  return new Map(rows.map(({ id, title }) => [id, title]));
}
