import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Recipe, RecipeBrief } from "#shared/contracts/recipes.ts";
import { badFields, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
});
afterAll(() => stillroom.close());

const step = (id: string, more: object = {}) => ({ id, text: `Do ${id}`, handsOnMin: 5, handsOffMin: 0, needs: {}, after: [], ...more });
const stew = (more: object = {}) => ({
  title: "Bean stew",
  way: "cook",
  makes: { amount: 4, unit: "portions" },
  ingredients: [{ text: "500 g French beans", crop: "french-bean" }, { text: "2 onions" }],
  steps: [step("cut", { loads: { holds: 2, of: 5 } }), step("boil", { handsOnMin: 2, handsOffMin: { low: 20, likely: 25, high: 30 }, needs: { burners: 1, pots: 1 }, after: ["cut"], maxWaitMin: 30 })],
  keeps: [{ place: "fridge", days: 3 }],
  ...more,
});
const put = (id: string, body: unknown, headers: Record<string, string> = {}) => stillroom.call("PUT", `/api/recipes/${id}`, { body, headers });

describe("a recipe", () => {
  it("is made by its first PUT and answers with its ingredients as read", async () => {
    const id = randomUUID();
    const made = await put(id, stew());
    expect(made.statusCode, made.body).toBe(201);
    expect(made.headers.location).toBe(`/api/recipes/${id}`);
    const recipe = made.json<Recipe>();
    expect(recipe).toMatchObject({ id, title: "Bean stew", way: "cook", origin: "own", keeps: [{ place: "fridge", days: 3 }], steps: stew().steps, allergens: [] });
    expect(recipe.ingredients[0]).toMatchObject({ text: "500 g French beans", crop: "french-bean", grams: 500 });
    // a cut of five by two at a time is done three times
    expect(recipe.handsOnMin).toBe(3 * 5 + 2);
    expect((await stillroom.call("GET", `/api/recipes/${id}`)).json()).toEqual(recipe);
    expect((await stillroom.call("GET", "/api/recipes?crop=french-bean&way=cook")).json()).toContainEqual(recipe);
    expect((await stillroom.call("GET", "/api/recipes?crop=pea")).json<Recipe[]>().map((one) => one.id)).not.toContain(id);
  });

  it("is the same again without effect, and changed by version", async () => {
    const id = randomUUID();
    const first = String((await put(id, stew())).headers.etag);
    const again = await put(id, Object.fromEntries(Object.entries(stew()).reverse()));
    expect([again.statusCode, again.headers.etag]).toEqual([200, first]);
    expect((await put(id, stew({ title: "Beans" }))).statusCode).toBe(428);
    expect((await put(id, stew({ title: "Beans" }), { "if-match": first })).json()).toMatchObject({ title: "Beans" });
  });

  it("of the book becomes the household's own when it is changed, and the book's again when that is taken out", async () => {
    const fresh = await stillroom.as();
    const book = (await fresh.call("GET", "/api/recipes")).json<Recipe[]>();
    expect(book.length).toBeGreaterThan(50);
    const [one] = book.filter((recipe) => recipe.way === "eat");
    if (!one) throw new Error("the book has ways to eat fresh");
    const address = `/api/recipes/${one.id}`;
    const read = await fresh.call("GET", address);
    expect((await fresh.call("DELETE", address)).statusCode).toBe(409);
    const changed = await fresh.call("PUT", address, { body: stew({ title: "Our way" }), headers: { "if-match": String(read.headers.etag) } });
    expect(changed.json()).toMatchObject({ title: "Our way", origin: "own", sources: [] });
    expect((await fresh.call("DELETE", address)).statusCode).toBe(204);
    expect((await fresh.call("GET", address)).json()).toEqual(read.json());
  });

  it("that something needs is not taken out", async () => {
    const id = await putNew(stillroom, "recipes", stew());
    const line = await putNew(stillroom, "plan-lines", { week: "2027-W31", recipeId: id, batches: 1 });
    expect((await stillroom.call("DELETE", `/api/recipes/${id}`)).statusCode).toBe(409);
    await stillroom.call("DELETE", `/api/plan-lines/${line}`);
    expect((await stillroom.call("DELETE", `/api/recipes/${id}`)).statusCode).toBe(204);
    expect((await stillroom.call("GET", `/api/recipes/${id}`)).statusCode).toBe(404);
  });

  const oven = (c: number) => ({ c, trays: 1 });
  it.each([
    ["a step that needs two oven temperatures at once", { steps: [step("bake", { needs: { oven: [oven(180), oven(220)] } })] }, ["steps.0.needs.oven"]],
    ["a step at two temperatures of one oven", { steps: [step("bake", { needs: { oven: { c: [180, 220], trays: 1 } } })] }, ["steps.0.needs.oven.c"]],
    ["two steps of one id", { steps: [step("a"), step("a")] }, ["steps.1.id"]],
    ["an order that names no step", { steps: [step("a", { after: ["z"] })] }, ["steps.0.after.0"]],
    ["a step after itself", { steps: [step("a", { after: ["a"] })] }, ["steps.0.after"]],
    ["an order in a circle", { steps: [step("x"), step("a", { after: ["c"] }), step("b", { after: ["a"] }), step("c", { after: ["b"] })] }, ["steps.1.after"]],
    ["a wait for a step it does not follow", { steps: [step("a"), step("b"), step("c", { after: ["a"], maxWaitMin: { a: 5, b: 10 } })] }, ["steps.2.maxWaitMin.b"]],
    ["a pot held by no step", { holds: [{ what: "pots", from: "cut", to: "serve" }] }, ["holds.0.to"]],
    ["a limit from no step", { limits: [{ from: "chill", to: "boil", maxMin: 10 }] }, ["limits.0.from"]],
    ["negative minutes", { steps: [step("a", { handsOnMin: -5 })] }, ["steps.0.handsOnMin"]],
    ["a range upside down", { steps: [step("a", { handsOffMin: { low: 30, likely: 20, high: 10 } })] }, ["steps.0.handsOffMin"]],
    ["a range with a letter in it", { steps: [step("a", { handsOffMin: { low: 10, likely: "x", high: 30 } })] }, ["steps.0.handsOffMin.likely"]],
    ["no yield", { makes: { amount: 0, unit: "portions" } }, ["makes.amount"]],
    ["no yield at all", { makes: undefined }, ["makes"]],
    ["an unknown crop", { ingredients: [{ text: "1 triffid", crop: "triffid" }] }, ["ingredients.0.crop"]],
    ["a part that no recipe makes", { ingredients: [{ text: "1 loaf", madeBy: randomUUID() }] }, ["ingredients.0.madeBy"]],
    ["an unknown field in a step", { steps: [step("a", { mood: "calm" })] }, ["steps.0.mood"]],
    ["a place that is none", { keeps: [{ place: "pocket", days: 3 }] }, ["keeps.0.place"]],
  ])("with %s is refused, and nothing is stored", async (_what, fault, paths) => {
    const id = randomUUID();
    const refused = await put(id, stew(fault));
    expect(refused.statusCode, refused.body).toBe(400);
    expect(badFields(refused)).toEqual(paths);
    expect((await stillroom.call("GET", `/api/recipes/${id}`)).statusCode).toBe(404);
  });

  it("names every fault of its steps at once", async () => {
    const refused = await put(randomUUID(), stew({ steps: [step("a", { after: ["y", "z"] }), step("a")], holds: [{ what: "pots", from: "q", to: "a" }] }));
    expect(badFields(refused)).toEqual(["steps.0.after.0", "steps.0.after.1", "steps.1.id", "holds.0.from"]);
  });
});

describe("parts made by other recipes", () => {
  it("may not make each other in a circle, however long, nor by two saves at once", async () => {
    const uses = (...parts: string[]) => stew({ ingredients: parts.map((madeBy) => ({ text: "a part", madeBy })) });
    const a = await putNew(stillroom, "recipes", stew());
    const b = await putNew(stillroom, "recipes", uses(a));
    const c = await putNew(stillroom, "recipes", uses(b, a));
    const tag = async (id: string) => ({ "if-match": String((await stillroom.call("GET", `/api/recipes/${id}`)).headers.etag) });
    expect(badFields(await put(a, uses(a), await tag(a)))).toEqual(["ingredients.0.madeBy"]);
    expect(badFields(await put(a, uses(c), await tag(a)))).toEqual(["ingredients.0.madeBy"]);
    expect((await stillroom.call("DELETE", `/api/recipes/${a}`)).statusCode).toBe(409);
    const [d, e] = [await putNew(stillroom, "recipes", stew()), await putNew(stillroom, "recipes", stew())];
    const both = await Promise.all([put(d, uses(e), await tag(d)), put(e, uses(d), await tag(e))]);
    expect(both.map((answer) => answer.statusCode).sort()).toEqual([200, 400]);
  });
});

/** USDA Complete Guide to Home Canning 2015, Guide 1: only a tested process for that food makes a jar fit for the shelf. */
describe("a jar of one's own recipe", () => {
  const jar = (way: string, place: string, more: object = {}) => stew({ way, keeps: [{ place, days: 30 }], ...more });

  it.each([["bottle", "shelf"], ["pickle", "shelf"], ["bottle", "cellar"], ["pickle", "cellar"]])("to %s for the %s is refused without a tested process, with the safe ways", async (way, place) => {
    const refused = await put(randomUUID(), jar(way, place));
    expect([refused.statusCode, badFields(refused)]).toEqual([400, ["keeps.0"]]);
    expect(refused.json<{ fields: { message: string }[] }>().fields[0]?.message).toMatch(/fridge or freezer/);
  });

  it.each([["bottle", "fridge"], ["pickle", "freezer"]])("to %s for the %s is kept", async (way, place) => {
    expect((await put(randomUUID(), jar(way, place))).statusCode).toBe(201);
  });

  it("in Australian spoons is weighed by them and printed in the house's (New South Wales Health: tablespoon 20 ml); 216 g of oil a US cup", async () => {
    const made = await put(randomUUID(), stew({ title: "Dressing", ingredients: [{ text: "3 tbsp olive oil" }, { text: "2 cloves plain flour" }], measures: "australian" }));
    const body = made.json<Recipe>();
    expect(body.measures).toBe("australian");
    expect(body.ingredients[0]).toMatchObject({ grams: 55, byMeasure: expect.stringMatching(/^4\stbsp$/) as string });
    expect(body.ingredients[1]?.doubt).toMatch(/clove does not fit plain flour/);
    const brief = (await stillroom.call("GET", "/api/recipes/brief")).json<RecipeBrief[]>();
    expect(brief.find(({ title }) => title === "Dressing")).toMatchObject({ lines: "3 tbsp olive oil\n2 cloves plain flour", origin: "own" });
  });

  it("with a process that nobody tested is refused", async () => {
    expect(badFields(await put(randomUUID(), jar("bottle", "shelf", { process: "grandmothers-way" })))).toEqual(["process", "keeps.0"]);
  });

  it("of the book's own process falls away when a line is added or the work is another, and stands when none is", async () => {
    const book = (await stillroom.call("GET", "/api/recipes?way=pickle")).json<Recipe[]>().find((recipe) => recipe.process === "pickled-beans");
    if (!book) throw new Error("the book has dilled beans in jars");
    const lines = book.ingredients.map(({ text, crop }) => ({ text, ...(crop === undefined ? {} : { crop }) }));
    const more = { way: "pickle", process: book.process, keeps: book.keeps, title: "Ours" };
    const headers = { "if-match": String((await stillroom.call("GET", `/api/recipes/${book.id}`)).headers.etag) };
    expect(badFields(await put(book.id, stew({ ...more, ingredients: [...lines, { text: "1 kg beans", crop: "french-bean" }] }), headers))).toEqual(["process", "keeps.0"]);
    expect(badFields(await put(book.id, stew({ ...more, ingredients: lines }), headers))).toEqual(["process", "keeps.0"]);
    const { makes, measures, steps, holds, limits } = book;
    expect((await put(book.id, stew({ ...more, ingredients: lines, makes, measures, steps, holds, limits }), headers)).statusCode).toBe(200);
  });

  const placed = async (altitudeM: number) => {
    const etag = String((await stillroom.call("GET", "/api/household")).headers.etag);
    const body = { name: "High house", zone: "Europe/Amsterdam", latitude: 52.1, longitude: 5.18, altitudeM, people: 2, weekStart: "monday", units: "metric" };
    expect((await stillroom.call("PUT", "/api/household", { body, headers: { "if-match": etag } })).statusCode).toBe(200);
  };

  it("gives no minutes before anybody said how high the house lies, and says why (Guide 1, p. 1-10: the time rises with the altitude)", async () => {
    const unplaced = await stillroom.as();
    const jars = (await unplaced.call("GET", "/api/recipes?way=bottle")).json<Recipe[]>().filter((recipe) => recipe.process !== undefined);
    expect(jars.length).toBeGreaterThan(0);
    for (const { processing } of jars) expect(processing).toEqual([expect.stringMatching(/^No minutes yet: .*height above the sea/)]);
  });

  it("with a tested process says jar, pack and minutes for the household's altitude", async () => {
    const bottled = async () => (await stillroom.call("GET", "/api/recipes?way=bottle")).json<Recipe[]>().filter((recipe) => recipe.origin === "book");
    const book = await bottled();
    expect(book.length).toBeGreaterThan(0);
    for (const recipe of book) expect(recipe.processing.join(" "), recipe.title).toMatch(/\d+ min/);
    const low = book.map((recipe) => recipe.processing);
    await placed(1_500);
    const high = (await bottled()).map((recipe) => recipe.processing);
    expect(high).not.toEqual(low);
  });
});
