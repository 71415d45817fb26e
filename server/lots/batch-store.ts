import { and, count, eq, inArray, isNull, ne, or, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { batches, lots, movements, places } from "#db/schema/index.ts";
import type { BatchRow } from "../facts/counter.ts";

export async function insertBatch(tx: Tx, values: typeof batches.$inferInsert): Promise<BatchRow | undefined> {
  const [row] = await tx.insert(batches).values(values).onConflictDoNothing().returning();
  return row;
}

export interface PlaceOfKind {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
}

/** Of the places named, those that are there; their rows are held. */
export async function placesNamed(tx: Tx, householdId: string, ids: readonly string[]): Promise<Map<string, PlaceOfKind>> {
  if (ids.length === 0) return new Map();
  const rows = await tx.select({ id: places.id, name: places.name, kind: places.kind }).from(places).where(and(eq(places.householdId, householdId), inArray(places.id, [...ids]))).for("key share");
  return new Map(rows.map((row) => [row.id, row]));
}

/** Of these lots, what else stands that does not belong to the batch, by the lot. */
export async function otherMovements(tx: Tx, { householdId, id }: BatchRow, lotIds: readonly string[]): Promise<{ lotId: string; title: string; others: number }[]> {
  if (lotIds.length === 0) return [];
  const notOfIt = or(isNull(movements.batchId), ne(movements.batchId, id));
  return tx
    .select({ lotId: lots.id, title: lots.title, others: count() })
    .from(movements)
    .innerJoin(lots, and(eq(lots.householdId, movements.householdId), eq(lots.id, movements.lotId)))
    .where(and(eq(movements.householdId, householdId), inArray(movements.lotId, [...lotIds]), isNull(movements.undoneAt), notOfIt))
    .groupBy(lots.id, lots.title);
}

/** Everything that belongs to it is undone with it, and the lots that it became go. */
export async function undoBatch(tx: Tx, { householdId, id }: BatchRow, madeLots: readonly string[]): Promise<void> {
  const undoneAt = sql`now()`;
  await tx.update(movements).set({ undoneAt }).where(and(eq(movements.householdId, householdId), eq(movements.batchId, id), isNull(movements.undoneAt)));
  if (madeLots.length > 0) await tx.delete(lots).where(and(eq(lots.householdId, householdId), inArray(lots.id, [...madeLots])));
  await tx.update(batches).set({ undoneAt }).where(and(eq(batches.householdId, householdId), eq(batches.id, id), isNull(batches.undoneAt)));
}
