/** One spelling for each kind of column. Dates are LocalDate strings, amounts whole grams, lengths in metres with two decimals. */
import { date, integer, numeric, timestamp, uuid } from "drizzle-orm/pg-core";

export const householdId = () => uuid("household_id").notNull();
export const id = () => uuid("id").notNull();
export const localDate = (name: string) => date(name, { mode: "string" });
export const grams = (name: string) => integer(name);
export const minutes = (name: string) => integer(name);
export const metres = (name: string) => numeric(name, { precision: 9, scale: 2, mode: "number" });
/** Counts edits; the ETag of an editable thing is made of it. */
export const version = () => integer("version").notNull().default(1);
export const recordedAt = () => timestamp("recorded_at", { withTimezone: true, mode: "string" }).notNull().defaultNow();
