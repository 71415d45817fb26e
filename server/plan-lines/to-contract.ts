import type { PlanLine } from "#shared/contracts/plan-lines.ts";
import { plannedLines } from "#shared/planning/planned-uses.ts";
import { systemOf, type House } from "../facts/house.ts";
import { recipeUse } from "../facts/recipe-use.ts";
import type { Reference } from "../facts/reference.ts";
import type { LineOfRecipe } from "./store.ts";

/** Lines with their recipe's title and what they take, in the order given. */
export function toContract(rows: readonly LineOfRecipe[], book: Reference, house: House): PlanLine[] {
  const uses = new Map(rows.map(({ recipe }) => [recipe.id, recipeUse(recipe, book, systemOf(house))]));
  return plannedLines({ recipes: [...uses.values()], planLines: rows }).map((line) => ({ ...line, uses: line.uses.map((use) => ({ ...use })) }));
}
