/** Ways already chosen: what each takes, and how much of each crop goes in each week. Grams as picked. */
import type { IsoWeek } from "../kernel/iso-week.ts";
import type { KitchenFacts } from "./facts.ts";
import type { PlannedLine } from "./outlook-types.ts";

/** Lines with their recipe's words; a line whose recipe is gone takes nothing and is left out. */
export function plannedLines(kitchen: Pick<KitchenFacts, "recipes" | "planLines">): PlannedLine[] {
  const recipes = new Map(kitchen.recipes.map((recipe) => [recipe.id, recipe]));
  return kitchen.planLines.flatMap(({ id, week, recipeId, batches }) => {
    const recipe = recipes.get(recipeId);
    if (!recipe) return [];
    const uses = recipe.uses.map(({ crop, grams }) => ({ crop, grams: Math.round(grams * batches) }));
    return [{ id, week, recipeId, title: recipe.title, way: recipe.way, batches, uses }];
  });
}

/** Grams of each crop that the lines take, one figure for each of the weeks. */
export function plannedGrams(lines: readonly PlannedLine[], weeks: readonly IsoWeek[]): Map<string, Float64Array> {
  const at = new Map(weeks.map((week, w) => [week, w]));
  const taken = new Map<string, Float64Array>();
  for (const line of lines) {
    const w = at.get(line.week);
    if (w === undefined) continue;
    for (const { crop, grams } of line.uses) {
      const row = taken.get(crop) ?? new Float64Array(weeks.length);
      row[w] = (row[w] as number) + grams;
      taken.set(crop, row);
    }
  }
  return taken;
}
