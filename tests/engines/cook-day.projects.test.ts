/**
 * Small random projects against all orders: without maximum lags some order of the jobs, each placed as early as it fits, gives the
 * least end (Kolisch, EJOR 90 (1996) 320–333: serial generation makes active schedules, among which is a best one; from memory).
 * The generation scheme here is written anew and shares nothing with the solver.
 */
import { expect, test } from "vitest";
import { seededRandom, type Random } from "#shared/kernel/seeded-random.ts";
import type { Project } from "#shared/engines/cook-day/project.ts";
import { Search } from "#shared/engines/cook-day/search.ts";
import { solveProject } from "#shared/engines/cook-day/solve.ts";
import { windowsOf } from "#shared/engines/cook-day/windows.ts";
import { scheduleFaults } from "#tests/support/project-referee.ts";

interface Jobs {
  readonly length: number[];
  readonly demand: number[][];
  readonly limit: number[];
  /** Jobs before each job. */
  readonly before: number[][];
}

const JOBS = 7;

function draw(random: Random): Jobs {
  const limit = [4, 3];
  return {
    limit,
    length: Array.from({ length: JOBS }, () => 1 + random.below(5)),
    demand: Array.from({ length: JOBS }, () => limit.map((most) => random.below(most + 1))),
    before: Array.from({ length: JOBS }, (_, j) => Array.from({ length: j }, (_, i) => i).filter(() => random.next() < 0.15)),
  };
}

function leastEnd({ length, demand, limit, before }: Jobs): number {
  let best = length.reduce((sum, one) => sum + one, 0);
  const place = (starts: (number | undefined)[], end: number): void => {
    if (end >= best) return;
    let all = true;
    for (let j = 0; j < JOBS; j++) {
      if (starts[j] !== undefined || (before[j] as number[]).some((i) => starts[i] === undefined)) {
        all &&= starts[j] !== undefined;
        continue;
      }
      all = false;
      let at = Math.max(0, ...(before[j] as number[]).map((i) => (starts[i] as number) + (length[i] as number)));
      while (!fits(starts, j, at)) at++;
      place(starts.map((start, k) => (k === j ? at : start)), Math.max(end, at + (length[j] as number)));
    }
    if (all) best = end;
  };
  const fits = (starts: (number | undefined)[], j: number, at: number): boolean => {
    for (let t = at; t < at + (length[j] as number); t++) {
      const running = starts.flatMap((start, i) => (start !== undefined && start <= t && t < start + (length[i] as number) ? [i] : []));
      if (limit.some((most, r) => [...running, j].reduce((sum, i) => sum + (demand[i]?.[r] as number), 0) > most)) return false;
    }
    return true;
  };
  place(new Array<undefined>(JOBS).fill(undefined), 0);
  return best;
}

function projectOf({ length, demand, limit, before }: Jobs): Project {
  const end = JOBS + 1;
  const lag = (from: number, to: number, min: number): Project["lags"][number] => ({ from, to, min, why: "" });
  return {
    starts: JOBS + 2,
    end,
    lengths: [0, ...length, 0],
    lags: length.flatMap((one, j) => [lag(0, j + 1, 0), lag(j + 1, end, one), ...(before[j] as number[]).map((i) => lag(i + 1, j + 1, length[i] as number))]),
    capacities: limit.map((most, r) => ({
      name: `resource ${r}`,
      limit: most,
      uses: length.flatMap((one, j) => ((demand[j]?.[r] as number) > 0 ? [{ from: j + 1, head: 0, to: j + 1, tail: one, amount: demand[j]?.[r] as number, option: -1 }] : [])),
    })),
    pairs: [],
    choices: [],
  };
}

test("the solver, and the search alone, end where the best order ends", () => {
  const random = seededRandom(411);
  let clashes = 0;
  for (let k = 0; k < 120; k++) {
    const jobs = draw(random);
    const project = projectOf(jobs);
    const least = leastEnd(jobs);
    const answer = solveProject(project, { schedules: 2_000, seed: k });
    expect([k, answer.status, answer.end]).toEqual([k, "optimal", least]);
    expect(scheduleFaults(project, answer.plan?.starts ?? [])).toEqual([]);
    const horizon = jobs.length.reduce((sum, one) => sum + one, 0);
    const search = new Search(project, windowsOf(project), { horizon, latestEnd: horizon, enough: 0 });
    expect([k, search.run(100_000), search.end]).toEqual([k, "exhausted", least]);
    clashes += search.conflicts;
  }
  // The proofs were real work.
  expect(clashes).toBeGreaterThan(500);
});
