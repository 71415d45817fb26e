/** The book has something to do with every crop that can be grown by it, in every way of keeping. */
import { describe, expect, it } from "vitest";
import { WAYS } from "#shared/kernel/way.ts";
import { cropSlugs, readRecipes } from "./read.ts";

const recipes = readRecipes();

describe("the book's recipes", () => {
  it("are sixty or more", () => expect(recipes.length).toBeGreaterThanOrEqual(60));
  it("cover every crop of the crop table", () => {
    const used = new Set(recipes.flatMap(({ recipe }) => recipe.ingredients.flatMap(({ crop }) => crop ?? [])));
    const crops = [...cropSlugs()];
    expect(crops.length).toBeGreaterThan(60);
    expect(crops.filter((crop) => !used.has(crop))).toEqual([]);
  });
  it.each(WAYS.filter((way) => way !== "give"))("have a way to %s", (way) => expect(recipes.filter(({ recipe }) => recipe.way === way).length).toBeGreaterThan(0));
  it("have sources, and ids that are theirs alone", () => {
    expect(recipes.filter(({ sources }) => sources.length === 0).map(({ file }) => file)).toEqual([]);
    expect(new Set(recipes.map(({ id }) => id)).size).toBe(recipes.length);
  });
});
