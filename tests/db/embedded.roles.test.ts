import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openDb } from "#db/client.ts";
import { startThrowAway, type LocalServer } from "#db/local.ts";
import { migrate } from "#db/migrate.ts";
import { seed } from "#db/seed.ts";
import { fillHousehold } from "../support/database-rows.ts";
import { inspectWall } from "../support/database-wall.ts";
import { onServer, urlOf } from "../support/database-setup.ts";
import { asSuperuser, makeHousehold } from "../support/test-db.ts";

/** A server of its own: the app role belongs to a whole server, and here nobody has made it yet. */
let server: LocalServer;
const databases = Array.from({ length: 6 }, (_, i) => `garden_${i}`);
const asOwner = (database: string) => {
  const url = new URL(urlOf(server.url, database));
  url.username = "plain_owner";
  url.password = "invented";
  return url.href;
};
beforeAll(async () => {
  server = await startThrowAway();
  await onServer(server.url, "create role plain_owner login createrole password 'invented'");
  for (const database of databases) await onServer(server.url, `create database ${database} owner plain_owner`);
});
afterAll(() => server.stop());

describe("an owner who is no superuser", () => {
  it("migrates six databases of one server at once, and the app role is made once", async () => {
    await Promise.all(databases.flatMap((database) => [migrate(asOwner(database)), migrate(asOwner(database))]));
    for (const database of databases) expect((await asSuperuser(urlOf(server.url, database), inspectWall)).faults).toEqual([]);
    const { rows } = await asSuperuser(server.url, (client) => client.query("select count(*)::int as n from pg_roles where rolname = 'stillroom_app'"));
    expect(rows).toEqual([{ n: 1 }]);
  });

  it("becomes the app role, sets up a household, and is walled off from it by the forced policies", async () => {
    const [database = ""] = databases;
    await seed(asOwner(database));
    const db = openDb(asOwner(database), "server");
    const household = await makeHousehold(db);
    await db.inHousehold(household, (tx) => fillHousehold(tx, household));
    await db.close();
    const count = (url: string) => asSuperuser(url, async (client) => (await client.query<{ n: number }>("select count(*)::int as n from beds")).rows[0]?.n);
    expect(await count(asOwner(database))).toBe(0);
    expect(await count(urlOf(server.url, database))).toBe(1);
  });

  it("keeps a crop that a sowing it cannot see still holds", async () => {
    const [database = ""] = databases;
    const { keptCrops } = await seed(asOwner(database), "/nowhere");
    expect(keptCrops).toEqual(["tomato"]);
  });

  it("is told when somebody gave the app role powers that it must not have", async () => {
    await onServer(server.url, "create database careless owner plain_owner");
    await onServer(server.url, "alter role stillroom_app bypassrls");
    await expect(migrate(asOwner("careless"))).rejects.toThrow(/stillroom_app must not log in, be a superuser or bypass row security/);
    await onServer(server.url, "alter role stillroom_app nobypassrls");
    await migrate(asOwner("careless"));
  });
});
