/**
 * Two thousand random days of at most seven steps against every placing of their steps (tests/support/every-placing.ts), judged by
 * the referee: the scheduler's ends and stands must be the least, and what has no allowed placing must be refused. Exhaustion is
 * the standard here; no figure is written down.
 */
import { expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayInput } from "#shared/engines/cook-day/index.ts";
import { copiesOf } from "#shared/engines/cook-day/copies.ts";
import { projectOf } from "#shared/engines/cook-day/day-to-lags.ts";
import { solveProject } from "#shared/engines/cook-day/solve.ts";
import { bestPlacing } from "#tests/support/every-placing.ts";
import { tinyDay } from "#tests/support/tiny-days.ts";

const BUDGET = { schedules: 3_000, seed: 5 };
const MOST_TRIES = 150_000;
const DAYS = 2_000;

/** What a day has in it, for the count of what was reached. */
function features(day: CookDayInput): string[] {
  const steps = day.dishes.flatMap((dish) => dish.steps);
  const heats = new Set(steps.flatMap((step) => (step.needs.oven ? [step.needs.oven.c] : [])));
  return [
    ["waits", steps.some((step) => step.maxWaitMin !== undefined)],
    ["two heats", heats.size > 1],
    ["two ovens", day.kitchen.ovens.length > 1 && heats.size > 0],
    ["heats that may differ", steps.some((step) => step.needs.oven?.fromC !== undefined) && heats.size > 1],
    ["a thing by name", steps.some((step) => step.needs.appliance !== undefined)],
    ["loads", steps.some((step) => step.loads)],
    ["a cook away", day.unavailable.length > 0],
    ["things kept", day.dishes.some((dish) => dish.holds.length > 0)],
    ["limits", day.dishes.some((dish) => dish.limits.length > 0)],
    ["ranges", steps.some((step) => typeof step.handsOffMin !== "number")],
    ["fixed times", steps.some((step) => step.startAtMin !== undefined)],
    ["another dish's step", steps.some((step) => step.after.some((id) => id.includes("/")))],
  ].flatMap(([name, there]) => (there === true ? [name as string] : []));
}

test("every end, every stand and every refusal is that of exhaustion", { timeout: 600_000 }, () => {
  const reached = new Map<string, number>();
  const count = (name: string): void => void reached.set(name, (reached.get(name) ?? 0) + 1);
  for (let seed = 0, done = 0; done < DAYS; seed++) {
    const day = tinyDay(seed);
    const best = day === null ? undefined : bestPlacing(day, MOST_TRIES);
    if (day === null || best === undefined) continue;
    done++;
    if (best === null) {
      expect([seed, solveProject(projectOf(day, copiesOf(day)), BUDGET).status]).toEqual([seed, "infeasible"]);
      count("refused");
    } else {
      const { status, endMin, longestStandMin, steps } = scheduleCookDay(day, BUDGET);
      expect([seed, status, endMin, longestStandMin]).toEqual([seed, "optimal", best.endMin, best.longestStandMin]);
      expect(checkCookDay(day, steps).faults).toEqual([]);
      count("planned");
    }
    features(day).forEach(count);
  }
  expect(Math.min(reached.get("refused") ?? 0, reached.get("planned") ?? 0)).toBeGreaterThan(600);
  for (const name of ["waits", "two heats", "heats that may differ", "a thing by name", "two ovens", "loads", "a cook away", "things kept", "limits", "ranges", "fixed times", "another dish's step"]) {
    expect([name, (reached.get(name) ?? 0) > 150]).toEqual([name, true]);
  }
});
