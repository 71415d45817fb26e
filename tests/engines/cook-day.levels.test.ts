/** The levels below the end: what is gained at one, and that nothing above is given for it. Small days by hand, then the worked days. */
import { describe, expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayInput, type DayDish } from "#shared/engines/cook-day/index.ts";
import { answerFor, SOLVER } from "#shared/engines/cook-day/door.ts";
import type { Measures } from "#shared/engines/cook-day/check-measures.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";
import { readCookDays } from "#tests/support/cook-days.ts";

const BUDGET = { schedules: 3_000, seed: 1 };

function dish(id: string, steps: readonly Partial<RecipeStep>[]): DayDish {
  return { id, title: id, batches: 1, holds: [], limits: [], steps: steps.map((step, k) => ({ id: `${k}`, text: `${id} ${k}`, handsOnMin: 0, handsOffMin: 0, needs: {}, after: [], ...step })) };
}

const day = (dishes: DayDish[], oven = { trays: 1, preheatMin: 0, changeMin: 0 }): CookDayInput => ({ kitchen: { cooks: 1, ovens: [oven], burners: 2, pots: 1, sinks: 1 }, dishes, endByMin: null, unavailable: [] });

function measured(one: CookDayInput, lower = true): Measures {
  const plan = lower ? scheduleCookDay(one, BUDGET) : answerFor(one, BUDGET, { ...SOLVER, settle: (_project, _model, first) => ({ plan: first, used: 0 }) });
  const { faults, measures } = checkCookDay(one, plan.steps);
  expect(faults).toEqual([]);
  return measures as Measures;
}

describe("the oven", () => {
  const bake = (c: number, more: Partial<RecipeStep> = {}): Partial<RecipeStep> => ({ handsOffMin: 20, needs: { oven: { c, trays: 1 } }, ...more });

  test("an oven that changes in no time ends alike in any order; each heat is asked for once", () => {
    const turns = day([180, 200, 180, 200, 180].map((c, k) => dish(`d${k}`, [bake(c)])));
    // Five bakes of 20 min, one tray: 100; two heats.
    expect(measured(turns)).toMatchObject({ endMin: 100, heatUps: 2 });
  });

  test("a heat is not put off where that would make food stand longer", () => {
    // b goes in at once after it is filled, at minute 20 to 40, between a and c: three heat-ups are all that can be had by 60.
    const held = day([dish("a", [bake(180, { startAtMin: 0 })]), dish("b", [bake(200, { startAtMin: 20 })]), dish("c", [bake(180)])]);
    expect(measured(held)).toMatchObject({ endMin: 60, heatUps: 3 });
  });
});

describe("the cook", () => {
  test("two short gaps become one where the same minutes may lie together", () => {
    // 10 of a, 30 of it alone, then b: 50. In the 30 go 12 + 12 of c and d, d not before 25: three and three minutes left, or six at once.
    const gaps = day([dish("x", [{ handsOnMin: 10, handsOffMin: 30 }, { handsOnMin: 10, after: ["0"], maxWaitMin: 0 }]), dish("c", [{ handsOnMin: 12, endByMin: 25 }]), dish("d", [{ handsOnMin: 12, notBeforeMin: 25 }])]);
    expect(measured(gaps)).toMatchObject({ endMin: 50, shortGaps: 1 });
  });
});

test("worked days: never worse above for being better below, and better somewhere", () => {
  let better = 0;
  const order = ({ endMin, longestStandMin, heatUps, shortGaps }: Measures): number[] => [endMin, longestStandMin, heatUps, shortGaps];
  for (const { day: worked } of readCookDays().filter(({ known }) => known.status === "optimal")) {
    const [with_, without] = [order(measured(worked)), order(measured(worked, false))];
    const first = with_.findIndex((value, k) => value !== without[k]);
    if (first < 0) continue;
    expect(with_[first]).toBeLessThan(without[first] as number);
    better++;
  }
  expect(better).toBeGreaterThanOrEqual(3);
});
