/**
 * Worked days with proved answers. The four kitchens' days are our own invention; their ends, stands and heat-ups were proved by
 * a clause-learning search and, built separately, by a time-indexed 0/1 programme in HiGHS 1.15.3. The three k1 days were solved by
 * exhaustive search on a 5-minute grid. All of it was done before this scheduler was written; the figures stand in the files.
 */
import { describe, expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayPlan } from "#shared/engines/cook-day/index.ts";
import { readCookDays } from "#tests/support/cook-days.ts";

const BUDGET = { schedules: 20_000, seed: 1 };
const days = readCookDays();
const plans = new Map<string, CookDayPlan>(days.map(({ id, day }) => [id, scheduleCookDay(day, BUDGET)]));

test("every worked day is read", () => {
  expect(days.map(({ id }) => id)).toEqual(["autumn-sunday", "k1-one-cook", "k1-two-cooks", "k1-two-ovens", "supper-at-seven-impossible", "supper-at-seven", "tomato-glut"]);
});

describe.each(days.filter(({ known }) => known.status === "optimal"))("$id", ({ id, day, known }) => {
  const plan = plans.get(id) as CookDayPlan;

  test("ends at the known least end, with proof", () => {
    expect(plan).toMatchObject({ status: "optimal", endMin: known.endMin, lowerBoundMin: known.endMin, conflicts: [] });
    expect(plan.steps).toHaveLength(known.steps ?? 0);
  });

  test("is allowed by the referee, which measures the same end and stand", () => {
    const { faults, measures } = checkCookDay(day, plan.steps);
    expect(faults).toEqual([]);
    expect(measures).toMatchObject({ endMin: plan.endMin, longestStandMin: plan.longestStandMin });
  });

  test("adds up hands-on minutes and the minutes of one step after another", () => {
    expect(plan).toMatchObject({ handsOnMin: known.handsOnMin, oneAfterAnotherMin: known.oneAfterAnotherMin });
  });

  test("lets nothing stand longer than it must at that end", () => {
    if (known.longestStandMinAtThatEnd === undefined) expect(plan.longestStandMin).toBeGreaterThanOrEqual(0);
    else expect(plan.longestStandMin).toBe(known.longestStandMinAtThatEnd);
  });

  test("the plan written down with the case is allowed too, and ends when it says", () => {
    const written = Object.entries(known.onePlan ?? {}).map(([step, startMin]) => ({ dish: step.split(".")[0] as string, step, load: null, startMin }));
    if (written.length === 0) return expect(known.onePlan).toBeUndefined();
    const { faults, measures } = checkCookDay(day, written);
    expect(faults).toEqual([]);
    expect(measures).toMatchObject({ endMin: known.endMin, longestStandMin: known.longestStandMinAtThatEnd, heatUps: known.heatUpsAtThat });
  });
});

test("a second budget and seed prove the same ends", () => {
  for (const { id, day, known } of days) {
    const plan = scheduleCookDay(day, { schedules: 8_000, seed: 77 });
    expect([id, plan.status, plan.endMin]).toEqual([id, known.status, known.endMin ?? null]);
  }
});

test("a budget of one schedule still gives an allowed plan and owns up that it is not proved", () => {
  let open = 0;
  for (const { day, known } of days.filter(({ known: { status } }) => status === "optimal")) {
    const plan = scheduleCookDay(day, { schedules: 1, seed: 1 });
    if (plan.endMin === null) continue;
    expect(checkCookDay(day, plan.steps).faults).toEqual([]);
    expect(plan.endMin).toBeGreaterThanOrEqual(known.endMin as number);
    if (plan.status === "feasible") open++;
    expect(plan.lowerBoundMin).toBeLessThanOrEqual(known.endMin as number);
  }
  expect(open).toBeGreaterThan(0);
});
