import { and, eq, or, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { lots, movements, places } from "#db/schema/index.ts";
import type { NewPlace } from "#shared/contracts/places.ts";

export type PlaceRow = typeof places.$inferSelect;

export async function findPlace(tx: Tx, householdId: string, id: string): Promise<PlaceRow | undefined> {
  const [row] = await tx.select().from(places).where(at(householdId, id));
  return row;
}

export async function lockPlace(tx: Tx, householdId: string, id: string): Promise<PlaceRow | undefined> {
  const [row] = await tx.select().from(places).where(at(householdId, id)).for("update");
  return row;
}

export async function insertPlace(tx: Tx, householdId: string, id: string, place: NewPlace): Promise<PlaceRow | undefined> {
  const [row] = await tx.insert(places).values({ householdId, id, ...place }).onConflictDoNothing().returning();
  return row;
}

export async function updatePlace(tx: Tx, stored: PlaceRow, place: NewPlace): Promise<PlaceRow> {
  const [row] = await tx
    .update(places)
    .set({ litres: null, ...place, version: sql`${places.version} + 1` })
    .where(at(stored.householdId, stored.id))
    .returning();
  return row as PlaceRow;
}

/** Lots that were ever put here, and those of which something was moved, taken or counted here. */
export async function lotsNaming(tx: Tx, { householdId, id }: PlaceRow): Promise<number> {
  const home = await tx.select({ id: lots.id }).from(lots).where(and(eq(lots.householdId, householdId), eq(lots.placeId, id)));
  const moved = await tx
    .selectDistinct({ id: movements.lotId })
    .from(movements)
    .where(and(eq(movements.householdId, householdId), or(eq(movements.placeId, id), eq(movements.toPlaceId, id))));
  return new Set([...home, ...moved].map((lot) => lot.id)).size;
}

export async function deletePlace(tx: Tx, place: PlaceRow): Promise<void> {
  await tx.delete(places).where(at(place.householdId, place.id));
}

const at = (householdId: string, id: string) => and(eq(places.householdId, householdId), eq(places.id, id));
