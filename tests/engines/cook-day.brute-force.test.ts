/**
 * Every placing of every step on small days, judged by the referee alone, against the scheduler: the ends must be the same, and
 * what has no allowed placing must be refused. Exhaustion is the published answer here; no figure is written down.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayInput, type PlacedStep } from "#shared/engines/cook-day/index.ts";
import { copiesOf } from "#shared/engines/cook-day/copies.ts";
import { projectOf } from "#shared/engines/cook-day/day-to-lags.ts";
import { horizonOf, overfull } from "#shared/engines/cook-day/project.ts";
import { Search } from "#shared/engines/cook-day/search.ts";
import { windowsOf } from "#shared/engines/cook-day/windows.ts";
import { smallDays } from "#tests/support/small-days.ts";

/** No plan of least end of these days is longer: their minutes one after another, with waits for the oven and for a cook who is away. */
function longest(day: CookDayInput): number {
  const minutes = day.dishes.flatMap((dish) => dish.steps.map((step) => step.handsOnMin + (typeof step.handsOffMin === "number" ? step.handsOffMin : step.handsOffMin.likely)));
  const away = day.unavailable.reduce((last, absence) => Math.max(last, absence.toMin), 0);
  const heat = day.kitchen.ovens.reduce((most, oven) => Math.max(most, oven.preheatMin + oven.changeMin), 0);
  return minutes.reduce((sum, one) => sum + one, 0) + away + heat * minutes.length;
}

/** More than this is left to the other tests; what was reached is counted. */
const MOST_PLACINGS = 200_000;

function placings(day: CookDayInput): number {
  const steps = day.dishes.flatMap((dish) => dish.steps);
  return steps.reduce((product, step) => product * ((day.endByMin ?? longest(day)) + 1) * (step.needs.oven ? day.kitchen.ovens.length : 1), 1);
}

/** The least end of all allowed placings, null when there is none. Steps are placed in recipe order, so that order prunes. */
function leastEnd(day: CookDayInput): number | null {
  const steps = day.dishes.flatMap((dish) => dish.steps.map((step) => ({ dish: dish.id, step })));
  const latest = (day.endByMin ?? longest(day)) + 1;
  const placed: (PlacedStep & { end: number })[] = [];
  let best: number | null = null;
  const place = (k: number): void => {
    const one = steps[k];
    if (one === undefined) {
      const { faults, measures } = checkCookDay(day, placed);
      if (faults.length === 0 && measures && (best === null || measures.endMin < best)) best = measures.endMin;
      return;
    }
    const { step, dish } = one;
    const length = step.handsOnMin + (typeof step.handsOffMin === "number" ? step.handsOffMin : step.handsOffMin.likely);
    const before = placed.filter((other) => other.dish === dish && step.after.includes(other.step)).map((other) => other.end);
    const from = Math.max(0, ...before);
    const ovens = step.needs.oven ? day.kitchen.ovens.map((_, o) => o + 1) : [null];
    for (let startMin = from; startMin + length < (best ?? latest); startMin++) {
      for (const oven of ovens) {
        placed.push({ dish, step: step.id, load: null, startMin, oven, end: startMin + length });
        place(k + 1);
        placed.pop();
      }
    }
  };
  place(0);
  return best;
}

/** The exact search without a first plan or a bound to lean on: it has to find and to prove by itself. */
function bySearchAlone(day: CookDayInput): number | null {
  const project = projectOf(day, copiesOf(day));
  const windows = windowsOf(project);
  if (windows.cycle || overfull(project)) return null;
  const horizon = horizonOf(project);
  const search = new Search(project, windows, { horizon, latestEnd: horizon, enough: 0 });
  const status = search.run(20_000);
  expect(status === "exhausted" || search.end === 0).toBe(true);
  return search.end;
}

test("small days: the scheduler finds what exhaustion finds, and refuses what exhaustion refuses", () => {
  const reached = { same: 0, refused: 0 };
  const days = fc.oneof(smallDays({ dishes: 2, mostSteps: 2, loads: false }), smallDays({ dishes: 2, mostSteps: 2, loads: false, tight: true }));
  fc.assert(
    fc.property(days, (day) => {
      if (placings(day) > MOST_PLACINGS) return;
      const end = leastEnd(day);
      const plan = scheduleCookDay(day, { schedules: 3_000, seed: 5 });
      if (end === null) {
        reached.refused++;
        expect(plan).toMatchObject({ status: "infeasible", endMin: null, lowerBoundMin: null });
        expect(bySearchAlone(day)).toBeNull();
      } else {
        reached.same++;
        expect(plan).toMatchObject({ status: "optimal", endMin: end });
        expect(bySearchAlone(day)).toBe(end);
      }
    }),
    { numRuns: 400, seed: 20270726 },
  );
  expect(reached.same).toBeGreaterThan(150);
  expect(reached.refused).toBeGreaterThan(60);
});
