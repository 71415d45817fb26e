/** Whatever the garden gives a recipe has a weight as picked, and nearly all the rest has one too: the reader understands the book. */
import { describe, expect, test } from "vitest";
import { lineDoubt, measureTables, readIngredient, weighIngredient } from "#shared/engines/measures/index.ts";
import { seedRows, seedSources } from "../support/reference-rows.ts";
import { readDemo } from "./read-demo.ts";
import { readRecipes } from "./read.ts";

const tables = measureTables(seedRows("measures"), seedSources("measures"));
const lines = [...readRecipes(), ...readDemo().recipes].flatMap(({ recipe }) => recipe.ingredients);

const gramsOf = ({ text, crop, food }: (typeof lines)[number]) =>
  weighIngredient(readIngredient(text, tables), tables, { ...(crop === undefined ? {} : { crop }), ...(food === undefined ? {} : { food }) }).value;

describe("the lines of the book and of the demo", () => {
  test("that weigh produce mean it as it comes from the garden", () => {
    const weighed = lines.flatMap((line) => {
      const [, amount, unit] = /^([\d.]+) (kg|g) /.exec(line.text) ?? [];
      return line.crop === undefined || amount === undefined ? [] : [{ line, grams: Number(amount) * (unit === "kg" ? 1_000 : 1) }];
    });
    expect(weighed.length).toBeGreaterThan(200);
    for (const { line, grams } of weighed) expect(gramsOf(line)?.asPickedGrams, line.text).toBeCloseTo(grams, 0);
  });

  test("that count produce have a weight: a clove of garlic 3 g, a courgette 196 g edible (USDA SR Legacy 169230, 169291)", () => {
    const counted = lines.filter(({ text, crop }) => crop !== undefined && !/^[\d.]+ (kg|g) /.test(text));
    expect(counted.length).toBeGreaterThan(5);
    for (const line of counted) {
      const each = line.crop === "garlic" ? 3 : 196;
      expect(gramsOf(line)?.grams, line.text).toBe(Number.parseFloat(line.text) * each);
    }
  });

  test("of bought things have a weight but for a few that no table has; parts made at home are measured by the litre", () => {
    const bought = lines.filter(({ crop, madeBy }) => crop === undefined && madeBy === undefined);
    expect(bought.length).toBeGreaterThan(150);
    expect([...new Set(bought.filter((line) => gramsOf(line) === null).map(({ text }) => text))].sort()).toEqual(["12 whole cloves", "2 cinnamon sticks", "8 dill heads"]);
  });

  test("that count cups say whose: American ones, as the guide of the jars and the household weights have them", () => {
    const cups = [...readRecipes(), ...readDemo().recipes].filter(({ recipe }) => recipe.ingredients.some(({ text }) => /\d cups?\b/.test(text)));
    expect(cups.length).toBeGreaterThan(5);
    expect(cups.filter(({ recipe }) => recipe.measures !== "us").map(({ recipe }) => recipe.title)).toEqual([]);
  });

  test("have units that fit their foods, and amounts that a kitchen holds", () => {
    const doubtful = lines.filter(({ madeBy }) => madeBy === undefined).flatMap(({ text, crop, food }) => {
      const why = lineDoubt(readIngredient(text, tables), tables, { ...(crop === undefined ? {} : { crop }), ...(food === undefined ? {} : { food }) });
      return why === null ? [] : [`${text}: ${why}`];
    });
    expect(doubtful).toEqual([]);
  });
});
