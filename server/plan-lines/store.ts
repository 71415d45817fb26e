import { and, asc, eq, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { planLines, recipes } from "#db/schema/index.ts";
import type { NewPlanLine } from "#shared/contracts/plan-lines.ts";
import type { RecipeRow } from "../facts/stored-recipe.ts";

export type PlanLineRow = typeof planLines.$inferSelect;
export type LineOfRecipe = PlanLineRow & { readonly recipe: RecipeRow };

export async function listPlanLines(tx: Tx, householdId: string, week: string | undefined): Promise<LineOfRecipe[]> {
  const wanted = and(eq(planLines.householdId, householdId), week === undefined ? undefined : eq(planLines.week, week));
  return flat(await withRecipe(tx).where(wanted).orderBy(asc(planLines.week), asc(planLines.recordedAt), asc(planLines.id)));
}

export async function findPlanLine(tx: Tx, householdId: string, id: string): Promise<LineOfRecipe | undefined> {
  return flat(await withRecipe(tx).where(and(eq(planLines.householdId, householdId), eq(planLines.id, id))))[0];
}

export async function lockPlanLine(tx: Tx, householdId: string, id: string): Promise<PlanLineRow | undefined> {
  const [row] = await tx.select().from(planLines).where(at(householdId, id)).for("update");
  return row;
}

/** The recipe's row is held, so that it cannot be taken away before the line stands. */
export async function recipeIsThere(tx: Tx, householdId: string, recipeId: string): Promise<boolean> {
  const rows = await tx.select({ id: recipes.id }).from(recipes).where(and(eq(recipes.householdId, householdId), eq(recipes.id, recipeId))).for("key share");
  return rows.length > 0;
}

export async function insertPlanLine(tx: Tx, householdId: string, id: string, line: NewPlanLine): Promise<PlanLineRow | undefined> {
  const [row] = await tx.insert(planLines).values({ householdId, id, ...line }).onConflictDoNothing().returning();
  return row;
}

export async function updatePlanLine(tx: Tx, stored: PlanLineRow, line: NewPlanLine): Promise<PlanLineRow> {
  const [row] = await tx.update(planLines).set({ ...line, version: sql`${planLines.version} + 1` }).where(at(stored.householdId, stored.id)).returning();
  return row as PlanLineRow;
}

export async function deletePlanLine(tx: Tx, stored: PlanLineRow): Promise<void> {
  await tx.delete(planLines).where(at(stored.householdId, stored.id));
}

const withRecipe = (tx: Tx) =>
  tx
    .select({ line: planLines, recipe: recipes })
    .from(planLines)
    .innerJoin(recipes, and(eq(recipes.householdId, planLines.householdId), eq(recipes.id, planLines.recipeId)))
    .$dynamic();

const flat = (rows: readonly { line: PlanLineRow; recipe: RecipeRow }[]): LineOfRecipe[] => rows.map(({ line, recipe }) => ({ ...line, recipe }));

const at = (householdId: string, id: string) => and(eq(planLines.householdId, householdId), eq(planLines.id, id));
