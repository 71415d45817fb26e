import { and, eq, isNull, max, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { cookDayDishes, cookDays, dayMarks, dayPlans, recipes, timers } from "#db/schema/index.ts";
import type { DayRow, MarkRow, PlanRow, TimerRow } from "../facts/counter.ts";

export async function findPlan(tx: Tx, householdId: string, id: string): Promise<PlanRow | undefined> {
  const [row] = await tx.select().from(dayPlans).where(and(eq(dayPlans.householdId, householdId), eq(dayPlans.id, id)));
  return row;
}

export type PlanValues = Omit<typeof dayPlans.$inferInsert, "position" | "householdId" | "cookDayId">;

/** Under the lock of its day, so that no two plans come to stand in one place. */
export async function insertPlan(tx: Tx, { householdId, id: cookDayId }: DayRow, values: PlanValues): Promise<PlanRow | undefined> {
  const [last] = await tx.select({ position: max(dayPlans.position) }).from(dayPlans).where(and(eq(dayPlans.householdId, householdId), eq(dayPlans.cookDayId, cookDayId)));
  const [row] = await tx.insert(dayPlans).values({ ...values, householdId, cookDayId, position: (last?.position ?? 0) + 1 }).onConflictDoNothing().returning();
  return row;
}

/** The row stays, marked. */
export async function undoPlan(tx: Tx, { householdId, id }: PlanRow): Promise<void> {
  await tx.update(dayPlans).set({ undoneAt: sql`now()` }).where(and(eq(dayPlans.householdId, householdId), eq(dayPlans.id, id), isNull(dayPlans.undoneAt)));
}

export async function findMark(tx: Tx, householdId: string, id: string): Promise<MarkRow | undefined> {
  const [row] = await tx.select().from(dayMarks).where(and(eq(dayMarks.householdId, householdId), eq(dayMarks.id, id)));
  return row;
}

export async function insertMark(tx: Tx, values: typeof dayMarks.$inferInsert): Promise<MarkRow | undefined> {
  const [row] = await tx.insert(dayMarks).values(values).onConflictDoNothing().returning();
  return row;
}

/** The row stays, marked. */
export async function undoMark(tx: Tx, { householdId, id }: MarkRow): Promise<void> {
  await tx.update(dayMarks).set({ undoneAt: sql`now()` }).where(and(eq(dayMarks.householdId, householdId), eq(dayMarks.id, id), isNull(dayMarks.undoneAt)));
}

/** Held until the transaction ends. */
export async function lockTimer(tx: Tx, householdId: string, id: string): Promise<TimerRow | undefined> {
  const [row] = await tx.select().from(timers).where(atTimer(householdId, id)).for("update");
  return row;
}

export async function findTimer(tx: Tx, householdId: string, id: string): Promise<TimerRow | undefined> {
  const [row] = await tx.select().from(timers).where(atTimer(householdId, id));
  return row;
}

export async function insertTimer(tx: Tx, values: typeof timers.$inferInsert): Promise<TimerRow | undefined> {
  const [row] = await tx.insert(timers).values(values).onConflictDoNothing().returning();
  return row;
}

export async function updateTimer(tx: Tx, { householdId, id }: TimerRow, values: Partial<typeof timers.$inferInsert>): Promise<TimerRow> {
  const [row] = await tx.update(timers).set({ ...values, version: sql`${timers.version} + 1` }).where(atTimer(householdId, id)).returning();
  return row as TimerRow;
}

export async function deleteTimer(tx: Tx, { householdId, id }: TimerRow): Promise<void> {
  await tx.delete(timers).where(atTimer(householdId, id));
}

export async function cookDayIsThere(tx: Tx, householdId: string, id: string): Promise<boolean> {
  const rows = await tx.select({ id: cookDays.id }).from(cookDays).where(and(eq(cookDays.householdId, householdId), eq(cookDays.id, id))).for("key share");
  return rows.length > 0;
}

/** The recipe's row is held, so that it cannot be taken away before its dish stands. */
export async function recipeIsThere(tx: Tx, householdId: string, id: string): Promise<boolean> {
  const rows = await tx.select({ id: recipes.id }).from(recipes).where(and(eq(recipes.householdId, householdId), eq(recipes.id, id))).for("key share");
  return rows.length > 0;
}

/** One dish more in a day under way; the day is another version of itself. */
export async function addDish(tx: Tx, day: DayRow, recipeId: string, batches: number): Promise<void> {
  const [last] = await tx.select({ position: max(cookDayDishes.position) }).from(cookDayDishes).where(atDishes(day));
  await tx.insert(cookDayDishes).values({ householdId: day.householdId, cookDayId: day.id, position: (last?.position ?? -1) + 1, recipeId, batches });
  await nextVersion(tx, day);
}

export async function takeDishOut(tx: Tx, day: DayRow, recipeId: string): Promise<void> {
  await tx.delete(cookDayDishes).where(and(atDishes(day), eq(cookDayDishes.recipeId, recipeId)));
  await nextVersion(tx, day);
}

const nextVersion = (tx: Tx, { householdId, id }: DayRow) => tx.update(cookDays).set({ version: sql`${cookDays.version} + 1` }).where(and(eq(cookDays.householdId, householdId), eq(cookDays.id, id)));
const atDishes = ({ householdId, id }: DayRow) => and(eq(cookDayDishes.householdId, householdId), eq(cookDayDishes.cookDayId, id));
const atTimer = (householdId: string, id: string) => and(eq(timers.householdId, householdId), eq(timers.id, id));
