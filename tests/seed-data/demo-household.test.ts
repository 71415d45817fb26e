/** The demo household is whole: enough of everything, every reference there, nothing seen or picked before its time or after today. */
import { describe, expect, test } from "vitest";
import { bookFiles, cropSlugs, cropsOf, readRecipes } from "./read.ts";
import { readDemo } from "./read-demo.ts";

const demo = readDemo();
const book = readRecipes();
const TODAY = "2027-07-26";
const sowing = (id: string) => {
  const found = demo.sowings.find((one) => one.id === id);
  if (!found) throw new Error(`there is no sowing ${id}`);
  return found;
};
/** The day from which something can stand or be seen; what stands for years was there before. */
const begunOn = (id: string): string => {
  const { sownOn, plantedOutOn } = sowing(id);
  return sownOn ?? plantedOutOn ?? "0000-01-01";
};

describe("the demo household", () => {
  test("says that it is invented, lies by De Bilt, and names whose weather it has", () => {
    expect(demo.invented).toMatch(/invented/);
    expect(demo.today).toBe(TODAY);
    expect(demo.household).toMatchObject({ zone: "Europe/Amsterdam", latitude: 52.1, longitude: 5.18, people: 4, kitchen: { burners: 4, pots: 2, sinks: 1 }, cooks: 1 });
    expect(demo.attribution).toContain("KNMI (Royal Netherlands Meteorological Institute)");
  });

  test("has a garden large enough to show", () => {
    expect(demo.beds.length).toBeGreaterThanOrEqual(8);
    expect(demo.sowings.length).toBeGreaterThanOrEqual(30);
    expect(new Set(demo.sowings.map(({ crop }) => crop)).size).toBeGreaterThanOrEqual(20);
    expect(demo.sowings.filter(({ method }) => method === "established").length).toBeGreaterThanOrEqual(5);
    expect(demo.sightings.length).toBeGreaterThanOrEqual(40);
    expect(demo.picks.length).toBeGreaterThanOrEqual(60);
    expect(bookFiles().length + demo.recipes.length).toBeGreaterThanOrEqual(37);
    expect(demo.recipes.length).toBeGreaterThanOrEqual(3);
  });

  test("uses each id once", () => {
    const ids = [...demo.beds, ...demo.sowings, ...demo.sightings, ...demo.picks, ...demo.recipes, ...demo.planLines, ...demo.cookDays, ...book].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("points only at what is there", () => {
    const beds = new Set(demo.beds.map(({ id }) => id));
    const slugs = cropSlugs();
    const recipes = new Set([...book, ...demo.recipes].map(({ id }) => id));
    for (const { bedId, crop } of demo.sowings) expect(beds.has(bedId) && slugs.has(crop), crop).toBe(true);
    for (const { sowingId } of [...demo.sightings, ...demo.picks]) sowing(sowingId);
    const used = [...demo.planLines.map(({ recipeId }) => recipeId), ...demo.cookDays.flatMap(({ dishes }) => dishes.map(({ recipeId }) => recipeId)), ...demo.recipes.flatMap(({ recipe }) => recipe.ingredients.flatMap(({ madeBy }) => madeBy ?? []))];
    expect(used.length).toBeGreaterThan(5);
    for (const id of used) expect(recipes.has(id), id).toBe(true);
    for (const { recipe } of demo.recipes) for (const crop of cropsOf(recipe)) expect(slugs.has(crop), crop).toBe(true);
  });
});

describe("its season", () => {
  test("has nothing seen or picked after today, and only a few sowings planned", () => {
    for (const { seenOn } of demo.sightings) expect(seenOn <= TODAY, seenOn).toBe(true);
    for (const { pickedOn } of demo.picks) expect(pickedOn <= TODAY, pickedOn).toBe(true);
    const planned = demo.sowings.filter(({ sownOn, plantedOutOn }) => (sownOn ?? plantedOutOn ?? "") > TODAY);
    expect(planned.length).toBeGreaterThanOrEqual(2);
    expect(planned.length).toBeLessThanOrEqual(6);
    for (const { id } of planned) expect([...demo.sightings, ...demo.picks].some(({ sowingId }) => sowingId === id)).toBe(false);
    for (const { on } of demo.cookDays) expect(on > TODAY).toBe(true);
  });

  test("is one season, from autumn 2026", () => {
    const days = demo.sowings.flatMap(({ sownOn, plantedOutOn }) => [sownOn, plantedOutOn].flatMap((day) => day ?? []));
    expect(days.every((day) => day >= "2026-09-01")).toBe(true);
    for (const { seenOn } of demo.sightings) expect(seenOn >= "2026-09-01").toBe(true);
    for (const { pickedOn } of demo.picks) expect(pickedOn >= "2027-01-01").toBe(true);
  });

  test("picks nothing before it was sown or after it was finished", () => {
    for (const { sowingId, pickedOn } of demo.picks) {
      const end = demo.sightings.find((seen) => seen.sowingId === sowingId && seen.stage === "finished")?.seenOn ?? TODAY;
      expect(pickedOn > begunOn(sowingId) && pickedOn <= end, `${sowing(sowingId).crop} ${pickedOn}`).toBe(true);
    }
  });

  test("sees the stages in their order, the first picking on the day of the first pick", () => {
    const order = ["emerged", "planted-out", "flowering", "fruit-set", "first-pick", "finished"];
    for (const { id, crop } of demo.sowings) {
      const seen = demo.sightings.filter(({ sowingId }) => sowingId === id).sort((a, b) => order.indexOf(a.stage) - order.indexOf(b.stage));
      const days = [begunOn(id), ...seen.map(({ seenOn }) => seenOn)];
      expect(days, crop).toEqual([...days].sort());
      const first = seen.find(({ stage }) => stage === "first-pick");
      if (first) expect(first.seenOn, crop).toBe(demo.picks.filter(({ sowingId }) => sowingId === id).map(({ pickedOn }) => pickedOn).sort()[0]);
    }
  });
});

describe("what it can do with its produce", () => {
  const recipesFor = (crop: string) => [...book, ...demo.recipes].filter(({ recipe }) => cropsOf(recipe).includes(crop)).map(({ recipe }) => recipe.way);

  test("every crop has a way to be eaten or cooked", () => {
    for (const crop of new Set(demo.sowings.map((one) => one.crop))) expect(recipesFor(crop).some((way) => way === "eat" || way === "cook"), crop).toBe(true);
  });

  test("and every crop but lettuce and radish a way to be kept (FoodKeeper 290, 291, 299: neither is for the freezer)", () => {
    const kept = new Set(["freeze", "store", "dry", "pickle", "bottle", "ferment"]);
    const without = [...new Set(demo.sowings.map((one) => one.crop))].filter((crop) => !recipesFor(crop).some((way) => kept.has(way)));
    expect(without.sort()).toEqual(["lettuce", "radish"]);
  });
});
