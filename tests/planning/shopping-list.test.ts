/** Shopping and take-out lists on the design's own worked cases. */
import { describe, expect, it } from "vitest";
import type { LotEntry } from "#shared/engines/larder/index.ts";
import { preservationTables } from "#shared/engines/preservation/index.ts";
import type { RecipeUse } from "#shared/kernel/recipe.ts";
import type { LarderFacts, LotFacts } from "#shared/planning/larder-facts.ts";
import { shoppingList, type ShoppingFacts } from "#shared/planning/shopping-list.ts";
import { takeOutTonight } from "#shared/planning/take-out.ts";
import { batchesOfWeek, furtherLines, reservedBefore, shareUntil } from "#shared/planning/week-dishes.ts";
import { seedRows, seedSources } from "#tests/support/reference-rows.ts";

const preservation = preservationTables(seedRows("preservation"), seedSources("preservation"));

const put = (amount: number, on = "2027-07-20"): LotEntry => ({ id: "put", kind: "put", on, writtenAt: 1, arrivedAt: 1, amount, whole: null, takenFor: null, placeId: null, toPlaceId: null });
const lot = (more: Partial<LotFacts>): LotFacts => ({ id: "lot", title: "Onions", crop: null, recipe: null, homePlaceId: "cellar", madeOn: "2027-07-20", portionGrams: null, portionMl: null, bestUntil: null, countedIn: "grams", entries: [], ...more });
const larder = (...lots: LotFacts[]): LarderFacts => ({
  today: "2027-07-26",
  places: [{ id: "cellar", name: "Cellar", kind: "cellar", litres: null }, { id: "drawer", name: "Drawer 2", kind: "freezer", litres: 45 }, { id: "fridge", name: "Fridge", kind: "fridge", litres: null }],
  lots,
  preservation,
});
const recipe = (more: Partial<RecipeUse>): RecipeUse => ({ id: "stew", title: "Stew", way: "cook", makes: { amount: 8, unit: "portions" }, uses: [], handsOnMin: 10, keeps: [], process: null, ...more });
const facts = (more: Partial<ShoppingFacts>): ShoppingFacts => ({ dishes: [], larder: larder(), gardenLow: new Map(), reserved: new Map(), byWords: "by 1 August", supplies: [], names: new Map([["onion", "Onion"]]), ...more });

describe("the shopping list", () => {
  // onions: 1,200 needed, 400 in the larder, 300 by the careful end of the forecast: buy 500
  const onions = recipe({ uses: [{ crop: "onion", grams: 600 }] });
  const some = facts({ dishes: [{ recipe: onions, batches: 2, further: ["400 ml coconut milk"] }], larder: larder(lot({ crop: "onion", entries: [put(400)] })), gardenLow: new Map([["onion", 300.7]]) });

  it("splits 1,200 g of onions into 400 from the larder, 300 from the garden and 500 to buy", () => {
    const list = shoppingList(some);
    expect(list.crops).toMatchObject([{ crop: "onion", needGrams: 1200, larderGrams: 400, gardenGrams: 300, buyGrams: 500 }]);
    expect(list.crops[0]?.text).toMatch(/^Onions: 1,200.g needed; 400.g from the larder, 300.g from the garden, buy 500.g\.$/);
    expect(list.further).toEqual([{ text: "400 ml coconut milk", title: "Stew", batches: 2 }]);
    const texts = (rows: readonly { text: string }[]) => rows.map(({ text }) => text.replaceAll("\u00a0", " "));
    expect(texts(list.shop)).toEqual(["Onions, 500 g", "400 ml coconut milk, for 2 × Stew"]);
    expect(list.headline).toMatch(/^2 things are on the shop’s list/);
    expect(texts(list.garden)).toEqual(["Onions, 300 g, to pick by 1 August"]);
    expect(texts(list.larder)).toEqual(["Onions, 400 g from Cellar"]);
  });

  it("leaves in the larder what is agreed for the weeks before, and counts of the garden what is there by the day", () => {
    const list = shoppingList({ ...some, reserved: new Map([["onion", 250]]) });
    expect(list.crops).toMatchObject([{ larderGrams: 150, gardenGrams: 300, buyGrams: 750 }]);
    const kitchen = { recipes: [onions], planLines: ["2027-W29", "2027-W30", "2027-W31"].map((week, i) => ({ id: String(i), week, recipeId: "stew", batches: 1 })) };
    expect([...reservedBefore(kitchen, "2027-W31", "2027-07-26")]).toEqual([["onion", 600]]);
    // 26 July is a Monday: three days of seven by Wednesday; on Thursday four are left, and by Friday two of them are over
    expect(shareUntil("2027-07-28", "2027-W30", "2027-07-26")).toBeCloseTo(3 / 7);
    expect(shareUntil("2027-07-30", "2027-W30", "2027-07-29")).toBeCloseTo(2 / 4);
    expect(shareUntil("2027-08-08", "2027-W31", "2027-07-26")).toBe(1);
    expect(shareUntil("2027-07-25", "2027-W30", "2027-07-26")).toBe(0);
  });

  it("takes no more from anywhere than is needed", () => {
    const list = shoppingList({ ...some, gardenLow: new Map([["onion", 5000]]) });
    expect(list.crops).toMatchObject([{ larderGrams: 400, gardenGrams: 800, buyGrams: 0 }]);
    expect(shoppingList(facts({})).headline).toBe("Nothing is planned for this week.");
  });

  it("says that 14 jars are needed and 9 are there: 5 short", () => {
    const list = shoppingList(facts({ dishes: [{ recipe: recipe({ makes: { amount: 7, unit: "jars" } }), batches: 2, further: [] }], supplies: [{ kind: "jar", amount: 9 }, { kind: "lid", amount: 20 }, { kind: "bag", amount: 3 }] }));
    expect(list.supplies.map(({ kind, need, have, short }) => [kind, need, have, short])).toEqual([["jar", 14, 9, 5], ["lid", 14, 20, 0]]);
  });
});

describe("the dishes of a week", () => {
  it("count a chosen way that is in a cook day once, with the larger number of batches", () => {
    const planLines = [{ id: "a", week: "2027-W31", recipeId: "stew", batches: 2 }, { id: "b", week: "2027-W32", recipeId: "pie", batches: 9 }];
    const cookDays = [{ id: "d", on: "2027-08-04", startsAt: "10:00", title: null, dishes: [{ recipeId: "stew", batches: 3 }, { recipeId: "bread", batches: 1 }] }];
    expect([...batchesOfWeek({ planLines, cookDays }, "2027-W31")]).toEqual([["stew", 3], ["bread", 1]]);
  });
  it("name what neither garden, larder nor another recipe answers for", () => {
    expect(furtherLines([{ text: "1 kg leeks", crop: "leek", grams: 1000 }, { text: "some chives", crop: "chives", grams: null }, { text: "stock", madeBy: "x", grams: null }, { text: "salt", grams: 5 }])).toEqual(["some chives", "salt"]);
  });
});

describe("tonight", () => {
  const sauce = (id: string, homePlaceId: string, madeOn: string) =>
    lot({ id, title: `Sauce of ${madeOn}`, homePlaceId, madeOn, countedIn: "portions", entries: [put(4, madeOn)], recipe: { id: "sauce", way: "cook", keeps: [{ place: "freezer", days: 90 }], reheat: null } });
  const parts = [{ dish: "Pizza", recipeId: "sauce" }];

  it("the oldest frozen lot that a dish of tomorrow takes comes out, with its drawer", () => {
    const lines = takeOutTonight(larder(sauce("new", "drawer", "2027-07-01"), sauce("old", "drawer", "2027-05-01")), parts);
    expect(lines.map(({ one, place, amount }) => [one.lot.id, place.name, amount.portions])).toEqual([["old", "Drawer 2", 4]]);
    expect(lines[0]?.text).toContain("into the fridge tonight, for Pizza");
  });
  it("nothing comes out when some is in the fridge already, or when there is none", () => {
    expect(takeOutTonight(larder(sauce("old", "drawer", "2027-05-01"), sauce("thawed", "fridge", "2027-07-25")), parts)).toEqual([]);
    expect(takeOutTonight(larder(), parts)).toEqual([]);
  });
});
