/** What the book freezes: blanched as long as the tables say, cold in time, and kept no longer than the tables allow. */
import { describe, expect, test } from "vitest";
import type { NewRecipe, Step } from "#shared/contracts/recipes.ts";
import { longestMin, readRecipes, readReference, type BookEntry } from "./read.ts";

const book = readRecipes();
const frozen = book.filter(({ recipe }) => recipe.keeps.some(({ place }) => place === "freezer"));
const entry = (name: string): BookEntry => {
  const found = book.find(({ file }) => file === `${name}.json`);
  if (!found) throw new Error(`the book has no ${name}`);
  return found;
};
const step = (recipe: NewRecipe, id: string): Step => {
  const found = recipe.steps.find((one) => one.id === id);
  if (!found) throw new Error(`${recipe.title} has no step ${id}`);
  return found;
};

/**
 * Minutes in boiling water. North Dakota State University Extension, freezing vegetables, table (beans, lima, broccoli, sprouts, asparagus medium);
 * Penn State University list (carrot, cabbage, cauliflower, kohlrabi, turnip); Clemson HGIC (summer squash, half-inch slices); University of Illinois,
 * Table 1 (peas); directions in the wording of NCHFP, republished (greens; corn kernels; eggplant; celery). Parsnip and swede are from memory.
 * Broad beans have no row: that of medium lima beans is taken. Okra: two web lists, weak.
 */
const BLANCHED: Readonly<Record<string, readonly [minutes: number, words: string]>> = {
  "freeze-french-beans": [3, "3"],
  "freeze-climbing-beans": [3, "3"],
  "freeze-runner-beans": [3, "3"],
  "freeze-broad-beans": [3, "3"],
  "freeze-peas": [1.5, "1½"],
  "freeze-courgettes": [3, "3"],
  "freeze-carrots": [2, "2"],
  "freeze-parsnips": [2, "2"],
  "freeze-chard": [2, "2"],
  "freeze-kale": [2, "2"],
  "freeze-spinach": [2, "2"],
  "freeze-sweetcorn": [4, "4"],
  "freeze-brussels-sprouts": [4, "4"],
  "freeze-cabbage": [1.5, "1½"],
  "freeze-broccoli": [3, "3"],
  "freeze-cauliflower": [3, "3"],
  "freeze-asparagus": [3, "3"],
  "freeze-aubergines": [4, "4"],
  "freeze-kohlrabi": [1, "1"],
  "freeze-turnips": [2, "2"],
  "freeze-swede": [3, "3"],
  "freeze-celery": [3, "3"],
  "freeze-okra": [3, "3"],
};

describe("blanching", () => {
  test("every recipe that blanches for the freezer stands in the table of this test", () => {
    const blanching = frozen.filter(({ recipe }) => recipe.steps.some(({ id }) => id === "blanch")).map(({ file }) => file.replace(".json", ""));
    expect(blanching.sort()).toEqual(Object.keys(BLANCHED).sort());
  });

  test.each(Object.entries(BLANCHED))("%s boils as long as its row says, and chills as long at once", (name, [minutes, words]) => {
    const { recipe } = entry(name);
    const blanch = step(recipe, "blanch");
    const chill = step(recipe, "chill");
    expect(blanch.text).toContain(`Blanch ${words} minutes from when the water boils again`);
    // The water must be back at the boil within a minute (NCHFP, as quoted in an extension recipe): the step has that minute too.
    expect(blanch.handsOffMin).toBe(Math.ceil(minutes) + 1);
    expect(chill.handsOffMin).toBe(Math.ceil(minutes));
    expect(chill).toMatchObject({ after: ["blanch"], maxWaitMin: 0, needs: { sinks: 1 } });
    expect(chill.loads).toEqual(blanch.loads);
  });
});

describe("cooling", () => {
  /** Bread and dry cakes are not among the foods that must be held hot or cold (FDA Food Code, definition, from memory). */
  const DRY_BAKES = new Set(["slow-loaf.json", "chive-rolls.json", "courgette-tea-loaf.json", "blueberry-muffins.json"]);
  const isHot = (one: Step) => one.needs.oven !== undefined || (one.needs.burners ?? 0) > 0;
  const cooked = frozen.filter(({ file, recipe }) => !DRY_BAKES.has(file) && recipe.steps.some((one) => isHot(one)));

  test("whatever is cooked and frozen has a limit of two hours from the heat to the cold (FDA Food Code 3-501.14 (A)(1))", () => {
    expect(cooked.length).toBeGreaterThanOrEqual(15);
    for (const { file, recipe } of cooked) {
      const last = recipe.steps.at(-1)?.id;
      const limit = (recipe.limits ?? []).find(({ from, to }) => to === last && isHot(step(recipe, from)));
      expect(limit?.maxMin, file).toBeLessThanOrEqual(120);
    }
  });

  test("and can keep it even when every step takes its longest", () => {
    for (const { file, recipe } of cooked) for (const { from, to, maxMin } of recipe.limits ?? []) expect(longestBetween(recipe, from, to), `${file}: ${from} to ${to}`).toBeLessThanOrEqual(maxMin);
  });
});

describe("freezer life", () => {
  /** Months at -18 °C, the longest of the row. USDA FSIS FoodKeeper open data v128, by product; the cold-storage charts by name. */
  const PRODUCTS: Readonly<Record<number, number>> = {
    24: 3, 177: 2, 207: 8, 211: 3, 252: 12, 253: 12, 254: 12, 271: 5, 273: 8, 274: 8, 276: 12, 277: 12, 278: 12, 279: 12, 280: 12, 281: 12, 282: 8, 284: 8, 287: 12,
    288: 2, 293: 12, 294: 12, 296: 8, 301: 10, 303: 12, 307: 10, 309: 12, 354: 1, 423: 12, 451: 3, 460: 3, 481: 12, 482: 12, 494: 12, 547: 10, 548: 9, 554: 2, 562: 12, 611: 4,
  };
  const CHARTS: Readonly<Record<string, number>> = { "NCHFP-freezer-life": 12, "FSG-cold": 3, "USDA-holiday": 3 };
  const DAYS_A_MONTH = 30;

  test("no recipe keeps longer in the freezer than the shortest row that it cites", () => {
    expect(frozen.length).toBeGreaterThan(60);
    for (const { file, recipe, sources } of frozen) {
      const months = sources.flatMap(({ id, text }) => (id === "FK-v128" ? PRODUCTS[Number(/product (\d+)/.exec(text)?.[1])] : CHARTS[id]) ?? []);
      expect(months.length, `${file} cites no row on the freezer`).toBeGreaterThan(0);
      const days = recipe.keeps.find(({ place }) => place === "freezer")?.days;
      expect(days, file).toBeLessThanOrEqual(Math.min(...months) * DAYS_A_MONTH);
    }
  });

  test("the months above are those of the open dataset, where it lies beside the project", ({ skip }) => {
    const text = readReference("foodkeeper.json");
    if (text === null) skip("foodkeeper.json is not beside the project: the months stand on the reading written here");
    const { rows } = JSON.parse(text as string) as { rows: { id: number; freeze?: Span; freeze_from_purchase?: Span }[] };
    let seen = 0;
    for (const [id, months] of Object.entries(PRODUCTS)) {
      const row = rows.find((one) => one.id === Number(id));
      const span = row?.freeze ?? row?.freeze_from_purchase;
      expect(span?.unit === "Weeks" ? (span.max ?? 0) / 4 : span?.max, id).toBe(months);
      seen += 1;
    }
    expect(seen).toBeGreaterThan(30);
  });

  test("cooked dishes keep four days in the fridge at most (University of Illinois Extension, Leftovers: 3 to 4 days)", () => {
    const dishes = book.filter(({ recipe }) => (recipe.way === "cook" || recipe.way === "eat") && recipe.keeps.some(({ place }) => place === "fridge"));
    expect(dishes.length).toBeGreaterThan(30);
    /** Stewed fruit keeps longer: applesauce, homemade, three weeks (FoodKeeper 562). */
    const FRUIT = new Set(["rhubarb-compote.json", "berry-compote.json"]);
    for (const { file, recipe } of dishes) expect(recipe.keeps.find(({ place }) => place === "fridge")?.days, file).toBeLessThanOrEqual(FRUIT.has(file) ? 21 : 4);
  });
});

interface Span {
  readonly max?: number;
  readonly unit: string;
}

/** Minutes that must pass from the end of one step to the start of another, with every step at its longest and no wait. */
function longestBetween(recipe: NewRecipe, from: string, to: string): number {
  const ends = (id: string): number => {
    if (id === from) return 0;
    const one = step(recipe, id);
    const before = one.after.map(ends).filter((minutes) => minutes >= 0);
    return before.length === 0 ? -1 : Math.max(...before) + longestMin(one);
  };
  return ends(to) - longestMin(step(recipe, to));
}
