import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { householdTables } from "../support/database-rows.ts";
import { inspectWall } from "../support/database-wall.ts";
import { asSuperuser, freshDb, type TestDb } from "../support/test-db.ts";

let scratch: TestDb;
beforeAll(async () => {
  scratch = await freshDb();
});
afterAll(() => scratch.drop());

describe("the wall between households", () => {
  it("stands around every table that carries a household", async () => {
    const { tables, faults } = await asSuperuser(scratch.url, inspectWall);
    expect(faults).toEqual([]);
    expect(tables).toEqual(householdTables.map(({ name }) => name));
    expect(tables.length).toBeGreaterThanOrEqual(18);
  });
});

const OWN = "household_id = nullif(current_setting('app.household', true), '')::uuid";
/** A table that keeps every rule; each case below breaks one of them. */
const GOOD = [
  "create table trugs (household_id uuid not null references households on delete cascade, id uuid not null, sowing_id uuid, primary key (household_id, id))",
  "alter table trugs enable row level security",
  "alter table trugs force row level security",
  `create policy trugs_wall on trugs using (${OWN}) with check (${OWN})`,
];

const BAD: [what: string, statements: string[], complaint: RegExp][] = [
  ["household_id may be null", ["alter table trugs drop constraint trugs_pkey", "alter table trugs alter household_id drop not null"], /trugs: household_id must be a uuid that is never null/],
  ["no primary key", ["alter table trugs drop constraint trugs_pkey"], /trugs: needs a primary key/],
  ["the household second in the primary key", ["alter table trugs drop constraint trugs_pkey", "alter table trugs add primary key (id, household_id)"], /trugs: needs a primary key that begins with household_id/],
  ["a unique index over all households", ["create unique index trugs_sowing on trugs (sowing_id)"], /trugs\.trugs_sowing: every unique index/],
  ["the household second in a unique index", ["create unique index trugs_sowing on trugs (sowing_id, household_id)"], /trugs\.trugs_sowing: every unique index/],
  ["row security off", ["alter table trugs disable row level security"], /trugs: row security must be enabled/],
  ["row security not forced", ["alter table trugs no force row level security"], /trugs: row security must be forced/],
  ["no policy", ["drop policy trugs_wall on trugs"], /trugs: needs a policy/],
  ["a policy for reading only", ["drop policy trugs_wall on trugs", `create policy trugs_wall on trugs for select using (${OWN})`], /trugs\.trugs_wall: a policy must hold/],
  ["no check on what is written", ["drop policy trugs_wall on trugs", `create policy trugs_wall on trugs using (${OWN})`], /trugs\.trugs_wall: a policy must hold/],
  ["a check that lets everything in", ["drop policy trugs_wall on trugs", `create policy trugs_wall on trugs using (${OWN}) with check (true)`], /trugs\.trugs_wall: a policy must hold/],
  ["a second, wider policy", ["create policy open_house on trugs using (true) with check (true)"], /trugs\.open_house: a policy must hold/],
  ["a policy for one role only", ["drop policy trugs_wall on trugs", `create policy trugs_wall on trugs to stillroom_app using (${OWN}) with check (${OWN})`], /trugs\.trugs_wall: a policy must hold/],
  [
    "a reference without the household",
    ["create table crates (household_id uuid not null, id uuid primary key)", "alter table trugs add constraint trugs_crate foreign key (sowing_id) references crates (id)"],
    /trugs\.trugs_crate: a reference to a household table must carry household_id/,
  ],
  [
    "a reference with the household in another place",
    ["alter table trugs add constraint trugs_sowing foreign key (sowing_id, household_id) references sowings (household_id, id)"],
    /trugs\.trugs_sowing: a reference to a household table must carry household_id/,
  ],
  ["no reference to households", ["alter table trugs drop constraint trugs_household_id_fkey"], /trugs: must refer to households/],
  [
    "a household that cannot go",
    ["alter table trugs drop constraint trugs_household_id_fkey", "alter table trugs add foreign key (household_id) references households"],
    /trugs: must refer to households and go with its household/,
  ],
  ["reference rows that the app may change", ["grant insert on crops to stillroom_app"], /crops: a table of no household must be read-only/],
  ["one reference column that the app may change", ["grant update (facts) on crops to stillroom_app"], /crops: a table of no household must be read-only/],
  [
    "a table of no household that points at a household's row",
    ["create table notices (id uuid primary key, household uuid, bed uuid, constraint notices_bed foreign key (household, bed) references beds (household_id, id))"],
    /notices\.notices_bed: a reference from a table of no household/,
  ],
  ["a table that the app may truncate", ["grant truncate on trugs to stillroom_app"], /trugs: the app role must not empty/],
  ["a table that the app owns", ["alter table trugs owner to stillroom_app"], /trugs: the app role must not own/],
  ["an app role in another role", ["create role stillroom_test_reader nologin", "grant stillroom_test_reader to stillroom_app"], /stillroom_test_reader: the app role must not be a member/],
  ["an app role that bypasses", ["alter role stillroom_app bypassrls"], /stillroom_app: the app role must not bypass/],
  ["a view that reads as its owner", ["create view all_lots as select * from trugs"], /all_lots: a view reads as its owner/],
  ["a function that acts as its owner", ["create function peek() returns bigint language sql security definer as 'select count(*) from trugs'"], /peek: a security definer function/],
];

describe("the inspector of the wall", () => {
  const inspectAfter = (statements: readonly string[]) =>
    asSuperuser(scratch.url, async (client) => {
      // rolled back, so that each case starts from the same database; roles come back as well
      await client.query("begin");
      for (const statement of [...GOOD, ...statements]) await client.query(statement);
      const { faults } = await inspectWall(client);
      await client.query("rollback");
      return faults;
    });

  it("finds nothing wrong with a new table that keeps the rules", async () => {
    expect(await inspectAfter([])).toEqual([]);
  });

  it.each(BAD)("refuses %s", async (_what, statements, complaint) => {
    expect((await inspectAfter(statements)).join("\n")).toMatch(complaint);
  });
});
