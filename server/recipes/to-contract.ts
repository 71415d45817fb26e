import type { Recipe, RecipeBrief } from "#shared/contracts/recipes.ts";
import { processesFor } from "#shared/engines/preservation/index.ts";
import { cautionsOf } from "#shared/planning/recipe-cautions.ts";
import { systemOf, type House } from "../facts/house.ts";
import { readIngredients, useOf } from "../facts/recipe-use.ts";
import type { Reference } from "../facts/reference.ts";
import { recipeOf, type RecipeRow } from "../facts/stored-recipe.ts";

/** The household decides which figures of a tested process hold (its altitude) and what a cup is. */
export function toContract(row: RecipeRow, book: Reference, house: House): Recipe {
  const recipe = recipeOf(row);
  const { title, way, makes, steps, keeps, holds = [], limits = [], reheat, process, allergens = [], note, measures } = recipe;
  const use = useOf(row.id, recipe, book, systemOf(house));
  const sheet = process === undefined ? null : processesFor(process, house.altitudeM, book.preservation);
  // the minutes rise with the height above the sea, so a height that nobody gave may not choose them
  const processing = sheet === null ? [] : house.placed ? [...sheet.value.sentences, ...sheet.notes] : [NOT_PLACED];
  return {
    id: row.id,
    title,
    way,
    makes,
    ingredients: readIngredients(recipe, book, systemOf(house)),
    steps,
    holds,
    limits,
    keeps,
    ...(reheat === undefined ? {} : { reheat }),
    ...(process === undefined ? {} : { process }),
    allergens,
    ...(note === undefined ? {} : { note }),
    ...(measures === undefined ? {} : { measures }),
    origin: row.origin as Recipe["origin"],
    uses: use.uses.map((one) => ({ ...one })),
    handsOnMin: use.handsOnMin,
    cautions: [...cautionsOf(use, book.preservation, recipe.ingredients.map(({ text }) => text))],
    sources: [...cited(row, book), ...(sheet?.basis ?? [])].map(({ id, text }) => ({ id, text })),
    processing,
  };
}

export function toBrief(row: RecipeRow, book: Reference, house: House): RecipeBrief {
  const recipe = recipeOf(row);
  const { id, title, way, makes, keeps, uses, handsOnMin } = useOf(row.id, recipe, book, systemOf(house));
  return { id, title, way, makes: { ...makes }, keeps: keeps.map((keep) => ({ ...keep })), origin: row.origin as Recipe["origin"], uses: uses.map((use) => ({ ...use })), handsOnMin, lines: recipe.ingredients.map(({ text }) => text).join("\n") };
}

const NOT_PLACED = "No minutes yet: they depend on your height above the sea. Set it with the household first.";

/** What the book names for its own recipe; one that the household has changed rests on the household. */
const cited = (row: RecipeRow, book: Reference): Recipe["sources"] => (row.origin === "book" ? [...(book.recipeSources.get(row.id) ?? [])] : []);
