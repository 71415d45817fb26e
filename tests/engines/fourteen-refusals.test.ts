/**
 * What must be refused, by number, each with guide and page: tests/cases/preservation/fourteen-refusals.json. A number without a test of its own fails,
 * and so does one that the tables do not carry as a rule.
 */
import { describe, expect, it } from "vitest";
import { KeepingQuery } from "#shared/contracts/keeping.ts";
import { cautionsFor, dishKeeps, keepAnswer, keepsHow, mayKeep, preservationTables, processesFor, testedProcess, type KeepQuestion, type RecipeToKeep } from "#shared/engines/preservation/index.ts";
import { doesNotScale, factorOf, type RecipeToScale } from "#shared/engines/scaling/index.ts";
import { readCases, seedRows, seedSources } from "#tests/support/reference-rows.ts";

const tables = preservationTables(seedRows("preservation"), seedSources("preservation"));
const metres = (ft: number): number => ft * 0.3048;
const figure = (question: Partial<Parameters<typeof testedProcess>[0]> & { food: string }) => testedProcess({ pack: "hot", jar: "quart", canner: "boiling-water", altitudeM: 0, ...question }, tables);
const refused = (question: Parameters<typeof figure>[0], why: RegExp): void => {
  const { value, notes } = figure(question);
  expect(value, JSON.stringify(question)).toBeNull();
  expect(notes.join(" ")).toMatch(why);
};
const keep = (question: Partial<KeepQuestion> & { words: string }) => keepAnswer({ name: question.words, crop: null, process: null, way: "bottle", jar: null, canner: null, altitudeM: 0, ...question }, tables);
const faults = (recipe: Partial<RecipeToKeep>): string[] => {
  const answer = mayKeep({ way: "bottle", keeps: [{ place: "shelf", days: 300 }], process: null, ...recipe }, tables);
  return answer.ok ? [] : (answer.problem.fields ?? []).map(({ path }) => path);
};
const tested: RecipeToScale = { title: "Jars", way: "bottle", makes: { amount: 7, unit: "quart jars" }, process: "tomato-crushed", lines: [], steps: [], holdsPot: true, uses: [{ crop: "tomato", grams: 10_000 }] };

const TESTS: Readonly<Record<number, () => void>> = {
  1: () => {
    refused({ food: "plum-chutney" }, /No tested process.*Freeze it, or choose a tested recipe/);
    // inside a band the figure is the band's, at its foot and at its head
    const within = [1001, 1700, 2400, 3000].map((ft) => figure({ food: "tomato-crushed", altitudeM: metres(ft) }).value?.band.minutes);
    expect(new Set(within)).toEqual(new Set([50]));
    for (const batches of [0.5, 1.5]) expect(factorOf(tested, { batches }).ok).toBe(false);
    expect(keep({ words: "chutney of my own" }).instead.length).toBeGreaterThan(0);
  },
  2: () => {
    refused({ food: "tomato-crushed", jar: "half-gallon" }, /not tested/);
    refused({ food: "corn-cream", canner: "pressure-dial" }, /not tested/);
    expect(figure({ food: "tomato-crushed", jar: "1.5-pint" }).value?.band.minutes).toBe(figure({ food: "tomato-crushed" }).value?.band.minutes);
    expect(figure({ food: "tomato-crushed", jar: "half-pint" }).value?.band.minutes).toBe(figure({ food: "tomato-crushed", jar: "pint" }).value?.band.minutes);
  },
  3: () => {
    for (const food of ["beans-snap", "carrots", "peas", "potato", "greens"]) refused({ food }, /not tested/);
    refused({ food: "ketchup", jar: "pint", canner: "pressure-dial" }, /not tested/);
    refused({ food: "tomato-crushed", canner: "pressure-dial", minutes: 12 }, /not tested/);
  },
  4: () => {
    expect(figure({ food: "beans-snap", canner: "pressure-dial", altitudeM: metres(8000) }).value?.band.psi).toBe(14);
    refused({ food: "beans-snap", canner: "pressure-dial", altitudeM: metres(8001) }, /no tested figure above 8,000 ft.*local extension service/);
    refused({ food: "tomato-crushed", canner: "pressure-weighted", minutes: 10, altitudeM: metres(1001) }, /no tested figure above 1,000 ft/);
  },
  5: () => {
    for (const food of ["tomato-juice", "tomato-crushed", "tomato-sauce", "tomato-whole-water", "tomato-whole-raw"]) {
      const pressure = tables.canning.filter((row) => row.food === food && row.canner !== "boiling-water");
      expect(pressure.length, food).toBeGreaterThan(0);
      for (const { key } of pressure) expect(processesFor(key, 0, tables).value.sentences.join(" "), key).toMatch(/Add .*(?:bottled lemon juice|citric acid)/);
    }
  },
  6: () => {
    const asked = [{ words: "pumpkin puree" }, { words: "butter" }, { words: "soup with cream" }, { words: "garlic in oil" }, { words: "pickled eggs", way: "pickle" as const }, { words: "bread in jars" }, { words: "zucchini" }, { words: "wild mushrooms" }];
    for (const question of asked) {
      const answer = keep(question);
      expect([question.words, answer.may, answer.processes]).toEqual([question.words, false, []]);
      expect(answer.never.length, question.words).toBeGreaterThan(1);
      expect(answer.instead.map(({ text }) => text).join(" "), question.words).toMatch(/freez|fridge|refrigerate/i);
      for (const { source } of answer.never) expect(source.text, question.words).not.toBe("");
    }
  },
  7: () => {
    const lines = [{ text: "1.8 kg French beans", crop: "french-bean" }, { text: "2 cups white vinegar" }, { text: "5 cups water" }];
    expect(faults({ way: "pickle", process: "pickled-beans", crops: ["french-bean"], lines })).toEqual(["process", "keeps.0"]);
    const kraut = (grams: number) => ({ way: "ferment" as const, keeps: [], lines: [{ text: "2.3 kg cabbage", crop: "cabbage", grams: 2300 }, { text: `${grams} g salt`, grams }] });
    // Guide 6, p. 6-8: 3 tbsp to 5 lb, 18 g a tablespoon (USDA SR Legacy 173468) is 2.4 %
    expect([faults(kraut(54)), faults(kraut(30))]).toEqual([[], ["ingredients.1.text"]]);
    expect(cautionsFor({ way: "ferment" }, tables).join(" ")).toMatch(/Less salt is a matter of safety/);
  },
  8: () => {
    const own = { lines: [{ text: "1 kg tomatoes", crop: "tomato" }, { text: "500 g peppers", crop: "sweet-pepper" }], crops: ["tomato", "sweet-pepper"] };
    expect([faults(own), faults({ ...own, process: "tomato-sauce" }), faults({ ...own, keeps: [{ place: "fridge", days: 4 }, { place: "freezer", days: 240 }] })]).toEqual([["keeps.0"], ["process", "keeps.0"], []]);
  },
  9: () => {
    for (const canner of ["oven", "dishwasher", "microwave", "open-kettle", "steam"]) expect(KeepingQuery.safeParse({ food: "tomato", way: "bottle", canner }).success, canner).toBe(false);
    const said = keep({ words: "tomatoes", crop: "tomato" }).never.map(({ text }) => text).join(" ");
    for (const method of ["open-kettle", "oven", "microwave", "dishwasher", "fewer than 4 quart jars", "steam canner for low-acid"]) expect(said).toContain(method);
    expect(tables.rules.find(({ key }) => key === "steam-canner-limit")?.value).toBe(45);
  },
  10: () => {
    expect([faults({ way: "cook", keeps: [{ place: "fridge", days: 8 }] }), faults({ way: "cook", keeps: [{ place: "fridge", days: 4 }] })]).toEqual([["keeps.0"], []]);
    expect(cautionsFor({ way: "cook" }, tables).join(" ")).toMatch(/3 to 4 days in the fridge; then freeze or throw away/);
  },
  11: () => {
    for (const question of [{ topics: ["jar"] as const }, { way: "bottle" as const }, { way: "pickle" as const }]) expect(cautionsFor(question, tables).join(" ")).toMatch(/If unsure, do not taste/);
    expect(tables.cautions.filter(({ text }) => /\b(?:is|are) safe\b(?! but fades)/i.test(text))).toEqual([]);
  },
  12: () => {
    const frozen = keep({ words: "peas", crop: "pea", way: "freeze" }).keeps;
    expect(frozen.length).toBeGreaterThan(0);
    for (const { best, safe } of frozen) expect([best === null, safe]).toEqual([false, null]);
    expect(keepsHow("pea", "freezer", tables).value?.limit).toBe("quality");
    expect(dishKeeps("soups and stews, vegetable or meat", "fridge", tables).value?.limit).toBe("safety");
  },
  13: () => {
    const soup: RecipeToScale = { ...tested, way: "cook", process: null, steps: [{ id: "a", text: "Simmer", handsOnMin: 5, handsOffMin: 30, needs: { burners: 1 }, after: [] }] };
    const cooling = doesNotScale(soup, 3, new Set(), false).find(({ what }) => what === "cooling")?.text ?? "";
    expect(cooling).toMatch(/within 2 hours.*within 6/);
    expect(cooling).toMatch(/layers no deeper than 5 cm|portions/);
  },
  14: () => {
    for (const way of ["bottle", "pickle"] as const) expect(cautionsFor({ way }, tables).join(" ")).toMatch(/medical help at once.*no medical advice/);
    expect(tables.cautions.filter(({ text }) => /\b(?:dose|antidote|antitoxin|vomit|medicine)\b/i.test(text))).toEqual([]);
  },
};

describe("what must be refused", () => {
  const cases = readCases<{ number: number; mustNot: string; instead: string; at: string }>("preservation/fourteen-refusals.json");
  it("is fourteen things, each with a test and with a rule and its page in the tables", () => {
    expect(cases.map(({ number }) => number)).toEqual(Array.from({ length: 14 }, (_, i) => i + 1));
    expect(Object.keys(TESTS).map(Number)).toEqual(cases.map(({ number }) => number));
    const rules = tables.refusals.filter((row) => row.of === "rule");
    expect(rules.length).toBe(14);
    for (const { source, page, instead, key } of rules) expect([key, source === "house-rule" || page !== null, instead !== ""]).toEqual([key, true, true]);
  });
  for (const { number, mustNot, at } of cases) it(`${number}. ${mustNot} (${at})`, () => TESTS[number]?.());
});
