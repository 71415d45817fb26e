/**
 * The reader on real lines, and what must hold for any line. The labelled lines are training data of an open-source parser (MIT licence,
 * © 2021 Tom Strange), labelled by hand; they stay outside the project and are read when they lie beside it.
 */
import { existsSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { measureTables, readIngredient } from "#shared/engines/measures/index.ts";
import { asNumber } from "#shared/kernel/quantity.ts";
import type { Rational } from "#shared/kernel/quantity.ts";
import { scoreLine, seenLines } from "#tests/support/labelled-lines.ts";
import type { LabelledLine } from "#tests/support/labelled-lines.ts";
import { seedRows } from "#tests/support/reference-rows.ts";

const tables = measureTables(seedRows("measures"));
const LINES = new URL("../../../shared/reference/ingredients/labelled-lines.jsonl", import.meta.url);

describe("labelled lines", () => {
  it("are read within the bars of the design on the half that nobody looked at", () => {
    if (!existsSync(LINES)) {
      console.info(`Left out: no labelled lines at ${LINES.pathname}. Put labelled-lines.jsonl there to measure the reader.`);
      return;
    }
    const all = readFileSync(LINES, "utf8").trim().split("\n").map((line) => JSON.parse(line) as LabelledLine);
    const seen = seenLines(all.length);
    const sample = all.filter((_, i) => seen?.[i] !== true).map((line) => scoreLine(line, tables));
    const share = (right: (score: (typeof sample)[number]) => boolean): number => sample.filter(right).length / sample.length;
    expect(seen === null || sample.length < 0.51 * all.length).toBe(true);
    expect(sample.length).toBeGreaterThan(1000);
    expect(share((s) => s.amounts)).toBeGreaterThanOrEqual(0.97);
    expect(share((s) => s.units)).toBeGreaterThanOrEqual(0.96);
    expect(share((s) => s.name)).toBeGreaterThanOrEqual(0.9);
    expect(share((s) => s.amounts && s.units && s.name)).toBeGreaterThanOrEqual(0.85);
  });
});

describe("the food's name", () => {
  // read as a cook reads the line; common practice, no source
  it.each([
    ["1 tbsp chopped fresh mint leaves", "fresh mint leaves", "chopped"],
    ["½ tsp freshly ground black pepper", "black pepper", "freshly ground"],
    ["2 tsp ground cumin", "ground cumin", ""],
    ["2 cups peeled and sliced potatoes", "potatoes", "peeled and sliced"],
    ["400g plum peeled tomatoes", "plum peeled tomatoes", ""],
    ["4 tbsp white wine, water, or stock", "white wine water or stock", ""],
    ["6 oz boneless, skinless chicken, cut into strips", "boneless skinless chicken", "cut into strips"],
    ["1 tbsp toasted sesame oil", "toasted sesame oil", ""],
    ["2 cinnamon sticks", "cinnamon sticks", ""],
    ["Sea salt and freshly ground pepper, to taste", "Sea salt and pepper", "freshly ground"],
    ["1 onion finely chopped", "onion", "chopped finely"],
    ["2 tbsp toasted and ground cumin seeds", "cumin seeds", "toasted and ground"],
    ["Salt, pepper, and olive oil", "Salt pepper and olive oil", ""],
    ["2 tbsp mirin (rice wine)", "mirin rice wine", ""],
    ["1 kg tomatoes (optional)", "tomatoes", ""],
    ["1 tbsp cornflour mixed with 2 tbsp water", "cornflour", ""],
    ["2 eggs + 1 yolk", "eggs", ""],
    ["1/2 cup sherry or other sweet, fortified wine", "sherry or other sweet fortified wine", ""],
  ])("of %s is %s", (line, name, preparation) => {
    const read = readIngredient(line, tables);
    expect(read.food).toBe(name);
    expect(read.preparation.split(" ").sort()).toEqual(preparation.split(" ").sort());
  });
});

describe("the amount", () => {
  // as a cook reads the line; common practice, no source
  it.each([
    ["zest 1 lemon", 1, null, "lemon"],
    ["½ of an onion", 1 / 2, null, "onion"],
    ["one and a half cups sugar", 3 / 2, "cup", "sugar"],
    ["two-thirds cup milk", 2 / 3, "cup", "milk"],
    ["11/2 cups flour", 3 / 2, "cup", "flour"],
    ["1 & 1/2 cups flour", 3 / 2, "cup", "flour"],
    ["At least 2 cups water", 2, "cup", "water"],
    ["Scant 1 cup flour", 1, "cup", "flour"],
    ["3 or so cups flour", 3, "cup", "flour"],
    ["a pinch or two of salt", 1, "pinch", "salt"],
    ["Two-inch piece of ginger", 1, null, "ginger"],
    ["large pack (about 200g) salad", 1, "pack", "salad"],
    ["2 dry pints strawberries", 2, "dry pint", "strawberries"],
  ])("of %s is %s", (line, amount, unit, food) => {
    const read = readIngredient(line, tables);
    expect([asNumber(read.amount as Rational), read.unit, read.food]).toEqual([amount, unit, food]);
  });
  it("keeps the order in which a line says it: 1 whole chicken, about 1.5kg/3lb 5oz", () => expect(readIngredient("1 whole chicken, about 1.5kg/3lb 5oz", tables).amounts.map(({ text }) => text)).toEqual(["1", "1.5", "3", "5"]));
});

/** A number and the ways in which recipes print it. */
const printed = fc.constantFrom(
  ...([
    [2, ["2", "two", "2.0"]],
    [0.5, ["1/2", "½", "0.5", "0,5", "half a"]],
    [1.5, ["1 1/2", "1½", "1 ½", "1-1/2", "1 and 1/2", "1.5", "1,5"]],
    [0.75, ["3/4", "¾", ".75", "&frac34;"]],
    [1000, ["1000", "1,000"]],
    [12, ["12", "twelve", "a dozen"]],
  ] as const).flatMap(([value, spellings]) => spellings.map((text) => ({ value, text }))),
);
const unit = fc.constantFrom(
  ...([
    ["gram", ["g", "grams", "gm"]],
    ["kilogram", ["kg", "kilos"]],
    ["millilitre", ["ml", "mL", "milliliters"]],
    ["cup", ["cup", "cups", "c."]],
    ["tablespoon", ["tbsp", "Tbsp.", "T", "tablespoons"]],
    ["teaspoon", ["tsp", "tsp.", "t", "teaspoons"]],
    ["pound", ["lb", "lbs", "pounds"]],
    ["fluid ounce", ["fl oz", "fl. oz.", "fluid ounces"]],
    ["bunch", ["bunch", "bunches"]],
    ["clove", ["cloves", "clove"]],
  ] as const).flatMap(([name, spellings]) => spellings.map((text) => ({ name, text }))),
);
const food = fc.constantFrom("carrots", "garlic", "plain flour", "olive oil", "sweet potatoes", "runner beans", "rolled oats", "white wine vinegar");
const tail = fc.constantFrom("", ", finely chopped", ", to serve", " (optional)", ", cut into 2cm/1in pieces");

describe("any line", () => {
  it("is read alike in every spelling of its number and unit", () => {
    let reached = 0;
    fc.assert(
      fc.property(printed, unit, food, tail, (number, measure, name, rest) => {
        const line = readIngredient(`${number.text} ${measure.text} ${name}${rest}`, tables);
        expect(asNumber(line.amount as Rational)).toBeCloseTo(number.value, 12);
        expect(line.unit).toBe(measure.name);
        expect(line.food).toBe(name);
        reached++;
      }),
      { seed: 7, numRuns: 1500 },
    );
    expect(reached).toBe(1500);
  });
  it("keeps its text and comes back, whatever is typed", () => {
    let reached = 0;
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: "grapheme", maxLength: 60 }), fc.array(fc.constantFrom("1", "½", "-", "/", "(", ")", "x", "cup", "of", "a", "plus", ",", "400g", "tin", "or", "to"), { maxLength: 14 }).map((words) => words.join(" "))), (text) => {
        const line = readIngredient(text, tables);
        expect(line.text).toBe(text);
        for (const amount of line.amounts) expect(amount.amount === null || amount.amount.d > 0).toBe(true);
        reached++;
      }),
      { seed: 11, numRuns: 2000 },
    );
    expect(reached).toBe(2000);
  });
  it("gives a range that rises", () => {
    let ranges = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }), fc.constantFrom("-", "–", " to ", " or ", " - "), (low, high, joiner) => {
        const line = readIngredient(`${low}${joiner}${high} tbsp oil`, tables);
        if (low >= high) return;
        ranges++;
        expect([line.amount, line.amountMax, line.unit, line.food]).toEqual([{ n: low, d: 1 }, { n: high, d: 1 }, "tablespoon", "oil"]);
      }),
      { seed: 3, numRuns: 500 },
    );
    expect(ranges).toBeGreaterThan(150);
  });
});
