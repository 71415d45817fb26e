import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Sowing } from "#shared/contracts/sowings.ts";
import { asSuperuser } from "#tests/support/test-db.ts";
import { badFields, putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let sowingId: string;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
  sowingId = await sow();
});
afterAll(() => stillroom.close());

const sow = async (more: object = {}) => putNew(stillroom, "sowings", { bedId: await putBed(stillroom), crop: "french-bean", method: "direct", sownOn: "2027-05-10", rowM: 6, ...more });
const put = (id: string, body: unknown) => stillroom.call("PUT", `/api/picks/${id}`, { body });
const pick = (more: object = {}) => ({ sowingId, pickedOn: "2027-07-20", grams: 800, ...more });
const count = () => asSuperuser(stillroom.test.url, async (client) => (await client.query<{ n: number }>("select count(*)::int as n from picks")).rows[0]?.n);

describe("a pick", () => {
  it("is written down once", async () => {
    const id = randomUUID();
    const made = await put(id, pick({ pieces: 120 }));
    expect([made.statusCode, made.headers.location]).toEqual([201, `/api/picks/${id}`]);
    expect(made.json()).toEqual({ id, crop: "french-bean", ...pick({ pieces: 120 }), undone: false });
    const again = await put(id, { grams: 800, pieces: 120, pickedOn: "2027-07-20", sowingId: sowingId.toUpperCase() });
    expect([again.statusCode, again.json()]).toEqual([200, made.json()]);
    for (const other of [pick({ pieces: 121 }), pick(), pick({ pieces: 120, grams: 801 })]) expect((await put(id, other)).statusCode).toBe(409);
    expect((await stillroom.call("GET", `/api/picks/${id}`)).json()).toEqual(made.json());
  });

  it("has one effect under ten parallel sends, and one winner when two bodies meet", async () => {
    const before = await count();
    const id = randomUUID();
    const same = await Promise.all(Array.from({ length: 10 }, () => put(id, pick())));
    expect(same.map((answer) => answer.statusCode).sort()).toEqual([...Array<number>(9).fill(200), 201]);
    const contested = randomUUID();
    const mixed = await Promise.all(Array.from({ length: 10 }, (_, i) => put(contested, pick({ grams: 100 + (i % 2) }))));
    const by = (status: number) => mixed.filter((answer) => answer.statusCode === status).length;
    expect([by(201), by(200), by(409)]).toEqual([1, 4, 5]);
    expect(await count()).toBe((before ?? 0) + 2);
  });

  it("is undone, its row stays, and undoing again changes nothing", async () => {
    const sowing = await sow();
    const id = await putNew(stillroom, "picks", pick({ sowingId: sowing }));
    const grams = async () => (await stillroom.call("GET", `/api/sowings/${sowing}`)).json<Sowing>().pickedGrams;
    const ids = async (question: string) => (await stillroom.call("GET", `/api/picks?${question}`)).json<{ id: string }[]>().map((one) => one.id);
    expect(await grams()).toBe(800);
    expect(await ids(`sowingId=${sowing}`)).toEqual([id]);
    expect((await stillroom.call("DELETE", `/api/picks/${id}`)).statusCode).toBe(204);
    const first = (await stillroom.call("GET", `/api/picks/${id}`)).json<unknown>();
    expect(first).toMatchObject({ undone: true });
    expect((await stillroom.call("DELETE", `/api/picks/${id}`)).statusCode).toBe(204);
    expect(await grams()).toBe(0);
    expect(await ids(`sowingId=${sowing}`)).toEqual([]);
    expect(await ids(`sowingId=${sowing}&undone=true`)).toEqual([id]);
    // the page that sends it once more after all gets what is stored
    const again = await put(id, pick({ sowingId: sowing }));
    expect([again.statusCode, again.json()]).toEqual([200, first]);
    expect(await grams()).toBe(0);
    expect((await stillroom.call("DELETE", `/api/picks/${randomUUID()}`)).statusCode).toBe(404);
  });

  it("is listed by day, the end excluded", async () => {
    const sowing = await sow();
    for (const pickedOn of ["2027-07-03", "2027-07-01", "2027-07-02"]) await putNew(stillroom, "picks", pick({ sowingId: sowing, pickedOn }));
    const days = async (question: string) => (await stillroom.call("GET", `/api/picks?sowingId=${sowing}&${question}`)).json<{ pickedOn: string }[]>().map((one) => one.pickedOn);
    expect(await days("")).toEqual(["2027-07-01", "2027-07-02", "2027-07-03"]);
    expect(await days("from=2027-07-02&until=2027-07-03")).toEqual(["2027-07-02"]);
  });

  it.each([
    ["before its sowing", { pickedOn: "2027-05-09" }, ["pickedOn"]],
    ["of tomorrow", { pickedOn: "2027-07-27" }, ["pickedOn"]],
    ["on 31 April", { pickedOn: "2027-04-31" }, ["pickedOn"]],
    ["of negative grams", { grams: -5 }, ["grams"]],
    ["of nothing", { grams: 0 }, ["grams"]],
    ["of half a gram", { grams: 0.5 }, ["grams"]],
    ["of a sowing that is not there", { sowingId: randomUUID() }, ["sowingId"]],
    ["with an unknown field", { kilos: 1 }, ["kilos"]],
    ["of no pieces", { pieces: 0 }, ["pieces"]],
  ])("%s is refused, and nothing is stored", async (_what, fault, paths) => {
    const before = await count();
    const refused = await put(randomUUID(), pick(fault));
    expect([refused.statusCode, badFields(refused)]).toEqual([400, paths]);
    expect(await count()).toBe(before);
  });

  it("of a transplant is not older than its planting out", async () => {
    const leeks = await sow({ crop: "leek", method: "transplant", sownOn: "2027-02-20", plantedOutOn: "2027-05-25" });
    expect(badFields(await put(randomUUID(), pick({ sowingId: leeks, pickedOn: "2027-05-24" })))).toEqual(["pickedOn"]);
    expect((await put(randomUUID(), pick({ sowingId: leeks, pickedOn: "2027-05-25" }))).statusCode).toBe(201);
  });

  it("keeps its sowing: it can be neither taken out nor moved to a later day, until it is undone", async () => {
    const sowing = await sow();
    const id = await putNew(stillroom, "picks", pick({ sowingId: sowing, pickedOn: "2027-07-01" }));
    expect((await stillroom.call("DELETE", `/api/sowings/${sowing}`)).statusCode).toBe(409);
    const stored = await stillroom.call("GET", `/api/sowings/${sowing}`);
    const { bedId, crop, method, rowM } = stored.json<Sowing>();
    const body = { bedId, crop, method, rowM, sownOn: "2027-07-02" };
    const moved = await stillroom.call("PUT", `/api/sowings/${sowing}`, { body, headers: { "if-match": String(stored.headers.etag) } });
    expect([moved.statusCode, badFields(moved)]).toEqual([409, ["sownOn"]]);
    await stillroom.call("DELETE", `/api/picks/${id}`);
    expect((await stillroom.call("PUT", `/api/sowings/${sowing}`, { body, headers: { "if-match": String(stored.headers.etag) } })).statusCode).toBe(200);
    // nothing that was picked stands any more, so the sowing goes, and the undone pick with it
    expect((await stillroom.call("DELETE", `/api/sowings/${sowing}`)).statusCode).toBe(204);
    expect((await stillroom.call("GET", `/api/picks/${id}`)).statusCode).toBe(404);
  });
});
