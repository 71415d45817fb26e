/**
 * The level below the end: among plans that end no later, one in which nothing stands longer than it must. A bound on the longest
 * stand is a tighter longest wait, so the same search answers it; the bound is halved in on. Minutes.
 */
import type { DayCopies } from "./copies.ts";
import { likelyMin, type Copy } from "./copies.ts";
import { startOf } from "./day-to-lags.ts";
import { longestStand } from "./margins.ts";
import { horizonOf, onGrid, type Lag, type Plan, type Project } from "./project.ts";
import { Search } from "./search.ts";
import { windowsOf } from "./windows.ts";

/** Conflicts that one question may cost. */
const ONE_QUESTION = 1_500;
const ALL_QUESTIONS = 4_000;

export interface Settled {
  readonly plan: Plan;
  readonly used: number;
}

/** The given plan, or one that ends no later and in which food stands for a shorter time. */
export function shortestStand(project: Project, model: DayCopies, plan: Plan, conflicts: number): Settled {
  const most = Math.min(conflicts, ALL_QUESTIONS);
  const endMin = plan.starts[project.end] as number;
  const standOf = ({ starts }: Plan): number => longestStand(model, model.copies.map((_, i) => starts[startOf(i)] as number));
  const { grid } = onGrid(project);
  let best = plan;
  let used = 0;
  // `low` is known or taken to be too short, `high` is had.
  let [low, high] = [-grid, standOf(plan)];
  while (high - low > grid && used < most) {
    const stand = low + Math.max(1, Math.floor((high - low) / grid / 2)) * grid;
    const answer = ask(standing(project, model, endMin, stand), Math.min(ONE_QUESTION, most - used));
    used += answer.used;
    if (answer.plan === null) low = stand;
    else [best, high] = [answer.plan, standOf(answer.plan)];
  }
  return { plan: best, used };
}

function standing(project: Project, { copies, links }: DayCopies, endMin: number, stand: number): Project {
  const tight = links.flatMap(({ before, after, maxWait }): Lag[] =>
    maxWait === null || maxWait <= stand ? [] : [{ from: startOf(after), to: startOf(before), min: -(likelyMin(copies[before] as Copy) + stand), why: "" }],
  );
  return { ...project, lags: [...project.lags, ...tight, { from: project.end, to: 0, min: -endMin, why: "" }] };
}

function ask(given: Project, conflicts: number): { plan: Plan | null; used: number } {
  const { project, grid } = onGrid(given);
  const windows = windowsOf(project);
  if (windows.cycle) return { plan: null, used: 0 };
  const horizon = horizonOf(project);
  const search = new Search(project, windows, { horizon, latestEnd: horizon, enough: horizon });
  search.run(conflicts);
  if (search.plan === null) return { plan: null, used: search.conflicts };
  return { plan: { starts: search.plan.starts.map((at) => at * grid), options: search.plan.options }, used: search.conflicts };
}
