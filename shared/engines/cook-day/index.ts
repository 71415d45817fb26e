/**
 * When does each step of a cook day start, so that all is done soonest, nothing stands too long and hot food is cold in time?
 * Minutes are whole numbers from the start of the day. One input and one budget give one plan, on any machine. Model: README.
 */
import { assign } from "./assign.ts";
import { explainClash } from "./clash.ts";
import { copiesOf, likelyMin, stepsWithLoads, type Copy, type DayCopies } from "./copies.ts";
import { projectOf, startOf } from "./day-to-lags.ts";
import { shortestStand } from "./levels.ts";
import { endSpread, longestStand, mustStartBy } from "./margins.ts";
import { solveProject } from "./solve.ts";
import type { Budget, CookDayInput, CookDayPlan, PlannedStep } from "./types.ts";

export { checkCookDay, type PlacedStep, type Verdict } from "./check.ts";
export type * from "./types.ts";

/** The best plan that the budget finds, with its lower bound; a day that cannot be is an answer, with what clashes and ways out. */
export function scheduleCookDay(day: CookDayInput, budget: Budget): CookDayPlan {
  const steps = stepsWithLoads(day);
  if (steps > MOST_STEPS) return { ...empty(copiesOf({ ...day, dishes: [] })), notes: [tooMany(steps)] };
  const model = copiesOf(day);
  const project = projectOf(day, model);
  const found = solveProject(project, budget);
  if (found.status === "infeasible") {
    const { clashes, used } = explainClash(day, budget.schedules);
    return { ...empty(model), status: "infeasible", conflicts: clashes, schedulesUsed: found.used + used };
  }
  if (!found.plan) return { ...empty(model), notes: [...model.notes, NO_PLAN_YET], schedulesUsed: found.used };
  const { plan, used } = shortestStand(project, model, found.plan, Math.max(0, budget.schedules - found.used));
  const starts = model.copies.map((_, i) => plan.starts[startOf(i)] as number);
  const ovens = model.copies.map((_, i) => plan.options[startOf(i)] as number);
  return {
    ...empty(model),
    ...planned(day, model, starts, ovens),
    status: found.status === "optimal" ? "optimal" : "feasible",
    lowerBoundMin: found.bound,
    schedulesUsed: found.used + used,
  };
}

/** More than a day holds; the matrix of longest paths grows with the square of it, its making with the cube. */
const MOST_STEPS = 250;
const tooMany = (steps: number): string => `With its loads this day has ${steps} steps, and a plan is made for ${MOST_STEPS} at most. Make larger loads, or spread them over several days.`;
const NO_PLAN_YET = "No plan was found in the effort allowed, and none was ruled out. Fewer dishes or longer waits make it easier.";

function empty(model: DayCopies): CookDayPlan {
  return {
    status: "feasible",
    endMin: null,
    lowerBoundMin: null,
    endSpread: null,
    longestStandMin: null,
    handsOnMin: model.copies.reduce((sum, copy) => sum + copy.step.handsOnMin, 0),
    oneAfterAnotherMin: model.copies.reduce((sum, copy) => sum + likelyMin(copy), 0),
    steps: [],
    conflicts: [],
    schedulesUsed: 0,
    notes: model.notes,
  };
}

function planned(day: CookDayInput, model: DayCopies, starts: readonly number[], ovens: readonly number[]): Pick<CookDayPlan, "endMin" | "endSpread" | "longestStandMin" | "steps"> {
  const hands = assign(day, model, starts, ovens);
  const latest = mustStartBy(model, starts);
  const steps = model.copies.map((copy: Copy, i): PlannedStep => ({
    dish: day.dishes[copy.dish]?.id ?? "",
    step: copy.step.id,
    load: copy.load,
    text: copy.step.text,
    startMin: starts[i] as number,
    handsOnMin: copy.step.handsOnMin,
    handsOffMin: copy.handsOff.likely,
    cook: hands[i]?.cook ?? null,
    oven: hands[i]?.oven ?? null,
    ovenC: copy.step.needs.oven?.c ?? null,
    burner: hands[i]?.burner ?? null,
    mustStartByMin: latest[i] ?? null,
  }));
  const spread = endSpread(day, model, starts, hands);
  return {
    endMin: spread.likely,
    endSpread: spread,
    longestStandMin: longestStand(model, starts),
    steps: steps.sort((a, b) => a.startMin - b.startMin),
  };
}
