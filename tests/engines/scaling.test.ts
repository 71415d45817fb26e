/** Scaling against published rules: pans by volume, whole eggs, spice held back, tested recipes in whole batches. Sources beside each check. */
import { describe, expect, it } from "vitest";
import { dishesToCool, doesNotScale, factorOf, fitsOf, heldMl, type RecipeToScale, type Tin, tinFactor, volumeMl } from "#shared/engines/scaling/index.ts";
import { measureTables } from "#shared/engines/measures/index.ts";
import { asNumber } from "#shared/kernel/quantity.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";
import { scaledRecipe, type RecipeAsked } from "#shared/planning/scaled-recipe.ts";
import { seedRows } from "#tests/support/reference-rows.ts";

const tables = measureTables(seedRows("measures"));
const IN_CM = 2.54;
const step = (more: Partial<RecipeStep>): RecipeStep => ({ id: "a", text: "Cook", handsOnMin: 5, handsOffMin: 0, needs: {}, after: [], ...more });
const recipe = (texts: readonly string[], more: Partial<RecipeAsked> = {}, use: Partial<RecipeAsked["use"]> = {}): RecipeAsked => ({
  use: { id: "r", title: "Stew", way: "cook", makes: { amount: 4, unit: "portions" }, uses: [{ crop: "carrot", grams: 1200 }], handsOnMin: 5, keeps: [], process: null, ...use },
  lines: texts.map((text) => (/carrot/.test(text) ? { text, crop: "carrot" } : { text })),
  steps: [step({})],
  holds: [],
  system: "us",
  kitchen: { potLitres: null, trays: null },
  ...more,
});
const scaled = (asked: Parameters<typeof scaledRecipe>[1], of: RecipeAsked) => {
  const answer = scaledRecipe(of, asked, tables);
  if (!answer.ok) throw new Error(answer.problem.detail);
  return answer.value;
};
const faultsOf = (asked: Parameters<typeof scaledRecipe>[1], of: RecipeAsked) => {
  const answer = scaledRecipe(of, asked, tables);
  return answer.ok ? [] : (answer.problem.fields ?? []).map(({ path }) => path);
};
const lines = (texts: readonly string[], batches: number) => scaled({ batches }, recipe(texts)).ingredients;

describe("another tin", () => {
  // straight-sided millilitres of the inside dimensions, checked with the printed table of pans (geometry)
  it.each([
    ["13 × 9 × 2 in", { shape: "rectangle", longCm: 13 * IN_CM, wideCm: 9 * IN_CM, deepCm: 2 * IN_CM }, 3835],
    ["8 in square, 2 in", { shape: "square", sideCm: 8 * IN_CM, deepCm: 2 * IN_CM }, 2098],
    ["9 in round, 2 in", { shape: "round", acrossCm: 9 * IN_CM, deepCm: 2 * IN_CM }, 2085],
  ] as const)("%s holds its published volume", (_, tin: Tin, ml) => {
    expect(Math.abs((volumeMl(tin) ?? 0) - ml)).toBeLessThanOrEqual(1);
  });
  it("is about half from 13 × 9 to 8 square or 9 round (University of Nebraska-Lincoln Extension, Reducing the Size of Recipes)", () => {
    const from: Tin = { shape: "rectangle", longCm: 33, wideCm: 23 };
    for (const to of [{ shape: "square", sideCm: 20.3 }, { shape: "round", acrossCm: 22.9 }] as const) expect(Math.abs(tinFactor(from, to) - 0.5)).toBeLessThan(0.06);
  });
  it("of 24 cm round to 20 × 30 is 600 to 452.4 cm² (geometry)", () => {
    const answer = scaled({ dish: { from: { shape: "round", acrossCm: 24 }, to: { shape: "rectangle", longCm: 30, wideCm: 20 } } }, recipe(["300 g flour"]));
    expect(answer.batches).toBeCloseTo(1.326, 3);
    expect(answer.fits[0]).toMatchObject({ what: "dish", fits: true });
  });
});

describe("what grows, and what does not", () => {
  it("grows a weight in proportion (Armed Forces Recipe Service, card A no. 1(2): 1.25 lb for 100 portions is 4.35 lb for 348)", () => {
    const answer = scaled({ yield: 348 }, recipe(["1.25 lb carrots"], {}, { makes: { amount: 100, unit: "portions" } }));
    expect(answer.batches).toBe(3.48);
    expect(Math.abs((answer.ingredients[0]?.grams ?? 0) - 4.35 * 453.59237)).toBeLessThanOrEqual(1);
    expect(Math.abs(answer.ingredients[0]?.weightErrorPercent ?? 99)).toBeLessThan(1);
  });
  it("takes whole eggs and says how to make up the rest: half of a large egg of 50 g (USDA SR Legacy 171287; University of Nebraska-Lincoln Extension)", () => {
    const [egg] = lines(["3 eggs"], 0.5);
    expect(egg).toMatchObject({ scales: "rounded", line: "2 eggs" });
    expect(egg?.note).toMatch(/1\.5.*75 g.*2 tbsp/s);
    expect(egg?.measureErrorPercent).toBeCloseTo(33.3, 1);
  });
  // common practice, no source
  it.each([
    ["2 tsp chilli flakes", "to-taste"],
    ["1 tsp salt", "to-taste"],
    ["oil for frying", "by-pan"],
    ["salt and pepper, to taste", "not"],
    ["400 g red peppers", "in-proportion"],
    ["2 tsp baking powder", "in-proportion"],
  ])("%s: %s", (text, scales) => expect(lines([text], 4)[0]?.scales).toBe(scales));
  it("names what does not multiply", () => {
    const answer = scaled({ batches: 3 }, recipe(["2 tsp baking powder", "3 eggs", "1 tsp salt", "2 tbsp cornflour", "1 kg carrots"], { steps: [step({ text: "Simmer", handsOffMin: 30, needs: { burners: 1 } }), step({ id: "b", handsOffMin: 40, needs: { oven: { c: 180, trays: 1 } } })] }));
    expect(answer.doesNotScale.map(({ what }) => what)).toEqual(["times", "tins", "evaporation", "leavening", "salt", "thickener", "cooling"]);
  });
  it("multiplies no line that names no amount, and no size of a tin", () => {
    expect(lines(["2 x 400 g tins chickpeas"], 2)[0]?.line).toMatch(/^4 tins of 400 g chickpeas/);
    expect(lines(["salt to taste"], 5)[0]?.line).toBe("salt to taste");
  });
  it("does not change a recipe of one batch", () => {
    const texts = ["3 eggs", "1.2 kg carrots, sliced", "1½ cups plain flour", "salt"];
    expect(lines(texts, 1).map(({ line }) => line)).toEqual(texts);
  });
  it("takes the produce at hand: 3.4 kg where a batch takes 1.2 kg", () => {
    const answer = scaled({ atHand: { crop: "carrot", grams: 3400 } }, recipe(["1.2 kg carrots"]));
    expect([answer.uses, answer.batches]).toEqual([[{ crop: "carrot", grams: 3400 }], 2.833]);
    expect(faultsOf({ atHand: { crop: "leek", grams: 100 } }, recipe(["1.2 kg carrots"]))).toEqual(["atHand.crop"]);
  });
});

/** National Center for Home Food Preservation, "Can I double the recipe?" (2025): separate batches. */
describe("a tested preserving recipe", () => {
  const jars = recipe(["1.2 kg carrots", "2 tsp salt"], {}, { process: "carrots", way: "bottle", makes: { amount: 4, unit: "jars" } });
  it("is made in whole batches, each by itself", () => {
    const answer = scaled({ batches: 3 }, jars);
    expect([answer.apart, answer.ingredients.map(({ line }) => line), answer.cautions[0]]).toEqual([true, ["3 × (1.2 kg carrots)", "3 × (2 tsp salt)"], "Make 3 batches one after the other, each by itself. A tested recipe is never made larger in one pot."]);
  });
  it.each([
    [{ batches: 1.5 }, "batches"],
    [{ batches: 0.5 }, "batches"],
    [{ yield: 6 }, "yield"],
    [{ atHand: { crop: "carrot", grams: 900 } }, "atHand.grams"],
    [{ dish: { from: { shape: "round", acrossCm: 20 }, to: { shape: "round", acrossCm: 24 } } }, "dish"],
  ] as const)("is refused for %j", (asked, path) => expect(faultsOf(asked, jars)).toEqual([path]));
  it("leaves over what makes no whole batch", () => {
    const answer = scaled({ atHand: { crop: "carrot", grams: 3000 } }, jars);
    expect([answer.batches, answer.leftGrams]).toEqual([2, 600]);
  });
});

describe("the pot and the oven", () => {
  const plain: RecipeToScale = { title: "a", way: "cook", makes: { amount: 1, unit: "batch" }, process: null, uses: [], holdsPot: true, steps: [step({ needs: { oven: { c: 180, trays: 2 } } })], lines: [{ text: "", food: "", said: "", amount: { n: 1, d: 1 }, pieces: false, grams: 3000 }] };
  // 3 litres in a pot filled to three quarters: 4 litres; common practice, no source
  it("hold it, or say what would", () => {
    expect(fitsOf(plain, 1, { potLitres: 4, trays: 2 }).map(({ fits }) => fits)).toEqual([true, true]);
    expect(fitsOf(plain, 2, { potLitres: 4, trays: 2 }).map(({ fits, text }) => [fits, text.split(": ")[2] ?? text.split(": ")[1]])).toEqual([[false, "cook it in 2 pots."], [false, "bake in 2 loads."]]);
    expect(fitsOf(plain, 1, { potLitres: null, trays: null }).map(({ fits }) => fits)).toEqual([null, null]);
  });
  it("cools in layers of 5 cm, as many dishes as that takes; limits, and no promise (University of Wisconsin Extension: 2 in; FDA Food Code 3-501.14)", () => {
    const soup = { ...plain, steps: [step({ needs: { burners: 1 }, text: "Simmer", handsOffMin: 30 })] };
    const said = doesNotScale(soup, 3, new Set(), false);
    // 9 litres in dishes of 20 × 30 × 5 cm, 3 litres each
    expect(said.find(({ what }) => what === "cooling")?.text).toMatch(/no deeper than 5 cm, here 3 dishes.*within 2 hours.*within 6 in all is a limit, not a promise/);
    // 4 litres take 16 min at 2 kW and 74 % (EPRI): 9 take 36 and 3 take 12
    expect(said.find(({ what }) => what === "times")?.text).toMatch(/about 36 min instead of 12/);
    expect([0.5, 3, 3.1].map(dishesToCool)).toEqual([1, 1, 2]);
  });
  it("holds so much to the rim: a charted tin as charted (UNL: 13 × 9 in, 14 to 15 cups), any other 86 to 96 % of straight sides", () => {
    const charted = heldMl({ shape: "rectangle", longCm: 33, wideCm: 23, deepCm: 5 }, tables.pans);
    expect([Math.round(charted?.low ?? 0), Math.round(charted?.high ?? 0)]).toEqual([3312, 3549]);
    expect(heldMl({ shape: "rectangle", longCm: 20, wideCm: 30, deepCm: 5 }, tables.pans)).toMatchObject({ low: expect.closeTo(2580, 6) as number, high: expect.closeTo(2880, 6) as number, charted: null });
    expect(heldMl({ shape: "round", acrossCm: 24 }, tables.pans)).toBeNull();
  });
  it("keeps thirds exact", () => {
    const third = factorOf(plain, { batches: 1 / 3 });
    expect(third.ok && [third.value.factor, asNumber(third.value.factor)]).toEqual([{ n: 1, d: 3 }, 1 / 3]);
  });
});
