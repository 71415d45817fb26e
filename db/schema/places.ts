import { check, numeric, pgTable, primaryKey, text } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { householdId, id, recordedAt, version } from "./columns.ts";
import { ofHousehold } from "./households.ts";

/** Where things are kept: a fridge, a drawer of the freezer, a shelf, a cellar, a clamp. */
export const places = pgTable(
  "places",
  {
    householdId: householdId(),
    id: id(),
    name: text("name").notNull(),
    kind: text("kind").notNull(),
    litres: numeric("litres", { precision: 9, scale: 1, mode: "number" }),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "places_pk", columns: [t.householdId, t.id] }),
    ofHousehold("places", t.householdId),
    check("places_kind", sql`${t.kind} in ('fridge','freezer','shelf','cellar','clamp')`),
    check("places_litres", sql`${t.litres} is null or ${t.litres} > 0`),
  ],
);
