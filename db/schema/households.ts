import { boolean, check, doublePrecision, foreignKey, integer, jsonb, pgTable, primaryKey, text, type AnyPgColumn } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { grams, householdId, localDate, minutes, version } from "./columns.ts";

export const households = pgTable(
  "households",
  {
    householdId: householdId(),
    name: text("name").notNull(),
    zone: text("zone").notNull(),
    latitude: doublePrecision("latitude").notNull(),
    longitude: doublePrecision("longitude").notNull(),
    altitudeM: doublePrecision("altitude_m").notNull(),
    people: integer("people").notNull(),
    weekStart: text("week_start").notNull(),
    units: text("units").notNull(),
    /** [{crop, gramsPerWeek}]; null = the book's figures for that many people. */
    eats: jsonb("eats").$type<{ crop: string; gramsPerWeek: number }[]>(),
    glutGrams: grams("glut_grams").notNull().default(1000),
    kitchen: jsonb("kitchen").$type<{
      ovens: { trays: number; preheatMin: number; changeMin: number }[];
      burners: number;
      pots?: number | undefined;
      sinks?: number | undefined;
      appliances?: { name: string; count: number }[] | undefined;
      washUpMin?: number | undefined;
    }>(),
    cooks: integer("cooks").notNull().default(1),
    /** Minutes of hands in a week for cooking ahead and preserving; null until somebody has said. */
    kitchenMinPerWeek: minutes("kitchen_min_per_week"),
    /** Days on which nobody is at home, the last included. */
    away: jsonb("away").$type<{ firstDay: string; lastDay: string }[]>().notNull().default([]),
    /** What is never planned: crops, and whatever states one of these allergens. */
    avoids: jsonb("avoids").$type<{ crops: string[]; allergens: string[] }>().notNull().default({ crops: [], allergens: [] }),
    /** False until somebody has said where the garden lies. */
    placed: boolean("placed").notNull().default(false),
    /** Twelve monthly means, °C: [{month, tmaxC, tminC}]. */
    normals: jsonb("normals").$type<{ month: number; tmaxC: number; tminC: number }[]>(),
    weatherAttribution: text("weather_attribution"),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "households_pk", columns: [t.householdId] }),
    check("households_place", sql`${t.latitude} between -90 and 90 and ${t.longitude} between -180 and 180`),
    check("households_people", sql`${t.people} between 1 and 60`),
    check("households_week_start", sql`${t.weekStart} in ('monday','tuesday','wednesday','thursday','friday','saturday','sunday')`),
    check("households_units", sql`${t.units} in ('metric','us','imperial')`),
    check("households_glut", sql`${t.glutGrams} >= 0`),
    check("households_cooks", sql`${t.cooks} between 1 and 6`),
    check("households_kitchen_min", sql`${t.kitchenMinPerWeek} is null or ${t.kitchenMinPerWeek} >= 0`),
  ],
);

/**
 * Every table of a household points straight at it, also where another parent would lead there: when a household goes, each table is
 * emptied by its own cascade, so the order in which the server works through them cannot leave a reference hanging.
 */
export const ofHousehold = (table: string, column: AnyPgColumn) =>
  foreignKey({ name: `${table}_household_fk`, columns: [column], foreignColumns: [households.householdId] }).onDelete("cascade");

/** Daily maximum and minimum in tenths of a degree Celsius. */
export const weatherDays = pgTable(
  "weather_days",
  {
    householdId: householdId(),
    day: localDate("day").notNull(),
    tmaxTenths: integer("tmax_tenths").notNull(),
    tminTenths: integer("tmin_tenths").notNull(),
  },
  (t) => [
    primaryKey({ name: "weather_days_pk", columns: [t.householdId, t.day] }),
    ofHousehold("weather_days", t.householdId),
    check("weather_days_order", sql`${t.tmaxTenths} >= ${t.tminTenths}`),
  ],
);
