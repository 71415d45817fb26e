/** A pasted recipe as a draft that could be stored as it stands. Stores nothing. */
import type { RecipeDraft, RecipeToRead } from "#shared/contracts/recipe-reading.ts";
import { draftFrom } from "#shared/planning/recipe-draft.ts";
import type { MeasureSystem } from "#shared/kernel/units.ts";
import type { Reference } from "../facts/reference.ts";
import { badFields } from "../http/contract.ts";

export function readRecipe({ text, jsonLd }: RecipeToRead, book: Reference, system: MeasureSystem): RecipeDraft {
  if (text !== undefined && text.trim() === "") throw badFields([{ path: "text", message: "must not be empty: paste a recipe, its ingredients and its steps" }]);
  const draft = draftFrom(text === undefined ? { jsonLd } : { text }, book, new Set(book.crops.keys()));
  if (!draft) throw badFields([{ path: "jsonLd", message: "holds no schema.org Recipe; paste the recipe's words as text instead" }]);
  const { title, way, makes, ingredients, steps, found, note, doubts, notUnderstood, measures, keeps } = draft;
  return {
    recipe: { title, way, makes: { ...makes }, ingredients: ingredients.map((line) => ({ ...line })), steps: steps.map((step) => ({ ...step, after: [...step.after] })), keeps: keeps.map((keep) => ({ ...keep })), ...(measures === null ? {} : { measures }), ...(note === null ? {} : { note }) },
    ingredients: ingredients.map((line) => book.readLine(line, system, measures ?? undefined)),
    steps: steps.map(({ id }, i) => ({ id, found: (found[i] ?? []).map((one) => ({ ...one })) })),
    doubts: doubts.map((doubt) => ({ ...doubt })),
    notUnderstood: notUnderstood.map((part) => ({ ...part })),
  };
}
