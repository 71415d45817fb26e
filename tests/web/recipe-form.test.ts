/** The form of a recipe: what is stored comes back as it was, and what cannot be read names its control. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { NewRecipe, Recipe } from "#shared/contracts/recipes.ts";
import { differences } from "#web/pages/recipes/recipe-conflict.ts";
import { faultAt } from "#web/pages/recipes/recipe-faults.ts";
import { recipeFields, type RecipeFields, type StepFields } from "#web/pages/recipes/recipe-form.ts";
import { minutesIn, numbersIn, pairsIn, readRecipe } from "#web/pages/recipes/read-recipe.ts";
import { readRecipes } from "../seed-data/read.ts";

/** As the service answers: what it adds by reckoning is of no concern to the form. */
function stored(recipe: NewRecipe): Recipe {
  return {
    holds: [],
    limits: [],
    allergens: [],
    ...JSON.parse(JSON.stringify(recipe)),
    id: "00000000-0000-4000-8000-00000000000a",
    ingredients: recipe.ingredients.map((line) => ({ ...line, grams: null, read: null, byWeight: null, byMeasure: null })),
    origin: "own",
    uses: [],
    handsOnMin: 0,
    cautions: [],
    sources: [],
    processing: [],
  } as Recipe;
}

const SAUCE: NewRecipe = {
  title: "Tomato sauce",
  way: "cook",
  makes: { amount: 6.5, unit: "portions" },
  ingredients: [{ text: "2 kg tomatoes", crop: "tomato", food: "tomato" }, { text: "1 l stock", madeBy: "00000000-0000-4000-8000-00000000000b" }, { text: "salt to taste" }],
  steps: [
    { id: "chop", text: "Chop", handsOnMin: 15, handsOffMin: 0, needs: {}, after: [], loads: { holds: 1, of: 1 } },
    { id: "fry", text: "Fry", handsOnMin: 8, handsOffMin: 0, needs: { burners: 1, pots: 1 }, after: ["chop"], notBeforeMin: 30 },
    { id: "simmer", text: "Simmer", handsOnMin: 4, handsOffMin: { low: 35, likely: 40, high: 50 }, needs: { burners: 1 }, after: ["chop", "fry"], maxWaitMin: { fry: 5 } },
    { id: "bake", text: "Bake", handsOnMin: 2, handsOffMin: { low: 20, likely: 25, high: 30 }, needs: { oven: { c: 190, trays: 2 } }, after: ["simmer"], maxWaitMin: 15, loads: { holds: 8, of: 24 }, endByMin: 400 },
    { id: "cool", text: "Cool in water", handsOnMin: 3, handsOffMin: 40, needs: { sinks: 1 }, after: ["bake"], maxWaitMin: 0, startAtMin: 200 },
  ],
  holds: [
    { what: "pots", from: "fry", to: "simmer" },
    { what: "burners", from: "fry", to: "simmer" },
    { what: "pots", from: "bake", to: "cool" },
  ],
  limits: [{ from: "bake", to: "cool", maxMin: 120, why: "hot food must be cold in time" }],
  keeps: [
    { place: "fridge", days: 4 },
    { place: "freezer", days: 90 },
    { place: "clamp", days: 10 },
  ],
  reheat: "Until it bubbles",
  allergens: ["milk", "gluten"],
  note: "Best in August",
};

/** The same with the lists that a recipe may leave out, and places in one order. */
const full = (recipe: NewRecipe): NewRecipe => ({ ...recipe, holds: recipe.holds ?? [], limits: recipe.limits ?? [], allergens: recipe.allergens ?? [], keeps: [...recipe.keeps].sort((a, b) => a.place.localeCompare(b.place)) });

describe("a recipe that is opened and saved", () => {
  it("is the same, whatever the form shows of it", () => {
    const read = readRecipe(recipeFields(stored(SAUCE)));
    expect(read.ok).toBe(true);
    if (read.ok) expect(full(read.body)).toEqual(full(SAUCE));
  });

  it("is the same for every recipe of the book", () => {
    const book = readRecipes();
    const seen = { waits: 0, loads: 0, holds: 0, limits: 0, ranges: 0 };
    for (const { file, recipe } of book) {
      const read = readRecipe(recipeFields(stored(recipe)));
      expect(read.ok, file).toBe(true);
      if (read.ok) expect(full(read.body), file).toEqual(full(recipe));
      seen.waits += recipe.steps.filter(({ maxWaitMin }) => typeof maxWaitMin === "object").length;
      seen.loads += recipe.steps.filter(({ loads }) => loads).length;
      seen.ranges += recipe.steps.filter(({ handsOffMin }) => typeof handsOffMin === "object").length;
      seen.holds += recipe.holds?.length ?? 0;
      seen.limits += recipe.limits?.length ?? 0;
    }
    expect(book.length).toBeGreaterThan(150);
    for (const [what, n] of Object.entries(seen)) expect(n, what).toBeGreaterThan(20);
  });

  it("begins with one empty step and one empty line, which is not yet a recipe", () => {
    const read = readRecipe(recipeFields(null));
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.faults.map(({ field }) => field)).toEqual(["title", "makesAmount", "step-0-text"]);
  });
});

describe("what is typed", () => {
  it.each([
    ["", 0],
    ["40", 40],
    ["40 min", 40],
    ["35–50", { low: 35, likely: 43, high: 50 }],
    ["35-50", { low: 35, likely: 43, high: 50 }],
    ["35 to 45", { low: 35, likely: 40, high: 45 }],
    ["35–40–55", { low: 35, likely: 40, high: 55 }],
    ["50–35", null],
    ["35–60–50", null],
    ["a while", null],
    ["−5", null],
    ["1–2–3–4", null],
  ])("“%s” by itself is %j", (typed, minutes) => {
    expect(minutesIn(typed)).toEqual(minutes);
  });

  it("numbers of steps are read with commas, blanks and “and”", () => {
    expect(numbersIn("1, 3")).toEqual([1, 3]);
    expect(numbersIn("1 3")).toEqual([1, 3]);
    expect(numbersIn("1 and 3")).toEqual([1, 3]);
    expect(numbersIn("")).toEqual([]);
    expect(numbersIn("the first")).toBeNull();
  });

  it("a wait for each step before is read by its number", () => {
    expect(pairsIn("5 after 1, 15 min after 3")).toEqual([
      { min: 5, step: 1 },
      { min: 15, step: 3 },
    ]);
    expect(pairsIn("5 after the first")).toBeNull();
  });

  it("any whole minutes and ranges read back as written", () => {
    let reached = 0;
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 3, maxLength: 3 }), (minutes) => {
        const [low, likely, high] = [...minutes].sort((a, b) => a - b) as [number, number, number];
        const step = { ...(SAUCE.steps[0] as NewRecipe["steps"][number]), handsOffMin: { low, likely, high } };
        const [fields] = recipeFields(stored({ ...SAUCE, steps: [step], holds: [], limits: [] })).steps;
        expect(minutesIn(fields?.handsOff ?? "")).toEqual({ low, likely, high });
        reached++;
      }),
      { numRuns: 300 },
    );
    expect(reached).toBe(300);
  });

  it("a yield takes a decimal comma", () => {
    expect(readRecipe({ ...recipeFields(stored(SAUCE)), makesAmount: "1,5" })).toMatchObject({ ok: true, body: { makes: { amount: 1.5 } } });
  });

  it("an oven without a number of trays takes one", () => {
    expect(readRecipe(withStep(3, { trays: "" }))).toMatchObject({ ok: true, body: { steps: { 3: { needs: { oven: { c: 190, trays: 1 } } } } } });
  });

  it("empty lines of ingredients and words parted by commas are tidied away", () => {
    const fields = recipeFields(stored(SAUCE));
    const read = readRecipe({ ...fields, ingredients: [...fields.ingredients, { text: "  ", crop: "carrot", madeBy: "", food: "" }], allergens: " milk , , egg" });
    expect(read).toMatchObject({ ok: true, body: { ingredients: SAUCE.ingredients, allergens: ["milk", "egg"] } });
  });
});

const FIELDS = recipeFields(stored(SAUCE));
const withStep = (at: number, change: Partial<StepFields>): RecipeFields => ({ ...FIELDS, steps: FIELDS.steps.map((step, i) => (i === at ? { ...step, ...change } : step)) });
const faultsIn = (fields: RecipeFields): string[] => {
  const read = readRecipe(fields);
  return read.ok ? [] : read.faults.map(({ field }) => field);
};

describe("what cannot be", () => {
  it.each<[string, RecipeFields, string]>([
    ["no name", { ...FIELDS, title: "" }, "title"],
    ["a yield of none", { ...FIELDS, makesAmount: "0" }, "makesAmount"],
    ["a yield in words", { ...FIELDS, makesAmount: "some" }, "makesAmount"],
    ["a yield of nothing", { ...FIELDS, makesUnit: " " }, "makesUnit"],
    ["a step without words", withStep(1, { text: "" }), "step-1-text"],
    ["hands in words", withStep(1, { handsOn: "a few" }), "step-1-on"],
    ["a range that falls", withStep(2, { handsOff: "50–35" }), "step-2-off"],
    ["a step after one that is not there", withStep(2, { after: "9", within: "" }), "step-2-after"],
    ["a step after itself", withStep(2, { after: "3", within: "" }), "step-2-after"],
    ["a step after step 0", withStep(2, { after: "0", within: "" }), "step-2-after"],
    ["a wait for a step that it does not come after", withStep(2, { within: "5 after 4" }), "step-2-within"],
    ["a wait after nothing", withStep(0, { within: "5" }), "step-0-within"],
    ["a wait in words", withStep(2, { within: "soon" }), "step-2-within"],
    ["an oven too hot", withStep(3, { ovenC: "800" }), "step-3-oven"],
    ["no tray in the oven", withStep(3, { trays: "0" }), "step-3-trays"],
    ["burners in words", withStep(1, { burners: "two" }), "step-1-burners"],
    ["pieces without how many go at a time", withStep(3, { holds: "" }), "step-3-of"],
    ["a pot from a step that is not there", { ...FIELDS, holds: [{ what: "pots", from: "", to: "2" }] }, "hold-0-from"],
    ["a pot to a step that is not there", { ...FIELDS, holds: [{ what: "pots", from: "1", to: "9" }] }, "hold-0-to"],
    ["a time limit without minutes", { ...FIELDS, limits: [{ maxMin: "", from: "1", to: "2", why: "" }] }, "limit-0-maxMin"],
    ["a time limit to nowhere", { ...FIELDS, limits: [{ maxMin: "5", from: "1", to: "", why: "" }] }, "limit-0-to"],
    ["a time limit within one step", { ...FIELDS, limits: [{ maxMin: "5", from: "2", to: "2", why: "" }] }, "limit-0-to"],
    ["days in words", { ...FIELDS, keeps: { ...FIELDS.keeps, freezer: "long" } }, "keeps-freezer"],
    ["no day at all", { ...FIELDS, keeps: { ...FIELDS.keeps, clamp: "0" } }, "keeps-clamp"],
  ])("%s is named at its control", (_, fields, field) => {
    expect(faultsIn(fields)).toEqual([field]);
  });

  it("is said all at once, in words without the parser's own", () => {
    const read = readRecipe({ ...withStep(1, { handsOn: "a few", text: "" }), makesAmount: "", title: "" });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.faults.map(({ field }) => field).sort()).toEqual(["makesAmount", "step-1-on", "step-1-text", "title"]);
    for (const { text } of read.faults) expect(text).not.toMatch(/NaN|expected|undefined/);
  });
});

describe("a fault in the service's answer", () => {
  const fields = { ingredients: [{ text: "", crop: "", madeBy: "", food: "" }, ...FIELDS.ingredients], keeps: { ...FIELDS.keeps, shelf: "200" } };
  it.each([
    ["steps.2.after", "step-2-after"],
    ["steps.2.maxWaitMin.fry", "step-2-within"],
    ["steps.1.needs.burners", "step-1-burners"],
    ["steps.3.needs.oven.trays", "step-3-trays"],
    ["steps.3.handsOffMin", "step-3-off"],
    ["steps", "step-0-text"],
    // the empty first row was not sent, so the service's second is the page's third
    ["ingredients.1.madeBy", "comes-2"],
    ["ingredients.0.text", "ingredient-1"],
    ["holds.1.to", "hold-1-to"],
    ["limits.0.maxMin", "limit-0-maxMin"],
    // fridge, freezer and shelf were sent
    ["keeps.2.days", "keeps-shelf"],
    ["keeps", "keeps-fridge"],
    ["makes.unit", "makesUnit"],
    ["process", "process"],
    ["anything", "title"],
  ])("%s leads to %s", (path, field) => {
    expect(faultAt(path.split("."), "is not so", fields).field).toBe(field);
  });
});

describe("two versions of a recipe", () => {
  it("differ in the lines that somebody changed, and in no other", () => {
    expect(differences(FIELDS, FIELDS)).toEqual([]);
    const theirs = { ...withStep(3, { ovenC: "200" }), title: "Red sauce", keeps: { ...FIELDS.keeps, clamp: "" } };
    expect(differences(FIELDS, theirs).map(({ name }) => name)).toEqual(["Name", "Step 4", "Keeps, days"]);
  });
});
