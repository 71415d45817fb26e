import { check, pgTable, primaryKey, text } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { householdId, id, metres, recordedAt, version } from "./columns.ts";
import { ofHousehold } from "./households.ts";

export const beds = pgTable(
  "beds",
  {
    householdId: householdId(),
    id: id(),
    name: text("name").notNull(),
    lengthM: metres("length_m").notNull(),
    widthM: metres("width_m").notNull(),
    cover: text("cover").notNull(),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "beds_pk", columns: [t.householdId, t.id] }),
    ofHousehold("beds", t.householdId),
    check("beds_size", sql`${t.lengthM} > 0 and ${t.widthM} > 0`),
    check("beds_cover", sql`${t.cover} in ('open','fleece','cold-frame','polytunnel','greenhouse','indoors')`),
  ],
);
