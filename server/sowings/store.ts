import { and, asc, eq, isNull, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { beds, picks, sightings, sowings } from "#db/schema/index.ts";
import type { NewSowing } from "#shared/contracts/sowings.ts";

export type SowingRow = typeof sowings.$inferSelect;

export function listSowings(tx: Tx, householdId: string, crop: string | undefined): Promise<SowingRow[]> {
  const wanted = and(eq(sowings.householdId, householdId), crop === undefined ? undefined : eq(sowings.crop, crop));
  return tx.select().from(sowings).where(wanted).orderBy(asc(sowings.recordedAt), asc(sowings.id));
}

export async function findSowing(tx: Tx, householdId: string, id: string): Promise<SowingRow | undefined> {
  const [row] = await tx.select().from(sowings).where(at(householdId, id));
  return row;
}

export async function lockSowing(tx: Tx, householdId: string, id: string): Promise<SowingRow | undefined> {
  const [row] = await tx.select().from(sowings).where(at(householdId, id)).for("update");
  return row;
}

/** The bed's row is held, so that it cannot be taken away before the sowing stands in it. */
export async function bedIsThere(tx: Tx, householdId: string, bedId: string): Promise<boolean> {
  const found = await tx.select({ id: beds.id }).from(beds).where(and(eq(beds.householdId, householdId), eq(beds.id, bedId))).for("key share");
  return found.length > 0;
}

/** The earliest day on which anything of it was picked, and on which anything was seen; null for none. */
export async function firstFacts(tx: Tx, householdId: string, id: string): Promise<{ picked: string | null; seen: string | null }> {
  const { rows } = await tx.execute<{ picked: string | null; seen: string | null }>(sql`
    select
      (select min(picked_on)::text from ${picks} where household_id = ${householdId}::uuid and sowing_id = ${id}::uuid and undone_at is null) as picked,
      (select min(seen_on)::text from ${sightings} where household_id = ${householdId}::uuid and sowing_id = ${id}::uuid) as seen`);
  return rows[0] ?? { picked: null, seen: null };
}

export async function insertSowing(tx: Tx, householdId: string, id: string, sowing: NewSowing): Promise<SowingRow | undefined> {
  const [row] = await tx.insert(sowings).values({ householdId, id, ...sowing }).onConflictDoNothing().returning();
  return row;
}

export async function updateSowing(tx: Tx, stored: SowingRow, sowing: NewSowing): Promise<SowingRow> {
  const [row] = await tx
    .update(sowings)
    .set({ ...NOTHING_SAID, ...sowing, version: sql`${sowings.version} + 1` })
    .where(at(stored.householdId, stored.id))
    .returning();
  return row as SowingRow;
}

/** How many picks of it stand; what was undone is not counted. */
export function countPicksOf(tx: Tx, sowing: SowingRow): Promise<number> {
  return tx.$count(picks, and(eq(picks.householdId, sowing.householdId), eq(picks.sowingId, sowing.id), isNull(picks.undoneAt)));
}

/** Its sightings go with it, and its undone picks. */
export async function deleteSowing(tx: Tx, sowing: SowingRow): Promise<void> {
  await tx.delete(sowings).where(at(sowing.householdId, sowing.id));
}

/** A field that the new body leaves out is forgotten. */
const NOTHING_SAID = { variety: null, varietyDays: null, sownOn: null, plantedOutOn: null, rowM: null, plants: null, areaM2: null, standsSince: null, note: null };

const at = (householdId: string, id: string) => and(eq(sowings.householdId, householdId), eq(sowings.id, id));
