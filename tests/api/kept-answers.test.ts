/** Answers are kept in memory: none may be older than what is stored, whoever stored it. A second service on the same database answers from nothing kept. */
import { randomUUID } from "node:crypto";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { keptUpTo } from "#server/facts/kept.ts";
import { putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";
import { asSuperuser } from "#tests/support/test-db.ts";

let ours: TestApp;
let bedId: string;
let beans: string;
let pickId: string;
let recipeId: string;
let cookDayId: string;
let planLineId: string;
beforeAll(async () => {
  ours = await testApp();
  await settle(ours);
  bedId = await putBed(ours);
  beans = await putNew(ours, "sowings", { bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-10", rowM: 6 });
  pickId = await putNew(ours, "picks", { sowingId: beans, pickedOn: "2027-07-20", grams: 400 });
  recipeId = await putNew(ours, "recipes", {
    title: "Beans with garlic", way: "cook", makes: { amount: 4, unit: "portions" },
    ingredients: [{ text: "500 g French beans", crop: "french-bean" }],
    steps: [{ id: "boil", text: "Boil the beans.", handsOnMin: 10, handsOffMin: 10, needs: { burners: 1 }, after: [] }],
    keeps: [{ place: "freezer", days: 90 }],
  });
  planLineId = await putNew(ours, "plan-lines", { week: "2027-W31", recipeId, batches: 1 });
  cookDayId = await putNew(ours, "cook-days", { on: "2027-07-31", startsAt: "09:00", cooks: 1, kitchen: { ovens: [], burners: 2 }, dishes: [{ recipeId, batches: 1 }] });
});
afterAll(() => ours.close());

const reads = (): string[] => [
  "/api/calendar", "/api/calendar?asOf=2027-07-10&from=2027-W20&weeks=20", "/api/today", "/api/today?asOf=2027-07-19", "/api/sowings", "/api/sowings?asOf=2027-07-10",
  `/api/sowings/${beans}`, `/api/sowings/${beans}/forecast`, `/api/sowings/${beans}/forecast?asOf=2027-07-10`, "/api/beds", `/api/beds/${bedId}`, "/api/cook-days", `/api/cook-days/${cookDayId}`,
  "/api/household", "/api/weather", "/api/picks", "/api/picks?undone=true", `/api/picks/${pickId}`, "/api/plan-lines", `/api/plan-lines/${planLineId}`, "/api/recipes", `/api/recipes/${recipeId}`,
];
const answersOf = async (of: TestApp): Promise<Map<string, string>> => {
  const answers = new Map<string, string>();
  for (const address of reads()) answers.set(address, (await of.call("GET", address)).body);
  return answers;
};

/** Statements of another connection, as another program would send them, and reads that must say something else after. */
const WRITES: [what: string, statement: () => string, changes: () => string[]][] = [
  ["a pick undone", () => `update picks set undone_at = now() where id = '${pickId}'`, () => [`/api/sowings/${beans}`, "/api/calendar", "/api/picks", "/api/picks?undone=true", `/api/picks/${pickId}`]],
  ["a pick written down", () => `insert into picks (household_id, id, sowing_id, picked_on, grams) values ('${ours.householdId}', '${randomUUID()}', '${beans}', '2027-07-21', 900)`, () => [`/api/sowings/${beans}`, "/api/calendar", "/api/sowings"]],
  ["a sighting", () => `insert into sightings (household_id, id, sowing_id, stage, seen_on) values ('${ours.householdId}', '${randomUUID()}', '${beans}', 'flowering', '2027-06-28')`, () => [`/api/sowings/${beans}`]],
  ["a longer row", () => `update sowings set row_m = 9, version = version + 1 where id = '${beans}'`, () => [`/api/sowings/${beans}`, `/api/sowings/${beans}/forecast`, "/api/calendar", `/api/beds/${bedId}`]],
  ["a bed made longer", () => `update beds set length_m = 20, version = version + 1 where id = '${bedId}'`, () => [`/api/beds/${bedId}`, "/api/beds"]],
  ["warmer weather", () => `insert into weather_days select '${ours.householdId}', d::date, 290, 170 from generate_series('2027-05-01'::date, '2027-07-25', '1 day') d`, () => [`/api/sowings/${beans}/forecast?asOf=2027-07-10`, "/api/calendar?asOf=2027-07-10&from=2027-W20&weeks=20", "/api/weather"]],
  ["other normals", () => `update households set normals = null where household_id = '${ours.householdId}'`, () => [`/api/sowings/${beans}/forecast`, "/api/weather"]],
  ["more at table", () => `update households set people = 6 where household_id = '${ours.householdId}'`, () => ["/api/calendar", "/api/household"]],
  ["a way chosen twice", () => `update plan_lines set batches = 2 where household_id = '${ours.householdId}'`, () => ["/api/calendar", "/api/plan-lines", `/api/plan-lines/${planLineId}`]],
  ["a recipe's title", () => `update recipes set title = 'Beans without garlic' where id = '${recipeId}'`, () => [`/api/cook-days/${cookDayId}`, "/api/cook-days", "/api/calendar", "/api/recipes", `/api/recipes/${recipeId}`, `/api/plan-lines/${planLineId}`]],
  ["what was seen taken back", () => `delete from sightings where sowing_id = '${beans}'`, () => [`/api/sowings/${beans}`]],
];

describe("answers that are kept", () => {
  it.each(WRITES)("follow %s by another connection, and say what a service says that has kept nothing", async (_what, statement, changes) => {
    const before = await answersOf(ours);
    // asked again, so that what is compared below comes from what was kept
    expect(await answersOf(ours)).toEqual(before);
    await asSuperuser(ours.test.url, (client) => client.query(statement()));
    const after = await answersOf(ours);
    expect(after).toEqual(await answersOf(await ours.as(ours.householdId)));
    expect(changes().filter((address) => after.get(address) === before.get(address))).toEqual([]);
  });

  it("follow a change through another service on the same database at once", async () => {
    const other = await ours.as(ours.householdId);
    for (const rowM of [3, 4, 5, 6]) {
      const { etag } = (await ours.call("GET", `/api/sowings/${beans}`)).headers;
      const body = { bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-10", rowM };
      expect((await other.call("PUT", `/api/sowings/${beans}`, { body, headers: { "if-match": String(etag) } })).statusCode).toBe(200);
      expect((await ours.call("GET", `/api/sowings/${beans}`)).json<{ rowM: number }>().rowM).toBe(rowM);
    }
  });

  it("are each household's own", async () => {
    const theirs = await ours.as();
    expect((await theirs.call("GET", `/api/sowings/${beans}`)).statusCode).toBe(404);
    expect((await theirs.call("GET", "/api/beds")).json()).toEqual([]);
  });

  it("come packed to whoever takes them packed, and are the same", async () => {
    const plain = await ours.call("GET", "/api/calendar");
    const ask = async (encoding: string) => ours.call("GET", "/api/calendar", { headers: { "accept-encoding": encoding } });
    const [gzip, brotli, refused] = [await ask("gzip"), await ask("gzip, br"), await ask("br;q=0, identity")];
    expect([gzip, brotli, refused].map(({ headers }) => headers["content-encoding"])).toEqual(["gzip", "br", undefined]);
    expect(gunzipSync(gzip.rawPayload).toString()).toBe(plain.body);
    expect(brotliDecompressSync(brotli.rawPayload).toString()).toBe(plain.body);
    expect(refused.body).toBe(plain.body);
    expect(brotli.rawPayload.byteLength).toBeLessThan(plain.rawPayload.byteLength / 4);
    expect([plain, gzip, brotli].map(({ headers }) => headers.vary)).toEqual(["accept-encoding", "accept-encoding", "accept-encoding"]);
  });
});

describe("what is not kept as it was sent", () => {
  it("is packed as well, and a small answer is not", async () => {
    const packed = await ours.call("GET", "/api/crops", { headers: { "accept-encoding": "gzip" } });
    expect(packed.headers["content-encoding"]).toBe("gzip");
    expect(JSON.parse(gunzipSync(packed.rawPayload).toString())).toEqual((await ours.call("GET", "/api/crops")).json());
    expect((await ours.call("GET", "/api/health", { headers: { "accept-encoding": "gzip" } })).headers["content-encoding"]).toBeUndefined();
  });
});

describe("a read that names the tag it has", () => {
  it.each(["/api/calendar", "/api/crops", "/api/household", "/api/sowings", "/api/recipes"])("of %s is told that nothing is new", async (address) => {
    const first = await ours.call("GET", address);
    const tag = String(first.headers.etag);
    for (const sent of [tag, `W/${tag}`, `"other", ${tag}`, "*"]) {
      const again = await ours.call("GET", address, { headers: { "if-none-match": sent, "accept-encoding": "gzip" } });
      expect([sent, again.statusCode, again.body, again.headers.etag]).toEqual([sent, 304, "", tag]);
    }
    expect((await ours.call("GET", address, { headers: { "if-none-match": '"other"' } })).statusCode).toBe(200);
  });

  it("gets the version that If-Match takes", async () => {
    const { headers } = await ours.call("GET", `/api/beds/${bedId}`, { headers: { "accept-encoding": "gzip" } });
    const body = { name: "Long bed by the wall", lengthM: 12, widthM: 1.2, cover: "open" };
    expect((await ours.call("PUT", `/api/beds/${bedId}`, { body, headers: { "if-match": String(headers.etag) } })).statusCode).toBe(200);
    expect((await ours.call("GET", `/api/beds/${bedId}`, { headers: { "if-none-match": String(headers.etag) } })).statusCode).toBe(200);
  });

  it("changes nothing for writes and for refusals", async () => {
    const missing = await ours.call("GET", `/api/beds/${randomUUID()}`, { headers: { "if-none-match": "*" } });
    expect([missing.statusCode, missing.headers.etag]).toEqual([404, undefined]);
    const written = await ours.call("PUT", `/api/beds/${randomUUID()}`, { body: { name: "New", lengthM: 2, widthM: 1, cover: "open" }, headers: { "if-none-match": "*" } });
    expect(written.statusCode).toBe(201);
  });
});

describe("the shelf of what is kept", () => {
  it("holds so many bytes and lets go of what was asked for longest ago", () => {
    const kept = keptUpTo<string>(100);
    const at = (name: string, stamp: string | null = "s") => ({ name, stamp });
    for (const name of ["a", "b", "c"]) kept.keep(at(name), name, 30);
    expect(kept.find(at("a"))).toBe("a");
    kept.keep(at("d"), "d", 30);
    expect(["a", "b", "c", "d"].map((name) => kept.find(at(name)))).toEqual(["a", undefined, "c", "d"]);
    expect(kept.bytes).toBe(90);
    kept.keep(at("e"), "e", 101);
    expect([kept.find(at("e")), kept.bytes]).toEqual([undefined, 90]);
  });

  it("gives nothing for another stamp, and keeps one value for a name", () => {
    const kept = keptUpTo<string>(100);
    kept.keep({ name: "a", stamp: "1" }, "old", 40);
    expect(kept.find({ name: "a", stamp: "2" })).toBeUndefined();
    kept.keep({ name: "a", stamp: "2" }, "new", 50);
    expect([kept.find({ name: "a", stamp: "1" }), kept.find({ name: "a", stamp: "2" }), kept.bytes]).toEqual([undefined, "new", 50]);
    kept.keep({ name: "b", stamp: null }, "never", 10);
    expect([kept.find({ name: "b", stamp: null }), kept.bytes]).toEqual([undefined, 50]);
  });
});
