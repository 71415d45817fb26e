import { and, asc, eq } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { recipes, tastes } from "#db/schema/index.ts";
import type { NewTaste, Taste } from "#shared/contracts/tastes.ts";

export async function listTastes(tx: Tx, householdId: string): Promise<Taste[]> {
  const rows = await tx
    .select({ recipeId: tastes.recipeId, title: recipes.title, liking: tastes.liking })
    .from(tastes)
    .innerJoin(recipes, and(eq(recipes.householdId, tastes.householdId), eq(recipes.id, tastes.recipeId)))
    .where(eq(tastes.householdId, householdId))
    .orderBy(asc(recipes.title), asc(tastes.recipeId));
  return rows.map((row) => ({ ...row, liking: row.liking as Taste["liking"] }));
}

/** The recipe's title, its row held so that it cannot be taken away before the taste stands; undefined when there is none. */
export async function titleOfRecipe(tx: Tx, householdId: string, recipeId: string): Promise<string | undefined> {
  const [row] = await tx.select({ title: recipes.title }).from(recipes).where(and(eq(recipes.householdId, householdId), eq(recipes.id, recipeId))).for("key share");
  return row?.title;
}

/** True when nobody had said anything of this recipe before. */
export async function writeTaste(tx: Tx, householdId: string, recipeId: string, { liking }: NewTaste): Promise<boolean> {
  const made = await tx.insert(tastes).values({ householdId, recipeId, liking }).onConflictDoNothing().returning({ id: tastes.recipeId });
  if (made.length === 0) await tx.update(tastes).set({ liking }).where(and(eq(tastes.householdId, householdId), eq(tastes.recipeId, recipeId)));
  return made.length > 0;
}

/** False when there was none. */
export async function deleteTaste(tx: Tx, householdId: string, recipeId: string): Promise<boolean> {
  const gone = await tx.delete(tastes).where(and(eq(tastes.householdId, householdId), eq(tastes.recipeId, recipeId))).returning({ id: tastes.recipeId });
  return gone.length > 0;
}
