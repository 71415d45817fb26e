/** Published check values of the kitchen that lie across engines: pans, eggs, produce for a canner, cooling, oven marks, ISO weeks and durations. */
import { describe, expect, it } from "vitest";
import { measureTables, readIngredient, weighIngredient } from "#shared/engines/measures/index.ts";
import { coolingStages, preservationTables, processesFor } from "#shared/engines/preservation/index.ts";
import { isoMinutes, readRecipeText } from "#shared/engines/recipe-reading/index.ts";
import { volumeMl } from "#shared/engines/scaling/index.ts";
import { weekOf } from "#shared/kernel/iso-week.ts";
import { asNumber } from "#shared/kernel/quantity.ts";
import { converted, fahrenheit, inBase, type UnitDefinition } from "#shared/kernel/units.ts";
import { seedRows } from "#tests/support/reference-rows.ts";

const measures = measureTables(seedRows("measures"));
const preservation = preservationTables(seedRows("preservation"));
const unit = (name: string): UnitDefinition => (measures.units.get(name)?.get("us") ?? measures.units.get(name)?.get("any")) as UnitDefinition;
const gasC = (mark: string): number | undefined => readRecipeText(`A\nIngredients\n1 egg\nMethod\nBake at gas mark ${mark} for 9 minutes.`).steps[0]?.step.needs.oven?.c;
const poundsOf = (key: string): number | undefined => preservation.quantities.find((row) => row.key === key)?.lb[1];
const ruleOf = (key: string): number | null | undefined => preservation.rules.find((row) => row.key === key)?.value;

describe("published values", () => {
  // encyclopaedia article "Gas mark": 4 is 350 °F, ½ is 250 °F, 9 is 475 °F; to a whole °C
  it.each([["4", 350], ["1/2", 250], ["9", 475]])("gas mark %s is %s °F", (mark, f) => expect(Math.abs(fahrenheit(gasC(mark) ?? NaN) - f)).toBeLessThan(1));
  it("five whole large eggs fill a US cup (American Egg Board)", () => expect(Math.round((weighIngredient(readIngredient("1 cup eggs", measures), measures).value?.grams ?? 0) / 50)).toBe(5));
  it("14 lb of snap beans for 7 quarts (USDA AIB 539, Guide 4, p. 4-8), 21 lb of whole tomatoes (NCHFP yields)", () => expect([poundsOf("beans-snap/7-quarts"), poundsOf("tomato-whole-water/7-quarts")]).toEqual([14, 21]));
  it("a 13 × 9 × 2 in pan holds 3,835 ml straight-sided (geometry)", () => expect(volumeMl({ shape: "rectangle", longCm: 33.02, wideCm: 22.86, deepCm: 5.08 })).toBeCloseTo(3835, 0));
  it("the largest box for fruit or vegetables, half a US gallon, is 1.892705892 l (NCHFP, Containers for Freezing; UCUM)", () => expect(asNumber(inBase({ n: 1, d: 2 }, unit("gallon"))) / 1000).toBeCloseTo(1.892705892, 9));
  it("half of ⅓ cup is 8 tsp, a third of ⅔ cup 10⅔ tsp (University of Nebraska-Lincoln Extension; UCUM)", () => {
    expect(asNumber(converted({ n: 1, d: 6 }, unit("cup"), unit("teaspoon")))).toBeCloseTo(8, 9);
    expect(asNumber(converted({ n: 2, d: 9 }, unit("cup"), unit("teaspoon")))).toBeCloseTo(10 + 2 / 3, 9);
  });
  it("57 °C to 21 °C within 2 h, to 5 °C within 6 h in all (FDA Food Code 3-501.14), leftovers to 165 °F (FoodSafety.gov)", () =>
    expect([coolingStages(preservation).map(({ withinMin }) => withinMin / 60), ruleOf("reheat")]).toEqual([[2, 6], 165]));
  // ISO 8601:1988, 3.17, as restated by sizes.com
  it.each([["2012-12-31", "2013-W01"], ["2006-12-31", "2006-W52"], ["2019-12-30", "2020-W01"], ["2026-12-31", "2026-W53"], ["2027-01-03", "2026-W53"], ["2022-12-31", "2022-W52"]])("%s lies in %s", (date, week) => expect(weekOf(date)).toBe(week));
  it("90 minutes are PT90M or PT1H30M (schema.org)", () => expect([isoMinutes("PT90M"), isoMinutes("PT1H30M")]).toEqual([90, 90]));
});

/** USDA Complete Guide to Home Canning 2015, Guide 3, p. 3-5: in boiling water and under pressure alike. */
it("acid goes into every jar of tomatoes, whichever canner", () => {
  const acidified = ["tomato-juice", "tomato-juice-blend", "tomato-crushed", "tomato-sauce", "tomato-whole-water", "tomato-whole-juice", "tomato-whole-raw", "tomatillo"].filter((food) => preservation.canning.some((row) => row.food === food));
  expect(acidified.length).toBeGreaterThanOrEqual(6);
  for (const food of acidified) {
    const rows = preservation.canning.filter((row) => row.food === food);
    expect(new Set(rows.map(({ canner }) => canner)).size, food).toBeGreaterThan(1);
    for (const row of rows) expect(row.acid, row.key).toMatch(/lemon juice/);
    expect(processesFor(food, 0, preservation).value.sentences.filter((text) => text.startsWith("Add ")).length, food).toBeGreaterThan(0);
  }
});
