/**
 * Nothing leaves the scheduler that the referee has not passed. Plans are offered in turn, the best first; one that is refused is
 * never answered, and what was claimed on the strength of it (a least end, an impossibility) is not claimed any more.
 */
import { assign, type Hands } from "./assign.ts";
import { checkCookDay } from "./check.ts";
import { explainClash } from "./clash.ts";
import { copiesOf, likelyMin, stepsWithLoads, type Copy, type DayCopies } from "./copies.ts";
import { projectOf, startOf } from "./day-to-lags.ts";
import { settleLevels } from "./levels.ts";
import { endSpread, longestStand, mustStartBy } from "./margins.ts";
import { laidOneByOne } from "./one-by-one.ts";
import type { Plan, Project } from "./project.ts";
import { solveProject, type Solution } from "./solve.ts";
import { MOST_STEPS, tooManySteps } from "./too-many.ts";
import type { Budget, CookDayInput, CookDayPlan, PlannedStep } from "./types.ts";

/** What the door is given to answer with; a test puts a faulty one in its place. */
export interface Solver {
  readonly solve: (project: Project, budget: Budget) => Solution;
  readonly settle: typeof settleLevels;
  readonly lay: typeof laidOneByOne;
  readonly explain: typeof explainClash;
}

/** The levels below the end have what the end has left of the budget, and this share of it in any case. */
const LOWER_LEVELS_SHARE = 0.3;

export const SOLVER: Solver = { solve: solveProject, settle: settleLevels, lay: laidOneByOne, explain: explainClash };

/** The answer for a day, by the solver given. */
export function answerFor(day: CookDayInput, budget: Budget, solver: Solver): CookDayPlan {
  const steps = stepsWithLoads(day);
  if (steps > MOST_STEPS) return { ...empty(copiesOf({ ...day, dishes: [] })), status: "infeasible", conflicts: [tooManySteps(day, steps)] };
  const model = copiesOf(day);
  const project = projectOf(day, model);
  const found = solver.solve(project, budget);
  const allowed = (plan: Plan | null): Answered | null => (plan === null ? null : passed(day, model, plan));
  if (found.plan) {
    const left = Math.max(budget.schedules - found.used, Math.ceil(budget.schedules * LOWER_LEVELS_SHARE));
    const { plan, used } = solver.settle(project, model, found.plan, left, (one) => handsOf(day, model, one));
    const answer = allowed(plan) ?? allowed(found.plan);
    if (answer) return { ...empty(model), ...answer, ...claimOf(found, answer.endMin), schedulesUsed: found.used + used };
  }
  // No plan, or one that the referee refuses, or a refusal that an easy plan would give the lie.
  const laid = solver.lay(day);
  const used = found.used + laid.used;
  const answer = allowed(laid.plan);
  const bound = found.status === "open" && found.plan === null ? found.bound : found.criticalPath;
  if (answer) return { ...empty(model), ...answer, lowerBoundMin: Math.min(answer.endMin, bound), schedulesUsed: used };
  if (found.status !== "infeasible") return { ...empty(model), notes: [...model.notes, NO_PLAN_YET], schedulesUsed: used };
  const { clashes, used: asked } = solver.explain(day, budget.schedules);
  return { ...empty(model), status: "infeasible", conflicts: clashes, schedulesUsed: used + asked };
}

type Answered = Pick<CookDayPlan, "endSpread" | "longestStandMin" | "steps"> & { readonly endMin: number };

const NO_PLAN_YET = "No plan was found in the effort allowed, and none was ruled out. Fewer dishes or longer waits make it easier.";

/** `optimal` only for an end that meets the bound it was proved with; a bound past an allowed end is no bound. */
function claimOf({ status, bound }: Solution, endMin: number): Pick<CookDayPlan, "status" | "lowerBoundMin"> {
  return status === "optimal" && bound === endMin ? { status: "optimal", lowerBoundMin: bound } : { status: "feasible", lowerBoundMin: Math.min(bound, endMin) };
}

/** The plan in the household's terms, if the referee passes it. */
function passed(day: CookDayInput, model: DayCopies, plan: Plan): Answered | null {
  const answer = planned(day, model, plan, handsOf(day, model, plan));
  const { faults, measures } = checkCookDay(day, answer.steps);
  return faults.length === 0 && measures?.endMin === answer.endMin ? answer : null;
}

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

function handsOf(day: CookDayInput, model: DayCopies, plan: Plan): Hands[] {
  return assign(day, model, startsOf(model, plan), model.copies.map((_, i) => plan.options[startOf(i)] as number));
}

const startsOf = (model: DayCopies, plan: Plan): number[] => model.copies.map((_, i) => plan.starts[startOf(i)] as number);

function planned(day: CookDayInput, model: DayCopies, plan: Plan, hands: readonly Hands[]): Answered {
  const starts = startsOf(model, plan);
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
    ovenC: hands[i]?.ovenC ?? null,
    burner: hands[i]?.burner ?? null,
    mustStartByMin: latest[i] ?? null,
  }));
  const spread = endSpread(day, model, starts, hands);
  return { endMin: spread.likely, endSpread: spread, longestStandMin: longestStand(model, starts), steps: steps.sort((a, b) => a.startMin - b.startMin) };
}
