/** What may be offered, as the tested tables say. USDA, Complete Guide to Home Canning (2015), Guide 4: dial-gauge figures for beans end at 8,000 ft, which is 2,438.4 m. */
import { describe, expect, it } from "vitest";
import { candidatesOf, cautionsOf, heldBackNotes } from "#shared/planning/recipe-cautions.ts";
import { kitchen, recipe } from "#tests/support/make-garden.ts";

const JARS = "beans-snap/hot/quart/pressure-dial/25-min";
const jars = (process: string | null, more = {}) => recipe("Beans in jars", { "french-bean": 900 }, { way: "bottle", keeps: [{ place: "shelf", days: 365 }], process, ...more });
const offered = (use: ReturnType<typeof jars>, altitudeM = 5) => candidatesOf(kitchen({}, { recipes: [use], altitudeM }));

describe("a jar for the shelf", () => {
  it("is tested up to the last band of its process, and not a metre above", () => {
    expect(offered(jars(JARS), 2438).map((one) => one.tested)).toEqual([true]);
    expect(offered(jars(JARS), 2439).map((one) => one.tested)).toEqual([false]);
    expect(heldBackNotes(offered(jars(JARS), 2439))).toEqual(["Not offered, because no tested process covers them at this height above the sea: Beans in jars."]);
    expect(heldBackNotes(offered(jars(JARS), 2438))).toEqual([]);
  });
  it("is left out altogether without a process, or with one for another food", () => {
    expect(offered(jars(null))).toEqual([]);
    expect(offered(jars("tomato-crushed"))).toEqual([]);
    expect(offered(jars(null, { keeps: [{ place: "freezer", days: 300 }] }))).toHaveLength(1);
  });
  it("brings its cautions with it: low-acid food only under pressure", () => {
    expect(offered(jars(JARS))[0]?.cautions.join(" ")).toMatch(/pressure canner only/);
  });
});

it("a way for the table says only what its food and its cooling ask for; the recipe itself says the whole", () => {
  const cautions = (way: "eat" | "cook" | "freeze") => candidatesOf(kitchen({}, { recipes: [recipe("a", { rhubarb: 500 }, { way, keeps: [{ place: "fridge", days: 3 }] })] }))[0]?.cautions.join(" ") ?? "";
  for (const way of ["eat", "cook", "freeze"] as const) expect(cautions(way)).toMatch(/leaves are poisonous/);
  expect([/[Cc]ool/.test(cautions("eat")), /[Cc]ool/.test(cautions("cook")), /[Rr]eheat|165/.test(cautions("cook"))]).toEqual([false, true, false]);
});

it("marks what somebody asked for", () => {
  const recipes = [recipe("a", { courgette: 500 }), recipe("b", { courgette: 500 })];
  expect(candidatesOf(kitchen({}, { recipes, askedFor: ["b"] })).map((one) => one.askedFor)).toEqual([false, true]);
});

/** University of Idaho Extension, Safe Garlic- and Herb-Infused Oils, 2013: the danger is the oil that garlic or herbs lie in. */
it.each([
  [["4 cloves garlic", "200 ml olive oil"], true],
  [["80 g basil", "150 ml olive oil"], true],
  [["2 cloves garlic", "1 tbsp oil", "500 g tomatoes"], false],
  [["2 cloves garlic", "500 g tomatoes"], false],
])("warns of garlic in oil where it lies in oil: %j", (texts, warned) => {
  const cautions = cautionsOf(recipe("a", { garlic: 20 }, { way: "cook" }), kitchen({}).preservation, texts);
  expect(/at most 4 days/.test(cautions.join(" "))).toBe(warned);
});
