/** Decides whether a recipe may be kept as it is written: its steps can be done in some order, its parts exist, and its jars are safe where they stand. */
import type { Tx } from "#db/client.ts";
import type { NewRecipe } from "#shared/contracts/recipes.ts";
import { asUsed } from "#shared/engines/measures/index.ts";
import { mayKeep } from "#shared/engines/preservation/index.ts";
import type { FieldFault, Problem, Result } from "#shared/kernel/outcome.ts";
import type { Reference } from "../facts/reference.ts";
import { partsOf, recipeOf, type RecipeRow } from "../facts/stored-recipe.ts";
import { badFields } from "../http/contract.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, sameBody, type Put } from "../http/put-once.ts";
import { stepFaults } from "./check-steps.ts";
import { bookRecipe, holdParts, insertRecipe, lockRecipe, needsInTurn, recipesThere, updateRecipe } from "./store.ts";

export interface AskedRecipe {
  readonly id: string;
  readonly body: NewRecipe;
  readonly ifMatch: string | undefined;
}

export function saveRecipe(tx: Tx, householdId: string, { id, body, ifMatch }: AskedRecipe, book: Reference): Promise<Result<Put<RecipeRow>>> {
  return putEditable<RecipeRow, NewRecipe>({
    body,
    bodyOf: recipeOf,
    ifMatch,
    tagOf,
    find: async () => {
      // before the recipe's own row: two saves that name each other's recipe would else wait for each other
      if (partsOf(body).length > 0) await holdParts(tx, householdId);
      return lockRecipe(tx, householdId, id);
    },
    check: async () => {
      const faults = [...stepFaults(body), ...cropFaults(body, book), ...keepingFaults(body, book, isAsInBook(body, await bookRecipe(tx, id))), ...(await partFaults(tx, householdId, id, body))];
      return faults.length > 0 ? problemOf(faults) : undefined;
    },
    insert: () => insertRecipe(tx, householdId, id, body),
    update: (stored) => updateRecipe(tx, stored, body),
  });
}

const problemOf = (faults: readonly FieldFault[]): Problem => badFields(faults, "The recipe cannot be kept like this.").problem;

function cropFaults(recipe: NewRecipe, book: Reference): FieldFault[] {
  return recipe.ingredients.flatMap(({ crop }, i) => (crop === undefined || book.crops.has(crop) ? [] : [{ path: `ingredients.${i}.crop`, message: `there is no crop "${crop}" in the book` }]));
}

function keepingFaults(recipe: NewRecipe, book: Reference, asTested: boolean): readonly FieldFault[] {
  const crops = recipe.ingredients.flatMap(({ crop }) => (crop === undefined ? [] : [crop]));
  const lines = recipe.ingredients.map((line) => ({ ...line, grams: usedGrams(line, recipe, book) }));
  const allowed = mayKeep({ way: recipe.way, keeps: recipe.keeps, process: recipe.process ?? null, crops, lines, asTested }, book.preservation);
  return allowed.ok ? [] : (allowed.problem.fields ?? [{ path: "keeps", message: allowed.problem.detail }]);
}

/** Grams that go in: of a crop what is left when it is trimmed; null where that is not known. */
function usedGrams(line: NewRecipe["ingredients"][number], recipe: NewRecipe, book: Reference): number | null {
  const { grams } = book.readLine(line, recipe.measures ?? "metric");
  if (grams === null || line.crop === undefined) return grams;
  const row = book.measures.produce.get(line.crop);
  return row ? asUsed(grams, row) : null;
}

/**
 * The same process for the same lines, work and yield, in the same order: then the book's own test holds. A step that is left out or shortened, or
 * another number of jars, or other cups, is another recipe, which nobody tested; title, notes and what to say beside it are the household's own.
 */
function isAsInBook(recipe: NewRecipe, book: NewRecipe | undefined): boolean {
  if (book === undefined || book.process !== recipe.process) return false;
  return sameBody(testedPartsOf(recipe), testedPartsOf(book));
}

const testedPartsOf = ({ makes, measures, ingredients, steps, holds = [], limits = [] }: NewRecipe): unknown => ({ makes, measures: measures ?? null, ingredients: ingredients.map(({ text, crop, madeBy }) => ({ text, crop, madeBy })), steps, holds, limits });

async function partFaults(tx: Tx, householdId: string, id: string, recipe: NewRecipe): Promise<FieldFault[]> {
  const parts = partsOf(recipe);
  if (parts.length === 0) return [];
  const there = await recipesThere(tx, householdId, parts);
  const faults: FieldFault[] = [];
  for (const [i, { madeBy }] of recipe.ingredients.entries()) {
    if (madeBy === undefined) continue;
    const path = `ingredients.${i}.madeBy`;
    if (madeBy === id) faults.push({ path, message: "a recipe cannot be made of itself" });
    else if (!there.has(madeBy)) faults.push({ path, message: "there is no such recipe" });
    else if (await needsInTurn(tx, householdId, madeBy, id)) faults.push({ path, message: "goes round in a circle: that recipe takes something this one makes" });
  }
  return faults;
}
