/**
 * Limits that give way when a day under way can no longer keep them all, in order of harm: times and deadlines first, then the waits
 * of what stands already, then all waits, and limits for safety last; each kind by as little as makes a plan possible. Minutes.
 */
import type { RecipeStep } from "../../kernel/recipe.ts";
import type { CookDayInput, CookDayPlan } from "./types.ts";
import { likelyOff } from "./under-way.ts";
import { keyOf } from "./unrolled.ts";

/** By how much times may be put off and waits may grow: every five minutes for two hours, then half a day, then for ever. */
const FOR_EVER = 100_000;
const ALLOWANCES = [...Array.from({ length: 24 }, (_, k) => 5 * (k + 1)), 720, FOR_EVER];

type Try = (day: CookDayInput) => CookDayPlan | null;
type IsBegun = (key: string) => boolean;

/** The first plan that comes of it; null when nothing helps. */
export function giveWay(day: CookDayInput, isBegun: IsBegun, attempt: Try): CookDayPlan | null {
  const timeless = laterTimes(day, isBegun, FOR_EVER);
  const stages: ((by: number) => CookDayInput)[] = [
    (by) => laterTimes(day, isBegun, by),
    (by) => longerWaits(timeless, by, isBegun),
    (by) => longerWaits(timeless, by, () => true),
    (by) => longerLimits(longerWaits(timeless, by, () => true), by),
  ];
  return stages.reduce((plan: CookDayPlan | null, stage) => plan ?? least(stage, attempt), null);
}

/** The plan with the least allowance that gives one; more allows all that less allows. */
function least(stage: (by: number) => CookDayInput, attempt: Try): CookDayPlan | null {
  let best = attempt(stage(ALLOWANCES[ALLOWANCES.length - 1] as number));
  if (best === null) return null;
  let [low, high] = [0, ALLOWANCES.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    const plan = attempt(stage(ALLOWANCES[middle] as number));
    if (plan) [best, high] = [plan, middle];
    else low = middle + 1;
  }
  return best;
}

function withSteps(day: CookDayInput, change: (step: RecipeStep, dish: string) => RecipeStep): CookDayInput {
  return { ...day, dishes: day.dishes.map((dish) => ({ ...dish, steps: dish.steps.map((step) => change(step, dish.id)) })) };
}

/** A fixed time becomes an earliest one, and a latest one so much later; what has begun stays where it is. */
function laterTimes(day: CookDayInput, isBegun: IsBegun, by: number): CookDayInput {
  const loose = withSteps(day, (step, dish) => {
    if (isBegun(keyOf(dish, step.id))) return step;
    const { startAtMin, endByMin = FOR_EVER } = step;
    const free = { ...step };
    delete free.startAtMin;
    delete free.endByMin;
    const begin = startAtMin === undefined ? {} : { notBeforeMin: Math.max(startAtMin, step.notBeforeMin ?? 0) };
    const latest = Math.min(endByMin, startAtMin === undefined ? FOR_EVER : startAtMin + step.handsOnMin + likelyOff(step)) + by;
    return { ...free, ...begin, ...(latest < FOR_EVER ? { endByMin: latest } : {}) };
  });
  return { ...loose, endByMin: day.endByMin === null || by >= FOR_EVER ? null : day.endByMin + by };
}

function longerWaits(day: CookDayInput, by: number, since: IsBegun): CookDayInput {
  return withSteps(day, (step, dish) => {
    if (typeof step.maxWaitMin !== "object") return step;
    const longer = (id: string, wait: number): number => (since(keyOf(dish, id)) ? wait + by : wait);
    return { ...step, maxWaitMin: Object.fromEntries(Object.entries(step.maxWaitMin).map(([id, wait]) => [id, longer(id, wait)])) };
  });
}

function longerLimits(day: CookDayInput, by: number): CookDayInput {
  return { ...day, dishes: day.dishes.map((dish) => ({ ...dish, limits: dish.limits.map((limit) => ({ ...limit, maxMin: limit.maxMin + by })) })) };
}
