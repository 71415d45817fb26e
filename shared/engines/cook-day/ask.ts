/** One question to the search about a project that has a plan already: is there another, near it, that keeps to more? Units of the project. */
import { horizonOf, onGrid, type Lag, type Plan, type Project } from "./project.ts";
import { Search } from "./search.ts";
import { windowsOf } from "./windows.ts";

export interface Answer {
  /** Null where there is none, or none was found. */
  readonly plan: Plan | null;
  readonly used: number;
}

/** Any plan that also keeps to `more`. At most so many conflicts. */
export function planWith(given: Project, more: readonly Lag[], near: Plan, conflicts: number): Answer {
  const { project, grid } = onGrid({ ...given, lags: [...given.lags, ...more] });
  const windows = windowsOf(project);
  if (windows.cycle) return { plan: null, used: 0 };
  const horizon = horizonOf(project);
  const nearOnGrid = { ...near, starts: near.starts.map((at) => Math.floor(at / grid)) };
  const search = new Search(project, windows, { horizon, latestEnd: horizon, enough: horizon, near: nearOnGrid });
  search.run(conflicts);
  if (search.plan === null) return { plan: null, used: search.conflicts };
  return { plan: { starts: search.plan.starts.map((at) => at * grid), options: search.plan.options }, used: search.conflicts };
}
