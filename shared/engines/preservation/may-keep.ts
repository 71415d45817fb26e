/**
 * Question: may this recipe be kept where its writer wants to keep it?
 * A jar of home bottled or pickled food outside the fridge and the freezer needs a tested process; nothing else opens the shelf.
 * Source: USDA Complete Guide to Home Canning 2015, Guide 1, p. 1-10: untested methods and recipes are not for canning.
 */
import { ok, refuse } from "../../kernel/outcome.ts";
import type { FieldFault, Result } from "../../kernel/outcome.ts";
import type { Keeping } from "../../kernel/recipe.ts";
import type { PlaceKind, Way } from "../../kernel/way.ts";
import { rowsOf } from "./canning.ts";
import type { PreservationTables } from "./types.ts";

export interface RecipeToKeep {
  readonly way: Way;
  readonly keeps: readonly Keeping[];
  /** Food or row key of the tested tables. */
  readonly process: string | null;
  /** Slugs of what goes in; used to name tested recipes and to see that the process is one for this food. */
  readonly crops?: readonly string[];
}

const COLD: readonly PlaceKind[] = ["fridge", "freezer"];
const IN_JARS: readonly Way[] = ["bottle", "pickle"];

/** Refusal `bad-request` with one field for each bad place (keeps.0) and for a process that is not in the tables. */
export function mayKeep(recipe: RecipeToKeep, tables: PreservationTables): Result<void> {
  const faults: FieldFault[] = [];
  const processes = recipe.process === null ? [] : rowsOf(recipe.process, tables);
  if (recipe.process !== null && processes.length === 0) {
    faults.push({ path: "process", message: `${recipe.process} is not a tested process of the tables. ${safely(recipe, tables)}` });
  } else if (recipe.process !== null && isForOtherFood(recipe, processes)) {
    faults.push({ path: "process", message: `${processes[0]?.title} was tested for another food. ${safely(recipe, tables)}` });
  }
  const tested = processes.length > 0 && faults.length === 0;
  if (IN_JARS.includes(recipe.way) && !tested) {
    recipe.keeps.forEach((keep, i) => {
      if (!COLD.includes(keep.place)) faults.push({ path: `keeps.${i}`, message: `A jar without a tested process may not stand in a ${keep.place}. ${safely(recipe, tables)}` });
    });
  }
  return faults.length === 0 ? ok(undefined) : refuse("bad-request", "Only a tested process makes a jar fit to keep out of the fridge.", faults);
}

function isForOtherFood(recipe: RecipeToKeep, processes: readonly { readonly crops: readonly string[] }[]): boolean {
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
