/** The engine's own referee, for a step moved by hand. Fetched when the first step is moved: no page has to carry it to be drawn. */
import type { CookDay, TimetableStep } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { checkCookDay, type Verdict } from "#shared/engines/cook-day/check.ts";
import { dayToPlan, type DishAsPut } from "#shared/engines/cook-day/from-day.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";

/** What stands against these steps, in words, and what the plan scores. A dish whose recipe is gone stands against every plan. */
export function refereed(day: CookDay, recipes: readonly Recipe[], steps: readonly TimetableStep[]): Verdict {
  const dishes = day.dishes.map(({ recipeId, title, batches }): DishAsPut => {
    const recipe = recipes.find(({ id }) => id === recipeId);
    return {
      id: recipeId,
      title,
      batches,
      steps: (recipe?.steps ?? []) as readonly RecipeStep[],
      holds: recipe?.holds ?? [],
      limits: (recipe?.limits ?? []) as DishAsPut["limits"],
      parts: (recipe?.ingredients ?? []).flatMap(({ madeBy }) => madeBy ?? []),
    };
  });
  return checkCookDay(
    dayToPlan(day, dishes),
    steps.map(({ dish, step, load, startMin, handsOnMin, handsOffMin, cook, oven, ovenC, burner }) => ({ dish, step, load: load ?? null, startMin, handsOnMin, handsOffMin, cook: cook ?? null, oven: oven ?? null, ovenC: ovenC ?? null, burner: burner ?? null })),
  );
}
