import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Larder } from "#shared/contracts/larder.ts";
import type { Lot, MovementOfLot } from "#shared/contracts/lots.ts";
import type { Problem } from "#shared/contracts/problem.ts";
import { asSuperuser } from "#tests/support/test-db.ts";
import { badFields, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let drawer: string;
let other: string;
let fridge: string;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
  drawer = await putNew(stillroom, "places", { name: "Drawer 1", kind: "freezer", litres: 45 });
  other = await putNew(stillroom, "places", { name: "Drawer 2", kind: "freezer", litres: 45 });
  fridge = await putNew(stillroom, "places", { name: "Fridge", kind: "fridge" });
});
afterAll(() => stillroom.close());

const putLot = (more: object = {}): Promise<string> => putNew(stillroom, "lots", { title: "Tomatoes", crop: "tomato", placeId: fridge, madeOn: "2027-07-20", ...more });
const soup = (more: object = {}): Promise<string> => putLot({ title: "Soup", crop: undefined, placeId: drawer, ...more });
const send = (lot: string, body: object, id: string = randomUUID()) => stillroom.call("PUT", `/api/lots/${lot}/movements/${id}`, { body: { on: "2027-07-21", ...body } });
const must = async (lot: string, body: object, id: string = randomUUID()): Promise<MovementOfLot> => {
  const answer = await send(lot, body, id);
  if (answer.statusCode !== 201) throw new Error(`${answer.statusCode} ${answer.body}`);
  return answer.json<MovementOfLot>();
};
const read = async (lot: string): Promise<Lot> => (await stillroom.call("GET", `/api/lots/${lot}`)).json<Lot>();
const larder = async (): Promise<Larder> => (await stillroom.call("GET", "/api/larder")).json<Larder>();
const count = () => asSuperuser(stillroom.test.url, async (client) => (await client.query<{ n: number }>("select count(*)::int as n from movements")).rows[0]?.n);

describe("a lot", () => {
  it("is put down without an amount, and shows the sum of its movements", async () => {
    const id = randomUUID();
    const body = { title: "Tomatoes", crop: "tomato", placeId: fridge, madeOn: "2027-07-20" };
    const made = await stillroom.call("PUT", `/api/lots/${id}`, { body });
    expect([made.statusCode, made.headers.location]).toEqual([201, `/api/lots/${id}`]);
    expect(made.json<Lot>()).toMatchObject({ id, ...body, grams: 0, state: "not put in yet", movements: [] });
    expect((await stillroom.call("PUT", `/api/lots/${id}`, { body })).statusCode).toBe(200);
    await must(id, { kind: "put", grams: 5000 });
    expect(await read(id)).toMatchObject({ grams: 5000, portions: null, countedIn: "grams", state: "in store", lastMovedOn: "2027-07-21" });
    expect((await larder()).lots.find((lot) => lot.id === id)).toMatchObject({ placeId: fridge, grams: 5000 });
  });

  it("is changed with the version last seen; what was moved keeps its origin and its first place", async () => {
    const id = await soup();
    const before = await stillroom.call("GET", `/api/lots/${id}`);
    const etag = String(before.headers.etag);
    const body = { title: "Soup, thick", placeId: drawer, madeOn: "2027-07-20", portionGrams: 350 };
    const change = (more: object, headers: Record<string, string>) => stillroom.call("PUT", `/api/lots/${id}`, { body: { ...body, ...more }, headers });
    expect((await change({}, {})).statusCode).toBe(428);
    expect((await change({}, { "if-match": '"9-x"' })).statusCode).toBe(412);
    const changed = await change({}, { "if-match": etag });
    expect([changed.statusCode, changed.json<Lot>().title]).toEqual([200, "Soup, thick"]);
    await must(id, { kind: "put", portions: 4 });
    expect(await read(id)).toMatchObject({ portions: 4, grams: 1400 });
    const again = { "if-match": String(changed.headers.etag) };
    const refused = await change({ placeId: other, crop: "tomato", madeOn: "2027-07-22" }, again);
    expect([refused.statusCode, badFields(refused).sort()]).toEqual([409, ["crop", "madeOn", "placeId"]]);
    expect((await stillroom.call("DELETE", `/api/lots/${id}`)).statusCode).toBe(409);
  });

  it("goes when nothing of it stands", async () => {
    const id = await soup();
    const put = randomUUID();
    await must(id, { kind: "put", portions: 1 }, put);
    expect((await stillroom.call("DELETE", `/api/lots/${id}/movements/${put}`)).statusCode).toBe(204);
    expect((await stillroom.call("DELETE", `/api/lots/${id}`)).statusCode).toBe(204);
    expect((await stillroom.call("GET", `/api/lots/${id}`)).statusCode).toBe(404);
  });

  it.each([
    ["in a place that does not exist", { placeId: randomUUID() }, ["placeId"]],
    ["of a crop that is not in the book", { crop: "moon-carrot" }, ["crop"]],
    ["of a recipe that is not there", { crop: undefined, recipeId: randomUUID() }, ["recipeId"]],
    ["of both a crop and a recipe", { recipeId: randomUUID() }, ["recipeId"]],
    ["of tomorrow", { madeOn: "2027-07-27" }, ["madeOn"]],
    ["of 31 April", { madeOn: "2027-04-31" }, ["madeOn"]],
    ["without a name", { title: " " }, ["title"]],
    ["with portions of nothing", { portionGrams: 0 }, ["portionGrams"]],
    ["with an amount", { grams: 5 }, ["grams"]],
  ])("%s is refused", async (_what, fault, paths) => {
    const refused = await stillroom.call("PUT", `/api/lots/${randomUUID()}`, { body: { title: "Tomatoes", crop: "tomato", placeId: fridge, madeOn: "2027-07-20", ...fault } });
    expect([refused.statusCode, badFields(refused)]).toEqual([400, paths]);
  });
});

describe("a movement", () => {
  it("of more than there is is refused with what is left; from a queue it is kept, and the lot is to be counted", async () => {
    const id = await putLot();
    await must(id, { kind: "put", grams: 100 });
    const refused = await send(id, { kind: "take", grams: 250, for: "eat" });
    expect([refused.statusCode, badFields(refused)]).toEqual([409, ["grams"]]);
    expect(refused.json<Problem>()).toMatchObject({ left: { grams: 100, portions: null } });
    expect(refused.json<Problem>().detail).toMatch(/100.g.*count the lot again/);
    const kept = await must(id, { kind: "take", grams: 250, for: "eat", queued: true });
    expect(kept.left).toEqual({ grams: 0, portions: null, short: { grams: 150, portions: null } });
    expect(await read(id)).toMatchObject({ grams: 0, state: "to recount", short: { grams: 150 } });
    expect((await larder()).toRecount.map((line) => line.lotId)).toContain(id);
    expect((await send(id, { kind: "take", grams: 1 })).statusCode).toBe(409);
    await must(id, { kind: "recount", grams: 40 });
    expect(await read(id)).toMatchObject({ grams: 40, state: "part used", short: null });
  });

  it("has one effect under ten parallel sends, and is never rewritten", async () => {
    const id = await soup();
    await must(id, { kind: "put", portions: 10 });
    const before = (await count()) ?? 0;
    const movement = randomUUID();
    const answers = await Promise.all(Array.from({ length: 10 }, () => send(id, { kind: "take", portions: 2, at: "2027-07-21T18:00:00+02:00" }, movement)));
    expect(answers.map((answer) => answer.statusCode).sort()).toEqual([...Array<number>(9).fill(200), 201]);
    expect(new Set(answers.map((answer) => answer.body)).size).toBe(1);
    expect(await count()).toBe(before + 1);
    expect((await read(id)).portions).toBe(8);
    // the same instant in another zone, and what is taken is eaten unless said otherwise
    expect((await send(id, { kind: "take", portions: 2, at: "2027-07-21T16:00:00Z", for: "eat" }, movement)).statusCode).toBe(200);
    for (const otherwise of [{ portions: 3 }, { kind: "give" }, { queued: true }, { on: "2027-07-22" }]) {
      expect((await send(id, { kind: "take", portions: 2, at: "2027-07-21T16:00:00Z", ...otherwise }, movement)).statusCode).toBe(409);
    }
    expect((await send(await soup(), { kind: "take", portions: 2, at: "2027-07-21T16:00:00Z" }, movement)).statusCode).toBe(409);
  });

  it("of the last portion by several people at once is granted to one", async () => {
    for (let round = 0; round < 5; round += 1) {
      const id = await soup();
      await must(id, { kind: "put", portions: 3 });
      const answers = await Promise.all(Array.from({ length: 8 }, () => send(id, { kind: "take", portions: 1 })));
      expect(answers.map((answer) => answer.statusCode).sort()).toEqual([201, 201, 201, 409, 409, 409, 409, 409]);
      expect(await read(id)).toMatchObject({ portions: 0, state: "used up", short: null });
    }
  });

  it("splits a lot over drawers, and takes from its own place first", async () => {
    const id = await soup({ portionMl: 500 });
    await must(id, { kind: "put", portions: 10 });
    await must(id, { kind: "move", portions: 4, toPlaceId: other });
    const at = async () => (await read(id)).stands.map((stand) => [stand.placeName, stand.portions]);
    expect(await at()).toEqual([["Drawer 1", 6], ["Drawer 2", 4]]);
    const refused = await send(id, { kind: "take", portions: 5, placeId: other });
    expect([refused.statusCode, refused.json<Problem>().left]).toEqual([409, { grams: null, portions: 4 }]);
    await must(id, { kind: "take", portions: 8 });
    expect(await at()).toEqual([["Drawer 2", 2]]);
    expect(await read(id)).toMatchObject({ placeId: other, homePlaceId: drawer, portions: 2, state: "part used" });
    await must(id, { kind: "recount", portions: 3, placeId: other });
    expect(await at()).toEqual([["Drawer 2", 3]]);
    const place = (await larder()).places.find((one) => one.id === other);
    expect(place?.usedLitres).toBeGreaterThanOrEqual(1.5);
    expect((await send(id, { kind: "move", portions: 3, toPlaceId: other })).statusCode).toBe(409);
  });

  it("dated before a recount and sent after it does not count twice, and is shown beside it", async () => {
    const id = await soup();
    await must(id, { kind: "put", portions: 10, on: "2027-07-20" });
    await must(id, { kind: "recount", portions: 7, on: "2027-07-23" });
    const late = randomUUID();
    await must(id, { kind: "take", portions: 3, on: "2027-07-22", queued: true }, late);
    expect(await read(id)).toMatchObject({ portions: 7, late: [late] });
  });

  it("is undone, its row stays, and undoing again changes nothing; what others rest on is not undone", async () => {
    const id = await soup();
    const [put, take] = [randomUUID(), randomUUID()];
    await must(id, { kind: "put", portions: 4 }, put);
    await must(id, { kind: "take", portions: 3 }, take);
    expect((await stillroom.call("DELETE", `/api/lots/${id}/movements/${put}`)).statusCode).toBe(409);
    const undo = () => stillroom.call("DELETE", `/api/lots/${id}/movements/${take}`);
    expect([(await undo()).statusCode, (await undo()).statusCode]).toEqual([204, 204]);
    expect(await read(id)).toMatchObject({ portions: 4, movements: [{ id: put, undone: false }, { id: take, undone: true }] });
    const again = await send(id, { kind: "take", portions: 3 }, take);
    expect([again.statusCode, again.json<MovementOfLot>()]).toMatchObject([200, { undone: true, left: { portions: 4 } }]);
    expect((await stillroom.call("DELETE", `/api/lots/${id}/movements/${randomUUID()}`)).statusCode).toBe(404);
    expect((await stillroom.call("DELETE", `/api/lots/${await soup()}/movements/${take}`)).statusCode).toBe(404);
  });

  it.each([
    ["of nothing", { grams: 0 }, ["grams"]],
    ["of negative grams", { grams: -5 }, ["grams"]],
    ["of half a gram", { grams: 0.5 }, ["grams"]],
    ["without an amount", { grams: undefined }, ["grams"]],
    ["with both amounts", { portions: 1 }, ["portions"]],
    ["in portions of an unweighed crop", { grams: undefined, portions: 1 }, ["portions"]],
    ["of another kind", { kind: "lose" }, ["kind"]],
    ["before the lot was made", { on: "2027-07-19" }, ["on"]],
    ["of tomorrow", { on: "2027-07-27" }, ["on"]],
    ["on 31 April", { on: "2027-04-31" }, ["on"]],
    ["put for eating", { kind: "put", for: "eat" }, ["for"]],
    ["moved nowhere", { kind: "move" }, ["toPlaceId"]],
    ["moved to a place that does not exist", { kind: "move", toPlaceId: randomUUID() }, ["toPlaceId"]],
    ["taken from a place that does not exist", { placeId: randomUUID() }, ["placeId"]],
    ["written down at no instant", { at: "soon" }, ["at"]],
    ["with an unknown field", { kilos: 1 }, ["kilos"]],
  ])("%s is refused, and nothing is stored", async (_what, fault, paths) => {
    const id = await putLot();
    await must(id, { kind: "put", grams: 500 });
    const before = await count();
    const refused = await send(id, { kind: "take", grams: 100, ...fault });
    expect([refused.statusCode, badFields(refused)]).toEqual([400, paths]);
    expect(await count()).toBe(before);
  });

  it("of a lot that is not there is 404", async () => {
    expect((await send(randomUUID(), { kind: "put", grams: 5 })).statusCode).toBe(404);
  });
});
