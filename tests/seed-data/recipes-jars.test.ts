/** Jars, crocks and shelves: only by a tested process, in the tested proportions. */
import { describe, expect, test } from "vitest";
import { mayKeep, preservationTables } from "#shared/engines/preservation/index.ts";
import { seedRows } from "../support/reference-rows.ts";
import { cropsOf, readRecipes, type BookEntry } from "./read.ts";

const book = readRecipes();
const inJars = book.filter(({ recipe }) => recipe.way === "bottle" || recipe.way === "pickle");

/**
 * USDA Complete Guide to Home Canning, AIB 539, revised 2015: minutes in boiling water up to 1,000 ft for pints, and the pack (Guide 3, p. 3-8;
 * Guide 2, p. 2-10, 2-22; Guide 6, p. 6-14, 6-16, 6-26), pounds of produce for so many pints.
 */
const TESTED: Readonly<Record<string, { process: string; minutes: number; pints: number; pounds?: number }>> = {
  "bottled-crushed-tomatoes.json": { process: "tomato-crushed", minutes: 35, pints: 9, pounds: 14 },
  "bottled-rhubarb.json": { process: "rhubarb", minutes: 15, pints: 9, pounds: 7 },
  "bottled-blackcurrants.json": { process: "berries", minutes: 15, pints: 9, pounds: 8 },
  "bottled-gooseberries.json": { process: "berries", minutes: 15, pints: 9, pounds: 8 },
  "dilled-beans.json": { process: "pickled-beans", minutes: 5, pints: 8, pounds: 4 },
  "dilled-climbing-beans.json": { process: "pickled-beans", minutes: 5, pints: 8, pounds: 4 },
  "pickled-beetroot-jars.json": { process: "pickled-beets", minutes: 30, pints: 8, pounds: 7 },
  "pickled-courgette-jars.json": { process: "pickled-zucchini", minutes: 10, pints: 8 },
};
const GRAMS_A_POUND = 453.592;

describe("jars for the shelf", () => {
  test("are all in the table of this test, and nothing else of a jar goes on the shelf", () => {
    const shelf = inJars.filter(({ recipe }) => recipe.keeps.some(({ place }) => place !== "fridge" && place !== "freezer"));
    expect(shelf.map(({ file }) => file).sort()).toEqual(Object.keys(TESTED).sort());
  });

  test.each(Object.entries(TESTED))("%s follows its tested process", (file, { process, minutes, pints, pounds }) => {
    const { recipe } = entry(file);
    expect(recipe.process).toBe(process);
    expect(recipe.makes).toEqual({ amount: pints, unit: "jars" });
    expect(recipe.steps.find(({ id }) => id === "process")?.text).toContain(`${minutes} minutes up to 1,000 ft`);
    if (pounds !== undefined) expect(Math.abs(gramsOf(recipe.ingredients[0]?.text ?? "") / GRAMS_A_POUND / pounds - 1), "within 2 % of the tested weight").toBeLessThan(0.02);
    // Guide 1, p. 1-12: no more than will be used within a year.
    expect(recipe.keeps).toEqual([{ place: "shelf", days: 365 }]);
  });

  test("no process is named where there is none of the tables", () => {
    const tables = preservationTables(seedRows("preservation"));
    for (const { file, recipe } of book) {
      const answer = mayKeep({ way: recipe.way, keeps: recipe.keeps, process: recipe.process ?? null, crops: cropsOf(recipe) }, tables);
      expect(answer.ok, `${file}: ${JSON.stringify(answer)}`).toBe(true);
    }
  });
});

describe("the tested proportions are kept (Complete Guide 2015)", () => {
  test.each([
    ["bottled-crushed-tomatoes.json", ["9 tbsp bottled lemon juice"], "Guide 3, p. 3-5: one tablespoon of bottled lemon juice to a pint"],
    ["dilled-beans.json", ["4 cups white vinegar, 5 % acid", "4 cups water", "0.5 cup canning salt"], "Guide 6, p. 6-14"],
    ["dilled-climbing-beans.json", ["4 cups white vinegar, 5 % acid", "4 cups water", "0.5 cup canning salt"], "Guide 6, p. 6-14"],
    ["pickled-beetroot-jars.json", ["4 cups white vinegar, 5 % acid", "2 cups water", "2 cups sugar"], "Guide 6, p. 6-15 to 6-16"],
    ["pickled-courgette-jars.json", ["4 cups white vinegar, 5 % acid"], "Guide 6, p. 6-26"],
    ["sauerkraut.json", ["3 tbsp canning salt"], "Guide 6, p. 6-8: 3 tablespoons to 5 lb"],
    ["crock-dill-cucumbers.json", ["0.5 cup canning salt", "0.25 cup white vinegar, 5 % acid", "8 cups water"], "Guide 6, p. 6-7, to 4 lb of cucumbers"],
  ])("%s", (file, lines, place) => {
    const { recipe, sources } = entry(file);
    const texts = recipe.ingredients.map(({ text }) => text);
    for (const line of lines) expect(texts, place).toContain(line);
    expect(sources.some(({ id }) => id.startsWith("USDA-CG2015-"))).toBe(true);
  });

  test("5 lb of trimmed cabbage and 4 lb of cucumbers go with that salt", () => {
    const { recipe } = entry("sauerkraut.json");
    expect(recipe.steps[0]?.text).toContain("2.3 kg (5 lb) should be left");
    // A fifth of a head is outer leaves and core (USDA SR26, refuse of cabbage, 20 %).
    expect((gramsOf(recipe.ingredients[0]?.text ?? "") * 0.8) / GRAMS_A_POUND).toBeCloseTo(5, 0);
    expect(gramsOf(entry("crock-dill-cucumbers.json").recipe.ingredients[0]?.text ?? "") / GRAMS_A_POUND).toBeCloseTo(4, 1);
  });
});

function entry(file: string): BookEntry {
  const found = book.find((one) => one.file === file);
  if (!found) throw new Error(`the book has no ${file}`);
  return found;
}

/** Of a line that begins with kilograms or grams. */
function gramsOf(line: string): number {
  const [, amount, unit] = /^([\d.]+) (kg|g)\b/.exec(line) ?? [];
  return Number(amount) * (unit === "kg" ? 1_000 : 1);
}
