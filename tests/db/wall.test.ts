import { randomUUID } from "node:crypto";
import { eq, sql } from "drizzle-orm";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { APP_ROLE } from "#db/client.ts";
import { emptyHousehold } from "#db/provision.ts";
import { beds, crops, households, lots, movements, picks, planLines, sowings, wishes } from "#db/schema/index.ts";
import { fillHousehold, householdTables, type HouseholdRows } from "../support/database-rows.ts";
import { asSuperuser, freshDb, makeHousehold, type TestDb } from "../support/test-db.ts";

/** PostgreSQL manual, appendix "PostgreSQL Error Codes". */
const INSUFFICIENT_PRIVILEGE = "42501";
const FOREIGN_KEY_VIOLATION = "23503";

let scratch: TestDb;
let ours: string;
let theirs: string;
let theirRows: HouseholdRows;
beforeAll(async () => {
  scratch = await freshDb();
  [ours, theirs] = [await makeHousehold(scratch.db), await makeHousehold(scratch.db)];
  theirRows = await scratch.db.inHousehold(theirs, (tx) => fillHousehold(tx, theirs));
});
afterAll(() => scratch.drop());

const refusal = (work: Promise<unknown>): Promise<string | undefined> =>
  work.then(
    () => "let through",
    (error: unknown) => ((error as Error).cause as { code?: string } | undefined)?.code ?? (error as { code?: string }).code,
  );
const rowsOf = (url: string, household: string) =>
  asSuperuser(url, async (client) => {
    const counts: Record<string, number> = {};
    for (const { name: table } of householdTables) {
      const { rows } = await client.query<{ n: number }>(`select count(*)::int as n from ${table} where household_id = $1`, [household]);
      counts[table] = rows[0]?.n ?? 0;
    }
    return counts;
  });

const ADDED_TO = new Set(["batches", "day_marks", "day_plans"]);

describe("a household", () => {
  it("has a row in every table that this file looks at", async () => {
    const counts = await rowsOf(scratch.url, theirs);
    expect(Object.values(counts).every((n) => n > 0)).toBe(true);
    expect(Object.keys(counts).length).toBeGreaterThanOrEqual(18);
  });

  it.each(householdTables)("sees nothing of another's in $name, nor changes or deletes it", async ({ name, table, householdId }) => {
    const before = await rowsOf(scratch.url, theirs);
    await scratch.db.inHousehold(ours, async (tx) => {
      const seen = await tx.select().from(table).where(eq(householdId, theirs));
      expect(seen).toEqual([]);
      if (table === picks) await tx.update(picks).set({ undoneAt: "2027-07-21T00:00:00Z" }).where(eq(picks.householdId, theirs));
      else if (table === movements) await tx.update(movements).set({ undoneAt: "2027-07-21T00:00:00Z" }).where(eq(movements.householdId, theirs));
      // of what is only added to, nothing but the undoing may be written
      else if (ADDED_TO.has(name)) expect((await tx.execute(sql`update ${table} set undone_at = now() where household_id = ${theirs}::uuid`)).rowCount).toBe(0);
      else {
        const changed = await tx.execute(sql`update ${table} set household_id = ${ours}::uuid where household_id = ${theirs}::uuid`);
        const deleted = await tx.execute(sql`delete from ${table} where household_id = ${theirs}::uuid`);
        expect([name, changed.rowCount, deleted.rowCount]).toEqual([name, 0, 0]);
      }
    });
    expect(await rowsOf(scratch.url, theirs)).toEqual(before);
    const undone = await scratch.db.inHousehold(theirs, async (tx) => [...(await tx.select({ at: picks.undoneAt }).from(picks)), ...(await tx.select({ at: movements.undoneAt }).from(movements))]);
    expect(undone).toEqual([{ at: null }, { at: null }]);
  });

  it("sees its own rows", async () => {
    const own = await scratch.db.inHousehold(theirs, (tx) => tx.select({ id: beds.id }).from(beds));
    expect(own).toEqual([{ id: theirRows.bedId }]);
  });

  it("cannot write a row under another's name", async () => {
    const bed = { householdId: theirs, id: randomUUID(), name: "Not mine", lengthM: 1, widthM: 1, cover: "open" };
    expect(await refusal(scratch.db.inHousehold(ours, (tx) => tx.insert(beds).values(bed)))).toBe(INSUFFICIENT_PRIVILEGE);
  });

  it("cannot hand a row of its own to another", async () => {
    const id = randomUUID();
    await scratch.db.inHousehold(ours, (tx) => tx.insert(beds).values({ householdId: ours, id, name: "Mine", lengthM: 1, widthM: 1, cover: "open" }));
    expect(await refusal(scratch.db.inHousehold(ours, (tx) => tx.update(beds).set({ householdId: theirs }).where(eq(beds.id, id))))).toBe(INSUFFICIENT_PRIVILEGE);
  });

  it("cannot point a row of its own at a row of another's", async () => {
    const sowing = { householdId: ours, id: randomUUID(), bedId: theirRows.bedId, crop: "tomato", method: "established", plants: 1 };
    expect(await refusal(scratch.db.inHousehold(ours, (tx) => tx.insert(sowings).values(sowing)))).toBe(FOREIGN_KEY_VIOLATION);
    const pick = { householdId: ours, id: randomUUID(), sowingId: theirRows.sowingId, pickedOn: "2027-07-20", grams: 1 };
    expect(await refusal(scratch.db.inHousehold(ours, (tx) => tx.insert(picks).values(pick)))).toBe(FOREIGN_KEY_VIOLATION);
    const line = { householdId: ours, id: randomUUID(), week: "2027-W30", recipeId: theirRows.recipeId, batches: 1 };
    expect(await refusal(scratch.db.inHousehold(ours, (tx) => tx.insert(planLines).values(line)))).toBe(FOREIGN_KEY_VIOLATION);
    const lot = { householdId: ours, id: randomUUID(), title: "Not mine", placeId: theirRows.placeId, madeOn: "2027-07-20" };
    expect(await refusal(scratch.db.inHousehold(ours, (tx) => tx.insert(lots).values(lot)))).toBe(FOREIGN_KEY_VIOLATION);
    const movement = { householdId: ours, id: randomUUID(), lotId: theirRows.lotId, kind: "put", on: "2027-07-20", grams: 1, amount: 1, countedIn: "grams" };
    expect(await refusal(scratch.db.inHousehold(ours, (tx) => tx.insert(movements).values(movement)))).toBe(FOREIGN_KEY_VIOLATION);
    const wish = { householdId: ours, id: randomUUID(), recipeId: theirRows.recipeId, portions: 1 };
    expect(await refusal(scratch.db.inHousehold(ours, (tx) => tx.insert(wishes).values(wish)))).toBe(FOREIGN_KEY_VIOLATION);
  });

  it("may use an id that another uses, and learns nothing from it", async () => {
    const third = await makeHousehold(scratch.db);
    await scratch.db.inHousehold(third, (tx) => fillHousehold(tx, third, theirRows));
    expect(await scratch.db.inHousehold(third, (tx) => tx.select({ id: beds.id }).from(beds))).toEqual([{ id: theirRows.bedId }]);
  });

  it("takes everything with it when it goes, and nothing of another's", async () => {
    const leaving = await makeHousehold(scratch.db);
    await scratch.db.inHousehold(leaving, (tx) => fillHousehold(tx, leaving));
    const before = await rowsOf(scratch.url, theirs);
    await scratch.db.inHousehold(leaving, (tx) => tx.delete(households).where(eq(households.householdId, leaving)));
    expect(new Set(Object.values(await rowsOf(scratch.url, leaving)))).toEqual(new Set([0]));
    expect(await rowsOf(scratch.url, theirs)).toEqual(before);
  });

  it("starts afresh when it is emptied", async () => {
    const afresh = await makeHousehold(scratch.db);
    const asNew = await rowsOf(scratch.url, afresh);
    await scratch.db.inHousehold(afresh, (tx) => fillHousehold(tx, afresh));
    await scratch.db.inHousehold(afresh, (tx) => emptyHousehold(tx, afresh));
    expect(await rowsOf(scratch.url, afresh)).toEqual(asNew);
  });
});

describe("outside every household", () => {
  it("the reference tables can be read and nothing else", async () => {
    await scratch.db.outside(async (tx) => {
      expect((await tx.select().from(crops)).length).toBeGreaterThan(50);
      for (const { table } of householdTables) expect(await tx.select().from(table)).toEqual([]);
    });
    expect(await refusal(scratch.db.outside((tx) => tx.delete(crops)))).toBe(INSUFFICIENT_PRIVILEGE);
    const bed = { householdId: ours, id: randomUUID(), name: "Nobody's", lengthM: 1, widthM: 1, cover: "open" };
    expect(await refusal(scratch.db.outside((tx) => tx.insert(beds).values(bed)))).toBe(INSUFFICIENT_PRIVILEGE);
  });

  it("a household that is no uuid shows nothing but an error", async () => {
    expect(await refusal(scratch.db.inHousehold("' or true --", (tx) => tx.select().from(beds)))).toBe("22P02");
  });
});

describe("a connection", () => {
  it("works as the app role inside the transaction, and keeps neither role nor household after it", async () => {
    const one = new pg.Pool({ connectionString: scratch.url, max: 1 });
    const client = await one.connect();
    const state = async () => (await client.query("select current_user::text as who, nullif(current_setting('app.household', true), '') as household")).rows[0] as unknown;
    const before = await state();
    await client.query("begin");
    await client.query("select set_config('role', $1, true), set_config('app.household', $2, true)", [APP_ROLE, theirs]);
    expect(await state()).toEqual({ who: APP_ROLE, household: theirs });
    await client.query("commit");
    expect(await state()).toEqual(before);
    await client.query("begin");
    await client.query("select set_config('role', $1, true)", [APP_ROLE]);
    // after the first transaction the setting is an empty string and no longer null: that must show nothing, not fail
    expect((await client.query("select from beds")).rowCount).toBe(0);
    await client.query("rollback");
    client.release();
    await one.end();
  });

  it("of twenty at once on one pool, each sees its own household only", async () => {
    const both = [ours, theirs];
    const asked = Array.from({ length: 20 }, (_, i) => both[i % 2] as string);
    const answers = await Promise.all(asked.map((household) => scratch.db.inHousehold(household, (tx) => tx.selectDistinct({ household: households.householdId }).from(households))));
    expect(answers).toEqual(asked.map((household) => [{ household }]));
  });
});
