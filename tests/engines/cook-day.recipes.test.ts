/** The recipes that come with the product, alone and together, on hardly any effort: a plan that the referee passes, or a refusal with reasons. */
import { expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayInput, type DayDish } from "#shared/engines/cook-day/index.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { bookDishes } from "#tests/support/recipe-days.ts";

const KITCHEN = { cooks: 1, ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4, pots: 2, sinks: 1 };

const dishes = bookDishes();

/** True for a plan, false for a refusal. */
function answered(chosen: readonly DayDish[]): boolean {
  const day: CookDayInput = { kitchen: KITCHEN, dishes: chosen, endByMin: null, unavailable: [] };
  const plan = scheduleCookDay(day, { schedules: 60, seed: 1 });
  const what = chosen.map(({ title, batches }) => `${title} x ${batches}`).join(", ");
  if (plan.status === "infeasible") {
    expect([what, plan.endMin, plan.conflicts.length > 0]).toEqual([what, null, true]);
    return false;
  }
  expect([what, plan.endMin === null, checkCookDay(day, plan.steps).faults]).toEqual([what, false, []]);
  return true;
}

test("each recipe alone, in one, two and three batches", { timeout: 120_000 }, () => {
  expect(dishes.length).toBeGreaterThan(150);
  for (const batches of [1, 2, 3]) {
    const planned = dishes.filter((dish) => answered([{ ...dish, batches }])).length;
    // One batch of anything can be made by one cook in a usual kitchen.
    expect(planned).toBeGreaterThanOrEqual(batches === 1 ? dishes.length : Math.floor(0.9 * dishes.length));
  }
});

test("two and three recipes together", { timeout: 120_000 }, () => {
  const random = seededRandom(1927);
  for (let k = 0; k < 60; k++) {
    const chosen = new Set(Array.from({ length: 2 + (k % 2) }, () => random.below(dishes.length)));
    answered([...chosen].map((d) => ({ ...(dishes[d] as DayDish), batches: 1 + random.below(3) })));
  }
});
