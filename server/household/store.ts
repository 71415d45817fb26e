import { eq, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { households } from "#db/schema/index.ts";
import type { NewHousehold } from "#shared/contracts/household.ts";

export type HouseholdRow = typeof households.$inferSelect;

export async function findHousehold(tx: Tx, householdId: string): Promise<HouseholdRow> {
  const [row] = await tx.select().from(households).where(eq(households.householdId, householdId));
  return there(row);
}

/** Held against other edits, while rows that refer to it may still be written: whoever wrote one holds the household's stamps, which an edit needs. */
export async function lockHousehold(tx: Tx, householdId: string): Promise<HouseholdRow> {
  const [row] = await tx.select().from(households).where(eq(households.householdId, householdId)).for("no key update");
  return there(row);
}

/** What is left out of the body goes back to what it starts with. */
export async function updateHousehold(tx: Tx, householdId: string, body: NewHousehold, placed: boolean): Promise<HouseholdRow> {
  const [row] = await tx
    .update(households)
    .set({
      ...body,
      eats: body.eats ?? null,
      kitchen: body.kitchen ?? null,
      kitchenMinPerWeek: body.kitchenMinPerWeek ?? null,
      glutGrams: body.glutGrams ?? sql`default`,
      cooks: body.cooks ?? sql`default`,
      away: body.away ?? sql`default`,
      avoids: body.avoids ?? sql`default`,
      placed,
      version: sql`${households.version} + 1`,
    })
    .where(eq(households.householdId, householdId))
    .returning();
  return there(row);
}

function there(row: HouseholdRow | undefined): HouseholdRow {
  // the household is made before the service listens
  if (!row) throw new Error("the household is not set up");
  return row;
}
