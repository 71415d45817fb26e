/** By recipe: what it takes from other recipes, and what of that is in store on a day. Asked for only where there are such recipes. */
import { and, asc, eq } from "drizzle-orm";
import { recipeParts, recipes } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { Part } from "#shared/planning/facts.ts";
import { storeWords } from "#shared/planning/larder-overview.ts";
import { loadLarder } from "./larder.ts";
import type { Reference } from "./reference.ts";

export async function loadRecipeParts(tx: Tx, householdId: string, book: Reference, day: LocalDate): Promise<Map<string, Part[]>> {
  const rows = await tx
    .select({ of: recipeParts.recipeId, id: recipeParts.partId, title: recipes.title })
    .from(recipeParts)
    .innerJoin(recipes, and(eq(recipes.householdId, recipeParts.householdId), eq(recipes.id, recipeParts.partId)))
    .where(eq(recipeParts.householdId, householdId))
    .orderBy(asc(recipeParts.recipeId), asc(recipes.title));
  const store = rows.length === 0 ? new Map<string, string>() : storeWords(await loadLarder(tx, book, day));
  const parts = new Map<string, Part[]>();
  for (const { of, id, title } of rows) {
    const inStore = store.get(id);
    parts.set(of, [...(parts.get(of) ?? []), { id, title, ...(inStore === undefined ? {} : { inStore }) }]);
  }
  return parts;
}
