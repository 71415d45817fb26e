import { randomUUID } from "node:crypto";
import { eq } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { householdStamps, picks, sowings } from "#db/schema/index.ts";
import { fillHousehold, householdTables, newIds, type HouseholdRows } from "../support/database-rows.ts";
import { asSuperuser, freshDb, makeHousehold, type TestDb } from "../support/test-db.ts";

/** PostgreSQL manual, appendix "PostgreSQL Error Codes". */
const FOREIGN_KEY_VIOLATION = "23503";

let scratch: TestDb;
let ours: string;
let theirs: string;
let rows: HouseholdRows;
beforeAll(async () => {
  scratch = await freshDb();
  [ours, theirs] = [await makeHousehold(scratch.db), await makeHousehold(scratch.db)];
  rows = await scratch.db.inHousehold(ours, (tx) => fillHousehold(tx, ours));
});
afterAll(() => scratch.drop());

const stampsOf = async (household: string) => {
  const [row] = await scratch.db.inHousehold(household, (tx) => tx.select().from(householdStamps));
  return row as typeof householdStamps.$inferSelect;
};
const asOwner = (statement: string) => asSuperuser(scratch.url, (client) => client.query(statement));

const PARTS = ["garden", "kitchen", "weather", "larder", "counter"] as const;
/** A write to each table by another connection than the service's, and which stamps it renews. */
const WRITES: [table: string, set: string, renews: readonly (typeof PARTS)[number][]][] = [
  ["households", "people = 5", ["garden", "kitchen"]],
  ["weather_days", "tmax_tenths = tmax_tenths + 1", ["weather"]],
  ["beds", "cover = 'fleece'", ["garden"]],
  ["sowings", "plants = 7", ["garden"]],
  ["sightings", "stage = 'fruit-set'", ["garden"]],
  ["picks", "undone_at = now()", ["garden"]],
  ["recipes", "makes_amount = 3", ["kitchen"]],
  ["recipe_parts", "part_id = part_id", ["kitchen"]],
  ["plan_lines", "batches = 3", ["kitchen"]],
  ["cook_days", "cooks = 2", ["kitchen"]],
  ["cook_day_dishes", "batches = 2", ["kitchen"]],
  ["wishes", "portions = 5", ["kitchen"]],
  ["stock_targets", "portions = 50", ["kitchen"]],
  ["tastes", "liking = 'never'", ["kitchen"]],
  ["day_plans", "undone_at = now()", ["counter"]],
  ["day_marks", "undone_at = now()", ["counter"]],
  ["timers", "heard_at = now()", ["counter"]],
  ["batches", "undone_at = now()", ["counter"]],
  ["places", "litres = 60", ["larder"]],
  ["lots", "title = 'Plum tomatoes'", ["larder"]],
  ["movements", "undone_at = now()", ["larder"]],
  ["supplies", "amount = 8", ["larder"]],
];

describe("the stamps of a household", () => {
  it("are renewed by three triggers on every table of a household", async () => {
    const { rows: triggers } = await asOwner("select c.relname as name, count(*)::int as n from pg_trigger t join pg_class c on c.oid = t.tgrelid join pg_proc p on p.oid = t.tgfoid where p.proname = 'renew_stamp' group by c.relname order by c.relname collate \"C\"");
    const tables = householdTables.map(({ name }) => name).filter((name) => name !== "household_stamps");
    expect(triggers).toEqual(tables.map((name) => ({ name, n: 3 })));
    expect(tables.length).toBeGreaterThanOrEqual(WRITES.length);
  });

  it.each(WRITES)("follow a change of %s by another program", async (table, set, renews) => {
    const [before, theirsBefore] = [await stampsOf(ours), await stampsOf(theirs)];
    const { rowCount } = await asOwner(`update ${table} set ${set} where household_id = '${ours}'`);
    expect(rowCount).toBeGreaterThan(0);
    const after = await stampsOf(ours);
    expect(PARTS.filter((part) => after[part] !== before[part])).toEqual(renews);
    expect(await stampsOf(theirs)).toEqual(theirsBefore);
  });

  it("follow rows that come and rows that go, and nothing that changes no row", async () => {
    const seen = new Set<string>([(await stampsOf(ours)).garden]);
    const id = randomUUID();
    await asOwner(`insert into beds (household_id, id, name, length_m, width_m, cover) values ('${ours}', '${id}', 'By the gate', 2, 1, 'open')`);
    seen.add((await stampsOf(ours)).garden);
    await asOwner(`delete from beds where household_id = '${ours}' and id = '${id}'`);
    const last = (await stampsOf(ours)).garden;
    seen.add(last);
    expect(seen.size).toBe(3);
    await asOwner(`delete from beds where household_id = '${ours}' and id = '${id}'`);
    expect((await stampsOf(ours)).garden).toBe(last);
  });

  it("keep what they were when the write is taken back", async () => {
    const before = await stampsOf(ours);
    const failed = scratch.db.inHousehold(ours, async (tx) => {
      await tx.update(sowings).set({ note: "never" }).where(eq(sowings.id, rows.sowingId));
      throw new Error("taken back");
    });
    await expect(failed).rejects.toThrow("taken back");
    expect(await stampsOf(ours)).toEqual(before);
  });
});

describe("a sowing that was picked", () => {
  it("goes with its picks when all of them are undone, and not before", async () => {
    const household = await makeHousehold(scratch.db);
    const { sowingId, pickId } = await scratch.db.inHousehold(household, (tx) => fillHousehold(tx, household, newIds()));
    const take = () => scratch.db.inHousehold(household, (tx) => tx.delete(sowings).where(eq(sowings.id, sowingId)));
    const code = await take().then(() => "let through", (error: unknown) => ((error as Error).cause as { code?: string }).code);
    expect(code).toBe(FOREIGN_KEY_VIOLATION);
    await scratch.db.inHousehold(household, (tx) => tx.update(picks).set({ undoneAt: "2027-07-21T08:00:00Z" }).where(eq(picks.id, pickId)));
    await take();
    expect(await scratch.db.inHousehold(household, (tx) => tx.select().from(picks))).toEqual([]);
  });

  it("goes with its household whatever stands", async () => {
    const household = await makeHousehold(scratch.db);
    await scratch.db.inHousehold(household, (tx) => fillHousehold(tx, household, newIds()));
    const { rowCount } = await asOwner(`delete from households where household_id = '${household}'`);
    expect(rowCount).toBe(1);
  });
});
