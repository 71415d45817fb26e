import { randomUUID } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { fillHousehold, type HouseholdRows } from "../support/database-rows.ts";
import { asSuperuser, freshDb, makeHousehold, type TestDb } from "../support/test-db.ts";

let scratch: TestDb;
let household: string;
let rows: HouseholdRows;
beforeAll(async () => {
  scratch = await freshDb();
  household = await makeHousehold(scratch.db);
  rows = await scratch.db.inHousehold(household, (tx) => fillHousehold(tx, household));
});
afterAll(() => scratch.drop());

type Values = Record<string, unknown>;
const AT = "2027-07-31T08:00:00Z";

/** A row of each table that breaks no rule; the cases below change one thing. */
const sound = (): Record<string, Values> => ({
  households: { household_id: randomUUID(), name: "Row house", zone: "Etc/UTC", latitude: 52.1, longitude: 5.18, altitude_m: 2, people: 3, week_start: "monday", units: "metric" },
  weather_days: { household_id: household, day: "2027-02-01", tmax_tenths: 60, tmin_tenths: -10 },
  beds: { household_id: household, id: randomUUID(), name: "By the gate", length_m: 3, width_m: 1, cover: "fleece" },
  sowings: { household_id: household, id: randomUUID(), bed_id: rows.bedId, crop: "tomato", method: "direct", sown_on: "2027-05-01", row_m: 2.5 },
  sightings: { household_id: household, id: randomUUID(), sowing_id: rows.sowingId, stage: "emerged", seen_on: "2027-05-12" },
  picks: { household_id: household, id: randomUUID(), sowing_id: rows.sowingId, picked_on: "2027-07-22", grams: 300, pieces: 3 },
  recipes: { household_id: household, id: randomUUID(), title: "Broth", way: "cook", makes_amount: 2, makes_unit: "l", body: "{}" },
  recipe_parts: { household_id: household, recipe_id: rows.partId, part_id: rows.recipeId },
  plan_lines: { household_id: household, id: randomUUID(), week: "2026-W53", recipe_id: rows.recipeId, batches: 1 },
  cook_days: { household_id: household, id: randomUUID(), on_day: "2027-08-07", starts_at: "09:30", ends_by: "13:00", cooks: 2, kitchen: "{}", unavailable: "[]" },
  day_plans: { household_id: household, id: randomUUID(), cook_day_id: rows.cookDayId, position: 2, said: "{}", at: AT, day_version: 1, day: "{}", steps: "[]", broken_off: "[]", told: "{}" },
  day_marks: { household_id: household, id: randomUUID(), cook_day_id: rows.cookDayId, kind: "started", dish: rows.recipeId, step: "mix", at: AT, at_said: false },
  timers: { household_id: household, id: randomUUID(), cook_day_id: rows.cookDayId, label: "Skim it", minutes: 10, ends_at: AT },
  batches: { household_id: household, id: randomUUID(), cook_day_id: rows.cookDayId, recipe_id: rows.recipeId, on_day: "2027-07-31", at: AT, said: "{}", portions: 4, portion_grams: 300, weighed_grams: 1250, loss_grams: 50, eaten_portions: 1, given_portions: 1 },
  places: { household_id: household, id: randomUUID(), name: "Drawer 2", kind: "freezer", litres: 40 },
  lots: { household_id: household, id: randomUUID(), title: "Soup", recipe_id: rows.recipeId, place_id: rows.placeId, made_on: "2027-07-20", portion_grams: 350, portion_ml: 400, best_until: "2027-10-20" },
  movements: { household_id: household, id: randomUUID(), lot_id: rows.lotId, kind: "put", on_day: "2027-07-20", portions: 6, amount: 6, counted_in: "portions", place_id: rows.placeId },
  wishes: { household_id: household, id: randomUUID(), recipe_id: rows.recipeId, portions: 4 },
  stock_targets: { household_id: household, id: randomUUID(), recipe_id: rows.recipeId, portions: 40, by_day: "2027-11-01" },
  tastes: { household_id: household, recipe_id: rows.partId, liking: "fine" },
  supplies: { household_id: household, id: randomUUID(), kind: "yeast", name: "Dried yeast", amount: 42, unit: "g", best_until: "2027-12-01" },
  reference_rows: { kind: "test", key: "a", facts: "{}", source: "CP" },
});

const cookDay = (change: Values): [string, Values] => ["cook_days", change];

/** Constraint, table, and what is changed in the sound row. */
const CHECKS: [constraint: string, table: string, change: Values][] = [
  ["day_marks_kind", "day_marks", { kind: "burnt", step: null }],
  ["day_marks_dish", "day_marks", { dish: null }],
  ["day_marks_step", "day_marks", { step: null }],
  ["day_marks_line", "day_marks", { line: 2 }],
  ["day_marks_stage", "day_marks", { kind: "cooled", step: null }],
  ["timers_said", "timers", { clock: "09:30" }],
  ["batches_portions", "batches", { given_portions: 4 }],
  ["batches_grams", "batches", { loss_grams: 49 }],
  ["households_place", "households", { latitude: 90.5 }],
  ["households_place", "households", { longitude: -180.01 }],
  ["households_place", "households", { latitude: Number.NaN }],
  ["households_people", "households", { people: 0 }],
  ["households_people", "households", { people: 61 }],
  ["households_week_start", "households", { week_start: "someday" }],
  ["households_units", "households", { units: "old" }],
  ["households_glut", "households", { glut_grams: -1 }],
  ["households_cooks", "households", { cooks: 0 }],
  ["households_kitchen_min", "households", { kitchen_min_per_week: -1 }],
  ["weather_days_order", "weather_days", { tmin_tenths: 61 }],
  ["beds_size", "beds", { length_m: 0 }],
  ["beds_size", "beds", { width_m: -1 }],
  ["beds_cover", "beds", { cover: "tent" }],
  ["sowings_method", "sowings", { method: "thrown" }],
  ["sowings_one_amount", "sowings", { row_m: null }],
  ["sowings_one_amount", "sowings", { plants: 4 }],
  ["sowings_amounts", "sowings", { row_m: 0 }],
  ["sowings_amounts", "sowings", { row_m: null, plants: -3 }],
  ["sowings_amounts", "sowings", { row_m: null, area_m2: 0 }],
  ["sowings_dates", "sowings", { planted_out_on: "2027-04-30" }],
  ["sowings_dated", "sowings", { sown_on: null }],
  ["sowings_dated", "sowings", { method: "transplant", sown_on: null }],
  ["sightings_stage", "sightings", { stage: "sulking" }],
  ["picks_grams", "picks", { grams: 0 }],
  ["picks_grams", "picks", { grams: -5 }],
  ["picks_pieces", "picks", { pieces: 0 }],
  ["recipes_way", "recipes", { way: "smoke" }],
  ["recipes_origin", "recipes", { origin: "web" }],
  ["recipes_makes", "recipes", { makes_amount: 0 }],
  ["recipe_parts_not_itself", "recipe_parts", { part_id: "same" }],
  ["plan_lines_week", "plan_lines", { week: "2027-W54" }],
  ["plan_lines_week", "plan_lines", { week: "2027-W00" }],
  ["plan_lines_week", "plan_lines", { week: "2027-32" }],
  ["plan_lines_batches", "plan_lines", { batches: 0 }],
  ["cook_days_cooks", ...cookDay({ cooks: 7 })],
  ["cook_days_clock", ...cookDay({ starts_at: "24:00" })],
  ["cook_days_clock", ...cookDay({ ends_by: "9:00" })],
  ["cook_day_dishes_batches", "cook_day_dishes", { batches: 0 }],
  ["reference_rows_source", "reference_rows", { source: "" }],
  ["places_kind", "places", { kind: "attic" }],
  ["places_litres", "places", { litres: 0 }],
  ["places_litres", "places", { litres: -5 }],
  ["lots_one_origin", "lots", { crop: "tomato" }],
  ["lots_portion", "lots", { portion_grams: 0 }],
  ["lots_portion", "lots", { portion_ml: -1 }],
  ["lots_best_until", "lots", { best_until: "2027-07-19" }],
  ["movements_kind", "movements", { kind: "steal" }],
  ["movements_one_amount", "movements", { portions: null }],
  ["movements_one_amount", "movements", { grams: 5 }],
  ["movements_amounts", "movements", { portions: -1 }],
  ["movements_amounts", "movements", { amount: 0 }],
  ["movements_counted_in", "movements", { counted_in: "cups" }],
  ["movements_whole", "movements", { kind: "recount" }],
  ["movements_whole", "movements", { whole_amount: 6 }],
  ["movements_whole", "movements", { kind: "recount", whole_amount: 5 }],
  ["movements_taken_for", "movements", { kind: "take" }],
  ["movements_taken_for", "movements", { kind: "take", taken_for: "fun" }],
  ["movements_taken_for", "movements", { taken_for: "eat" }],
  ["movements_to_place", "movements", { kind: "move" }],
  ["movements_to_place", "movements", { to_place_id: "same" }],
  ["movements_to_place", "movements", { kind: "move", to_place_id: "same" }],
  ["wishes_portions", "wishes", { portions: 0 }],
  ["stock_targets_portions", "stock_targets", { portions: 0 }],
  ["tastes_liking", "tastes", { liking: "adored" }],
  ["supplies_kind", "supplies", { kind: "gold" }],
  ["supplies_unit", "supplies", { unit: "cups" }],
  ["supplies_amount", "supplies", { amount: -1 }],
  ["supplies_amount", "supplies", { holds_ml: 0 }],
];

const ELSEWHERE = "11111111-1111-4111-8111-111111111111";
const REFERENCES: [constraint: string, table: string, change: Values][] = [
  ["weather_days_household_fk", "weather_days", { household_id: ELSEWHERE }],
  ["beds_household_fk", "beds", { household_id: ELSEWHERE }],
  ["recipes_household_fk", "recipes", { household_id: ELSEWHERE }],
  ["cook_days_household_fk", "cook_days", { household_id: ELSEWHERE }],
  ["sowings_bed_fk", "sowings", { bed_id: ELSEWHERE }],
  ["sowings_crop_fk", "sowings", { crop: "moon-carrot" }],
  ["sightings_sowing_fk", "sightings", { sowing_id: ELSEWHERE }],
  ["picks_sowing_fk", "picks", { sowing_id: ELSEWHERE }],
  ["recipe_parts_recipe_fk", "recipe_parts", { recipe_id: ELSEWHERE }],
  ["recipe_parts_part_fk", "recipe_parts", { part_id: ELSEWHERE }],
  ["plan_lines_recipe_fk", "plan_lines", { recipe_id: ELSEWHERE }],
  ["cook_day_dishes_day_fk", "cook_day_dishes", { cook_day_id: ELSEWHERE }],
  ["cook_day_dishes_recipe_fk", "cook_day_dishes", { recipe_id: ELSEWHERE }],
  ["day_plans_day_fk", "day_plans", { cook_day_id: ELSEWHERE }],
  ["day_marks_day_fk", "day_marks", { cook_day_id: ELSEWHERE }],
  ["timers_day_fk", "timers", { cook_day_id: ELSEWHERE }],
  ["batches_day_fk", "batches", { cook_day_id: ELSEWHERE }],
  ["batches_recipe_fk", "batches", { recipe_id: ELSEWHERE }],
  ["movements_batch_fk", "movements", { batch_id: ELSEWHERE }],
  ["lots_place_fk", "lots", { place_id: ELSEWHERE }],
  ["lots_recipe_fk", "lots", { recipe_id: ELSEWHERE }],
  ["lots_crop_fk", "lots", { recipe_id: null, crop: "moon-carrot" }],
  ["movements_lot_fk", "movements", { lot_id: ELSEWHERE }],
  ["movements_place_fk", "movements", { place_id: ELSEWHERE }],
  ["movements_to_place_fk", "movements", { kind: "move", to_place_id: ELSEWHERE }],
  ["wishes_recipe_fk", "wishes", { recipe_id: ELSEWHERE }],
  ["stock_targets_recipe_fk", "stock_targets", { recipe_id: ELSEWHERE }],
  ["tastes_recipe_fk", "tastes", { recipe_id: ELSEWHERE }],
];

/** Inserts as the superuser, so that nothing but the constraints is in the way; rolled back. Answers the constraint that refused. */
function insert(table: string, change: Values): Promise<string | undefined> {
  return asSuperuser(scratch.url, async (client) => {
    await client.query("begin");
    try {
      const base = table === "cook_day_dishes" ? await dish(client) : sound()[table];
      const row: Values = { ...base, ...change };
      if (row["part_id"] === "same") row["part_id"] = row["recipe_id"];
      if (row["to_place_id"] === "same") row["to_place_id"] = row["place_id"];
      const names = Object.keys(row);
      await client.query(`insert into ${table} (${names.join(", ")}) values (${names.map((_, i) => `$${i + 1}`).join(", ")})`, Object.values(row));
      return undefined;
    } catch (error) {
      return (error as { constraint?: string }).constraint ?? String(error);
    } finally {
      await client.query("rollback");
    }
  });
}

async function dish(client: pg.Client): Promise<Values> {
  const { rows: days } = await client.query<{ id: string }>("select id from cook_days where household_id = $1", [household]);
  return { household_id: household, cook_day_id: days[0]?.id, position: 1, recipe_id: rows.recipeId, batches: 2 };
}

describe("the rules of the tables", () => {
  it("let a sound row of every table in", async () => {
    for (const table of [...Object.keys(sound()), "cook_day_dishes"]) expect([table, await insert(table, {})]).toEqual([table, undefined]);
  });

  it.each(CHECKS)("%s refuses, in %s, %o", async (constraint, table, change) => {
    expect(await insert(table, change)).toBe(constraint);
  });

  it.each(REFERENCES)("%s refuses, in %s, what is not there", async (constraint, table, change) => {
    expect(await insert(table, change)).toBe(constraint);
  });

  it("have a case here for every check, and for every reference but those that only say whose a row is", async () => {
    const { rows: found } = await asSuperuser(scratch.url, (client) =>
      client.query<{ name: string; kind: string }>("select conname as name, contype::text as kind from pg_constraint where connamespace = 'public'::regnamespace and contype in ('c', 'f')"),
    );
    const named = (kind: string) => found.filter((row) => row.kind === kind).map((row) => row.name);
    expect(new Set(CHECKS.map(([name]) => name))).toEqual(new Set(named("c")));
    const withoutCase = named("f").filter((name) => !REFERENCES.some(([reference]) => reference === name));
    expect(withoutCase.filter((name) => !name.endsWith("_household_fk"))).toEqual([]);
  });

  it("let an id be used once in a household", async () => {
    expect(await insert("beds", { id: rows.bedId })).toBe("beds_pk");
    expect(await insert("picks", { id: rows.pickId })).toBe("picks_pk");
    expect(await insert("weather_days", { day: "2027-07-01" })).toBe("weather_days_pk");
  });
});
