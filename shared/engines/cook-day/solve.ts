/**
 * One project, from first plan to proof. The budget is spent 2 : 3 on the first plan and on the search; what the first does not
 * need goes to the second. Units of the project given, whatever grid it is solved on.
 */
import { seededRandom } from "../../kernel/seeded-random.ts";
import { criticalPath, lowerBound } from "./bounds.ts";
import { firstPlan } from "./first-plan.ts";
import { horizonOf, onGrid, overfull, type Plan, type Project } from "./project.ts";
import { search } from "./search.ts";
import type { Budget } from "./types.ts";
import { windowsOf } from "./windows.ts";

export interface Solution {
  /** `open`: the budget ended before the search did. */
  readonly status: "optimal" | "infeasible" | "open";
  readonly plan: Plan | null;
  readonly end: number | null;
  readonly bound: number;
  readonly criticalPath: number;
  readonly used: number;
}

const FIRST_SHARE = 0.4;

export function solveProject(given: Project, budget: Budget): Solution {
  const { project, grid } = onGrid(given);
  const windows = windowsOf(project);
  if (windows.cycle || overfull(project)) return { status: "infeasible", plan: null, end: null, bound: 0, criticalPath: 0, used: 0 };
  const horizon = horizonOf(project);
  const bound = lowerBound(project, windows);
  const first = firstPlan(project, windows, { schedules: Math.ceil(budget.schedules * FIRST_SHARE), bound, horizon }, seededRandom(budget.seed));
  const found = { plan: first.plan, end: first.plan ? first.end : null };
  const path = criticalPath(project, windows);
  const answer = (status: Solution["status"], best: { plan: Plan | null; end: number | null }, used: number): Solution => ({
    status,
    plan: best.plan && { starts: best.plan.starts.map((at) => at * grid), options: best.plan.options },
    end: best.end === null ? null : best.end * grid,
    bound: (status === "optimal" && best.end !== null ? best.end : bound) * grid,
    criticalPath: path * grid,
    used,
  });
  if (found.end !== null && found.end <= bound) return answer("optimal", found, first.used);
  const latestEnd = found.end === null ? horizon : found.end - 1;
  const exact = search(project, windows, { horizon, latestEnd, enough: bound, conflicts: budget.schedules - first.used });
  const best = exact.plan ? exact : found;
  const used = first.used + exact.conflicts;
  if (exact.status === "stopped") return answer("open", best, used);
  return answer(best.plan ? "optimal" : "infeasible", best, used);
}
