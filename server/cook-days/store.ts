import { and, asc, eq, inArray, isNull, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { batches, cookDayDishes, cookDays, dayMarks, planLines, recipes } from "#db/schema/index.ts";
import type { NewCookDay } from "#shared/contracts/cook-days.ts";

type DayRow = typeof cookDays.$inferSelect;

export interface Dish {
  readonly recipeId: string;
  readonly title: string;
  readonly batches: number;
}

export interface StoredDay extends DayRow {
  readonly dishes: readonly Dish[];
}

export async function listCookDays(tx: Tx, householdId: string): Promise<StoredDay[]> {
  const days = await tx.select().from(cookDays).where(eq(cookDays.householdId, householdId)).orderBy(asc(cookDays.on), asc(cookDays.startsAt), asc(cookDays.id));
  const dishes = await dishesWhere(tx, eq(cookDayDishes.householdId, householdId));
  return days.map((day) => ({ ...day, dishes: dishes.filter((dish) => dish.cookDayId === day.id).map(bare) }));
}

export async function findCookDay(tx: Tx, householdId: string, id: string): Promise<StoredDay | undefined> {
  const [day] = await tx.select().from(cookDays).where(at(householdId, id));
  return day && withDishes(tx, day);
}

export async function lockCookDay(tx: Tx, householdId: string, id: string): Promise<StoredDay | undefined> {
  const [day] = await tx.select().from(cookDays).where(at(householdId, id)).for("update");
  return day && withDishes(tx, day);
}

/** Which of these recipes are there; their rows are held. */
export async function recipesThere(tx: Tx, householdId: string, ids: readonly string[]): Promise<Set<string>> {
  if (ids.length === 0) return new Set();
  const rows = await tx.select({ id: recipes.id }).from(recipes).where(and(eq(recipes.householdId, householdId), inArray(recipes.id, [...ids]))).for("key share");
  return new Set(rows.map((row) => row.id));
}

export async function insertCookDay(tx: Tx, householdId: string, id: string, day: NewCookDay): Promise<StoredDay | undefined> {
  const [row] = await tx.insert(cookDays).values({ householdId, id, ...columnsOf(day) }).onConflictDoNothing().returning();
  if (!row) return undefined;
  await insertDishes(tx, row, day);
  return withDishes(tx, row);
}

export async function updateCookDay(tx: Tx, stored: StoredDay, day: NewCookDay): Promise<StoredDay> {
  const { householdId, id } = stored;
  const [row] = await tx.update(cookDays).set({ ...columnsOf(day), version: sql`${cookDays.version} + 1` }).where(at(householdId, id)).returning();
  await tx.delete(cookDayDishes).where(and(eq(cookDayDishes.householdId, householdId), eq(cookDayDishes.cookDayId, id)));
  await insertDishes(tx, row as DayRow, day);
  return withDishes(tx, row as DayRow);
}

export async function deleteCookDay(tx: Tx, { householdId, id }: StoredDay): Promise<void> {
  await tx.delete(cookDays).where(at(householdId, id));
}

/** Ways chosen for a week, by recipe. */
export async function linesOfWeek(tx: Tx, householdId: string, week: string): Promise<{ recipeId: string; batches: number }[]> {
  const rows = await tx
    .select({ recipeId: planLines.recipeId, batches: sql<number>`sum(${planLines.batches})::int` })
    .from(planLines)
    .where(and(eq(planLines.householdId, householdId), eq(planLines.week, week)))
    .groupBy(planLines.recipeId)
    .orderBy(asc(planLines.recipeId));
  return rows;
}

export async function hasBegun(tx: Tx, { householdId, id }: StoredDay): Promise<boolean> {
  const begun = and(eq(dayMarks.householdId, householdId), eq(dayMarks.cookDayId, id), eq(dayMarks.kind, "begun"), isNull(dayMarks.undoneAt));
  return (await tx.$count(dayMarks, begun)) > 0;
}

/** Undone ones too: their movements name them. */
export async function hasBatches(tx: Tx, { householdId, id }: StoredDay): Promise<boolean> {
  return (await tx.$count(batches, and(eq(batches.householdId, householdId), eq(batches.cookDayId, id)))) > 0;
}

/** A field that the body leaves out is forgotten. */
function columnsOf({ on, startsAt, endsBy, cooks, kitchen, unavailable, title }: NewCookDay) {
  return { on, startsAt, endsBy: endsBy ?? null, cooks, kitchen, unavailable: unavailable ?? [], title: title ?? null };
}

async function insertDishes(tx: Tx, { householdId, id: cookDayId }: DayRow, { dishes }: NewCookDay): Promise<void> {
  if (dishes.length > 0) await tx.insert(cookDayDishes).values(dishes.map((dish, position) => ({ householdId, cookDayId, position, ...dish })));
}

async function withDishes(tx: Tx, day: DayRow): Promise<StoredDay> {
  const dishes = await dishesWhere(tx, and(eq(cookDayDishes.householdId, day.householdId), eq(cookDayDishes.cookDayId, day.id)));
  return { ...day, dishes: dishes.map(bare) };
}

const dishesWhere = (tx: Tx, wanted: ReturnType<typeof and>) =>
  tx
    .select({ cookDayId: cookDayDishes.cookDayId, recipeId: cookDayDishes.recipeId, title: recipes.title, batches: cookDayDishes.batches })
    .from(cookDayDishes)
    .innerJoin(recipes, and(eq(recipes.householdId, cookDayDishes.householdId), eq(recipes.id, cookDayDishes.recipeId)))
    .where(wanted)
    .orderBy(asc(cookDayDishes.cookDayId), asc(cookDayDishes.position));

const bare = ({ recipeId, title, batches }: Dish): Dish => ({ recipeId, title, batches });

const at = (householdId: string, id: string) => and(eq(cookDays.householdId, householdId), eq(cookDays.id, id));
