import { and, asc, eq, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { recipes, wishes } from "#db/schema/index.ts";
import type { NewWish } from "#shared/contracts/wishes.ts";

export type WishRow = typeof wishes.$inferSelect;
export type WishOfRecipe = WishRow & { readonly title: string };

export const listWishes = (tx: Tx, householdId: string): Promise<WishOfRecipe[]> =>
  withTitle(tx).where(eq(wishes.householdId, householdId)).orderBy(asc(wishes.recordedAt), asc(wishes.id)).then(flat);

export async function findWish(tx: Tx, householdId: string, id: string): Promise<WishOfRecipe | undefined> {
  return flat(await withTitle(tx).where(at(householdId, id)))[0];
}

export async function lockWish(tx: Tx, householdId: string, id: string): Promise<WishRow | undefined> {
  const [row] = await tx.select().from(wishes).where(at(householdId, id)).for("update");
  return row;
}

/** The recipe's row is held, so that it cannot be taken away before the wish stands. */
export async function recipeIsThere(tx: Tx, householdId: string, id: string): Promise<boolean> {
  const rows = await tx.select({ id: recipes.id }).from(recipes).where(and(eq(recipes.householdId, householdId), eq(recipes.id, id))).for("key share");
  return rows.length > 0;
}

export async function insertWish(tx: Tx, householdId: string, id: string, wish: NewWish): Promise<WishRow | undefined> {
  const [row] = await tx.insert(wishes).values({ householdId, id, ...wish }).onConflictDoNothing().returning();
  return row;
}

export async function updateWish(tx: Tx, stored: WishRow, wish: NewWish): Promise<WishRow> {
  const [row] = await tx
    .update(wishes)
    .set({ by: null, from: null, ...wish, version: sql`${wishes.version} + 1` })
    .where(at(stored.householdId, stored.id))
    .returning();
  return row as WishRow;
}

export async function deleteWish(tx: Tx, stored: WishRow): Promise<void> {
  await tx.delete(wishes).where(at(stored.householdId, stored.id));
}

const withTitle = (tx: Tx) =>
  tx
    .select({ wish: wishes, title: recipes.title })
    .from(wishes)
    .innerJoin(recipes, and(eq(recipes.householdId, wishes.householdId), eq(recipes.id, wishes.recipeId)))
    .$dynamic();

const flat = (rows: readonly { wish: WishRow; title: string }[]): WishOfRecipe[] => rows.map(({ wish, title }) => ({ ...wish, title }));

const at = (householdId: string, id: string) => and(eq(wishes.householdId, householdId), eq(wishes.id, id));
