/** What else a pasted recipe says: what is done meanwhile, how long it keeps, whose cups it means, and notes that are no step. As a cook reads it, common practice, no source. */
import { describe, expect, it } from "vitest";
import { lineDoubt, measureTables, readIngredient } from "#shared/engines/measures/index.ts";
import { preservationTables } from "#shared/engines/preservation/index.ts";
import { readRecipeText } from "#shared/engines/recipe-reading/index.ts";
import { draftFrom } from "#shared/planning/recipe-draft.ts";
import { readCases, seedRows } from "#tests/support/reference-rows.ts";

const measures = measureTables(seedRows("measures"));
const book = { measures, preservation: preservationTables(seedRows("preservation")) };
const recipe = (method: string, ingredients = "1 egg", notes = ""): string => `Dish\nServes 4\nIngredients\n${ingredients}\nMethod\n${method}${notes === "" ? "" : `\nNotes\n${notes}`}`;
const afterOf = (method: string): string[] => readRecipeText(recipe(method)).steps.map(({ step }) => step.after.join("+"));
const draft = (text: string) => draftFrom({ text }, book, new Set());

describe("steps side by side", () => {
  it.each([
    ["Knead for 10 minutes.\nLeave to rise for an hour.\nMeanwhile, slice the leeks.\nBake for 30 minutes at 200°C.", ["", "s1", "s1", "s2+s3"]],
    ["Simmer for 40 minutes.\nWhile the soup simmers, toast the bread.\nServe.", ["", "", "s1+s2"]],
    ["Bake for 20 minutes. In the meantime make the sauce.\nPour over.", ["", "", "s1+s2"]],
    ["Drain the beans.\nWhile they are still hot, toss with the oil.", ["", "s1"]],
    ["Meanwhile, wash the leaves.\nServe.", ["", "s1"]],
  ])("%j", (method, after) => expect(afterOf(method)).toEqual(after));
  it("are a doubt to look at", () => expect(readRecipeText(recipe("Bake for 20 minutes.\nMeanwhile, make the sauce.")).doubts.map(({ path }) => path)).toContain("steps.1.after"));
});

describe("how long it keeps", () => {
  const keepsOf = (note: string) => draft(recipe("Simmer for 20 minutes.", "1 egg", note))?.keeps;
  it.each([
    ["Keeps for 3 days in the fridge.", [{ place: "fridge", days: 3 }]],
    ["Keeps 3 days in the fridge or 2 months in the freezer.", [{ place: "fridge", days: 3 }, { place: "freezer", days: 60 }]],
    ["Keeps 3 days, or 2 months in the freezer.", [{ place: "fridge", days: 3 }, { place: "freezer", days: 60 }]],
    ["Will keep for 2 to 3 days.", [{ place: "fridge", days: 2 }]],
    ["Freeze for up to 3 months.", [{ place: "freezer", days: 90 }]],
    ["Store in an airtight tin for up to 5 days.", [{ place: "shelf", days: 5 }]],
    ["Keep stirring for 3 minutes.", []],
  ])("%s", (note, keeps) => expect(keepsOf(note)).toEqual(keeps));
  it("is a note and no step, even among the steps", () => {
    const read = readRecipeText(recipe("Simmer for 20 minutes.\nKeeps for 3 days in the fridge."));
    expect([read.steps.length, read.note]).toEqual([1, "Keeps for 3 days in the fridge."]);
  });
  it("is not taken over where the tables do not allow it, and says so (University of Illinois, Leftovers; FoodKeeper id 207)", () => {
    const read = draft(recipe("Simmer for 20 minutes.", "1 egg", "Keeps for 3 weeks in the fridge."));
    expect(read?.keeps).toEqual([]);
    expect(read?.doubts.find(({ path }) => path === "keeps")?.why).toMatch(/Not taken over: At most 7 days in a fridge/);
  });
});

describe("whose cups", () => {
  it.each([
    ["Australian cup and spoon measures are used.", "1 cup flour", "Bake for 9 minutes at 180°C.", "australian"],
    ["1 tbsp = 20 ml", "1 cup flour", "Mix.", "australian"],
    ["Made with metric cups.", "1 cup flour", "Mix.", "metric"],
    ["All US cups.", "1 cup flour", "Mix.", "us"],
    ["", "1 imperial pint milk", "Mix.", "imperial"],
    ["", "2 cups flour", "Bake for 9 minutes at 350°F.", "us"],
    ["", "2 cups flour", "Bake for 9 minutes at 180°C.", null],
    ["", "200 g flour", "Bake for 9 minutes at 350°F.", null],
  ])("%s %s %s: %s", (note, line, method, whose) => expect(draft(recipe(method, line, note))?.measures).toBe(whose));
});

describe("a line between ingredients and method", () => {
  it("is a note where the method has its own heading, and the first step where it has none", () => {
    const between = "These amounts are easily doubled for a crowd.";
    const headed = readRecipeText(`Dish\nIngredients\n1 egg\n${between}\nMethod\nBeat the egg.`);
    expect([headed.note, headed.steps.map(({ step }) => step.text)]).toEqual([between, ["Beat the egg."]]);
    const bare = readRecipeText("Dish\n1 egg\n2 leeks\nSlice the leeks.\nFry for 5 minutes.");
    expect(bare.steps.map(({ step }) => step.text)).toEqual(["Slice the leeks.", "Fry for 5 minutes."]);
    expect(readRecipeText(`Dish\n1 egg\n${between}\nMethod\n1. Beat the egg.`).note).toBe(between);
  });
});

describe("a line that cannot be meant", () => {
  it.each([
    ["2 cloves flour", /clove does not fit plain flour.*weight.*cup/],
    ["3 heads sugar", /head does not fit/],
    ["2 milk", /bare number does not fit/],
    ["0 g sugar", /amount is nothing.*above 0/],
    ["1000000000 g sugar", /More than a kitchen holds/],
    ["500 g", /No food/],
  ])("%s", (line, why) => expect(lineDoubt(readIngredient(line, measures), measures)).toMatch(why));
  it.each(["2 cloves garlic", "1 head lettuce", "1 tin tomatoes", "500 g flour", "2 sticks butter", "3 eggs", "1 bunch parsley", "2 sprigs thyme", "salt to taste", "2 handfuls spinach", "1 slice bread", "5 cm ginger"])("is not %s", (line) => expect(lineDoubt(readIngredient(line, measures), measures)).toBeNull());
  it("is none of the hard lines that name a food", () => {
    const wrong = readCases<{ line: string; foodHolds: string }>("measures/hard-lines.json").filter(({ line, foodHolds }) => foodHolds !== "" && !line.endsWith(":") && lineDoubt(readIngredient(line, measures), measures) !== null);
    expect(wrong).toEqual([]);
  });
});
