/** A stored recipe for another amount, by the household's own cups, pots and ovens. */
import type { Scaled, ScaleAsked } from "#shared/contracts/scaling.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";
import { ok, type Result } from "#shared/kernel/outcome.ts";
import { scaledRecipe } from "#shared/planning/scaled-recipe.ts";
import { systemOf, type House } from "../facts/house.ts";
import { useOf } from "../facts/recipe-use.ts";
import type { Reference } from "../facts/reference.ts";
import { recipeOf, type RecipeRow } from "../facts/stored-recipe.ts";
import { toContract } from "./to-contract.ts";

export function scaleRecipe(row: RecipeRow, { potLitres, ...asked }: ScaleAsked, book: Reference, house: House): Result<Scaled> {
  const recipe = recipeOf(row);
  const system = systemOf(house);
  const ovens = house.kitchen?.ovens.map(({ trays }) => trays) ?? null;
  const kitchen = { potLitres: potLitres ?? null, trays: ovens && Math.max(0, ...ovens) };
  const scaled = scaledRecipe({ use: useOf(row.id, recipe, book, system), lines: recipe.ingredients, steps: recipe.steps as RecipeStep[], holds: recipe.holds ?? [], system: recipe.measures ?? system, printIn: system, kitchen }, asked, book.measures);
  if (!scaled.ok) return scaled;
  const { cautions, sources } = toContract(row, book, house);
  const { ingredients, uses, steps, doesNotScale, fits, ...rest } = scaled.value;
  return ok({
    id: row.id,
    title: row.title,
    ...rest,
    ingredients: ingredients.map((line) => ({ ...line })),
    uses: uses.map((use) => ({ ...use })),
    steps: steps.map((step) => ({ ...step })),
    doesNotScale: doesNotScale.map((note) => ({ ...note })),
    fits: fits.map((fit) => ({ ...fit })),
    cautions: [...new Set([...scaled.value.cautions, ...cautions])],
    sources,
  });
}
