/**
 * Full days: worked days put together for one cook. One pair of hands is never done sooner than its minutes, so where a plan ends with them
 * its proof needs no program; that these days can end so was found before by another program (reference days merged two and three at a time).
 */
import { expect, test } from "vitest";
import { answerFor, SOLVER } from "#shared/engines/cook-day/door.ts";
import { checkCookDay, type CookDayInput } from "#shared/engines/cook-day/index.ts";
import { CASES, readCookDay } from "#tests/support/cook-days.ts";

/** All dishes in the first day's kitchen; the times of the clock are left out, since each day has its own. */
function merged(names: readonly string[]): CookDayInput {
  const days = names.map((name) => readCookDay(`${CASES}/${name}.json`).day);
  const dishes = days.flatMap((day, k) => day.dishes.map((dish) => ({
    ...dish,
    id: `${dish.id}-${k}`,
    steps: dish.steps.map((step) => {
      const free = { ...step };
      delete free.startAtMin;
      delete free.endByMin;
      return free;
    }),
  })));
  return { kitchen: { ...(days[0] as CookDayInput).kitchen, cooks: 1 }, dishes, endByMin: null, unavailable: [] };
}

test.each([
  [["autumn-sunday", "supper-at-seven", "k1-one-cook"], 60, 505],
  [["autumn-sunday", "tomato-glut", "k1-one-cook"], 69, 645],
] as const)("%s: %i steps of one cook end with the last of the hands-on minutes, %i", (names, steps, handsOnMin) => {
  const day = merged(names);
  // The levels below the end are asked elsewhere.
  const plan = answerFor(day, { schedules: 5_000, seed: 1 }, { ...SOLVER, settle: (_project, _model, first) => ({ plan: first, used: 0 }) });
  expect(plan).toMatchObject({ status: "optimal", endMin: handsOnMin, handsOnMin, lowerBoundMin: handsOnMin });
  expect(plan.steps).toHaveLength(steps);
  expect(checkCookDay(day, plan.steps).faults).toEqual([]);
});
