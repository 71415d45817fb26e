/** The book of recipes holds together: every recipe fits the contract, and its steps can be put in an order. */
import { describe, expect, test } from "vitest";
import type { NewRecipe } from "#shared/contracts/recipes.ts";
import { bookFiles, cropSlugs, cropsOf, readRecipes } from "./read.ts";

const book = readRecipes();

describe("the book", () => {
  test("has more than the thirty-four recipes that a first household needs, each in a file of its own", () => {
    expect(book.length).toBeGreaterThanOrEqual(34);
    expect(book.length).toBe(bookFiles().length);
  });

  test("gives every recipe its own id, title and sources", () => {
    for (const { file, id, sources } of book) {
      expect(id, file).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
      expect(sources.length, file).toBeGreaterThan(0);
      for (const source of sources) expect(source.id !== "" && source.text !== "", file).toBe(true);
    }
    expect(new Set(book.map(({ id }) => id)).size).toBe(book.length);
    expect(new Set(book.map(({ recipe }) => recipe.title)).size).toBe(book.length);
  });

  test("covers every way", () => {
    const ways = new Set(book.map(({ recipe }) => recipe.way));
    for (const way of ["eat", "cook", "freeze", "bottle", "dry", "pickle", "ferment", "store", "give"] as const) expect(ways.has(way), way).toBe(true);
  });

  test("names only crops of the crop table, and uses some produce in nearly all", () => {
    const slugs = cropSlugs();
    expect(slugs.size).toBeGreaterThan(60);
    for (const { file, recipe } of book) for (const crop of cropsOf(recipe)) expect(slugs.has(crop), `${file}: ${crop}`).toBe(true);
    expect(book.filter(({ recipe }) => cropsOf(recipe).length === 0).map(({ file }) => file).sort()).toEqual(["shortcrust-pastry.json", "slow-loaf.json", "white-sauce.json"]);
  });
});

describe("ingredients", () => {
  test("of the garden are weighed, or counted where the crop table or common practice has a weight for a piece", () => {
    const lines = book.flatMap(({ file, recipe }) => recipe.ingredients.filter(({ crop }) => crop !== undefined).map(({ text }) => ({ file, text })));
    expect(lines.length).toBeGreaterThan(200);
    for (const { file, text } of lines) expect(text, file).toMatch(/^[\d.]+ (kg|g|cloves? of garlic|courgettes)\b/);
  });

  test("come in grams, in millilitres, in cups and in spoons", () => {
    const texts = book.flatMap(({ recipe }) => recipe.ingredients.map(({ text }) => text));
    for (const unit of ["g", "kg", "ml", "litres?", "cups?", "tbsp", "tsp"]) expect(texts.filter((text) => new RegExp(`^[\\d./ ]+ ${unit}\\b`).test(text)).length, unit).toBeGreaterThan(3);
  });
});

describe("the steps of each recipe", () => {
  test("follow only steps that are there, without a circle", () => {
    for (const { file, recipe } of book) expect(faultsOfOrder(recipe), file).toEqual([]);
  });

  test("have holds and limits between steps that are there and in that order", () => {
    let seen = 0;
    for (const { file, recipe } of book) {
      for (const span of [...(recipe.holds ?? []), ...(recipe.limits ?? [])]) {
        seen += 1;
        expect(span.from === span.to || comesBefore(recipe, span.from, span.to), `${file}: ${span.from} to ${span.to}`).toBe(true);
      }
    }
    expect(seen).toBeGreaterThan(100);
  });

  test("let a longest wait stand only after a step that is waited for", () => {
    for (const { file, recipe } of book) {
      for (const step of recipe.steps) {
        if (step.maxWaitMin === undefined) continue;
        const named = typeof step.maxWaitMin === "number" ? null : Object.keys(step.maxWaitMin);
        expect(named === null ? step.after.length === 1 : named.every((id) => step.after.includes(id)), `${file}: ${step.id}`).toBe(true);
      }
    }
  });
});

describe("parts", () => {
  test("are made by recipes of the book, without a circle, in at least five recipes", () => {
    const byId = new Map(book.map((entry) => [entry.id, entry]));
    const partsOf = (id: string): string[] => byId.get(id)?.recipe.ingredients.flatMap(({ madeBy }) => (madeBy === undefined ? [] : [madeBy])) ?? [];
    const walk = (id: string, above: readonly string[]): void => {
      expect(above.includes(id), `${byId.get(id)?.file} is made of itself`).toBe(false);
      for (const part of partsOf(id)) {
        expect(byId.has(part), `${byId.get(id)?.file} uses ${part}`).toBe(true);
        walk(part, [...above, id]);
      }
    };
    for (const { id } of book) walk(id, []);
    expect(book.filter(({ id }) => partsOf(id).length > 0).length).toBeGreaterThanOrEqual(5);
  });
});

function faultsOfOrder(recipe: NewRecipe): string[] {
  const ids = recipe.steps.map((step) => step.id);
  if (ids.length === 0) return ["has no steps"];
  if (new Set(ids).size !== ids.length) return ["two steps of one id"];
  const missing = recipe.steps.flatMap((step) => step.after.filter((id) => !ids.includes(id)).map((id) => `${step.id} after ${id}`));
  return missing.length > 0 ? missing : ids.filter((id) => comesBefore(recipe, id, id)).map((id) => `${id} waits for itself`);
}

/** Whether `to` can be reached from `from` by going forward at least one step. */
function comesBefore(recipe: NewRecipe, from: string, to: string): boolean {
  const seen = new Set<string>();
  const queue = [from];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    for (const step of recipe.steps) {
      if (!step.after.includes(id) || seen.has(step.id)) continue;
      if (step.id === to) return true;
      seen.add(step.id);
      queue.push(step.id);
    }
  }
  return false;
}
