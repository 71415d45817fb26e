import { and, asc, eq, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { supplies } from "#db/schema/index.ts";
import type { NewSupply } from "#shared/contracts/supplies.ts";

export type SupplyRow = typeof supplies.$inferSelect;

export const listSupplies = (tx: Tx, householdId: string): Promise<SupplyRow[]> =>
  tx.select().from(supplies).where(eq(supplies.householdId, householdId)).orderBy(asc(supplies.kind), asc(supplies.name), asc(supplies.bestUntil), asc(supplies.id));

export async function findSupply(tx: Tx, householdId: string, id: string): Promise<SupplyRow | undefined> {
  const [row] = await tx.select().from(supplies).where(at(householdId, id));
  return row;
}

export async function lockSupply(tx: Tx, householdId: string, id: string): Promise<SupplyRow | undefined> {
  const [row] = await tx.select().from(supplies).where(at(householdId, id)).for("update");
  return row;
}

export async function insertSupply(tx: Tx, householdId: string, id: string, supply: NewSupply): Promise<SupplyRow | undefined> {
  const [row] = await tx.insert(supplies).values({ householdId, id, ...supply }).onConflictDoNothing().returning();
  return row;
}

export async function updateSupply(tx: Tx, stored: SupplyRow, supply: NewSupply): Promise<SupplyRow> {
  const [row] = await tx
    .update(supplies)
    .set({ holdsMl: null, bestUntil: null, note: null, ...supply, version: sql`${supplies.version} + 1` })
    .where(at(stored.householdId, stored.id))
    .returning();
  return row as SupplyRow;
}

export async function deleteSupply(tx: Tx, stored: SupplyRow): Promise<void> {
  await tx.delete(supplies).where(at(stored.householdId, stored.id));
}

const at = (householdId: string, id: string) => and(eq(supplies.householdId, householdId), eq(supplies.id, id));
