import { and, asc, eq, gte, inArray } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { households, planLines, recipes } from "#db/schema/index.ts";
import type { RecipeRow } from "../facts/stored-recipe.ts";

export type AgreedRow = typeof planLines.$inferSelect;

/** Only one at a time agrees or takes back in a household; who waits sees what the one before has agreed. */
export async function lockAgreeing(tx: Tx, householdId: string): Promise<void> {
  await tx.select({ id: households.householdId }).from(households).where(eq(households.householdId, householdId)).for("no key update");
}

export const linesFrom = (tx: Tx, householdId: string, week: string): Promise<AgreedRow[]> =>
  tx.select().from(planLines).where(and(eq(planLines.householdId, householdId), gte(planLines.week, week))).orderBy(asc(planLines.week), asc(planLines.recordedAt), asc(planLines.id));

export const linesUnder = (tx: Tx, householdId: string, ids: readonly string[]): Promise<AgreedRow[]> =>
  tx.select().from(planLines).where(and(eq(planLines.householdId, householdId), inArray(planLines.id, [...ids])));

/** Their rows are held, so that none can be taken away before its line stands. */
export const recipesUnder = async (tx: Tx, householdId: string, ids: readonly string[]): Promise<RecipeRow[]> =>
  ids.length === 0 ? [] : tx.select().from(recipes).where(and(eq(recipes.householdId, householdId), inArray(recipes.id, [...new Set(ids)]))).orderBy(asc(recipes.id)).for("key share");

export async function insertLines(tx: Tx, householdId: string, week: string, lines: readonly { readonly id: string; readonly recipeId: string; readonly batches: number }[]): Promise<AgreedRow[]> {
  return lines.length === 0 ? [] : tx.insert(planLines).values(lines.map((line) => ({ householdId, week, ...line }))).returning();
}

export async function deleteWeek(tx: Tx, householdId: string, week: string): Promise<void> {
  await tx.delete(planLines).where(and(eq(planLines.householdId, householdId), eq(planLines.week, week)));
}
