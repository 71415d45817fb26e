import { and, asc, eq, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { households, sightings, sowings } from "#db/schema/index.ts";
import type { NewSighting } from "#shared/contracts/sightings.ts";

export type SightingRow = typeof sightings.$inferSelect;

/** When the sowing began, with the household's zone; undefined when there is no such sowing. */
export async function sowingSeen(tx: Tx, householdId: string, sowingId: string) {
  const [row] = await tx
    .select({ sownOn: sowings.sownOn, plantedOutOn: sowings.plantedOutOn, standsSince: sowings.standsSince, zone: households.zone })
    .from(sowings)
    .innerJoin(households, eq(households.householdId, sowings.householdId))
    .where(and(eq(sowings.householdId, householdId), eq(sowings.id, sowingId)))
    .for("key share", { of: sowings });
  return row;
}

export async function sowingIsThere(tx: Tx, householdId: string, sowingId: string): Promise<boolean> {
  return (await tx.$count(sowings, and(eq(sowings.householdId, householdId), eq(sowings.id, sowingId)))) > 0;
}

export const listSightings = (tx: Tx, householdId: string, sowingId: string): Promise<SightingRow[]> =>
  tx
    .select()
    .from(sightings)
    .where(and(eq(sightings.householdId, householdId), eq(sightings.sowingId, sowingId)))
    .orderBy(asc(sightings.seenOn), asc(sightings.recordedAt), asc(sightings.id));

export async function findSighting(tx: Tx, householdId: string, id: string): Promise<SightingRow | undefined> {
  const [row] = await tx.select().from(sightings).where(at(householdId, id));
  return row;
}

export async function lockSighting(tx: Tx, householdId: string, id: string): Promise<SightingRow | undefined> {
  const [row] = await tx.select().from(sightings).where(at(householdId, id)).for("update");
  return row;
}

export async function insertSighting(tx: Tx, householdId: string, sowingId: string, id: string, body: NewSighting): Promise<SightingRow | undefined> {
  const [row] = await tx.insert(sightings).values({ householdId, id, sowingId, ...body }).onConflictDoNothing().returning();
  return row;
}

export async function updateSighting(tx: Tx, stored: SightingRow, body: NewSighting): Promise<SightingRow> {
  const [row] = await tx.update(sightings).set({ ...body, version: sql`${sightings.version} + 1` }).where(at(stored.householdId, stored.id)).returning();
  return row as SightingRow;
}

export async function deleteSighting(tx: Tx, stored: SightingRow): Promise<void> {
  await tx.delete(sightings).where(at(stored.householdId, stored.id));
}

const at = (householdId: string, id: string) => and(eq(sightings.householdId, householdId), eq(sightings.id, id));
