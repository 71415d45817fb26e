/**
 * What the guard refuses. Guide and page beside each: USDA Complete Guide to Home Canning, Agriculture Information Bulletin 539, 2015,
 * and the extension pages named; see seed-data/preservation/refusals.json for their titles.
 */
import { describe, expect, it } from "vitest";
import { cautionsFor, isTestedProcess, keepsHow, mayKeep, preservationTables, processesFor, safeWays, testedProcess } from "#shared/engines/preservation/index.ts";
import type { RecipeToKeep } from "#shared/engines/preservation/index.ts";
import { PLACE_KINDS, WAYS } from "#shared/kernel/way.ts";
import { seedRows, seedSources } from "#tests/support/reference-rows.ts";

const tables = preservationTables(seedRows("preservation"), seedSources("preservation"));
const jar = (more: Partial<RecipeToKeep>): RecipeToKeep => ({ way: "bottle", keeps: [{ place: "shelf", days: 365 }], process: null, ...more });
const fieldsOf = (recipe: RecipeToKeep): string[] => {
  const answer = mayKeep(recipe, tables);
  return answer.ok ? [] : (answer.problem.fields ?? []).map((field) => field.path);
};

describe("a jar on the shelf", () => {
  it("is refused without a tested process, field by field, with the safe ways (Guide 1, p. 1-10)", () => {
    const answer = mayKeep(jar({ crops: ["beetroot"], way: "pickle", keeps: [{ place: "fridge", days: 30 }, { place: "shelf", days: 365 }, { place: "cellar", days: 90 }] }), tables);
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.problem.code).toBe("bad-request");
    expect(answer.problem.fields?.map((field) => field.path)).toEqual(["keeps.1", "keeps.2"]);
    expect(answer.problem.fields?.[0]?.message).toMatch(/fridge or freezer, or use a tested recipe: Pickled beets/);
  });
  it("opens for bottle and pickle only with a process of the tables, in every place and way", () => {
    let refused = 0;
    for (const way of WAYS) {
      for (const { place } of PLACE_KINDS.map((p) => ({ place: p }))) {
        const cold = place === "fridge" || place === "freezer";
        const mayStand = cold || way === "dry" || way === "store" || (place === "shelf" && (way === "eat" || way === "cook"));
        expect(fieldsOf(jar({ way, keeps: [{ place, days: 3 }] }))).toEqual(mayStand ? [] : ["keeps.0"]);
        expect(fieldsOf(jar({ way, keeps: [{ place, days: 3 }], process: "tomato-crushed" })).includes("process")).toBe(way !== "bottle");
        if (!mayStand) refused++;
      }
    }
    expect(refused).toBe(19);
  });
  it("is refused with a process that nobody tested, or one tested for another food", () => {
    expect(fieldsOf(jar({ process: "grandmother" }))).toEqual(["process", "keeps.0"]);
    expect(fieldsOf(jar({ process: "grandmother", way: "freeze", keeps: [] }))).toEqual(["process"]);
    expect(fieldsOf(jar({ process: "beans-snap", crops: ["beetroot"] }))).toEqual(["process", "keeps.0"]);
    expect(fieldsOf(jar({ process: "beans-snap", crops: ["onion", "runner-bean"] }))).toEqual([]);
  });
});

/** USDA Complete Guide 2015, Guide 1, p. 1-10: a process holds for its own food only; p. 1-12: a jar within a year. */
describe("what goes into the jar", () => {
  const tomato = { text: "6 kg tomatoes, ripe", crop: "tomato" };
  const beside = [{ text: "9 tbsp bottled lemon juice" }, { text: "3 tsp salt" }];
  const put = (...lines: NonNullable<RecipeToKeep["lines"]>) => fieldsOf(jar({ process: "tomato-crushed", lines, crops: lines.flatMap(({ crop }) => crop ?? []) }));
  it("is the plain food with acid and salt", () => expect(put(tomato, ...beside)).toEqual([]));
  it.each([
    ["beans as words only", [{ text: "2 kg green beans" }]],
    ["nothing", []],
    ["beef beside", [tomato, { text: "500 g minced beef" }]],
    ["beef in the line of salt", [tomato, { text: "3 tsp salt and 500 g beef" }]],
    ["beef in the line of the crop", [{ ...tomato, text: "6 kg tomatoes with minced beef" }]],
    ["a second crop", [tomato, { text: "1 kg onions", crop: "onion" }]],
  ])("is not %s", (_, lines) => expect(put(...lines)).toEqual(["process", "keeps.0"]));
  it("is the guide's whole recipe where the food is not plain", () => {
    const lines = [{ text: "1.8 kg French beans", crop: "french-bean" }, { text: "4 cups white vinegar" }];
    const pickle = jar({ way: "pickle", process: "pickled-beans", lines, crops: ["french-bean"] });
    expect([fieldsOf(pickle), fieldsOf({ ...pickle, asTested: true })]).toEqual([["process", "keeps.0"], []]);
  });
  it.each([
    ["cook", "shelf", 365, "tomato sauce"], ["eat", "cellar", 365, "salad"], ["ferment", "shelf", 365, "cabbage"], ["store", "shelf", 365, "garlic cloves in oil"],
    ["cook", "fridge", 90, "stew"], ["bottle", "fridge", 3000, "stew"], ["dry", "shelf", 90, "tomatoes in oil"],
  ] as const)("does not stand by another way: %s, %s, %s days", (way, place, days, text) =>
    expect(fieldsOf(jar({ way, keeps: [{ place, days }], lines: [{ text, crop: "garlic" }] }))).toEqual(["keeps.0"]));
  it("ends within a year on the shelf even when tested", () => expect(fieldsOf(jar({ process: "tomato-crushed", keeps: [{ place: "shelf", days: 3660 }] }))).toEqual(["keeps.0"]));
  it("has each limit of an option beside its own jar and canner (Guide 3, p. 3-7)", () => {
    const { sentences } = processesFor("tomato-crushed", 0, tables).value;
    expect(sentences.filter((one) => /this option/.test(one)).every((one) => /jars, .*canner: .*this option/.test(one))).toBe(true);
    const acid = sentences.findIndex((one) => /Add .*pint jar/.test(one));
    expect(sentences.slice(0, acid).every((one) => /pint jars/.test(one))).toBe(true);
  });
});

describe("figures that no table holds", () => {
  const ask = { pack: "hot", jar: "quart", canner: "pressure-dial", altitudeM: 0 } as const;
  it.each([
    ["a puree of winter squash (Guide 4, p. 4-18)", { ...ask, food: "winter-squash-puree" }, /No tested process/],
    ["plain courgettes (withdrawn; Clemson HGIC, No Canning Zucchini)", { ...ask, food: "zucchini" }, /No tested process/],
    ["green beans in boiling water (Guide 4, p. 4-8 to 4-9)", { ...ask, food: "beans-snap", canner: "boiling-water" as const }, /not tested/],
    ["crushed tomatoes packed raw (Guide 3, p. 3-7)", { ...ask, food: "tomato-crushed", pack: "raw" as const }, /not tested/],
    ["cream-style corn in quarts (Guide 4, p. 4-10)", { ...ask, food: "corn-cream" }, /not tested/],
    ["half-gallons of tomato juice (Guide 1, p. 1-13)", { ...ask, food: "tomato-juice", jar: "half-gallon" as const }, /not tested/],
    ["an option the guide does not list", { ...ask, food: "tomato-crushed", minutes: 12 }, /not tested/],
    ["a dial gauge above 8,000 ft (Guide 4, p. 4-9)", { ...ask, food: "beans-snap", altitudeM: 2438.41 }, /no tested figure above 8,000 ft \(2,438 m\)/],
  ])("%s", (_, question, reason) => {
    const answer = testedProcess(question, tables);
    expect(answer.value).toBeNull();
    expect(answer.notes.join(" ")).toMatch(reason);
  });
  it("keeps the dial figure up to 8,000 ft exactly, and takes the higher band between two whole feet", () => {
    const at = (altitudeM: number) => testedProcess({ ...ask, food: "beans-snap", altitudeM }, tables).value?.band.psi;
    expect(at(2438.4)).toBe(14);
    expect(at(609.6)).toBe(11);
    expect(at(609.61)).toBe(12);
  });
  it("answers below sea level with the first band and says so", () => {
    const answer = testedProcess({ ...ask, food: "beans-snap", altitudeM: -4 }, tables);
    expect(answer.value?.band.psi).toBe(11);
    expect(answer.notes.join()).toMatch(/Below sea level/);
  });
  it("gives a half-pint the time of a pint and says so (Guide 1, p. 1-23)", () => {
    const answer = testedProcess({ food: "ketchup", pack: "hot", jar: "half-pint", canner: "boiling-water", altitudeM: 0 }, tables);
    expect(answer.value?.band.minutes).toBe(15);
    expect(answer.notes.join()).toMatch(/half-pint jar takes the time of a pint jar/);
  });
});

describe("a sheet of a food's processes", () => {
  it("says pack, jar, canner, minutes, pressure, headspace and acid (Guide 3, p. 3-7 to 3-8)", () => {
    const sheet = processesFor("tomato-crushed", 1524, tables);
    expect(sheet.value.sentences).toContain("Hot pack, quart jars, boiling-water canner: 55 min");
    expect(sheet.value.sentences).toContain("Hot pack, pint jars, dial-gauge pressure canner: 20 min at 8 psi");
    expect(sheet.value.sentences).toContain("Leave ½ in (13 mm) of headspace.");
    expect(sheet.value.sentences.join()).toMatch(/Add 2 tbsp bottled lemon juice or ½ tsp citric acid or 4 tbsp vinegar of 5 % acid to each quart jar\./);
    expect(sheet.notes.join()).toMatch(/no tested figure above 1,000 ft/);
    expect(sheet.basis[0]?.text).toMatch(/Guide 3 Tomatoes.*p\. 3-7/);
  });
  it("narrows to one row by the row's key, and is empty with the reason for anything else", () => {
    expect(processesFor("beets/hot/quart/pressure-dial/35-min", 0, tables).value.lines.map((line) => line.text)).toEqual(["Hot pack, quart jars, dial-gauge pressure canner: 35 min at 11 psi"]);
    expect(processesFor("plum-brandy", 0, tables)).toMatchObject({ value: { lines: [], sentences: [] } });
    expect([isTestedProcess("beets", tables), isTestedProcess("beets/hot/quart/pressure-dial/35-min", tables), isTestedProcess("beet", tables)]).toEqual([true, true, false]);
  });
});

describe("safe ways of a crop", () => {
  const open = (crop: string): string[] => safeWays(crop, tables).filter((way) => way.open).map((way) => way.way);
  it.each([
    ["courgette", ["freeze", "dry", "pickle", "bottle"], "plain: no row; in tomatoes (Guide 3, p. 3-12) and pineapple juice (Guide 2, p. 2-22) only"],
    ["cabbage", ["freeze", "dry", "pickle", "ferment", "store"], "sauerkraut Guide 6, p. 6-8; no canning as a vegetable"],
    ["lettuce", [], "no row anywhere; FoodKeeper 291: not recommended for the freezer"],
    ["cucumber", ["pickle", "ferment"], "Guide 6, p. 6-7 to 6-13; FoodKeeper 283: not recommended for the freezer"],
    ["butternut-squash", ["freeze", "bottle", "store"], "cubes only (Guide 4, p. 4-18)"],
    ["shallot", [], "no row in any table read"],
  ])("%s: %s (%s)", (crop, ways) => expect(open(crop)).toEqual(ways));
  it("gives every closed way a reason, and names what is never done", () => {
    let closed = 0;
    for (const crop of ["courgette", "broccoli", "lettuce", "shallot", "pea", "pumpkin"]) {
      for (const way of safeWays(crop, tables)) {
        expect(way.why).not.toBe("");
        if (!way.open) closed++;
      }
    }
    expect(closed).toBeGreaterThan(15);
    expect(safeWays("pumpkin", tables).find((way) => way.way === "bottle")?.never.join()).toMatch(/mashed, pureed/);
    expect(safeWays("broccoli", tables).find((way) => way.way === "bottle")?.why).toMatch(/no process in the 2015 guide/);
  });
  it("does not freeze what FoodKeeper advises against (product 283, cucumbers)", () => {
    expect(keepsHow("cucumber", "freezer", tables)).toMatchObject({ value: null, notes: [expect.stringMatching(/advises against/)] });
  });
  it("promises a place the least of its tables, and says when only a perfect store is described", () => {
    // Handbook 66 (1954): 7-8 weeks; University of Minnesota list for a cellar: 5 months, the row for this place
    expect(keepsHow("beetroot", "cellar", tables).value?.days).toEqual([150, 150]);
    // NEVMG Table 16: bunched carrots aside, 180-210 days; Handbook 66: 16-20 weeks is the smaller
    expect(keepsHow("carrot", "cold-store", tables).value?.days).toEqual([112, 140]);
    expect(keepsHow("leek", "cellar", tables).notes.join()).toMatch(/best conditions/);
  });
});

describe("cautions", () => {
  const said = (question: Parameters<typeof cautionsFor>[0]): string => cautionsFor(question, tables).join("\n");
  it.each([
    ["garlic in oil (University of Idaho 2013: 4 days)", { crops: ["garlic"] }, /fridge only, at most 4 days/],
    ["garlic in oil, by the oil", { foods: ["oil"] }, /Never on a shelf/],
    ["rhubarb leaves (from memory)", { crops: ["rhubarb"] }, /leaves are poisonous/],
    ["green potatoes (BfR)", { crops: ["potato-early"] }, /green parts and sprouts/],
    ["raw kidney beans (FDA Bad Bug Book: soak 5 h, boil 30 min)", { crops: ["climbing-bean"] }, /boil hard 30 minutes/],
    ["canning in general (Guide 1, p. 1-23)", { way: "bottle" }, /tested process for exactly this food.*local food-safety authority/],
    ["low-acid food (Guide 1, p. 1-8)", { process: "beans-snap" }, /pressure canner only/],
    ["acid for tomatoes (Guide 3, p. 3-5)", { process: "tomato-sauce" }, /stated acid to every jar/],
    ["short processes (Guide 1, p. 1-14)", { process: "pickled-beans" }, /sterilised jars/],
    ["cooling (FDA Food Code 3-501.14)", { topics: ["cooling"] }, /within 2 hours.*within 6 hours/],
    ["cooked dishes (University of Illinois: 3 to 4 days)", { way: "cook" }, /3 to 4 days/],
  ] as const)("%s", (_, question, words) => expect(said(question)).toMatch(words));
  it("ends with deference to the authority, and says nothing where nothing applies", () => {
    for (const way of ["bottle", "pickle", "ferment", "freeze", "dry", "cook", "store"] as const) {
      expect(cautionsFor({ way, crops: ["garlic"] }, tables).at(-1)).toMatch(/local food-safety authority and extension service come first/);
    }
    expect(said({ way: "eat", crops: ["lettuce"] })).toBe("");
    expect(said({ process: "jam-jelly-pectin" })).toMatch(/doubled batches/);
    expect(said({ process: "berries" })).not.toMatch(/doubled batches|pressure canner only/);
  });
});
