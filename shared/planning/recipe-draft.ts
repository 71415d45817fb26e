/** A recipe as read with its ingredients weighed: what in a line is doubtful is named beside what the reader doubts. */
import { cropOf, lineDoubt, readIngredient, type MeasureTables, type ReadLine } from "../engines/measures/index.ts";
import { mayKeep, type PreservationTables } from "../engines/preservation/index.ts";
import { readJsonLd, readRecipeText, type Doubt, type Found, type KeepSaid, type NotUnderstood, type ReadRecipe } from "../engines/recipe-reading/index.ts";
import type { Keeping, RecipeStep } from "../kernel/recipe.ts";
import type { MeasureSystem } from "../kernel/units.ts";
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
  readonly measures: MeasureSystem | null;
  readonly keeps: readonly Keeping[];
  readonly doubts: readonly Doubt[];
  readonly notUnderstood: readonly NotUnderstood[];
}

/** `crops` are those of the book. Null where linked data holds no recipe. */
export function draftFrom(source: { readonly text: string } | { readonly jsonLd: unknown }, book: { readonly measures: MeasureTables; readonly preservation: PreservationTables }, crops: ReadonlySet<string>): RecipeDraft | null {
  const read = "text" in source ? readRecipeText(source.text) : readJsonLd(source.jsonLd);
  return read && drafted(read, book.measures, book.preservation, crops);
}

function drafted(read: ReadRecipe, measures: MeasureTables, preservation: PreservationTables, crops: ReadonlySet<string>): RecipeDraft {
  const lines = read.ingredients.map((text) => readIngredient(text, measures));
  const { title, way, makes, steps, note, notUnderstood } = read;
  const keeps = read.keeps.map((said) => keptAs(said, way, preservation));
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
    measures: read.measures,
    keeps: keeps.flatMap(({ keep }) => keep ?? []),
    doubts: [...read.doubts, ...keeps.map(({ doubt }) => doubt), ...lines.flatMap((line, i) => lineDoubtOf(line, measures, `ingredients.${i}`))],
    notUnderstood,
  };
}

/** What the recipe says it keeps, where the tables allow it; always to be looked at. */
function keptAs({ place, days, text, placeUnsaid }: KeepSaid, way: Way, tables: PreservationTables): { keep: Keeping | null; doubt: Doubt } {
  const doubt = (why: string): Doubt => ({ path: "keeps", text, why });
  const allowed = mayKeep({ way, keeps: [{ place, days }], process: null }, tables);
  if (!allowed.ok) return { keep: null, doubt: doubt(`Not taken over: ${allowed.problem.fields?.[0]?.message ?? allowed.problem.detail}`) };
  return { keep: { place, days }, doubt: doubt(placeUnsaid ? `It names no place: ${days} days in the fridge are taken.` : `Taken as ${days} days (${place}), as the recipe says; it is nobody's tested figure.`) };
}

function lineDoubtOf(line: ReadLine, measures: MeasureTables, path: string): Doubt[] {
  const why = lineDoubt(line, measures);
  return why === null ? [] : [{ path, text: line.text, why }];
}
