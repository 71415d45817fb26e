/**
 * Weights, amounts as picked and both systems. Sources: USDA SR Legacy (2018) household weights and SR26 refuse (table FOOD_DES), as
 * the rows of seed-data/measures name them; UNL Extension, Reducing the Size of Recipes (2020); UCUM 2.1 for the units.
 */
import { describe, expect, it } from "vitest";
import { asPicked, asUsed, bothSystems, measureTables, readIngredient, weighIngredient } from "#shared/engines/measures/index.ts";
import type { WeighOptions } from "#shared/engines/measures/index.ts";
import { measureWords } from "#shared/engines/measures/kitchen-rounding.ts";
import { seedRows, seedSources } from "#tests/support/reference-rows.ts";

const tables = measureTables(seedRows("measures"), seedSources("measures"));
const weigh = (text: string, options: WeighOptions = {}) => weighIngredient(readIngredient(text, tables), tables, options);
const grams = (text: string, options: WeighOptions = {}): number | null => weigh(text, options).value?.exactGrams ?? null;
const plain = (text: string | null): string | null => text && text.replaceAll("\u00a0", " ");
const both = (text: string, options: WeighOptions = {}) => {
  const line = readIngredient(text, tables);
  const answer = bothSystems(line, weighIngredient(line, tables, options).value?.exactGrams ?? null, tables, options);
  return { ...answer, byWeight: plain(answer.byWeight), byMeasure: plain(answer.byMeasure) };
};

describe("grams of a line", () => {
  it.each([
    ["courgette", "zucchini"],
    ["aubergine", "eggplant"],
    ["beetroot", "beet"],
    ["spring onion", "scallion"],
    ["spring onion", "green onion"],
    ["swede", "rutabaga"],
    ["celeriac", "celery root"],
    ["coriander leaves", "cilantro"],
    ["sweetcorn", "corn kernels"],
    ["plain flour", "all-purpose flour"],
    ["icing sugar", "powdered sugar"],
    ["cornflour", "cornstarch"],
    ["double cream", "heavy cream"],
    ["bicarbonate of soda", "baking soda"],
  ])("are the same for %s and %s", (british, american) => {
    const weights = ["2 cups chopped", "2 tsp", "2"].map((amount) => [grams(`${amount} ${british}`), grams(`${amount} ${american}`)] as const);
    for (const [one, other] of weights) expect(one).toBe(other);
    expect(weights.some(([one]) => one !== null)).toBe(true);
  });
  it.each([
    ["2 x 400g tins chickpeas", 800],
    ["1 (14 oz) can chopped tomatoes", 396.89],
    ["2 medium-size courgettes (about 300 g)", 300],
    ["4 lamb neck fillets (about 100g/4oz each)", 400],
    ["8 tbsp (1 stick/113g) butter", 113],
    ["1 lb 2 oz potatoes", 510.29],
    ["1 kg/2lb 4oz potatoes", 1000],
    ["100-150g spinach", 125],
  ])("come from the line itself where it states them: %s", (line, expected) => {
    expect(grams(line)).toBeCloseTo(expected, 1);
    expect(weigh(line).value?.restsOn).toBe("the line");
  });
  it("follow size and form (SR Legacy: carrot small 50, medium 61, large 72; cup chopped 128, grated 110)", () => {
    expect(["1 small carrot", "1 carrot", "2 large carrots", "1 cup chopped carrots", "1 cup carrots, grated"].map((line) => grams(line))).toEqual([50, 61, 144, 128, 110]);
  });
  it("tell the systems apart: a metric cup is 250 ml, a US one 236.59, an imperial pint 568.26, a US one 473.18", () => {
    expect(grams("1 cup milk", { system: "us" })).toBeCloseTo(244, 6);
    expect(grams("1 cup milk", { system: "metric" })).toBeCloseTo((244 * 250) / 236.5882365, 6);
    expect((grams("1 pint milk", { system: "imperial" }) as number) / (grams("1 pint milk", { system: "us" }) as number)).toBeCloseTo(568.26125 / 473.176473, 6);
  });
  it("take cup and spoon from the recipe's own system and print in the household's (New South Wales Health: cup 250, tablespoon 20; UCUM: US cup 236.59)", () => {
    // 216 g of oil a US cup (USDA SR Legacy 171413)
    expect(grams("1 tbsp olive oil", { system: "australian" })).toBeCloseTo((216 * 20) / 236.5882365, 6);
    expect(grams("1 cup plus 2 tablespoons milk", { system: "australian" })).toBeCloseTo((244 * 290) / 236.5882365, 6);
    expect(both("3 tbsp olive oil", { system: "australian", printIn: "metric" }).byMeasure).toBe("4 tbsp");
    expect(both("3 tbsp olive oil", { system: "australian" }).byMeasure).toBe("3 tbsp");
    expect(grams("1 cup sugar", { system: "label" })).toBeCloseTo((200 * 240) / 236.5882365, 6);
    expect((grams("2 dry pints strawberries") as number) / (grams("2 pints strawberries") as number)).toBeCloseTo(1.163647186, 6);
  });
  it.each([
    ["2 cups onions", "the table has chopped and sliced only"],
    ["1 cup coconut flour", "not flour"],
    ["a pinch of saffron", "no row"],
    ["salt to taste", "no amount"],
    ["3 dragon fruits", "no row"],
    ["2 winter squashes", "acorn and hubbard weigh differently"],
    ["For the sauce:", "no ingredient"],
  ])("are null with a reason, never guessed: %s (%s)", (line) => {
    const answer = weigh(line);
    expect(answer.value).toBeNull();
    expect(answer.notes.join()).not.toBe("");
  });
  it("name the row they rest on", () => {
    expect(weigh("1 cup plain flour").basis).toEqual([{ id: "SRL", text: expect.stringMatching(/FoodData Central, SR Legacy.*FDC 168936/) as string }]);
  });
});

describe("grams as picked", () => {
  const picked = (text: string, crop: string): number | null => weigh(text, { crop }).value?.asPickedGrams ?? null;
  it.each([
    ["500 g carrots", "carrot", 500, "a weight in a recipe is as bought (common practice)"],
    ["1 cup chopped carrots", "carrot", 144, "128 g edible, 11 % refuse: 143.8"],
    ["3 medium beetroot", "beetroot", 367, "82 g edible each, 33 % refuse: 122.4 each"],
    ["380 g shelled peas", "pea", 1000, "62 % refuse"],
    ["380 g peas", "pea", 1000, "peas are weighed shelled (common practice)"],
    ["1 kg peas in the pod", "pea", 1000, "said to be in the pod"],
    ["360 g sweetcorn kernels", "sweetcorn", 1000, "64 % refuse"],
    ["1 medium cauliflower", "cauliflower", 1508, "588 g edible, 61 % refuse: 1507.7"],
  ])("%s of %s: %i g (%s)", (line, crop, expected) => expect(picked(line, crop)).toBe(expected));
  it("and back: of 2.8 kg cabbage as picked 2.24 kg go in (SR26: 20 % refuse)", () => expect(asUsed(2800, tables.produce.get("cabbage") ?? { refusePercent: NaN })).toBeCloseTo(2240, 6));
  it("are not worked out for what is not a crop", () => expect(weigh("500 g plain flour").value?.asPickedGrams).toBeNull());
  it("come back unchanged with a note where no share is known", () => {
    expect(asPicked(200, "parsley", tables)).toMatchObject({ value: 200, notes: [expect.stringMatching(/No figure/)] });
  });
});

describe("one line in both systems", () => {
  it.each([
    ["500 g plain flour", "500 g", "4 cups", "125 g a cup"],
    ["1 cup plain flour", "125 g", "1 cup", "125 g a cup"],
    ["1 1/2 cups milk", "355 ml", "1½ cups", "354.9 ml"],
    ["2 litres water", "2 l", "8½ cups", "8.45 US cups"],
    ["200 g sugar", "200 g", "1 cup", "200 g a cup"],
    ["1 tsp salt", "6 g", "1 tsp", "6 g a teaspoon"],
    ["1/4 cup olive oil", "60 ml", "¼ cup", "59.1 ml"],
    ["3 large eggs", "150 g", "3 large", "50 g each"],
    ["2 garlic cloves", "6 g", "2 cloves", "3 g each"],
    ["1 kg courgettes", "1 kg", "about 5 medium", "196 g edible, 5 % refuse: 206 g each, 4.85"],
    ["2-3 tbsp honey", "42 g–63 g", "2 tbsp–3 tbsp", "21 g a tablespoon"],
    ["1 lb butter", "455 g", "2 cups", "453.6 g; 227 g a cup"],
    ["a pinch of salt", null, "1 pinch", "no weight for a pinch"],
    ["500 ml vegetable stock", "500 ml", "2 cups + 2 tbsp", "2.11 cups"],
  ] as [string, string | null, string, string][])("%s reads %s and %s (%s)", (line, weight, measure) => {
    const answer = both(line, { system: "us" });
    expect([answer.byWeight, answer.byMeasure]).toEqual([weight, measure]);
  });
  it("gives no cups of loose leaves (67 and 21 g a cup of kale in two editions of one table)", () => expect(both("600 g kale").byMeasure).toBeNull());
  it("shows the error of rounding", () => {
    expect(both("1 kg courgettes").measureErrorPercent).toBeCloseTo((5 / ((1000 * 0.95) / 196) - 1) * 100, 1);
    expect(both("500 g plain flour").measureErrorPercent).toBe(0);
  });
  it("follows the table of halved and thirded measures (UNL 2020)", () => {
    const us = { cupMl: 236.5882365, tablespoonMl: 14.78676478125, teaspoonMl: 4.92892159375 };
    const words = (cups: number): string | null => plain(measureWords(cups * us.cupMl, us).text);
    expect([words(1 / 6), words(1 / 8), words(1 / 12), words(1 / 32), words(1 / 3)]).toEqual(["2 tbsp + 2 tsp", "2 tbsp", "1 tbsp + 1 tsp", "1½ tsp", "⅓ cup"]);
  });
  it("never prints an amount that is off by more than half the widest gap between two measures", () => {
    const us = { cupMl: 236.5882365, tablespoonMl: 14.78676478125, teaspoonMl: 4.92892159375 };
    let checked = 0;
    // ¼ cup + 1 tbsp is 5 tbsp and ⅓ cup is 5⅓: half way is 3.2 % from either
    const widest = 3.3;
    // from four teaspoons to a gallon; a quarter teaspoon is the finest spoon, so below that the step itself is coarser
    for (let ml = us.teaspoonMl * 4; ml < 3800; ml *= 1.013) {
      expect(Math.abs(measureWords(ml, us).errorPercent), `${ml} ml`).toBeLessThanOrEqual(widest);
      checked++;
    }
    expect(checked).toBeGreaterThan(350);
  });
});
