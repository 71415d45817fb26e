import { randomUUID } from "node:crypto";
import { eq, sql } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Tx } from "#db/client.ts";
import { picks } from "#db/schema/index.ts";
import { fillHousehold, type HouseholdRows } from "../support/database-rows.ts";
import { freshDb, makeHousehold, type TestDb } from "../support/test-db.ts";

/** PostgreSQL manual, appendix "PostgreSQL Error Codes": insufficient_privilege. */
const REFUSED = "42501";

let scratch: TestDb;
let household: string;
let rows: HouseholdRows;
beforeAll(async () => {
  scratch = await freshDb();
  household = await makeHousehold(scratch.db);
  rows = await scratch.db.inHousehold(household, (tx) => fillHousehold(tx, household));
});
afterAll(() => scratch.drop());

const attempt = (work: (tx: Tx) => Promise<unknown>): Promise<string | undefined> =>
  scratch.db.inHousehold(household, work).then(
    () => "done",
    (error: unknown) => ((error as Error).cause as { code?: string }).code,
  );

describe("a pick", () => {
  it.each([
    ["weigh otherwise", { grams: 900 }],
    ["move to another day", { pickedOn: "2027-07-21" }],
    ["count otherwise", { pieces: 3 }],
    ["move to another sowing", { sowingId: randomUUID() }],
    ["take another id", { id: randomUUID() }],
    ["move to another household", { householdId: randomUUID() }],
    ["claim another moment of writing", { recordedAt: "2020-01-01T00:00:00Z" }],
  ])("cannot %s once it is written", async (_what, change) => {
    expect(await attempt((tx) => tx.update(picks).set(change).where(eq(picks.id, rows.pickId)))).toBe(REFUSED);
  });

  it("cannot be deleted, alone or with all others", async () => {
    expect(await attempt((tx) => tx.delete(picks).where(eq(picks.id, rows.pickId)))).toBe(REFUSED);
    expect(await attempt((tx) => tx.execute(sql`truncate picks`))).toBe(REFUSED);
  });

  it("cannot be overwritten by putting it again", async () => {
    const again = { householdId: household, id: rows.pickId, sowingId: rows.sowingId, pickedOn: "2027-07-20", grams: 999 };
    expect(await attempt((tx) => tx.insert(picks).values(again).onConflictDoUpdate({ target: [picks.householdId, picks.id], set: { grams: 999 } }))).toBe(REFUSED);
  });

  it("can be undone, and then is as it was but for the mark", async () => {
    const held = () => scratch.db.inHousehold(household, (tx) => tx.select().from(picks).where(eq(picks.id, rows.pickId)));
    const [before] = await held();
    expect(before).toMatchObject({ grams: 450, pickedOn: "2027-07-20", undoneAt: null });
    expect(await attempt((tx) => tx.update(picks).set({ undoneAt: sql`now()` }).where(eq(picks.id, rows.pickId)))).toBe("done");
    const [after] = await held();
    expect(after?.undoneAt).not.toBeNull();
    expect({ ...after, undoneAt: null }).toEqual(before);
  });
});
