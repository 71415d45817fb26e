/** Loads closed dishes of a cook day with the lots they became and what they took. */
import { and, eq, inArray, isNull } from "drizzle-orm";
import { batches, lots, movements, recipes } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { Batch } from "#shared/contracts/batches.ts";
import { bothAmounts, type LarderFacts } from "#shared/planning/larder-facts.ts";
import { lotsToday } from "#shared/planning/larder-lots.ts";
import { countedIn } from "./larder.ts";
import { lotWords } from "./larder-words.ts";
import type { BatchRow } from "./counter.ts";

export interface BatchMovement {
  readonly id: string;
  readonly batchId: string | null;
  readonly lotId: string;
  readonly kind: string;
  readonly amount: number;
  readonly countedIn: string;
  readonly lot: typeof lots.$inferSelect;
}

/** Undone movements are no movements. */
export async function movementsOfBatches(tx: Tx, householdId: string, ids: readonly string[]): Promise<BatchMovement[]> {
  if (ids.length === 0) return [];
  return tx
    .select({ id: movements.id, batchId: movements.batchId, lotId: movements.lotId, kind: movements.kind, amount: movements.amount, countedIn: movements.countedIn, lot: lots })
    .from(movements)
    .innerJoin(lots, and(eq(lots.householdId, movements.householdId), eq(lots.id, movements.lotId)))
    .where(and(eq(movements.householdId, householdId), inArray(movements.batchId, [...ids]), isNull(movements.undoneAt)));
}

export async function findBatch(tx: Tx, householdId: string, id: string): Promise<BatchRow | undefined> {
  const [row] = await tx.select().from(batches).where(and(eq(batches.householdId, householdId), eq(batches.id, id)));
  return row;
}

/** As they are on the wire, with their lots as the larder has them today. */
export async function batchWords(tx: Tx, householdId: string, rows: readonly BatchRow[], larder: LarderFacts): Promise<Batch[]> {
  const moved = await movementsOfBatches(tx, householdId, rows.map(({ id }) => id));
  const titles = rows.length === 0 ? [] : await tx.select({ id: recipes.id, title: recipes.title }).from(recipes).where(and(eq(recipes.householdId, householdId), inArray(recipes.id, rows.map(({ recipeId }) => recipeId))));
  const today = new Map(lotsToday(larder).map((one) => [one.lot.id, one]));
  return rows.map((row): Batch => {
    const own = moved.filter(({ batchId }) => batchId === row.id);
    return {
      id: row.id,
      recipeId: row.recipeId,
      title: titles.find(({ id }) => id === row.recipeId)?.title ?? "",
      on: row.on,
      at: new Date(row.at).toISOString(),
      portions: row.portions,
      ...(row.portionGrams === null ? {} : { portionGrams: row.portionGrams }),
      ...(row.weighedGrams === null ? {} : { weighedGrams: row.weighedGrams }),
      lossGrams: row.lossGrams,
      eatenPortions: row.eatenPortions,
      givenPortions: row.givenPortions,
      lots: own.filter(({ kind }) => kind === "put").flatMap(({ lotId }) => (today.has(lotId) ? [lotWords(today.get(lotId) as NonNullable<ReturnType<typeof today.get>>)] : [])),
      took: own.filter(({ kind }) => kind === "take").map(({ lot, amount, countedIn: unit }) => ({
        lotId: lot.id,
        title: lot.title,
        ...(lot.crop === null ? {} : { crop: lot.crop }),
        ...bothAmounts({ countedIn: countedIn(lot, [{ countedIn: unit }]), portionGrams: lot.portionGrams }, amount),
      })),
      undone: row.undoneAt !== null,
    };
  });
}
