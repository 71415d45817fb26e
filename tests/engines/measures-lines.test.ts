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
import { seededRandom, shuffledIndexes } from "#shared/kernel/seeded-random.ts";
import { scoreLine } from "#tests/support/labelled-lines.ts";
import type { LabelledLine } from "#tests/support/labelled-lines.ts";
import { seedRows } from "#tests/support/reference-rows.ts";

const tables = measureTables(seedRows("measures"));
const LINES = new URL("../../../shared/reference/ingredients/labelled-lines.jsonl", import.meta.url);

describe("labelled lines", () => {
  it("reads a seeded sample of a thousand within the bars of the design", () => {
    if (!existsSync(LINES)) {
      console.info(`Left out: no labelled lines at ${LINES.pathname}. Put labelled-lines.jsonl there to measure the reader.`);
      return;
    }
    const all = readFileSync(LINES, "utf8").trim().split("\n").map((line) => JSON.parse(line) as LabelledLine);
    const sample = shuffledIndexes(all.length, seededRandom(20_270_726)).slice(0, 1000).map((i) => scoreLine(all[i] as LabelledLine, tables));
    const share = (right: (score: (typeof sample)[number]) => boolean): number => sample.filter(right).length / sample.length;
    expect(sample.length).toBe(1000);
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
  ])("of %s is %s", (line, name, preparation) => {
    const read = readIngredient(line, tables);
    expect(read.food).toBe(name);
    expect(read.preparation.split(" ").sort()).toEqual(preparation.split(" ").sort());
  });
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
