/** A day with more loads than a plan is made for: said at once, with what would bring it down to size. */
import { stepsWithLoads } from "./copies.ts";
import type { Clash, CookDayInput } from "./types.ts";
import { countWords } from "./words.ts";

/** More than a day holds; the matrix of longest paths grows with the square of it, its making with the cube. */
export const MOST_STEPS = 250;

/** The refusal in words. Ways are counted, not solved: each brings the day to a size that is planned. */
export function tooManySteps(day: CookDayInput, steps: number): Clash {
  const text = `With its loads this day has ${steps} steps, and a plan is made for ${MOST_STEPS} at most. All that together cannot be had on one day.`;
  return { text, ways: [...fewerBatches(day), ...fewerDishes(day)] };
}

const fits = (day: CookDayInput): boolean => stepsWithLoads(day) <= MOST_STEPS;

function fewerBatches(day: CookDayInput): string[] {
  const most = day.dishes.reduce((least, dish) => Math.max(least, dish.batches), 0);
  for (let batches = most - 1; batches >= 1; batches--) {
    const less = { ...day, dishes: day.dishes.map((dish) => ({ ...dish, batches: Math.min(dish.batches, batches) })) };
    if (fits(less)) return [`Make no dish in more than ${countWords(batches, "batch", "batches")} on this day.`];
  }
  return [];
}

/** The dishes with the fewest steps stay. */
function fewerDishes(day: CookDayInput): string[] {
  const size = (d: number): number => stepsWithLoads({ ...day, dishes: day.dishes.slice(d, d + 1) });
  const kept = day.dishes.map((_, d) => d).sort((a, b) => size(a) - size(b));
  const left: number[] = [];
  while (kept.length > 0 && !fits({ ...day, dishes: kept.map((d) => day.dishes[d] as CookDayInput["dishes"][number]) })) left.push(kept.pop() as number);
  if (kept.length === 0) return ["Make larger loads, or fewer of them."];
  return [`Put ${left.map((d) => day.dishes[d]?.title).join(", ")} on another day.`];
}
