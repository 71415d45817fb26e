/** Loads what is known of a kitchen, in five questions and the household's row, whatever its size. Nothing is computed here. */
import { and, asc, eq, gte } from "drizzle-orm";
import { cookDayDishes, cookDays, planLines, recipes, wishes } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import { isLocalDate, type LocalDate } from "#shared/kernel/local-date.ts";
import { bookEats } from "#shared/planning/book-eats.ts";
import type { KitchenFacts, UpcomingCookDay } from "#shared/planning/facts.ts";
import { systemOf, type House } from "./house.ts";
import { recipeUse } from "./recipe-use.ts";
import type { Reference } from "./reference.ts";

export async function loadKitchen(tx: Tx, house: House, book: Reference, asOf: LocalDate): Promise<KitchenFacts> {
  const recipeRows = await tx.select().from(recipes).orderBy(asc(recipes.title), asc(recipes.id));
  const lines = await tx.select({ id: planLines.id, week: planLines.week, recipeId: planLines.recipeId, batches: planLines.batches }).from(planLines).orderBy(asc(planLines.recordedAt), asc(planLines.id));
  return {
    people: house.people,
    altitudeM: house.altitudeM,
    eats: house.eats ? new Map(house.eats.map(({ crop, gramsPerWeek }) => [crop, gramsPerWeek])) : bookEats(book.eats, house.people),
    eatsFrom: house.eats ? "household" : "book",
    glutGrams: house.glutGrams,
    recipes: recipeRows.map((row) => recipeUse(row, book, systemOf(house))),
    askedFor: await wished(tx, asOf),
    planLines: lines,
    cookDays: await upcoming(tx, asOf),
    preservation: book.preservation,
  };
}

/** What somebody asked for and the day for it is not over. */
async function wished(tx: Tx, asOf: LocalDate): Promise<string[]> {
  const rows = await tx.select({ recipeId: wishes.recipeId, by: wishes.by }).from(wishes);
  return [...new Set(rows.filter(({ by }) => by === null || !isLocalDate(by) || by >= asOf).map(({ recipeId }) => recipeId))];
}

async function upcoming(tx: Tx, asOf: LocalDate): Promise<UpcomingCookDay[]> {
  const days = await tx.select().from(cookDays).where(gte(cookDays.on, asOf)).orderBy(asc(cookDays.on), asc(cookDays.startsAt), asc(cookDays.id));
  const dishes = await tx
    .select({ cookDayId: cookDayDishes.cookDayId, recipeId: cookDayDishes.recipeId, batches: cookDayDishes.batches })
    .from(cookDayDishes)
    .innerJoin(cookDays, and(eq(cookDays.householdId, cookDayDishes.householdId), eq(cookDays.id, cookDayDishes.cookDayId), gte(cookDays.on, asOf)))
    .orderBy(asc(cookDayDishes.cookDayId), asc(cookDayDishes.position));
  return days.map(({ id, on, startsAt, title }) => ({
    id,
    on,
    startsAt,
    title,
    dishes: dishes.filter((dish) => dish.cookDayId === id).map(({ recipeId, batches }) => ({ recipeId, batches })),
  }));
}
