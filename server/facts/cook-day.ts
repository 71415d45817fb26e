/** Loads a cook day with its recipes in two questions. */
import { and, asc, eq } from "drizzle-orm";
import { cookDayDishes, cookDays, recipes } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { CookDayFacts } from "#shared/planning/facts.ts";
import { systemOf, type House } from "./house.ts";
import { cookableRecipe } from "./recipe-use.ts";
import type { Reference } from "./reference.ts";

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
  return { startsAt, endsBy, cooks, kitchen, unavailable, dishes: dishes.map(({ batches, recipe }) => ({ batches, recipe: cookableRecipe(recipe, book, systemOf(house)) })) };
}
