/** A pasted recipe on its way into the book: its doubts stand at their controls and go when somebody has changed them. */
import { describe, expect, it } from "vitest";
import type { RecipeDraft } from "#shared/contracts/recipe-reading.ts";
import { doubtsOf, draftSentence, readingsOf } from "#web/pages/recipes/draft-notes.ts";
import { readRecipe } from "#web/pages/recipes/read-recipe.ts";
import { recipeFields } from "#web/pages/recipes/recipe-form.ts";
import { movedStep, withoutStep } from "#web/pages/recipes/step-numbers.ts";
import { bodyToRead } from "#web/pages/recipes/text-to-read.ts";

const step = (id: string, text: string, after: string[]): RecipeDraft["recipe"]["steps"][number] => ({ id, text, handsOnMin: 2, handsOffMin: 10, needs: {}, after });
const DRAFT: RecipeDraft = {
  recipe: { title: "Bean soup", way: "cook", makes: { amount: 1, unit: "batch" }, ingredients: [{ text: "500 g beans" }, { text: "salt" }], steps: [step("s1", "Boil", []), step("s2", "Simmer", ["s1"])], keeps: [] },
  ingredients: [
    { text: "500 g beans", grams: 500, read: null, byWeight: "500 g", byMeasure: "4 cups" },
    { text: "salt", grams: null, read: null, byWeight: null, byMeasure: null },
  ],
  steps: [
    { id: "s1", found: [] },
    { id: "s2", found: [{ text: "10 minutes", means: "10 min, hands off" }] },
  ],
  doubts: [
    { path: "makes", text: "", why: "No yield is named." },
    { path: "ingredients.1", text: "salt", why: "no amount" },
    { path: "steps.1.handsOffMin", text: "a while", why: "taken as 10 min" },
    { path: "keeps", text: "", why: "Yours to enter." },
  ],
  notUnderstood: [],
};
const fields = recipeFields(DRAFT.recipe);

describe("a draft", () => {
  it("fits the form as it stands, and is stored as it was read", () => {
    const read = readRecipe(fields);
    expect(read.ok && read.body).toMatchObject({ title: "Bean soup", makes: { amount: 1, unit: "batch" }, ingredients: [{ text: "500 g beans" }, { text: "salt" }] });
  });

  it("has each doubt at its control, said with what it is about", () => {
    expect(doubtsOf(DRAFT, fields)).toEqual([
      { field: "makesAmount", text: "One batch makes: No yield is named." },
      { field: "ingredient-1", text: "Ingredient 2: “salt”: no amount" },
      { field: "step-1-off", text: "Step 2: “a while”: taken as 10 min" },
      { field: "keeps-fridge", text: "Keeping: Yours to enter." },
    ]);
  });

  it("loses a doubt when its control is changed, and no other", () => {
    const left = (now: typeof fields): string[] => doubtsOf(DRAFT, now).map(({ field }) => field);
    expect(left({ ...fields, makesAmount: "6", makesUnit: "portions" })).toEqual(["ingredient-1", "step-1-off", "keeps-fridge"]);
    expect(left({ ...fields, ingredients: [fields.ingredients[0] ?? { text: "", crop: "", madeBy: "", food: "" }] })).toEqual(["makesAmount", "step-1-off", "keeps-fridge"]);
    expect(left({ ...fields, keeps: { ...fields.keeps, fridge: "3" } })).toEqual(["makesAmount", "ingredient-1", "step-1-off"]);
  });

  it("keeps a doubt with its step when steps change places, and drops it with the step", () => {
    expect(doubtsOf(DRAFT, movedStep(fields, 1, -1)).map(({ field }) => field)).toContain("step-0-off");
    expect(doubtsOf(DRAFT, withoutStep(fields, 1)).map(({ field }) => field)).toEqual(["makesAmount", "ingredient-1", "keeps-fridge"]);
  });

  it("says what each control was read from", () => {
    expect(readingsOf(DRAFT, fields)).toEqual([
      { field: "ingredient-0", text: "Read as 500 g · 4 cups." },
      { field: "ingredient-1", text: "No weight is known for this line; it stays as written." },
      { field: "step-1-text", text: "Read: “10 minutes” as 10 min, hands off." },
    ]);
  });

  it("counts its doubts in the sentence", () => {
    expect(draftSentence(0)).toBe("The recipe is read and nothing in it is doubtful. Look it over, then save it.");
    expect(draftSentence(1)).toBe("The recipe is read; 1\u00a0part of it is doubtful. Look at it, then save it.");
  });
});

describe("what was pasted", () => {
  it("is a page's own data where it is that, else text, also where it only looks like data", () => {
    expect(bodyToRead('{"@type": "Recipe", "name": "Soup"}')).toEqual({ jsonLd: { "@type": "Recipe", name: "Soup" } });
    expect(bodyToRead("[quick] soup")).toEqual({ text: "[quick] soup" });
    expect(bodyToRead("Soup\n1 onion")).toEqual({ text: "Soup\n1 onion" });
  });
});
