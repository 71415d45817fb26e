/**
 * Question: may this recipe be kept where its writer wants to keep it?
 * Moist food outside the fridge and the freezer needs a tested process for exactly what goes in; only dried and whole stored crops may do without.
 * Source: USDA Complete Guide to Home Canning 2015, Guide 1, p. 1-10: untested methods and recipes are not for canning.
 */
import { ok, refuse } from "../../kernel/outcome.ts";
import type { FieldFault, Result } from "../../kernel/outcome.ts";
import type { Keeping } from "../../kernel/recipe.ts";
import type { Way } from "../../kernel/way.ts";
import { rowsOf } from "./canning.ts";
import { wrongPlace } from "./places.ts";
import { tooLittleSalt } from "./salt-share.ts";
import { isPlainAsTested, type IngredientLine } from "./tested-lines.ts";
import type { CanningRow, PreservationTables } from "./types.ts";

export interface RecipeToKeep {
  readonly way: Way;
  readonly keeps: readonly Keeping[];
  /** Food or row key of the tested tables. */
  readonly process: string | null;
  /** Slugs of what goes in; used to name tested recipes and to see that the process is one for this food. */
  readonly crops?: readonly string[];
  /** Every line that goes in. Left out where the lines were looked at when the recipe was saved. */
  readonly lines?: readonly IngredientLine[];
  /** The lines are, word for word, those of the book's recipe for this process. */
  readonly asTested?: boolean;
}

/** Refusal `bad-request` with one field for each bad place (keeps.0) and for a process that is not one for what goes in. */
export function mayKeep(recipe: RecipeToKeep, tables: PreservationTables): Result<void> {
  const processes = recipe.process === null ? [] : rowsOf(recipe.process, tables);
  const wrong = recipe.process === null ? undefined : wrongProcess(recipe, recipe.process, processes, tables);
  const faults: FieldFault[] = wrong === undefined ? [] : [{ path: "process", message: `${wrong} ${safely(recipe, tables)}` }];
  const tested = processes.length > 0 && wrong === undefined;
  recipe.keeps.forEach((keep, i) => {
    const message = wrongPlace(recipe, keep, tested, tables);
    if (message !== undefined) faults.push({ path: `keeps.${i}`, message: `${message} ${safely(recipe, tables)}` });
  });
  const salt = recipe.way === "ferment" && recipe.lines !== undefined && recipe.asTested !== true ? tooLittleSalt(recipe.lines, tables) : null;
  if (salt) faults.push({ path: `ingredients.${salt.at}.text`, message: salt.message });
  return faults.length === 0 ? ok(undefined) : refuse("bad-request", "Only a tested process makes a jar fit to keep out of the fridge.", faults);
}

function wrongProcess(recipe: RecipeToKeep, process: string, rows: readonly CanningRow[], tables: PreservationTables): string | undefined {
  const title = rows[0]?.title;
  if (title === undefined) return `${process} is not a tested process of the tables.`;
  if (!rows.some((row) => row.way === recipe.way)) return `${title} is a process to ${rows[0]?.way}, not to ${recipe.way}.`;
  if (isForOtherFood(recipe, rows)) return `${title} was tested for another food.`;
  if (recipe.lines !== undefined && recipe.asTested !== true && !isPlainAsTested(recipe.lines, rows, tables)) {
    return `${title} was tested for exactly its own ingredients, and these are others.`;
  }
  return undefined;
}

function isForOtherFood(recipe: RecipeToKeep, processes: readonly CanningRow[]): boolean {
  const crops = recipe.crops ?? [];
  const tested = processes.flatMap((row) => row.crops);
  return crops.length > 0 && tested.length > 0 && !crops.some((crop) => tested.includes(crop));
}

const MOST_NAMES = 3;

function safely(recipe: RecipeToKeep, tables: PreservationTables): string {
  const crops = recipe.crops ?? [];
  const rows = tables.canning.filter((row) => row.crops.some((crop) => crops.includes(crop)));
  const own = rows.filter((row) => row.way === recipe.way);
  const names = [...new Set((own.length > 0 ? own : rows).map((row) => row.title))].slice(0, MOST_NAMES);
  return `Keep it in the fridge or freezer, or use a tested recipe${names.length > 0 ? `: ${names.join("; ")}` : ""}.`;
}
