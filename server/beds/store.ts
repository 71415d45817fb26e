import { and, asc, eq, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { beds, sowings } from "#db/schema/index.ts";
import type { NewBed } from "#shared/contracts/beds.ts";

export type BedRow = typeof beds.$inferSelect;

export const listBeds = (tx: Tx): Promise<BedRow[]> => tx.select().from(beds).orderBy(asc(beds.name), asc(beds.id));

export async function findBed(tx: Tx, householdId: string, id: string): Promise<BedRow | undefined> {
  const [row] = await tx.select().from(beds).where(at(householdId, id));
  return row;
}

export async function lockBed(tx: Tx, householdId: string, id: string): Promise<BedRow | undefined> {
  const [row] = await tx.select().from(beds).where(at(householdId, id)).for("update");
  return row;
}

export async function insertBed(tx: Tx, householdId: string, id: string, bed: NewBed): Promise<BedRow | undefined> {
  const [row] = await tx.insert(beds).values({ householdId, id, ...bed }).onConflictDoNothing().returning();
  return row;
}

export async function updateBed(tx: Tx, stored: BedRow, bed: NewBed): Promise<BedRow> {
  const [row] = await tx.update(beds).set({ ...bed, version: sql`${beds.version} + 1` }).where(at(stored.householdId, stored.id)).returning();
  return row as BedRow;
}

export async function countSowingsIn(tx: Tx, bed: BedRow): Promise<number> {
  return tx.$count(sowings, and(eq(sowings.householdId, bed.householdId), eq(sowings.bedId, bed.id)));
}

export async function deleteBed(tx: Tx, bed: BedRow): Promise<void> {
  await tx.delete(beds).where(at(bed.householdId, bed.id));
}

const at = (householdId: string, id: string) => and(eq(beds.householdId, householdId), eq(beds.id, id));
