/**
 * What of a day can be done the evening before: steps after which the recipe lets things stand as long as a night. It says nothing of
 * where they stand; the recipe's own limits are all that is asked. Minutes.
 */
import type { RecipeStep } from "../../kernel/recipe.ts";
import { answerFor, SOLVER } from "./door.ts";
import { without } from "./events.ts";
import type { Budget, CookDayInput, DayDish } from "./types.ts";
import { loadsOf } from "./copies.ts";

export interface EveningWork {
  readonly dish: string;
  /** Ids of the steps, in recipe order. */
  readonly steps: readonly string[];
  /** All of the dish. */
  readonly whole: boolean;
  /** Hands-on minutes of the evening. */
  readonly handsOnMin: number;
  /** How much earlier the day then ends; null where a plan is lacking. */
  readonly savesMin: number | null;
}

/** From the evening to the morning (common practice, no source). */
const NIGHT_MIN = 12 * 60;

/** For each dish the most that can be done the evening before; dishes without such steps are left out. */
export function theNightBefore(day: CookDayInput, budget: Budget, nightMin: number = NIGHT_MIN): EveningWork[] {
  const endOf = (one: CookDayInput): number | null => answerFor(one, budget, { ...SOLVER, settle: (_project, _model, plan) => ({ plan, used: 0 }), explain: () => ({ clashes: [], used: 0 }) }).endMin;
  const end = endOf(day);
  return day.dishes.flatMap((dish): EveningWork[] => {
    const steps = eveningSteps(day, dish, nightMin);
    if (steps.length === 0) return [];
    const rest = steps.reduce((left, id) => without(left, [], id), dish);
    const then = endOf({ ...day, dishes: day.dishes.map((other) => (other === dish ? rest : freed(other, dish, steps))) });
    const handsOnMin = dish.steps.reduce((sum, step) => (steps.includes(step.id) ? sum + step.handsOnMin * loadsOf(step, dish) : sum), 0);
    return [{ dish: dish.id, steps, whole: rest.steps.length === 0, handsOnMin, savesMin: end === null || then === null ? null : Math.max(0, end - then) }];
  });
}

/** The largest part of a dish that is closed backwards, and out of which no short wait, limit or kept thing leads. */
function eveningSteps(day: CookDayInput, dish: DayDish, nightMin: number): string[] {
  const evening = new Set(dish.steps.filter((step) => step.startAtMin === undefined && step.notBeforeMin === undefined && step.endByMin === undefined).map((step) => step.id));
  const stays = (step: RecipeStep): boolean =>
    step.after.every((id) => evening.has(id)) &&
    dish.steps.every((next) => evening.has(next.id) || !next.after.includes(step.id) || waitOf(next, step.id) >= nightMin) &&
    day.dishes.every((other) => other.steps.every((next) => !next.after.includes(`${dish.id}/${step.id}`) || waitOf(next, `${dish.id}/${step.id}`) >= nightMin)) &&
    dish.limits.every((limit) => limit.from !== step.id || evening.has(limit.to) || limit.maxMin >= nightMin) &&
    dish.holds.every((hold) => hold.from !== step.id || evening.has(hold.to));
  for (let before = -1; before !== evening.size; ) {
    before = evening.size;
    for (const step of dish.steps) if (evening.has(step.id) && !stays(step)) evening.delete(step.id);
  }
  return dish.steps.filter((step) => evening.has(step.id)).map((step) => step.id);
}

function waitOf(step: RecipeStep, id: string): number {
  return (typeof step.maxWaitMin === "object" ? step.maxWaitMin[id] : step.maxWaitMin) ?? Infinity;
}

/** What another dish takes from a step that is done already, it need not wait for. */
function freed(other: DayDish, dish: DayDish, done: readonly string[]): DayDish {
  const gone = new Set(done.map((id) => `${dish.id}/${id}`));
  return {
    ...other,
    steps: other.steps.map((step) => {
      if (!step.after.some((id) => gone.has(id))) return step;
      const { maxWaitMin, ...rest } = step;
      const waits = typeof maxWaitMin === "object" ? maxWaitMin : maxWaitMin === undefined ? {} : Object.fromEntries(step.after.map((id) => [id, maxWaitMin]));
      return { ...rest, after: step.after.filter((id) => !gone.has(id)), maxWaitMin: Object.fromEntries(Object.entries(waits).filter(([id]) => !gone.has(id))) };
    }),
  };
}
