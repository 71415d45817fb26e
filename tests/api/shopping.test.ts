import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Shopping, TakeOut } from "#shared/contracts/shopping.ts";
import { badFields, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
});
afterAll(() => stillroom.close());

const get = async <T>(address: string): Promise<T> => (await stillroom.call("GET", address)).json<T>();
const kitchen = { ovens: [], burners: 2 };

describe("the shopping list of a week", () => {
  it("is what its dishes need less the larder, with jars that are short", async () => {
    const cellar = await putNew(stillroom, "places", { name: "Cellar", kind: "cellar" });
    const onions = await putNew(stillroom, "lots", { title: "Onions", crop: "onion", placeId: cellar, madeOn: "2027-07-20" });
    await putNew(stillroom, `lots/${onions}/movements`, { kind: "put", on: "2027-07-20", grams: 400 });
    await putNew(stillroom, "supplies", { kind: "jar", name: "Jars", amount: 9, unit: "pieces" });
    const recipeId = await putNew(stillroom, "recipes", { title: "Onion relish for the fridge", way: "pickle", makes: { amount: 7, unit: "jars" }, ingredients: [{ text: "600 g onions", crop: "onion" }, { text: "2 tbsp sunflower oil" }], steps: [], keeps: [{ place: "fridge", days: 14 }] });
    await putNew(stillroom, "plan-lines", { week: "2027-W31", recipeId, batches: 2, buyMissing: true });
    const list = await get<Shopping>("/api/shopping?week=2027-W31");
    expect(list.crops).toMatchObject([{ crop: "onion", needGrams: 1200, larderGrams: 400, gardenGrams: 0, buyGrams: 800 }]);
    expect(list.supplies).toMatchObject([{ kind: "jar", need: 14, have: 9, short: 5 }, { kind: "lid", need: 14, have: 0, short: 14 }]);
    expect(list.further).toEqual([{ text: "2 tbsp sunflower oil", title: "Onion relish for the fridge", batches: 2 }]);
    expect(await get<Shopping>("/api/shopping")).toMatchObject({ week: "2027-W30", crops: [], further: [] });
    expect(badFields(await stillroom.call("GET", "/api/shopping?week=2027-W54"))).toEqual(["week"]);
  });
});

describe("the list for tonight", () => {
  it("names the frozen lot that a dish of tomorrow takes, until it stands in the fridge", async () => {
    const [drawer, fridge] = [await putNew(stillroom, "places", { name: "Drawer 2", kind: "freezer" }), await putNew(stillroom, "places", { name: "Fridge", kind: "fridge" })];
    const sauce = await putNew(stillroom, "recipes", { title: "Sauce", way: "cook", makes: { amount: 4, unit: "portions" }, ingredients: [], steps: [], keeps: [{ place: "freezer", days: 90 }] });
    const pizza = await putNew(stillroom, "recipes", { title: "Pizza", way: "cook", makes: { amount: 4, unit: "portions" }, ingredients: [{ text: "500 ml sauce", madeBy: sauce }], steps: [], keeps: [] });
    const lot = await putNew(stillroom, "lots", { title: "Sauce of June", recipeId: sauce, placeId: drawer, madeOn: "2027-06-20" });
    await putNew(stillroom, `lots/${lot}/movements`, { kind: "put", on: "2027-06-20", portions: 4 });
    expect((await get<TakeOut>("/api/take-out")).lots).toEqual([]);
    await putNew(stillroom, "cook-days", { on: "2027-07-27", startsAt: "17:00", cooks: 1, kitchen, dishes: [{ recipeId: pizza, batches: 1 }] });
    expect(await get<TakeOut>("/api/take-out")).toMatchObject({ on: "2027-07-26", lots: [{ lotId: lot, placeName: "Drawer 2", portions: 4, for: "Pizza" }] });
    await putNew(stillroom, `lots/${lot}/movements`, { kind: "move", on: "2027-07-26", portions: 4, toPlaceId: fridge });
    expect((await get<TakeOut>("/api/take-out")).lots).toEqual([]);
  });
});
