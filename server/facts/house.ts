/** The household's own row: where it lies, what day it is there, who eats what; and the stamps of what it has stored. */
import { eq, getTableColumns } from "drizzle-orm";
import { households, householdStamps } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { MeasureSystem } from "#shared/kernel/units.ts";
import type { Clock } from "../clock.ts";

/** A part of what a household has stored. Its stamp is new after every write to it, and no two writes anywhere make the same one. */
export type Part = "garden" | "kitchen" | "weather";

export type House = typeof households.$inferSelect & {
  /** Null = not known, so nothing may be kept for later. */
  readonly stamps: Readonly<Record<Part, string>> | null;
};

const columns = { ...getTableColumns(households), stamps: { garden: householdStamps.garden, kitchen: householdStamps.kitchen, weather: householdStamps.weather } };

/**
 * Asked before anything else in a transaction: what is read after the stamps is at least as new as they are, so that what is kept under them is
 * never older than they say.
 */
export async function loadHouse(tx: Tx, householdId: string): Promise<House> {
  const [row] = await tx.select(columns).from(households).leftJoin(householdStamps, eq(householdStamps.householdId, households.householdId)).where(eq(households.householdId, householdId));
  // the household is made before the service listens
  if (!row) throw new Error("the household is not set up");
  return row;
}

/** Whose cups and spoons the household means. */
export const systemOf = (house: House): MeasureSystem => house.units as MeasureSystem;

/** The day that an answer is given for: the one asked for, else today where the household lives. */
export const dayAsked = (house: House, clock: Clock, asOf: LocalDate | undefined): LocalDate => asOf ?? clock.today(house.zone);
