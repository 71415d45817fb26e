/**
 * Staying close to a plan that the cook has in mind: among plans that end no later, one in which as few steps as possible start at
 * another time. Steps are held to their old times together, and where that cannot be, half of them at a time. Minutes.
 */
import { onGrid, horizonOf, type Lag, type Plan, type Project } from "./project.ts";
import { Search } from "./search.ts";
import { windowsOf } from "./windows.ts";

/** Conflicts that one question may cost, and all of them. */
const ONE_QUESTION = 300;
const ALL_QUESTIONS = 6_000;

/** `wanted`: start of the project → where it stood. */
export function closest(project: Project, plan: Plan, wanted: ReadonlyMap<number, number>): { plan: Plan; used: number } {
  const held: Lag[] = [{ from: project.end, to: 0, min: -(plan.starts[project.end] as number), why: "" }];
  let best = plan;
  let used = 0;
  const hold = (group: readonly number[]): void => {
    if (group.length === 0 || used >= ALL_QUESTIONS) return;
    const lags = group.flatMap((start): Lag[] => [
      { from: 0, to: start, min: wanted.get(start) as number, why: "" },
      { from: start, to: 0, min: -(wanted.get(start) as number), why: "" },
    ]);
    const answer = possible({ ...project, lags: [...project.lags, ...held, ...lags] });
    used += answer.used;
    if (answer.plan) {
      best = answer.plan;
      held.push(...lags);
    } else if (group.length > 1) {
      hold(group.slice(0, group.length >> 1));
      hold(group.slice(group.length >> 1));
    }
  };
  hold([...wanted.keys()].sort((a, b) => (wanted.get(a) as number) - (wanted.get(b) as number)));
  return { plan: best, used };
}

function possible(given: Project): { plan: Plan | null; used: number } {
  const { project, grid } = onGrid(given);
  const windows = windowsOf(project);
  if (windows.cycle) return { plan: null, used: 0 };
  const horizon = horizonOf(project);
  const search = new Search(project, windows, { horizon, latestEnd: horizon, enough: horizon });
  search.run(ONE_QUESTION);
  const found = search.plan && { starts: search.plan.starts.map((at) => at * grid), options: search.plan.options };
  return { plan: found, used: search.conflicts };
}
