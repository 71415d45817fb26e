/** What the recipe pages say, and how a recipe is found. Sentences are held against hand-made recipes. */
import { describe, expect, it } from "vitest";
import type { Calendar } from "#shared/contracts/calendar.ts";
import type { Larder } from "#shared/contracts/larder.ts";
import type { Recipe, RecipeBrief, Step } from "#shared/contracts/recipes.ts";
import { cropsAtHand } from "#web/pages/recipes/at-hand.ts";
import { emptyStep } from "#web/pages/recipes/recipe-form.ts";
import { found, isNarrowed } from "#web/pages/recipes/recipe-search.ts";
import { briefly, keepsWords, limitSentence, needsWords, offWords, recipeSentence, stepTimes, usesWords } from "#web/pages/recipes/recipe-words.ts";

/** Numbers and units never part: the blank between them is U+00A0. */
const nb = (text: string): string => text.replace(/(\d) (min|h|kg|g|°C|portions|days?|weeks?|months?|years?|loads?|burners?|large)\b/g, "$1\u00a0$2").replace(/\u00a0h (\d)/g, "\u00a0h\u00a0$1").replace(/ °C/g, "\u00a0°C");

const step = (change: Partial<Step>): Step => ({ id: "a", text: "Do it", handsOnMin: 0, handsOffMin: 0, needs: {}, after: [], ...change });
const STEPS = [step({ id: "chop" }), step({ id: "fry" }), step({ id: "bake" })];
const NAMES = new Map([
  ["courgette", "Courgette"],
  ["onion", "Onion, sets"],
  ["tomato", "Tomato, large"],
  ["french-bean", "French bean, bush"],
]);

const recipe = (change: Partial<Recipe>): Recipe => ({
  id: "a",
  title: "Courgette soup",
  way: "cook",
  makes: { amount: 6, unit: "portions" },
  ingredients: [],
  steps: [],
  holds: [],
  limits: [],
  keeps: [],
  allergens: [],
  origin: "book",
  uses: [],
  handsOnMin: 35,
  cautions: [],
  sources: [],
  processing: [],
  ...change,
});

describe("the times of a step", () => {
  it("by itself are a length or a span of lengths", () => {
    expect(offWords(0)).toBe("");
    expect(offWords(40)).toBe(nb("40 min"));
    expect(offWords({ low: 35, likely: 40, high: 50 })).toBe(nb("35 to 50 min"));
    expect(offWords({ low: 60, likely: 60, high: 60 })).toBe(nb("1 h"));
    // a number before “h” alone would be read as hours
    expect(offWords({ low: 45, likely: 60, high: 90 })).toBe(nb("45 min to 1 h 30"));
  });

  it.each<[Partial<Step>, string]>([
    [{ handsOnMin: 15 }, "15 min of hands"],
    [{ handsOnMin: 15, handsOffMin: { low: 35, likely: 40, high: 50 }, needs: { oven: { c: 190, trays: 2 } } }, "15 min of hands, then 35 to 50 min in the oven at 190 °C"],
    [{ handsOffMin: 60 }, "1 h by itself"],
    [{ handsOnMin: 3, handsOffMin: 20, needs: { burners: 1 } }, "3 min of hands, then 20 min on the heat"],
    [{ handsOnMin: 8, needs: { burners: 1 } }, "8 min of hands on the heat"],
    [{ handsOnMin: 2, after: ["chop"], maxWaitMin: 10 }, "2 min of hands; within 10 min of step 1"],
    [{ handsOnMin: 2, after: ["fry"], maxWaitMin: 0 }, "2 min of hands; at once after step 2"],
    [{ handsOnMin: 2, after: ["chop", "bake"], maxWaitMin: { chop: 90, bake: 5 } }, "2 min of hands; within 1 h 30 of step 1 and within 5 min of step 3"],
    [{ handsOnMin: 1, handsOffMin: 4, loads: { holds: 500, of: 1000 } }, "1 min of hands, then 4 min by itself; in 2 loads, so long each"],
    // one go for each batch: nothing to say about one batch
    [{ handsOnMin: 16, loads: { holds: 1, of: 1 } }, "16 min of hands"],
  ])("%j is “%s”", (change, words) => {
    expect(stepTimes(step(change), STEPS)).toBe(nb(words));
  });

  it("a limit names its steps by number and says why", () => {
    expect(limitSentence({ from: "fry", to: "bake", maxMin: 120, why: "hot food" }, STEPS)).toBe(nb("From the end of step 2 to the start of step 3 at most 2 h: hot food."));
  });

  it("in the form say what a step needs besides hands", () => {
    const needs = (change: object): string => needsWords({ ...emptyStep("a", ""), ...change });
    expect(needs({})).toBe("Needs hands only");
    expect(needs({ ovenC: "190", burners: "1", sinks: "0" })).toBe(nb("Needs the oven at 190 °C and 1 burner"));
    expect(needs({ pots: "2", of: "24", holds: "8" })).toBe(nb("Needs 2 large pots, 3 loads"));
    expect(needs({ of: "1", holds: "1" })).toBe("Needs hands only");
    expect(needs({ burners: "two" })).toBe("Needs hands only");
  });
});

describe("a recipe", () => {
  it("says what it makes and how long hands are busy", () => {
    expect(recipeSentence(recipe({}))).toBe(nb("Courgette soup makes 6 portions and takes 35 min of hands."));
    expect(recipeSentence(recipe({ handsOnMin: 0 }))).toBe(nb("Courgette soup makes 6 portions."));
    expect(briefly(recipe({ keeps: [{ place: "fridge", days: 3 }] }))).toBe(nb("6 portions · 35 min of hands · 3 days in the fridge"));
  });

  it("says how long it keeps, never longer than it does", () => {
    const words = (days: number): string => keepsWords([{ place: "freezer", days }]).replace(/\u00a0/g, " ");
    expect([1, 4, 13, 14, 20, 59, 60, 90, 240, 365, 729, 730].map(words)).toEqual(
      ["1 day", "4 days", "13 days", "2 weeks", "2 weeks", "8 weeks", "2 months", "3 months", "8 months", "12 months", "24 months", "2 years"].map((length) => `${length} in the freezer`),
    );
    // a month never counts more than 30 days, so the words never promise a day too many
    for (let days = 1; days <= 3660; days++) {
      const [n = "", unit = ""] = words(days).split(" ");
      const each = unit.startsWith("day") ? 1 : unit.startsWith("week") ? 7 : unit.startsWith("month") ? 30 : 365;
      expect(Number(n) * each).toBeLessThanOrEqual(days);
    }
    expect(keepsWords([{ place: "fridge", days: 3 }, { place: "clamp", days: 100 }])).toBe(nb("3 days in the fridge, 3 months in a clamp"));
  });

  it("names what it takes from the garden as one speaks of it", () => {
    const uses = [
      { crop: "courgette", grams: 1200 },
      { crop: "onion", grams: 200 },
      { crop: "french-bean", grams: 14 },
      { crop: "tomato", grams: 0 },
    ];
    expect(usesWords(uses, NAMES)).toBe(nb("1.2 kg courgettes, 200 g onions and 14 g French beans"));
    expect(usesWords([], NAMES)).toBe("");
  });
});

describe("the list", () => {
  const line = (text: string) => ({ text, grams: null, read: null, byWeight: null, byMeasure: null });
  const brief = (of: Parameters<typeof recipe>[0]): RecipeBrief => {
    const { id, title, way, makes, keeps, origin, uses, handsOnMin, ingredients } = recipe(of);
    return { id, title, way, makes, keeps, origin, uses, handsOnMin, lines: ingredients.map(({ text }) => text).join("\n") };
  };
  const all = [
    recipe({ id: "soup", title: "Courgette soup", uses: [{ crop: "courgette", grams: 1200 }], ingredients: [line("2 tbsp olive oil")] }),
    recipe({ id: "beans", title: "Freeze French beans", way: "freeze", uses: [{ crop: "french-bean", grams: 1000 }] }),
    recipe({ id: "puree", title: "Tomato purée", way: "bottle", uses: [{ crop: "tomato", grams: 2000 }] }),
    recipe({ id: "stew", title: "Summer stew", uses: [{ crop: "tomato", grams: 500 }, { crop: "courgette", grams: 500 }] }),
  ].map(brief);
  const ids = (asked: Partial<Parameters<typeof found>[1]>): string[] => found(all, { crop: null, way: null, words: "", hand: false, ...asked }, NAMES, new Set(["tomato"])).map(({ id }) => id);

  it("is whole until something narrows it", () => {
    expect(ids({})).toHaveLength(4);
    expect(ids({ words: "   " })).toHaveLength(4);
    expect(isNarrowed({ crop: null, way: null, words: " ", hand: false })).toBe(false);
    for (const asked of [{ crop: "tomato" }, { way: "freeze" }, { words: "soup" }, { hand: true }]) expect(isNarrowed({ crop: null, way: null, words: "", hand: false, ...asked })).toBe(true);
  });

  it("narrows to what is at hand: everything that a recipe takes from the garden has to be there", () => expect(ids({ hand: true })).toEqual(["puree"]));
  it("takes as at hand what the larder still holds and what the week brings", () => {
    const lots = [{ crop: "onion", grams: 500, portions: null }, { crop: "leek", grams: 0, portions: null }, { recipeId: "x", grams: 900, portions: null }];
    const weeks = [{ crops: [{ crop: "tomato", grams: { low: 0, likely: 800, high: 2000 } }, { crop: "pea", grams: { low: 0, likely: 0, high: 90 } }] }];
    expect([...cropsAtHand({ lots } as unknown as Larder, { weeks } as unknown as Calendar).crops].sort()).toEqual(["onion", "tomato"]);
  });

  it("finds by name, by crop and by what goes in; every word counts, accents and capitals do not", () => {
    expect(ids({ words: "TOMATO" })).toEqual(["puree", "stew"]);
    expect(ids({ words: "puree" })).toEqual(["puree"]);
    expect(ids({ words: "olive" })).toEqual(["soup"]);
    expect(ids({ words: "tomato courgette" })).toEqual(["stew"]);
    expect(ids({ words: "freeze bean" })).toEqual(["beans"]);
    expect(ids({ words: "parsnip" })).toEqual([]);
  });

  it("narrows to a crop and a way, and to both", () => {
    expect(ids({ crop: "tomato" })).toEqual(["puree", "stew"]);
    expect(ids({ way: "cook" })).toEqual(["soup", "stew"]);
    expect(ids({ crop: "tomato", way: "cook" })).toEqual(["stew"]);
    expect(ids({ crop: "tomato", way: "cook", words: "soup" })).toEqual([]);
  });
});
