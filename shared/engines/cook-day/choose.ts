/**
 * Before a day is settled: which dishes fit together into the time there is, what each adds, and when the long rests have to begin.
 * All of it asks the scheduler, and says only what a plan has shown. Minutes from the start of the day.
 */
import { answerFor, SOLVER } from "./door.ts";
import type { Budget, CookDayInput, CookDayPlan, DayDish } from "./types.ts";
import { clockWords } from "./words.ts";

export interface FittingSet {
  /** Ids, in the order of the day. */
  readonly dishes: readonly string[];
  readonly endMin: number;
  readonly handsOnMin: number;
}

export interface DishesThatFit {
  /** Sets to which no further dish can be added, most dishes first, then earliest end. */
  readonly sets: readonly FittingSet[];
  /** False where there were more sets than are asked about. */
  readonly complete: boolean;
}

/** Sets of dishes that are asked about at most; each is a plan to be made. */
const MOST_SETS = 120;

/** Which of the day's dishes can be done together within so many minutes. A dish more never ends a day earlier, so sets grow one by one. */
export function dishesThatFit(day: CookDayInput, withinMin: number, budget: Budget): DishesThatFit {
  const ends = new Map<string, FittingSet>();
  let asked = 0;
  let layer: number[][] = [[]];
  const found: number[][] = [];
  while (layer.length > 0) {
    const next: number[][] = [];
    for (const set of layer) {
      for (let d = (set[set.length - 1] ?? -1) + 1; d < day.dishes.length; d++) {
        const more = [...set, d];
        // Every smaller set of it must fit.
        if (more.length > 1 && !more.every((_, k) => ends.has(more.filter((__, i) => i !== k).join()))) continue;
        if (asked++ >= MOST_SETS) continue;
        const plan = solved({ ...day, dishes: more.map((one) => day.dishes[one] as DayDish), endByMin: earlier(day.endByMin, withinMin) }, budget);
        if (plan.endMin === null) continue;
        ends.set(more.join(), { dishes: more.map((one) => day.dishes[one]?.id ?? ""), endMin: plan.endMin, handsOnMin: plan.handsOnMin });
        next.push(more);
        found.push(more);
      }
    }
    layer = next;
  }
  const largest = found.filter((set) => !found.some((other) => other.length > set.length && set.every((d) => other.includes(d))));
  const sets = largest.map((set) => ends.get(set.join()) as FittingSet).sort((a, b) => b.dishes.length - a.dishes.length || a.endMin - b.endMin);
  return { sets, complete: asked <= MOST_SETS };
}

export interface DishCost {
  readonly dish: string;
  /** How much later the day ends with it than without it; null where one of the two has no plan. */
  readonly addsMin: number | null;
  /** How long it takes alone in this kitchen. */
  readonly aloneMin: number | null;
  readonly handsOnMin: number;
}

/** What each dish of a day adds to its end. */
export function whatEachAdds(day: CookDayInput, budget: Budget): DishCost[] {
  const all = solved(day, budget);
  return day.dishes.map((dish, d): DishCost => {
    const without = solved({ ...day, dishes: day.dishes.filter((_, other) => other !== d) }, budget);
    const alone = solved({ ...day, dishes: [dish] }, budget);
    const addsMin = all.endMin === null || without.endMin === null ? null : Math.max(0, all.endMin - without.endMin);
    return { dish: dish.id, addsMin, aloneMin: alone.endMin, handsOnMin: alone.handsOnMin };
  });
}

export interface RestWindow {
  readonly dish: string;
  readonly step: string;
  /** As soon as it can begin. */
  readonly earliestMin: number;
  /** As late as it may begin and the day still ends in time. */
  readonly latestMin: number;
  /** Begin “Knead, let rise” (Bread) between 8:00 and 8:40. */
  readonly text: string;
}

/** From here on a rest is long enough to be planned around (common practice, no source). */
const LONG_REST_MIN = 30;
const STEP_MIN = 5;

/**
 * When the long rests (rises, soaks: nothing needed, hands off for half an hour or more) have to begin for the day to end by its
 * deadline, or by its least end where it has none. Both ends were solved, to five minutes; empty where the day cannot be.
 */
export function windowsOfRests(day: CookDayInput, budget: Budget): RestWindow[] {
  const all = solved(day, budget);
  if (all.endMin === null) return [];
  const endByMin = day.endByMin ?? all.endMin;
  return day.dishes.flatMap((dish, d) =>
    dish.steps.flatMap((step): RestWindow[] => {
      const off = typeof step.handsOffMin === "number" ? step.handsOffMin : step.handsOffMin.likely;
      const isRest = off >= LONG_REST_MIN && step.loads === undefined && step.startAtMin === undefined && Object.values(step.needs).every((need) => need === undefined || need === 0);
      const planned = all.steps.find((one) => one.dish === dish.id && one.step === step.id);
      if (!isRest || !planned) return [];
      const moved = (change: { notBeforeMin?: number; endByMin?: number }): CookDayInput => ({
        ...day,
        endByMin,
        dishes: day.dishes.map((other, o) => (o === d ? { ...other, steps: other.steps.map((one) => (one.id === step.id ? { ...one, ...change } : one)) } : other)),
      });
      const length = step.handsOnMin + off;
      const latestMin = furthest(planned.startMin, endByMin - length, (at) => solved(moved({ notBeforeMin: Math.max(at, step.notBeforeMin ?? 0) }), budget).endMin !== null);
      const earliestMin = 0 - furthest(-planned.startMin, 0, (at) => solved(moved({ endByMin: Math.min(length - at, step.endByMin ?? Infinity) }), budget).endMin !== null);
      const text = `Begin “${step.text}” (${dish.title}) between ${clockWords(day, earliestMin)} and ${clockWords(day, latestMin)}.`;
      return [{ dish: dish.id, step: step.id, earliestMin, latestMin, text }];
    }),
  );
}

/** The last of `from`, `from` + 5, … that still can be; what can be at one moment can be at all before it. */
function furthest(from: number, to: number, canBe: (at: number) => boolean): number {
  let [low, high] = [0, Math.max(0, Math.floor((to - from) / STEP_MIN))];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (canBe(from + middle * STEP_MIN)) low = middle;
    else high = middle - 1;
  }
  return from + low * STEP_MIN;
}

/** Without asking why, where a day cannot be. */
function solved(day: CookDayInput, budget: Budget): CookDayPlan {
  return answerFor(day, budget, { ...SOLVER, settle: (_project, _model, plan) => ({ plan, used: 0 }), explain: () => ({ clashes: [], used: 0 }) });
}

function earlier(one: number | null, other: number): number {
  return one === null ? other : Math.min(one, other);
}
