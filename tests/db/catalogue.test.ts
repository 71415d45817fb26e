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
    expect(tables.length).toBeGreaterThanOrEqual(11);
  });
});

const OWN = "household_id = nullif(current_setting('app.household', true), '')::uuid";
/** A table that keeps every rule; each case below breaks one of them. */
const GOOD = [
  "create table lots (household_id uuid not null references households on delete cascade, id uuid not null, sowing_id uuid, primary key (household_id, id))",
  "alter table lots enable row level security",
  "alter table lots force row level security",
  `create policy lots_wall on lots using (${OWN}) with check (${OWN})`,
];

const BAD: [what: string, statements: string[], complaint: RegExp][] = [
  ["household_id may be null", ["alter table lots drop constraint lots_pkey", "alter table lots alter household_id drop not null"], /lots: household_id must be a uuid that is never null/],
  ["no primary key", ["alter table lots drop constraint lots_pkey"], /lots: needs a primary key/],
  ["the household second in the primary key", ["alter table lots drop constraint lots_pkey", "alter table lots add primary key (id, household_id)"], /lots: needs a primary key that begins with household_id/],
  ["a unique index over all households", ["create unique index lots_sowing on lots (sowing_id)"], /lots\.lots_sowing: every unique index/],
  ["the household second in a unique index", ["create unique index lots_sowing on lots (sowing_id, household_id)"], /lots\.lots_sowing: every unique index/],
  ["row security off", ["alter table lots disable row level security"], /lots: row security must be enabled/],
  ["row security not forced", ["alter table lots no force row level security"], /lots: row security must be forced/],
  ["no policy", ["drop policy lots_wall on lots"], /lots: needs a policy/],
  ["a policy for reading only", ["drop policy lots_wall on lots", `create policy lots_wall on lots for select using (${OWN})`], /lots\.lots_wall: a policy must hold/],
  ["no check on what is written", ["drop policy lots_wall on lots", `create policy lots_wall on lots using (${OWN})`], /lots\.lots_wall: a policy must hold/],
  ["a check that lets everything in", ["drop policy lots_wall on lots", `create policy lots_wall on lots using (${OWN}) with check (true)`], /lots\.lots_wall: a policy must hold/],
  ["a second, wider policy", ["create policy open_house on lots using (true) with check (true)"], /lots\.open_house: a policy must hold/],
  ["a policy for one role only", ["drop policy lots_wall on lots", `create policy lots_wall on lots to stillroom_app using (${OWN}) with check (${OWN})`], /lots\.lots_wall: a policy must hold/],
  [
    "a reference without the household",
    ["create table crates (household_id uuid not null, id uuid primary key)", "alter table lots add constraint lots_crate foreign key (sowing_id) references crates (id)"],
    /lots\.lots_crate: a reference to a household table must carry household_id/,
  ],
  [
    "a reference with the household in another place",
    ["alter table lots add constraint lots_sowing foreign key (sowing_id, household_id) references sowings (household_id, id)"],
    /lots\.lots_sowing: a reference to a household table must carry household_id/,
  ],
  ["no reference to households", ["alter table lots drop constraint lots_household_id_fkey"], /lots: must refer to households/],
  [
    "a household that cannot go",
    ["alter table lots drop constraint lots_household_id_fkey", "alter table lots add foreign key (household_id) references households"],
    /lots: must refer to households and go with its household/,
  ],
  ["reference rows that the app may change", ["grant insert on crops to stillroom_app"], /crops: a table of no household must be read-only/],
  ["one reference column that the app may change", ["grant update (facts) on crops to stillroom_app"], /crops: a table of no household must be read-only/],
  [
    "a table of no household that points at a household's row",
    ["create table notices (id uuid primary key, household uuid, bed uuid, constraint notices_bed foreign key (household, bed) references beds (household_id, id))"],
    /notices\.notices_bed: a reference from a table of no household/,
  ],
  ["a table that the app may truncate", ["grant truncate on lots to stillroom_app"], /lots: the app role must not empty/],
  ["a table that the app owns", ["alter table lots owner to stillroom_app"], /lots: the app role must not own/],
  ["an app role in another role", ["create role stillroom_test_reader nologin", "grant stillroom_test_reader to stillroom_app"], /stillroom_test_reader: the app role must not be a member/],
  ["an app role that bypasses", ["alter role stillroom_app bypassrls"], /stillroom_app: the app role must not bypass/],
  ["a view that reads as its owner", ["create view all_lots as select * from lots"], /all_lots: a view reads as its owner/],
  ["a function that acts as its owner", ["create function peek() returns bigint language sql security definer as 'select count(*) from lots'"], /peek: a security definer function/],
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
