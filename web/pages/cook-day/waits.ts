/** How long a dish may wait between two steps: from when it is ready until it must go on. Pure. */
import type { Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { worthSaying } from "./day-words.ts";
import { endOf, entriesOf, keyOf, loadsOf } from "./entries.ts";
import type { Stretch } from "./lanes.ts";

/** `fromMin`: what goes before has ended; `atMin`: the plan goes on; `toMin`: it must have gone on. */
export interface Wait extends Stretch {
  readonly atMin: number;
  readonly letter: string;
  /** Number of the step in the list. */
  readonly number: number;
}

type Ordered = Pick<Recipe, "id"> & { readonly steps: readonly Pick<Recipe["steps"][number], "id" | "after">[] };

/** The waits that the list of steps says a word about. Loads tell theirs in the list alone: there they would be a row of dots. */
export function waitsOf(plan: Timetable, recipes: readonly Ordered[]): Wait[] {
  const loads = loadsOf(plan);
  return entriesOf(plan).flatMap(({ letter, first, steps }) => {
    const [step] = steps;
    if (!step || steps.length > 1 || (loads.get(keyOf(step)) ?? 1) > 1) return [];
    const { mustStartByMin } = step;
    if (mustStartByMin === undefined || mustStartByMin <= step.startMin || !worthSaying(step)) return [];
    return [{ fromMin: readyMin(plan, recipes, step), atMin: step.startMin, toMin: mustStartByMin, letter, number: first }];
  });
}

/** When the last of the steps before it has ended; its own start where the recipe names none. */
function readyMin(plan: Timetable, recipes: readonly Ordered[], step: TimetableStep): number {
  const recipe = recipes.find(({ id }) => id === step.dish);
  const before = recipe?.steps.find(({ id }) => id === step.step)?.after ?? [];
  const ends = plan.steps.filter((one) => one.dish === step.dish && before.includes(one.step)).map(endOf);
  return ends.length === 0 ? step.startMin : Math.min(step.startMin, Math.max(...ends));
}
