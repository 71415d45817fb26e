import { and, asc, count, eq, inArray, isNull, min, ne, or, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { batches, lots, movements, places, recipes } from "#db/schema/index.ts";
import type { NewLot, NewMovement } from "#shared/contracts/lots.ts";
import type { BatchRow } from "../facts/counter.ts";
import { selectMovements, type LotRow, type MovementRow } from "../facts/larder.ts";

export async function findLot(tx: Tx, householdId: string, id: string): Promise<LotRow | undefined> {
  const [row] = await tx.select().from(lots).where(at(householdId, id));
  return row;
}

/** The lot's row is held until the transaction ends, so that two people cannot take the same last portion. */
export async function lockLot(tx: Tx, householdId: string, id: string): Promise<LotRow | undefined> {
  const [row] = await tx.select().from(lots).where(at(householdId, id)).for("update");
  return row;
}

export async function insertLot(tx: Tx, householdId: string, id: string, lot: NewLot): Promise<LotRow | undefined> {
  const [row] = await tx.insert(lots).values({ householdId, id, ...lot }).onConflictDoNothing().returning();
  return row;
}

export async function updateLot(tx: Tx, stored: LotRow, lot: NewLot): Promise<LotRow> {
  const [row] = await tx
    .update(lots)
    .set({ ...NOTHING_SAID, ...lot, version: sql`${lots.version} + 1` })
    .where(at(stored.householdId, stored.id))
    .returning();
  return row as LotRow;
}

export async function deleteLot(tx: Tx, lot: LotRow): Promise<void> {
  await tx.delete(lots).where(at(lot.householdId, lot.id));
}

/** Of the places named, those that are there; their rows are held. */
export async function placesThere(tx: Tx, householdId: string, ids: readonly string[]): Promise<Set<string>> {
  if (ids.length === 0) return new Set();
  const rows = await tx.select({ id: places.id }).from(places).where(and(eq(places.householdId, householdId), inArray(places.id, [...ids]))).for("key share");
  return new Set(rows.map(({ id }) => id));
}

export async function recipeIsThere(tx: Tx, householdId: string, id: string): Promise<boolean> {
  const rows = await tx.select({ id: recipes.id }).from(recipes).where(and(eq(recipes.householdId, householdId), eq(recipes.id, id))).for("key share");
  return rows.length > 0;
}

/** How many movements stand, and the day of the first; null for none. */
export async function firstMovement(tx: Tx, { householdId, id }: LotRow): Promise<{ standing: number; first: string | null }> {
  const standing = and(eq(movements.householdId, householdId), eq(movements.lotId, id), sql`${movements.undoneAt} is null`);
  const [row] = await tx.select({ first: min(movements.on) }).from(movements).where(standing);
  return { standing: await tx.$count(movements, standing), first: row?.first ?? null };
}

/** All of the lot, undone ones too, in the order in which they happened. */
export const movementsOf = (tx: Tx, { householdId, id }: Pick<LotRow, "householdId" | "id">): Promise<MovementRow[]> =>
  selectMovements(tx)
    .where(and(eq(movements.householdId, householdId), eq(movements.lotId, id)))
    .orderBy(asc(movements.on), sql`coalesce(${movements.at}::timestamptz, ${movements.recordedAt})`, asc(movements.id));

export async function findMovement(tx: Tx, householdId: string, id: string): Promise<MovementRow | undefined> {
  const [row] = await selectMovements(tx).where(and(eq(movements.householdId, householdId), eq(movements.id, id)));
  return row;
}

export type MovementValues = Omit<NewMovement, "for"> & { readonly takenFor: string | null; readonly amount: number; readonly countedIn: string; readonly wholeAmount: number | null; readonly batchId: string | null };

export async function insertMovement(tx: Tx, lot: LotRow, id: string, movement: MovementValues): Promise<MovementRow | undefined> {
  const made = await tx.insert(movements).values({ householdId: lot.householdId, id, lotId: lot.id, ...movement }).onConflictDoNothing().returning({ id: movements.id });
  return made.length === 0 ? undefined : findMovement(tx, lot.householdId, id);
}

/** The row stays, marked. */
export async function undoMovement(tx: Tx, { householdId, id }: MovementRow): Promise<void> {
  await tx
    .update(movements)
    .set({ undoneAt: sql`coalesce(${movements.undoneAt}, now())` })
    .where(and(eq(movements.householdId, householdId), eq(movements.id, id)));
}

/** A field that the new body leaves out is forgotten. */
const NOTHING_SAID = { crop: null, recipeId: null, portionGrams: null, portionMl: null, bestUntil: null, note: null };

const at = (householdId: string, id: string) => and(eq(lots.householdId, householdId), eq(lots.id, id));

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
