/**
 * One project, from first plan to proof. A few rules and a short search settle most; then the budget is spent 2 : 3 on breeding
 * plans and on the search, and what the first does not need goes to the second. Units of the project given, whatever grid it is
 * solved on.
 */
import { seededRandom } from "../../kernel/seeded-random.ts";
import { criticalPath, lowerBound } from "./bounds.ts";
import { FirstPlan } from "./first-plan.ts";
import { horizonOf, onGrid, overfull, type Plan, type Project } from "./project.ts";
import { Search, type SearchStatus } from "./search.ts";
import type { Budget } from "./types.ts";
import { windowsOf } from "./windows.ts";

export interface Solution {
  /** `open`: the budget ended before the search did. */
  readonly status: "optimal" | "infeasible" | "open";
  readonly plan: Plan | null;
  readonly end: number | null;
  readonly bound: number;
  /** Longest path without any capacity. */
  readonly criticalPath: number;
  readonly used: number;
}

/** Share of the budget for breeding, and how much is tried before that; the larger a project, the further off its proof (found by trying). */
const BREEDING_SHARE = 0.4;
const BREEDING_SHARE_LARGE = 0.6;
/** Where things must not wait long, a list is mended many times before it is a plan: the search gets on better (found by trying). */
const BREEDING_SHARE_WAITS = 0.1;
const LARGE = 50;
const MOST_BREEDING = 3_000;
const FIRST_SCHEDULES = 40;
const FIRST_CONFLICTS = 300;

/** `plain`: no lower bound, no cutting by the best end, no learned clause, to see what these are worth. */
export function solveProject(given: Project, budget: Budget, plain = false): Solution {
  const { project, grid } = onGrid(given);
  const windows = windowsOf(project);
  if (windows.cycle || overfull(project)) return { status: "infeasible", plan: null, end: null, bound: 0, criticalPath: 0, used: 0 };
  const horizon = horizonOf(project);
  const bound = plain ? 0 : lowerBound(project, windows);
  const run = new Run(project, windows, { horizon, bound, budget, plain });
  const status = run.solve();
  const best = run.best();
  return {
    status: status === "stopped" ? "open" : best === null ? "infeasible" : "optimal",
    plan: best && { starts: best.plan.starts.map((at) => at * grid), options: best.plan.options },
    end: best && best.end * grid,
    bound: (status !== "stopped" && best !== null ? best.end : bound) * grid,
    criticalPath: criticalPath(project, windows) * grid,
    used: run.used,
  };
}

interface RunAsk {
  readonly horizon: number;
  readonly bound: number;
  readonly budget: Budget;
  readonly plain: boolean;
}

class Run {
  private readonly first: FirstPlan;
  private readonly search: Search;
  private readonly ask: RunAsk;
  private readonly breedingShare: number;

  constructor(project: Project, windows: ReturnType<typeof windowsOf>, ask: RunAsk) {
    this.ask = ask;
    const guided = project.lags.some(({ min, to }) => min < 0 && to !== 0);
    this.breedingShare = guided ? BREEDING_SHARE_WAITS : project.starts > LARGE ? BREEDING_SHARE_LARGE : BREEDING_SHARE;
    this.first = new FirstPlan(project, windows, ask, seededRandom(ask.budget.seed));
    this.search = new Search(project, windows, { horizon: ask.horizon, latestEnd: ask.horizon, enough: ask.bound, plain: ask.plain, guided });
  }

  get used(): number {
    return this.first.used + this.search.conflicts;
  }

  best(): { plan: Plan; end: number } | null {
    const found = [this.first, this.search].flatMap(({ plan, end }) => (plan === null || end === null ? [] : [{ plan, end }]));
    return found.length === 0 ? null : found.reduce((a, b) => (b.end < a.end ? b : a));
  }

  solve(): SearchStatus {
    const { schedules } = this.ask.budget;
    this.first.byRules(Math.min(FIRST_SCHEDULES, schedules));
    const status = this.searchOn(FIRST_CONFLICTS);
    if (status !== "stopped") return status;
    if (this.search.plan && this.search.end !== null) this.first.join(this.search.plan, this.search.end);
    this.first.breed(Math.min(schedules - this.search.conflicts, MOST_BREEDING, Math.ceil(schedules * this.breedingShare)));
    return this.searchOn(schedules);
  }

  /** The search, never for a plan that is no better than the best. */
  private searchOn(conflicts: number): SearchStatus {
    const best = this.best();
    if (best !== null && best.end <= this.ask.bound) return "enough";
    if (best !== null) this.search.limitEnd(best.end - 1, best.plan);
    return this.search.run(Math.min(conflicts, this.ask.budget.schedules - this.first.used));
  }
}
