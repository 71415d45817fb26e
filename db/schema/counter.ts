/** What happens on a cook day, kept so that every device sees the same and none of it hangs on a page that is open. */
import { boolean, check, foreignKey, index, integer, jsonb, pgTable, primaryKey, text, timestamp, uniqueIndex, uuid } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { cookDays } from "./cook-days.ts";
import { grams, householdId, id, localDate, recordedAt, version } from "./columns.ts";
import { ofHousehold } from "./households.ts";
import { recipes } from "./recipes.ts";

const instant = (name: string) => timestamp(name, { withTimezone: true, mode: "string" });
const cookDayId = () => uuid("cook_day_id").notNull();

/**
 * The timetables that the cooks agreed on, one after another; the last that is not undone is in hand. With each goes the day that it was made for,
 * so that a recipe rewritten meanwhile moves nothing that is on the stove. Append-only: the app role may insert and set undone_at.
 */
export const dayPlans = pgTable(
  "day_plans",
  {
    householdId: householdId(),
    id: id(),
    cookDayId: cookDayId(),
    /** Counts up within the day. */
    position: integer("position").notNull(),
    /** What was asked for, as it was sent. */
    said: jsonb("said").$type<unknown>().notNull(),
    at: instant("at").notNull(),
    /** Version of the cook day that it was made for. */
    dayVersion: integer("day_version").notNull(),
    day: jsonb("day").$type<unknown>().notNull(),
    steps: jsonb("steps").$type<unknown>().notNull(),
    /** Marks of steps that were broken off and are begun again under this plan. */
    brokenOff: jsonb("broken_off").$type<readonly string[]>().notNull(),
    /** What the cooks were told when they took it: moved steps, limits passed, notes. */
    told: jsonb("told").$type<unknown>().notNull(),
    recordedAt: recordedAt(),
    undoneAt: instant("undone_at"),
  },
  (t) => [
    primaryKey({ name: "day_plans_pk", columns: [t.householdId, t.id] }),
    ofHousehold("day_plans", t.householdId),
    foreignKey({ name: "day_plans_day_fk", columns: [t.householdId, t.cookDayId], foreignColumns: [cookDays.householdId, cookDays.id] }).onDelete("cascade"),
    uniqueIndex("day_plans_position").on(t.householdId, t.cookDayId, t.position),
  ],
);

/** Facts of the day: begun, a step started or done, an ingredient in, a temperature reached. Append-only: the app role may insert and set undone_at. */
export const dayMarks = pgTable(
  "day_marks",
  {
    householdId: householdId(),
    id: id(),
    cookDayId: cookDayId(),
    kind: text("kind").notNull(),
    /** Recipe of the dish. */
    dish: uuid("dish"),
    step: text("step"),
    load: integer("load"),
    oven: integer("oven"),
    line: integer("line"),
    stage: integer("stage"),
    at: instant("at").notNull(),
    /** Whether the device said when; else it is the moment it was written. */
    atSaid: boolean("at_said").notNull(),
    recordedAt: recordedAt(),
    undoneAt: instant("undone_at"),
  },
  (t) => [
    primaryKey({ name: "day_marks_pk", columns: [t.householdId, t.id] }),
    ofHousehold("day_marks", t.householdId),
    foreignKey({ name: "day_marks_day_fk", columns: [t.householdId, t.cookDayId], foreignColumns: [cookDays.householdId, cookDays.id] }).onDelete("cascade"),
    index("day_marks_day").on(t.householdId, t.cookDayId),
    check("day_marks_kind", sql`${t.kind} in ('begun','finished','started','done','ticked','cooled','reheated','discarded')`),
    check("day_marks_dish", sql`(${t.kind} in ('begun','finished')) = (${t.dish} is null)`),
    check("day_marks_step", sql`(${t.kind} in ('started','done')) = (${t.step} is not null)`),
    check("day_marks_line", sql`(${t.kind} = 'ticked') = (${t.line} is not null)`),
    check("day_marks_stage", sql`(${t.kind} = 'cooled') = (${t.stage} is not null)`),
  ],
);

/** A timer is the instant at which it rings; whether it rings now is for whoever reads it to reckon. */
export const timers = pgTable(
  "timers",
  {
    householdId: householdId(),
    id: id(),
    cookDayId: cookDayId(),
    label: text("label").notNull(),
    pot: text("pot"),
    dish: uuid("dish"),
    step: text("step"),
    load: integer("load"),
    /** As it was said: minutes, a local HH:MM, or else the instant. */
    minutes: integer("minutes"),
    clock: text("clock"),
    endsAt: instant("ends_at").notNull(),
    heardAt: instant("heard_at"),
    stoppedAt: instant("stopped_at"),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "timers_pk", columns: [t.householdId, t.id] }),
    ofHousehold("timers", t.householdId),
    foreignKey({ name: "timers_day_fk", columns: [t.householdId, t.cookDayId], foreignColumns: [cookDays.householdId, cookDays.id] }).onDelete("cascade"),
    index("timers_day").on(t.householdId, t.cookDayId),
    check("timers_said", sql`num_nonnulls(${t.minutes}, ${t.clock}) <= 1`),
  ],
);

/** A dish that was closed to the gram; its lots and what it took are movements that name it. Append-only: the app role may insert and set undone_at. */
export const batches = pgTable(
  "batches",
  {
    householdId: householdId(),
    id: id(),
    cookDayId: cookDayId(),
    recipeId: uuid("recipe_id").notNull(),
    on: localDate("on_day").notNull(),
    at: instant("at").notNull(),
    /** As it was sent. */
    said: jsonb("said").$type<unknown>().notNull(),
    portions: integer("portions").notNull(),
    portionGrams: grams("portion_grams"),
    weighedGrams: grams("weighed_grams"),
    lossGrams: grams("loss_grams").notNull(),
    eatenPortions: integer("eaten_portions").notNull(),
    givenPortions: integer("given_portions").notNull(),
    recordedAt: recordedAt(),
    undoneAt: instant("undone_at"),
  },
  (t) => [
    primaryKey({ name: "batches_pk", columns: [t.householdId, t.id] }),
    ofHousehold("batches", t.householdId),
    // a day whose dishes were closed stays on record
    foreignKey({ name: "batches_day_fk", columns: [t.householdId, t.cookDayId], foreignColumns: [cookDays.householdId, cookDays.id] }),
    foreignKey({ name: "batches_recipe_fk", columns: [t.householdId, t.recipeId], foreignColumns: [recipes.householdId, recipes.id] }),
    index("batches_day").on(t.householdId, t.cookDayId),
    check("batches_portions", sql`${t.portions} >= ${t.eatenPortions} + ${t.givenPortions} and ${t.eatenPortions} >= 0 and ${t.givenPortions} >= 0`),
    check("batches_grams", sql`${t.lossGrams} >= 0 and (${t.weighedGrams} is null or ${t.weighedGrams} = ${t.portions} * coalesce(${t.portionGrams}, 0) + ${t.lossGrams})`),
  ],
);
