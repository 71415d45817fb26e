/** A recipe as read with its ingredients weighed: what in a line is doubtful is named beside what the reader doubts. */
import { cropOf, readIngredient, type MeasureTables, type ReadLine } from "../engines/measures/index.ts";
import { readJsonLd, readRecipeText, type Doubt, type Found, type NotUnderstood, type ReadRecipe } from "../engines/recipe-reading/index.ts";
import { asNumber } from "../kernel/quantity.ts";
import type { RecipeStep } from "../kernel/recipe.ts";
import type { Way } from "../kernel/way.ts";

export interface DraftLine {
  readonly text: string;
  readonly crop?: string;
}

export interface RecipeDraft {
  readonly title: string;
  readonly way: Way;
  readonly makes: { readonly amount: number; readonly unit: string };
  readonly ingredients: readonly DraftLine[];
  readonly steps: readonly RecipeStep[];
  readonly found: readonly (readonly Found[])[];
  readonly note: string | null;
  readonly doubts: readonly Doubt[];
  readonly notUnderstood: readonly NotUnderstood[];
}

/** `crops` are those of the book. Null where linked data holds no recipe. */
export function draftFrom(source: { readonly text: string } | { readonly jsonLd: unknown }, measures: MeasureTables, crops: ReadonlySet<string>): RecipeDraft | null {
  const read = "text" in source ? readRecipeText(source.text) : readJsonLd(source.jsonLd);
  return read && drafted(read, measures, crops);
}

function drafted(read: ReadRecipe, measures: MeasureTables, crops: ReadonlySet<string>): RecipeDraft {
  const lines = read.ingredients.map((text) => readIngredient(text, measures));
  const { title, way, makes, steps, note, notUnderstood } = read;
  return {
    title,
    way,
    makes,
    ingredients: lines.map((line) => {
      const crop = cropOf(line, measures);
      return crop !== null && crops.has(crop) ? { text: line.text, crop } : { text: line.text };
    }),
    steps: steps.map(({ step }) => step),
    found: steps.map(({ found }) => found),
    note,
    doubts: [...read.doubts, ...lines.flatMap((line, i) => lineDoubt(line, `ingredients.${i}`))],
    notUnderstood,
  };
}

/** More of anything than a household kitchen takes in one batch; a slip of the finger more often than a recipe. Common practice, no source. */
const MOST_OF_ANYTHING = 100_000;

function lineDoubt(line: ReadLine, path: string): Doubt[] {
  const doubt = (why: string): Doubt[] => [{ path, text: line.text, why }];
  if (line.food === "") return doubt("No food was found in this line.");
  if (line.amount === null) return line.amounts.length === 0 && !/\d/.test(line.text) ? [] : doubt("No amount was read.");
  const amount = asNumber(line.amount);
  if (amount <= 0) return doubt("The amount is nothing. Give one above 0, or leave the line out.");
  return amount > MOST_OF_ANYTHING ? doubt("More than a kitchen holds: check the amount.") : [];
}
