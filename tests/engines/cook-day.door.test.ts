/** Nothing is answered that the referee has not passed: here the solver itself is at fault, in every way that it could be. */
import { describe, expect, test } from "vitest";
import { checkCookDay, type CookDayInput } from "#shared/engines/cook-day/index.ts";
import { answerFor, SOLVER, type Solver } from "#shared/engines/cook-day/door.ts";
import type { Plan } from "#shared/engines/cook-day/project.ts";
import { readCookDays } from "#tests/support/cook-days.ts";

const BUDGET = { schedules: 2_000, seed: 1 };
const DAYS = readCookDays().filter(({ known }) => known.status === "optimal");

/** Everything at the start of the day at once: one pair of hands in many places. */
const broken = (plan: Plan): Plan => ({ ...plan, starts: plan.starts.map((at, i) => (i === plan.starts.length - 1 ? at : 0)) });

const claimsTooMuch: Solver = {
  ...SOLVER,
  solve: (project, budget) => {
    const found = SOLVER.solve(project, budget);
    return { ...found, plan: found.plan && broken(found.plan), end: 1, bound: 1, status: "optimal" };
  },
  settle: (_project, _model, plan) => ({ plan, used: 0 }),
};

const settlesBadly: Solver = { ...SOLVER, settle: (_project, _model, plan) => ({ plan: broken(plan), used: 0 }) };
const refuses: Solver = { ...SOLVER, solve: (project, budget) => ({ ...SOLVER.solve(project, budget), plan: null, end: null, bound: 0, status: "infeasible" }) };
const givesUp: Solver = { ...SOLVER, solve: (project, budget) => ({ ...SOLVER.solve(project, budget), plan: null, end: null, status: "open" }) };
const knowsNothing: Solver = { ...claimsTooMuch, lay: () => ({ plan: null, used: 7 }) };

describe.each(DAYS)("$id", ({ day, known }) => {
  test("a plan that the referee refuses is not answered, and its least end is not claimed", () => {
    const answer = answerFor(day, BUDGET, claimsTooMuch);
    expect(answer.status).toBe("feasible");
    expect(checkCookDay(day, answer.steps).faults).toEqual([]);
    expect(answer.endMin).toBeGreaterThanOrEqual(known.endMin as number);
    expect(answer.lowerBoundMin).toBeLessThanOrEqual(known.endMin as number);
  });

  test("where only the last touch was wrong, the plan before it is answered", () => {
    const answer = answerFor(day, BUDGET, settlesBadly);
    expect(checkCookDay(day, answer.steps).faults).toEqual([]);
    expect([answer.status, answer.endMin]).toEqual(["optimal", known.endMin]);
  });

  test("a refusal that an easy plan gives the lie is not told", () => {
    const answer = answerFor(day, BUDGET, refuses);
    expect([answer.status, answer.conflicts]).toEqual(["feasible", []]);
    expect(checkCookDay(day, answer.steps).faults).toEqual([]);
  });

  test("no plan within the budget: one dish after another", () => {
    const answer = answerFor(day, BUDGET, givesUp);
    expect(answer.status).toBe("feasible");
    expect(checkCookDay(day, answer.steps).faults).toEqual([]);
    expect(answer.lowerBoundMin).toBeLessThanOrEqual(known.endMin as number);
  });

  test("with nothing to fall back on there is no plan, and no claim either", () => {
    const answer = answerFor(day, BUDGET, knowsNothing);
    expect(answer).toMatchObject({ status: "feasible", endMin: null, lowerBoundMin: null, steps: [], conflicts: [] });
    expect(answer.notes.join(" ")).toContain("No plan was found");
  });
});

test("batches of loads in a row: a plan comes even where hardly anything may be tried", () => {
  // Three batches of cobs: blanch, chill at once, cut within half an hour, pack within a quarter; one pot over all six loads.
  const loads = { loads: { holds: 4, of: 8 } };
  const day: CookDayInput = {
    kitchen: { cooks: 1, ovens: [], burners: 2, pots: 1, sinks: 1 }, endByMin: null, unavailable: [],
    dishes: [{
      id: "cobs", title: "Cobs", batches: 3, limits: [],
      holds: [{ what: "pots", from: "boil", to: "blanch" }, { what: "burners", from: "boil", to: "blanch" }],
      steps: [
        { id: "trim", text: "Trim", handsOnMin: 10, handsOffMin: 0, needs: {}, after: [], loads: { holds: 1, of: 1 } },
        { id: "boil", text: "Boil", handsOnMin: 2, handsOffMin: 15, needs: {}, after: [] },
        { id: "blanch", text: "Blanch", handsOnMin: 1, handsOffMin: 5, needs: {}, after: ["trim", "boil"], maxWaitMin: { boil: 90 }, ...loads },
        { id: "chill", text: "Chill", handsOnMin: 1, handsOffMin: 4, needs: { sinks: 1 }, after: ["blanch"], maxWaitMin: 0, ...loads },
        { id: "cut", text: "Cut", handsOnMin: 7, handsOffMin: 0, needs: {}, after: ["chill"], maxWaitMin: 30, ...loads },
        { id: "pack", text: "Pack", handsOnMin: 2, handsOffMin: 0, needs: {}, after: ["cut"], maxWaitMin: 15, ...loads },
      ],
    }],
  };
  for (const schedules of [1, 2, 5, 10, 20]) {
    const { status, endMin, steps } = answerFor(day, { schedules, seed: 1 }, SOLVER);
    expect([schedules, status, endMin !== null]).toEqual([schedules, "feasible", true]);
    expect(checkCookDay(day, steps).faults).toEqual([]);
  }
});
