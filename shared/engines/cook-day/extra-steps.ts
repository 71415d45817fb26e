/** Steps that no recipe writes and a day may have all the same: washing up, and what comes from the freezer and has to thaw. Minutes. */
import type { CookDayInput, DayDish } from "./types.ts";
import type { MinuteRange, RecipeStep } from "../../kernel/recipe.ts";

/** The id of the step that washes a dish up; where the dish has one of that name, it is washed up already. */
export const WASH_UP = "wash-up";

/**
 * The day with so many hands-on minutes of washing up for each dish, at a sink, once all that dirties something is done: every step with
 * hands, heat or a pot. The kitchen must have a sink; one that has none washes up without it.
 */
export function withWashingUp(day: CookDayInput, minutesPerDish: number): CookDayInput {
  if (minutesPerDish <= 0) return day;
  return { ...day, dishes: day.dishes.map((dish) => (dish.steps.length === 0 || dish.steps.some(({ id }) => id === WASH_UP) ? dish : washedUp(dish, minutesPerDish, day.kitchen.sinks > 0))) };
}

function washedUp(dish: DayDish, handsOnMin: number, atSink: boolean): DayDish {
  const kept = new Set(dish.holds.map(({ to }) => to));
  const dirties = ({ id, handsOnMin: hands, needs }: RecipeStep): boolean => hands > 0 || kept.has(id) || needs.oven !== undefined || needs.appliance !== undefined || (needs.burners ?? 0) + (needs.pots ?? 0) > 0;
  const after = lastSteps(dish.steps.filter(dirties));
  const wash: RecipeStep = { id: WASH_UP, text: `Wash up after ${dish.title}`, handsOnMin, handsOffMin: 0, needs: atSink ? { sinks: 1 } : {}, after };
  return { ...dish, steps: [...dish.steps, wash] };
}

/** The steps of a recipe that nothing in it waits for, by id. */
export const lastSteps = (steps: readonly RecipeStep[]): string[] => steps.filter((step) => !steps.some((other) => other.after.includes(step.id))).map((step) => step.id);

export interface FrozenPart {
  /** What it is: stock, pastry. */
  readonly title: string;
  /** Until it can be used; a range where it depends. */
  readonly thawMin: number | MinuteRange;
  /** The step that uses it; left out = every step that waits for nothing. */
  readonly usedBy?: string | undefined;
}

/** The dish with a step for each part that comes from the freezer: out at the beginning or later, and thawed before it is used. */
export function withThawing(dish: DayDish, parts: readonly FrozenPart[]): DayDish {
  return parts.reduce((so: DayDish, { title, thawMin, usedBy }, k) => {
    const id = `thaw-${k + 1}`;
    const uses = (step: RecipeStep): boolean => (usedBy === undefined ? dish.steps.some((own) => own.id === step.id && own.after.length === 0) : step.id === usedBy);
    const thaw: RecipeStep = { id, text: `Thaw ${title} in the fridge or in cold water`, handsOnMin: 0, handsOffMin: thawMin, needs: {}, after: [] };
    return { ...so, steps: [thaw, ...so.steps.map((step) => (uses(step) ? waitingFor(step, id) : step))] };
  }, dish);
}

/** A longest wait that was one number for all was not said of the new step. */
function waitingFor(step: RecipeStep, id: string): RecipeStep {
  const { maxWaitMin, ...rest } = step;
  const waits = typeof maxWaitMin === "number" ? Object.fromEntries(step.after.map((before) => [before, maxWaitMin])) : maxWaitMin;
  return { ...rest, after: [...step.after, id], ...(waits === undefined ? {} : { maxWaitMin: waits }) };
}
