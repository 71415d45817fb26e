import { randomUUID } from "node:crypto";
import { eq, sql } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Tx } from "#db/client.ts";
import { lots, movements } from "#db/schema/index.ts";
import { fillHousehold, newIds, type HouseholdRows } from "../support/database-rows.ts";
import { asSuperuser, freshDb, makeHousehold, type TestDb } from "../support/test-db.ts";

/** PostgreSQL manual, appendix "PostgreSQL Error Codes": insufficient_privilege, foreign_key_violation. */
const REFUSED = "42501";
const STILL_NEEDED = "23503";

let scratch: TestDb;
let household: string;
let rows: HouseholdRows;
beforeAll(async () => {
  scratch = await freshDb();
  household = await makeHousehold(scratch.db);
  rows = await scratch.db.inHousehold(household, (tx) => fillHousehold(tx, household));
});
afterAll(() => scratch.drop());

const attempt = (work: (tx: Tx) => Promise<unknown>, of = household): Promise<string | undefined> =>
  scratch.db.inHousehold(of, work).then(
    () => "done",
    (error: unknown) => ((error as Error).cause as { code?: string }).code,
  );

describe("a movement", () => {
  it.each([
    ["weigh otherwise", { grams: 900 }],
    ["count otherwise", { amount: 900 }],
    ["become another kind", { kind: "compost" }],
    ["move to another day", { on: "2027-07-21" }],
    ["move to another lot", { lotId: randomUUID() }],
    ["take another id", { id: randomUUID() }],
    ["claim another moment of writing", { recordedAt: "2020-01-01T00:00:00Z" }],
  ])("cannot %s once it is written", async (_what, change) => {
    expect(await attempt((tx) => tx.update(movements).set(change).where(eq(movements.id, rows.movementId)))).toBe(REFUSED);
  });

  it("cannot be deleted, alone or with all others", async () => {
    expect(await attempt((tx) => tx.delete(movements).where(eq(movements.id, rows.movementId)))).toBe(REFUSED);
    expect(await attempt((tx) => tx.execute(sql`truncate movements`))).toBe(REFUSED);
  });

  it("keeps its lot until it is undone, and goes with it then", async () => {
    const home = await makeHousehold(scratch.db);
    const { lotId, movementId } = await scratch.db.inHousehold(home, (tx) => fillHousehold(tx, home, newIds()));
    const take = (tx: Tx) => tx.delete(lots).where(eq(lots.id, lotId));
    expect(await attempt(take, home)).toBe(STILL_NEEDED);
    expect(await attempt((tx) => tx.update(movements).set({ undoneAt: sql`now()` }).where(eq(movements.id, movementId)), home)).toBe("done");
    expect(await attempt(take, home)).toBe("done");
    expect(await scratch.db.inHousehold(home, (tx) => tx.select().from(movements))).toEqual([]);
  });

  it("goes with its household whatever stands", async () => {
    const home = await makeHousehold(scratch.db);
    await scratch.db.inHousehold(home, (tx) => fillHousehold(tx, home, newIds()));
    const { rowCount } = await asSuperuser(scratch.url, (client) => client.query(`delete from households where household_id = '${home}'`));
    expect(rowCount).toBe(1);
  });
});
