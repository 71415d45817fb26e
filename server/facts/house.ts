/** The household's own row: where it lies, what day it is there, who eats what. */
import { eq } from "drizzle-orm";
import { households } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { MeasureSystem } from "#shared/kernel/units.ts";
import type { Clock } from "../clock.ts";

export type House = typeof households.$inferSelect;

export async function loadHouse(tx: Tx, householdId: string): Promise<House> {
  const [row] = await tx.select().from(households).where(eq(households.householdId, householdId));
  // the household is made before the service listens
  if (!row) throw new Error("the household is not set up");
  return row;
}

/** Whose cups and spoons the household means. */
export const systemOf = (house: House): MeasureSystem => house.units as MeasureSystem;

/** The day that an answer is given for: the one asked for, else today where the household lives. */
export const dayAsked = (house: House, clock: Clock, asOf: LocalDate | undefined): LocalDate => asOf ?? clock.today(house.zone);
