/** The household's own row: where it lies, what day it is there, who eats what; and the stamps of what it has stored. */
import { eq, getTableColumns, sql } from "drizzle-orm";
import { households, householdStamps } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { MeasureSystem } from "#shared/kernel/units.ts";
import type { Clock } from "../clock.ts";

/** A part of what a household has stored. Its stamp is new after every write to it, and no two writes anywhere make the same one. */
export type Part = "garden" | "kitchen" | "weather" | "larder" | "counter";

/** Of each part; null where it is not known, and then nothing may be kept for later. */
export type Stamps = Readonly<Record<Part, string>> | null;

export type House = typeof households.$inferSelect & { readonly stamps: Stamps };

const columns = { ...getTableColumns(households), stamps: { garden: householdStamps.garden, kitchen: householdStamps.kitchen, weather: householdStamps.weather, larder: householdStamps.larder, counter: householdStamps.counter } };

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

/** The stamps alone: the one question of a read whose answer is kept. */
export async function loadStamps(tx: Tx, householdId: string): Promise<Stamps> {
  const { rows } = await tx.execute<Record<Part, string>>(sql`select garden, kitchen, weather, larder, counter from ${householdStamps} where household_id = ${householdId}`);
  return rows[0] ?? null;
}

/** Whose cups and spoons the household means. */
export const systemOf = (house: House): MeasureSystem => house.units as MeasureSystem;

/** The day that an answer is given for: the one asked for, else today where the household lives. */
export const dayAsked = (house: House, clock: Clock, asOf: LocalDate | undefined): LocalDate => asOf ?? clock.today(house.zone);
