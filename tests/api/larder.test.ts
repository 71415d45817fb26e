import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Larder, OldestFirst } from "#shared/contracts/larder.ts";
import type { Place, Room } from "#shared/contracts/places.ts";
import type { StockTarget } from "#shared/contracts/stock-targets.ts";
import type { Supply } from "#shared/contracts/supplies.ts";
import type { Today } from "#shared/contracts/today.ts";
import type { Wish } from "#shared/contracts/wishes.ts";
import { badFields, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let recipeId: string;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
  recipeId = await putNew(stillroom, "recipes", {
    title: "Vegetable soup",
    way: "cook",
    makes: { amount: 8, unit: "portions" },
    ingredients: [{ text: "1 kg leeks", crop: "leek" }],
    steps: [],
    keeps: [{ place: "fridge", days: 6 }, { place: "freezer", days: 90 }],
    reheat: "Bring to the boil.",
  });
});
afterAll(() => stillroom.close());

const put = (noun: string, body: object, id: string = randomUUID()) => stillroom.call("PUT", `/api/${noun}/${id}`, { body });
const larder = async (question = ""): Promise<Larder> => (await stillroom.call("GET", `/api/larder${question}`)).json<Larder>();
const place = (more: object = {}) => putNew(stillroom, "places", { name: "Drawer", kind: "freezer", ...more });
const lotOf = async (lot: object, movement: object): Promise<string> => {
  const id = await putNew(stillroom, "lots", lot);
  await putNew(stillroom, `lots/${id}/movements`, { kind: "put", on: (lot as { madeOn: string }).madeOn, ...movement });
  return id;
};

describe("a place", () => {
  it("is named once, changed with the version last seen, and stays as long as lots name it", async () => {
    const id = randomUUID();
    const body = { name: "Cellar", kind: "cellar", litres: 400.5 };
    const made = await put("places", body, id);
    expect([made.statusCode, made.json<Place>()]).toMatchObject([201, { id, ...body, usedLitres: 0, freeLitres: 400.5, state: "has room", lots: 0, loadGrams: null }]);
    expect((await put("places", body, id)).statusCode).toBe(200);
    expect((await put("places", { ...body, name: "Root cellar" }, id)).statusCode).toBe(428);
    const changed = await stillroom.call("PUT", `/api/places/${id}`, { body: { name: "Root cellar", kind: "cellar" }, headers: { "if-match": String(made.headers.etag) } });
    expect([changed.statusCode, changed.json<Place>().freeLitres]).toEqual([200, null]);
    await putNew(stillroom, "lots", { title: "Potatoes", crop: "potato", placeId: id, madeOn: "2027-07-20" });
    expect((await stillroom.call("DELETE", `/api/places/${id}`)).statusCode).toBe(409);
    expect((await stillroom.call("DELETE", `/api/places/${await place()}`)).statusCode).toBe(204);
  });

  it.each([
    ["of negative litres", { litres: -5 }, ["litres"]],
    ["of no litres", { litres: 0 }, ["litres"]],
    ["of another kind", { kind: "attic" }, ["kind"]],
    ["without a name", { name: "" }, ["name"]],
    ["with an unknown field", { colour: "blue" }, ["colour"]],
  ])("%s is refused", async (_what, fault, paths) => {
    const refused = await put("places", { name: "Drawer", kind: "freezer", ...fault });
    expect([refused.statusCode, badFields(refused)]).toEqual([400, paths]);
  });

  it("says what fits: 60 l into 45 l do not, and what to eat first; 14 kg are frozen over two days in 200 l (2 to 3 lb a cubic foot in 24 hours, MSU 01600508)", async () => {
    const drawer = await place({ name: "Small drawer", litres: 45 });
    const beans = await lotOf({ title: "Beans of last summer", crop: "french-bean", placeId: drawer, madeOn: "2026-08-20", portionGrams: 300, portionMl: 500 }, { grams: 900 });
    const room = async (id: string, question: string) => (await stillroom.call("GET", `/api/places/${id}/room?${question}`)).json<Room>();
    const full = await room(drawer, "litres=60");
    expect(full).toMatchObject({ fits: false, freeLitres: 43.5, eatFirst: [{ lotId: beans }] });
    expect(full.text).toContain("full");
    expect(await room(drawer, "litres=40")).toMatchObject({ fits: true, eatFirst: [] });
    const chest = await place({ name: "Chest", litres: 200 });
    const warm = await room(chest, "grams=14000&litres=20");
    expect(warm.days).toEqual([{ grams: 7000 }, { grams: 7000 }]);
    expect(warm.text).toContain("2 days");
    const load = (await stillroom.call("GET", `/api/places/${chest}`)).json<Place>().loadGrams;
    expect([Math.round((load?.low ?? 0) / 100), Math.round((load?.high ?? 0) / 100)]).toEqual([64, 96]);
    await lotOf({ title: "Courgettes", crop: "courgette", placeId: chest, madeOn: "2027-07-26" }, { grams: 14_000 });
    expect((await larder()).places.find(({ id }) => id === chest)?.notes.join()).toContain("went in today");
  });
});

describe("the larder", () => {
  it("heads what to use first with the beans frozen last August (8 to 12 months, NCHFP), and lists what was not touched for half a year", async () => {
    const other = await stillroom.as();
    const freezer = await putNew(other, "places", { name: "Freezer", kind: "freezer", litres: 100 });
    const beans = await putNew(other, "lots", { title: "Beans", crop: "french-bean", placeId: freezer, madeOn: "2026-08-20" });
    await putNew(other, `lots/${beans}/movements`, { kind: "put", on: "2026-08-20", grams: 2000 });
    const fresh = await putNew(other, "lots", { title: "Peas", crop: "pea", placeId: freezer, madeOn: "2027-07-10" });
    await putNew(other, `lots/${fresh}/movements`, { kind: "put", on: "2027-07-10", grams: 800 });
    const list = (await other.call("GET", "/api/larder")).json<Larder>();
    expect(list.useFirst.map((line) => line.lotId)).toEqual([beans]);
    expect(list.forgotten.map((line) => line.lotId)).toEqual([beans]);
    expect(list.headline).toContain("Beans");
    expect((await other.call("GET", "/api/today")).json<Today>().useFirst.map((line) => line.lotId)).toEqual([beans]);
    // known on an earlier day: nothing presses yet, and the peas are not there
    const before = (await other.call("GET", "/api/larder?asOf=2026-09-01")).json<Larder>();
    expect([before.useFirst, before.lots.map((lot) => lot.id)]).toEqual([[], [beans]]);
  });

  it("keeps cooked food in a fridge no longer than four days whatever its recipe says (University of Illinois, Leftovers), and says when to throw it away", async () => {
    const fridge = await place({ name: "Fridge", kind: "fridge" });
    const drawer = await place({ name: "Soup drawer" });
    const soup = await lotOf({ title: "Soup in the fridge", recipeId, placeId: fridge, madeOn: "2027-07-21" }, { portions: 2 });
    const good = await lotOf({ title: "Soup of today", recipeId, placeId: fridge, madeOn: "2027-07-25" }, { portions: 2 });
    const frozen = await lotOf({ title: "Soup frozen", recipeId, placeId: drawer, madeOn: "2027-03-01" }, { portions: 4 });
    const list = await larder();
    const of = (id: string) => list.lots.find((lot) => lot.id === id);
    expect(of(soup)).toMatchObject({ safeUntil: "2027-07-25", discard: true, useFirst: false });
    expect(list.discard.map((line) => line.lotId)).toContain(soup);
    expect(of(good)).toMatchObject({ safeUntil: "2027-07-29", discard: false, reheat: "Bring to the boil." });
    // months in a freezer are about quality: a best day and no safe one
    expect(of(frozen)).toMatchObject({ bestUntil: "2027-05-30", useFirst: true, discard: false });
    expect(of(frozen)).not.toHaveProperty("safeUntil");
    // thawed in the fridge its four days begin when it came out
    await putNew(stillroom, `lots/${frozen}/movements`, { kind: "move", on: "2027-07-25", portions: 4, toPlaceId: fridge });
    expect((await larder()).lots.find((lot) => lot.id === frozen)).toMatchObject({ placeId: fridge, safeUntil: "2027-07-29", discard: false });
  });

  it("takes five portions of soup oldest first: four of February, which uses it up, and one of April", async () => {
    const other = await stillroom.as();
    const soup = (await other.call("GET", "/api/recipes?way=cook")).json<{ id: string }[]>()[0]?.id as string;
    const drawers = await Promise.all([1, 2, 3].map((n) => putNew(other, "places", { name: `Drawer ${n}`, kind: "freezer" })));
    const made = [["2027-05-20", 6, 1], ["2027-02-01", 4, 0], ["2027-04-10", 4, 2]] as const;
    for (const [madeOn, portions, drawer] of made) {
      const id = await putNew(other, "lots", { title: `Soup of ${madeOn}`, recipeId: soup, placeId: drawers[drawer], madeOn });
      await putNew(other, `lots/${id}/movements`, { kind: "put", on: madeOn, portions });
    }
    const oldest = (await other.call("GET", `/api/larder/oldest-first?recipeId=${soup}&portions=5`)).json<OldestFirst>();
    expect(oldest.takes.map((take) => [take.madeOn, take.placeName, take.portions, take.usesUp])).toEqual([["2027-02-01", "Drawer 1", 4, true], ["2027-04-10", "Drawer 3", 1, false]]);
    expect(oldest.missing).toEqual({ grams: null, portions: 0 });
    expect((await other.call("GET", `/api/larder/oldest-first?recipeId=${soup}&portions=20`)).json<OldestFirst>().missing.portions).toBe(6);
    expect(badFields(await other.call("GET", "/api/larder/oldest-first?crop=leek"))).toEqual(["portions"]);
  });

  it("is asked first for what a cook day's dishes take from other recipes", async () => {
    const drawer = await place({ name: "Stock drawer" });
    await lotOf({ title: "Soup for the pie", recipeId, placeId: drawer, madeOn: "2027-06-01" }, { portions: 3 });
    const pie = await putNew(stillroom, "recipes", { title: "Soup pie", way: "cook", makes: { amount: 4, unit: "portions" }, ingredients: [{ text: "1 l soup", madeBy: recipeId }], steps: [{ id: "bake", text: "Bake", handsOnMin: 5, handsOffMin: 30, needs: {}, after: [] }], keeps: [] });
    const day = await putNew(stillroom, "cook-days", { on: "2027-08-01", startsAt: "10:00", cooks: 1, kitchen: { ovens: [], burners: 1 }, dishes: [{ recipeId: pie, batches: 1 }] });
    const { notes } = (await stillroom.call("POST", `/api/cook-days/${day}/timetable`)).json<{ notes: string[] }>();
    expect(notes.find((note) => note.includes("from store"))).toContain("3 portions in Stock drawer");
  });

  it("leaves what is used up out unless it is asked for", async () => {
    const shelf = await place({ name: "Shelf", kind: "shelf" });
    const id = await lotOf({ title: "Honey from next door", placeId: shelf, madeOn: "2027-06-01" }, { portions: 1 });
    await putNew(stillroom, `lots/${id}/movements`, { kind: "take", on: "2027-07-01", portions: 1 });
    expect((await larder()).lots.map((lot) => lot.id)).not.toContain(id);
    expect((await larder("?all=true")).lots.find((lot) => lot.id === id)).toMatchObject({ state: "used up" });
  });
});

describe("a wish and a target", () => {
  it("are written down, say what is in store, and are taken back", async () => {
    const other = await stillroom.as();
    const soup = (await other.call("GET", "/api/recipes?way=cook")).json<{ id: string }[]>()[0]?.id as string;
    const wish = await putNew(other, "wishes", { recipeId: soup, portions: 4, by: "2027-08-14", from: "the children" });
    const target = await putNew(other, "stock-targets", { recipeId: soup, portions: 40, by: "2027-11-01" });
    const drawer = await putNew(other, "places", { name: "Drawer", kind: "freezer" });
    const lot = await putNew(other, "lots", { title: "Soup", recipeId: soup, placeId: drawer, madeOn: "2027-07-20" });
    await putNew(other, `lots/${lot}/movements`, { kind: "put", on: "2027-07-20", portions: 6 });
    expect((await other.call("GET", "/api/wishes")).json<Wish[]>()).toMatchObject([{ id: wish, portions: 4, by: "2027-08-14", from: "the children", inLarderPortions: 6 }]);
    expect((await other.call("GET", "/api/stock-targets")).json<StockTarget[]>()).toMatchObject([{ id: target, inLarderPortions: 6, missingPortions: 34, past: false }]);
    for (const address of [`wishes/${wish}`, `stock-targets/${target}`]) {
      expect((await other.call("DELETE", `/api/${address}`)).statusCode).toBe(204);
      expect((await other.call("GET", `/api/${address}`)).statusCode).toBe(404);
    }
  });

  it.each([
    ["wishes", "for a recipe that is not there", { recipeId: randomUUID() }, ["recipeId"]],
    ["wishes", "for no portion", { portions: 0 }, ["portions"]],
    ["wishes", "by a day that is over", { by: "2027-07-25" }, ["by"]],
    ["wishes", "by 31 April", { by: "2027-04-31" }, ["by"]],
    ["stock-targets", "in the past", { by: "2027-07-25" }, ["by"]],
    ["stock-targets", "without a day", { by: undefined }, ["by"]],
    ["stock-targets", "without a recipe", { recipeId: undefined }, ["recipeId"]],
  ])("%s %s are refused", async (noun, _what, fault, paths) => {
    const refused = await put(noun, { recipeId, portions: 4, by: "2027-11-01", ...fault });
    expect([refused.statusCode, badFields(refused)]).toEqual([400, paths]);
  });

  it("keep their recipe, and so does a lot", async () => {
    const kept = await putNew(stillroom, "recipes", { title: "Kept", way: "eat", makes: { amount: 1, unit: "plates" }, ingredients: [], steps: [], keeps: [] });
    const wish = await putNew(stillroom, "wishes", { recipeId: kept, portions: 1 });
    expect((await stillroom.call("DELETE", `/api/recipes/${kept}`)).statusCode).toBe(409);
    await stillroom.call("DELETE", `/api/wishes/${wish}`);
    const lot = await putNew(stillroom, "lots", { title: "Plate", recipeId: kept, placeId: await place(), madeOn: "2027-07-20" });
    expect((await stillroom.call("DELETE", `/api/recipes/${kept}`)).statusCode).toBe(409);
    await stillroom.call("DELETE", `/api/lots/${lot}`);
    expect((await stillroom.call("DELETE", `/api/recipes/${kept}`)).statusCode).toBe(204);
  });
});

describe("supplies", () => {
  it("are counted, changed and dated", async () => {
    const id = await putNew(stillroom, "supplies", { kind: "yeast", name: "Dried yeast", amount: 42, unit: "g", bestUntil: "2027-07-01" });
    const stored = await stillroom.call("GET", `/api/supplies/${id}`);
    expect(stored.json<Supply>()).toMatchObject({ id, kind: "yeast", amount: 42, past: true });
    const body = { kind: "yeast", name: "Dried yeast", amount: 35, unit: "g", bestUntil: "2028-01-01" };
    expect((await put("supplies", body, id)).statusCode).toBe(428);
    const changed = await stillroom.call("PUT", `/api/supplies/${id}`, { body, headers: { "if-match": String(stored.headers.etag) } });
    expect(changed.json<Supply>()).toMatchObject({ amount: 35, past: false });
    expect((await stillroom.call("GET", "/api/supplies")).json<Supply[]>().map((one) => one.id)).toContain(id);
    expect((await stillroom.call("DELETE", `/api/supplies/${id}`)).statusCode).toBe(204);
  });

  it.each([
    ["less than nothing", { amount: -1 }, ["amount"]],
    ["in cups", { unit: "cups" }, ["unit"]],
    ["until 31 April", { bestUntil: "2027-04-31" }, ["bestUntil"]],
  ])("%s are refused", async (_what, fault, paths) => {
    const refused = await put("supplies", { kind: "jar", name: "Jars", amount: 9, unit: "pieces", ...fault });
    expect([refused.statusCode, badFields(refused)]).toEqual([400, paths]);
  });
});
