import { and, asc, eq, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { recipes, stockTargets } from "#db/schema/index.ts";
import type { NewStockTarget } from "#shared/contracts/stock-targets.ts";

export type TargetRow = typeof stockTargets.$inferSelect;
export type TargetOfRecipe = TargetRow & { readonly title: string };

export const listTargets = (tx: Tx, householdId: string): Promise<TargetOfRecipe[]> =>
  withTitle(tx).where(eq(stockTargets.householdId, householdId)).orderBy(asc(stockTargets.by), asc(stockTargets.id)).then(flat);

export async function findTarget(tx: Tx, householdId: string, id: string): Promise<TargetOfRecipe | undefined> {
  return flat(await withTitle(tx).where(at(householdId, id)))[0];
}

export async function lockTarget(tx: Tx, householdId: string, id: string): Promise<TargetRow | undefined> {
  const [row] = await tx.select().from(stockTargets).where(at(householdId, id)).for("update");
  return row;
}

export async function titlesOf(tx: Tx, householdId: string): Promise<Map<string, string>> {
  const rows = await tx.select({ id: recipes.id, title: recipes.title }).from(recipes).where(eq(recipes.householdId, householdId));
  return new Map(rows.map(({ id, title }) => [id, title]));
}

/** The recipe's row is held, so that it cannot be taken away before the target stands. */
export async function recipeIsThere(tx: Tx, householdId: string, id: string): Promise<boolean> {
  const rows = await tx.select({ id: recipes.id }).from(recipes).where(and(eq(recipes.householdId, householdId), eq(recipes.id, id))).for("key share");
  return rows.length > 0;
}

export async function insertTarget(tx: Tx, householdId: string, id: string, target: NewStockTarget): Promise<TargetRow | undefined> {
  const [row] = await tx.insert(stockTargets).values({ householdId, id, ...target }).onConflictDoNothing().returning();
  return row;
}

export async function updateTarget(tx: Tx, stored: TargetRow, target: NewStockTarget): Promise<TargetRow> {
  const [row] = await tx
    .update(stockTargets)
    .set({ ...target, version: sql`${stockTargets.version} + 1` })
    .where(at(stored.householdId, stored.id))
    .returning();
  return row as TargetRow;
}

export async function deleteTarget(tx: Tx, stored: TargetRow): Promise<void> {
  await tx.delete(stockTargets).where(at(stored.householdId, stored.id));
}

const withTitle = (tx: Tx) =>
  tx
    .select({ target: stockTargets, title: recipes.title })
    .from(stockTargets)
    .innerJoin(recipes, and(eq(recipes.householdId, stockTargets.householdId), eq(recipes.id, stockTargets.recipeId)))
    .$dynamic();

const flat = (rows: readonly { target: TargetRow; title: string }[]): TargetOfRecipe[] => rows.map(({ target, title }) => ({ ...target, title }));

const at = (householdId: string, id: string) => and(eq(stockTargets.householdId, householdId), eq(stockTargets.id, id));
