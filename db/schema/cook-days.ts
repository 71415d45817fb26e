import { check, foreignKey, index, integer, jsonb, pgTable, primaryKey, text, uuid } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { householdId, id, localDate, recordedAt, version } from "./columns.ts";
import { ofHousehold } from "./households.ts";
import { recipes } from "./recipes.ts";

export const cookDays = pgTable(
  "cook_days",
  {
    householdId: householdId(),
    id: id(),
    on: localDate("on_day").notNull(),
    /** Local HH:MM. */
    startsAt: text("starts_at").notNull(),
    endsBy: text("ends_by"),
    cooks: integer("cooks").notNull(),
    kitchen: jsonb("kitchen")
      .$type<{
        ovens: { trays: number; preheatMin: number; changeMin: number }[];
        burners: number;
        pots?: number | undefined;
        sinks?: number | undefined;
        appliances?: { name: string; count: number }[] | undefined;
        washUpMin?: number | undefined;
      }>()
      .notNull(),
    unavailable: jsonb("unavailable").$type<{ what: "cook"; fromMin: number; toMin: number; why?: string | undefined }[]>().notNull(),
    title: text("title"),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "cook_days_pk", columns: [t.householdId, t.id] }),
    ofHousehold("cook_days", t.householdId),
    index("cook_days_on").on(t.householdId, t.on),
    check("cook_days_cooks", sql`${t.cooks} between 1 and 6`),
    check("cook_days_clock", sql`${t.startsAt} ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$' and (${t.endsBy} is null or ${t.endsBy} ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$')`),
  ],
);

export const cookDayDishes = pgTable(
  "cook_day_dishes",
  {
    householdId: householdId(),
    cookDayId: uuid("cook_day_id").notNull(),
    position: integer("position").notNull(),
    recipeId: uuid("recipe_id").notNull(),
    batches: integer("batches").notNull(),
  },
  (t) => [
    primaryKey({ name: "cook_day_dishes_pk", columns: [t.householdId, t.cookDayId, t.position] }),
    ofHousehold("cook_day_dishes", t.householdId),
    foreignKey({ name: "cook_day_dishes_day_fk", columns: [t.householdId, t.cookDayId], foreignColumns: [cookDays.householdId, cookDays.id] }).onDelete("cascade"),
    foreignKey({ name: "cook_day_dishes_recipe_fk", columns: [t.householdId, t.recipeId], foreignColumns: [recipes.householdId, recipes.id] }),
    check("cook_day_dishes_batches", sql`${t.batches} > 0`),
  ],
);
