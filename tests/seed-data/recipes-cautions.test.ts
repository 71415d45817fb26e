/**
 * Every recipe of the book brings the caution that its food asks for, and no kidney bean stays short of its boiling. Sources as in
 * seed-data/preservation/cautions.json: BfR (potatoes), FDA Bad Bug Book (beans: soak 5 h, boil 30 min), University of Idaho (garlic in oil), Guide 1 and 4.
 */
import { describe, expect, it } from "vitest";
import { preservationTables } from "#shared/engines/preservation/index.ts";
import { cautionsOf } from "#shared/planning/recipe-cautions.ts";
import { seedRows } from "../support/reference-rows.ts";
import { readRecipes } from "./read.ts";

const tables = preservationTables(seedRows("preservation"));
const book = readRecipes().map(({ file, recipe }) => {
  const crops = [...new Set(recipe.ingredients.flatMap(({ crop }) => crop ?? []))];
  const texts = recipe.ingredients.map(({ text }) => text);
  const use = { id: file, title: recipe.title, way: recipe.way, makes: recipe.makes, uses: crops.map((crop) => ({ crop, grams: 1 })), handsOnMin: 0, keeps: recipe.keeps, process: recipe.process ?? null };
  return { file, recipe, crops, texts, cautions: cautionsOf(use, tables, texts).join(" ") };
});
type Entry = (typeof book)[number];

const ASKED: readonly (readonly [string, (one: Entry) => boolean, RegExp])[] = [
  ["rhubarb: its leaves", ({ crops }) => crops.includes("rhubarb"), /leaves are poisonous/],
  ["potatoes: green parts", ({ crops }) => crops.some((crop) => crop.startsWith("potato")), /green parts and sprouts/],
  ["kidney beans: soaking and boiling", ({ texts }) => texts.some((text) => /kidney beans?/i.test(text)), /boil hard 30 minutes/],
  ["herbs or garlic lying in oil: four days", ({ texts }) => texts.some((text) => /garlic|basil/i.test(text)) && texts.some((text) => /\d ml .*oil/i.test(text)), /at most 4 days/],
  ["low-acid jars: pressure only", ({ recipe }) => tables.canning.some(({ food, key, kind }) => (food === recipe.process || key === recipe.process) && kind === "low-acid"), /pressure canner only/],
  ["tomatoes in jars: acid", ({ recipe }) => recipe.process?.startsWith("tomato") ?? false, /acid to every jar/],
  ["jars: a tested process", ({ recipe }) => recipe.way === "bottle", /tested process for exactly this food/],
  ["pickles: vinegar of 5 %", ({ recipe }) => recipe.way === "pickle", /must be 5 % acid/],
  ["ferments: salt", ({ recipe }) => recipe.way === "ferment", /Less salt is a matter of safety/],
  ["cooked dishes: cooling", ({ recipe }) => recipe.way === "cook", /within 2 hours.*within 6 hours/],
];

describe("cautions in the book", () => {
  // none of the book's jars is low in acid
  it.each(ASKED.filter(([what]) => !what.startsWith("low-acid")))("%s", (_, asks, says) => {
    const asked = book.filter(asks);
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.filter(({ cautions }) => !says.test(cautions)).map(({ file }) => file)).toEqual([]);
  });
  it("low-acid food in jars: pressure only, wherever the book has one", () => {
    const [, asks, says] = ASKED.find(([what]) => what.startsWith("low-acid")) as (typeof ASKED)[number];
    expect(book.filter(asks).filter(({ cautions }) => !says.test(cautions))).toEqual([]);
  });
  it("no step tells to keep food in the fridge for longer than the 3 to 4 days of the caution (University of Illinois, Leftovers)", () =>
    expect(book.flatMap(({ file, recipe }) => recipe.steps.filter(({ text }) => /fridge[^.]*\b(?:week|[5-9] days)/i.test(text)).map(({ text }) => `${file}: ${text}`))).toEqual([]));
  it("the beans of the book are soaked and boiled as long as the caution asks", () => {
    const beans = book.filter(({ texts }) => texts.some((text) => /dried .*kidney|kidney beans?, dried|dried kidney/i.test(text)));
    expect(beans.length).toBeGreaterThan(0);
    for (const { file, recipe } of beans) {
      const low = ({ handsOffMin }: (typeof recipe.steps)[number]): number => (typeof handsOffMin === "number" ? handsOffMin : handsOffMin.low);
      expect(`${recipe.ingredients.map(({ text }) => text).join(" ")} ${recipe.note}`, file).toMatch(/soaked overnight.*Soak the beans 5 hours at least/);
      expect(Math.max(...recipe.steps.filter(({ text }) => /boil/i.test(text)).map(low)), file).toBeGreaterThanOrEqual(30);
    }
  });
});
