import { check, foreignKey, index, integer, jsonb, pgTable, primaryKey, text, timestamp, uuid } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { beds } from "./beds.ts";
import type { VarietyDays } from "#shared/kernel/crop-facts.ts";
import { grams, householdId, id, localDate, metres, recordedAt, version } from "./columns.ts";
import { ofHousehold } from "./households.ts";
import { crops } from "./reference.ts";

/** A sowing, a planting-out, or what stands for years. */
export const sowings = pgTable(
  "sowings",
  {
    householdId: householdId(),
    id: id(),
    bedId: uuid("bed_id").notNull(),
    crop: text("crop").notNull(),
    variety: text("variety"),
    /** Days to maturity as its packet prints them. */
    varietyDays: jsonb("variety_days").$type<VarietyDays>(),
    method: text("method").notNull(),
    sownOn: localDate("sown_on"),
    plantedOutOn: localDate("planted_out_on"),
    rowM: metres("row_m"),
    plants: integer("plants"),
    areaM2: metres("area_m2"),
    standsSince: integer("stands_since"),
    note: text("note"),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "sowings_pk", columns: [t.householdId, t.id] }),
    ofHousehold("sowings", t.householdId),
    foreignKey({ name: "sowings_bed_fk", columns: [t.householdId, t.bedId], foreignColumns: [beds.householdId, beds.id] }),
    foreignKey({ name: "sowings_crop_fk", columns: [t.crop], foreignColumns: [crops.slug] }),
    index("sowings_bed").on(t.householdId, t.bedId),
    check("sowings_method", sql`${t.method} in ('direct','transplant','established')`),
    check("sowings_one_amount", sql`num_nonnulls(${t.rowM}, ${t.plants}, ${t.areaM2}) = 1`),
    check("sowings_amounts", sql`coalesce(${t.rowM}, ${t.plants}, ${t.areaM2}) > 0`),
    check("sowings_dates", sql`${t.plantedOutOn} is null or ${t.sownOn} is null or ${t.plantedOutOn} >= ${t.sownOn}`),
    check(
      "sowings_dated",
      sql`(${t.method} <> 'direct' or ${t.sownOn} is not null) and (${t.method} <> 'transplant' or ${t.sownOn} is not null or ${t.plantedOutOn} is not null)`,
    ),
  ],
);

export const sightings = pgTable(
  "sightings",
  {
    householdId: householdId(),
    id: id(),
    sowingId: uuid("sowing_id").notNull(),
    stage: text("stage").notNull(),
    seenOn: localDate("seen_on").notNull(),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "sightings_pk", columns: [t.householdId, t.id] }),
    ofHousehold("sightings", t.householdId),
    foreignKey({ name: "sightings_sowing_fk", columns: [t.householdId, t.sowingId], foreignColumns: [sowings.householdId, sowings.id] }).onDelete("cascade"),
    index("sightings_sowing").on(t.householdId, t.sowingId),
    check("sightings_stage", sql`${t.stage} in ('emerged','planted-out','flowering','fruit-set','first-pick','finished')`),
  ],
);

/** Append-only: the app role may insert and set undone_at, nothing else. */
export const picks = pgTable(
  "picks",
  {
    householdId: householdId(),
    id: id(),
    sowingId: uuid("sowing_id").notNull(),
    pickedOn: localDate("picked_on").notNull(),
    grams: grams("grams").notNull(),
    pieces: integer("pieces"),
    recordedAt: recordedAt(),
    undoneAt: timestamp("undone_at", { withTimezone: true, mode: "string" }),
  },
  (t) => [
    primaryKey({ name: "picks_pk", columns: [t.householdId, t.id] }),
    ofHousehold("picks", t.householdId),
    // a sowing goes with its undone picks; the trigger sowings_keep_picks refuses it while a pick stands
    foreignKey({ name: "picks_sowing_fk", columns: [t.householdId, t.sowingId], foreignColumns: [sowings.householdId, sowings.id] }).onDelete("cascade"),
    index("picks_sowing_day").on(t.householdId, t.sowingId, t.pickedOn),
    index("picks_day").on(t.householdId, t.pickedOn),
    check("picks_grams", sql`${t.grams} > 0`),
    check("picks_pieces", sql`${t.pieces} is null or ${t.pieces} > 0`),
  ],
);
