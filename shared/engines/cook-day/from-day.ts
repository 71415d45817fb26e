/** A cook day as a household puts it down → what is scheduled and refereed. The service and the pages make it here, so that both judge the same day. Minutes from the start of the day. */
import type { Hold, Limit, RecipeStep } from "../../kernel/recipe.ts";
import { lastSteps, withWashingUp } from "./extra-steps.ts";
import type { CookDayInput, DayKitchen, Oven } from "./types.ts";

export { lastSteps };

/** `startsAt` and `endsBy` are local HH:MM of one day. */
export interface DayAsPut {
  readonly startsAt: string;
  readonly endsBy?: string | null | undefined;
  readonly cooks: number;
  readonly kitchen: { readonly ovens: readonly Oven[]; readonly burners: number; readonly pots?: number | undefined; readonly sinks?: number | undefined; readonly appliances?: DayKitchen["appliances"]; readonly washUpMin?: number | undefined };
  readonly unavailable: readonly { readonly what: "cook"; readonly fromMin: number; readonly toMin: number; readonly why?: string | undefined }[];
}

export interface DishAsPut {
  readonly id: string;
  readonly title: string;
  readonly batches: number;
  readonly steps: readonly RecipeStep[];
  readonly holds: readonly Hold[];
  readonly limits: readonly Limit[];
  /** Ids of the recipes that it takes something from. */
  readonly parts: readonly string[];
}

export function dayToPlan(day: DayAsPut, dishes: readonly DishAsPut[]): CookDayInput {
  const { ovens, burners, pots, sinks, appliances, washUpMin = 0 } = day.kitchen;
  const put: CookDayInput = {
    // a household that has not counted them: one large pot for each burner and one sink (common practice, no source)
    kitchen: { cooks: day.cooks, ovens, burners, pots: pots ?? burners, sinks: sinks ?? 1, ...(appliances === undefined ? {} : { appliances }) },
    dishes: dishes.map((dish) => ({ id: dish.id, title: dish.title, batches: dish.batches, steps: afterItsParts(dish, dishes), holds: dish.holds, limits: dish.limits })),
    startsAtMin: clockMin(day.startsAt),
    endByMin: typeof day.endsBy === "string" ? clockMin(day.endsBy) - clockMin(day.startsAt) : null,
    unavailable: day.unavailable.map(({ what, fromMin, toMin, why }) => ({ what, fromMin, toMin, ...(why === undefined ? {} : { why }) })),
  };
  return withWashingUp(put, washUpMin);
}

/** What a dish takes from another dish of the day has to be there first: its first steps wait for the last steps of that one. */
function afterItsParts(dish: DishAsPut, all: readonly DishAsPut[]): readonly RecipeStep[] {
  const parts = all.filter(({ id }) => dish.parts.includes(id));
  const ready = parts.flatMap((part) => lastSteps(part.steps).map((id) => `${part.id}/${id}`));
  if (ready.length === 0) return dish.steps;
  return dish.steps.map((step) => {
    if (step.after.length > 0) return step;
    // a longest wait without a step before it says nothing, and must not begin to speak of the part
    const first = { ...step, after: ready };
    delete (first as { maxWaitMin?: unknown }).maxWaitMin;
    return first;
  });
}

/** Minutes since midnight of a local HH:MM. */
const clockMin = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
