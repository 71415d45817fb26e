/** Is a schedule of a project allowed? Lags one by one and capacities moment by moment; nothing shared with the solver. */
import type { Project } from "#shared/engines/cook-day/project.ts";

/** Faults in words, for projects without choices and pairs (published instances). */
export function scheduleFaults(project: Project, starts: ArrayLike<number>): string[] {
  const at = (i: number): number => starts[i] as number;
  const lags = project.lags.filter(({ from, to, min }) => at(to) < at(from) + min).map(({ from, to, min }) => `${to} is less than ${min} after ${from}`);
  const end = Math.max(...project.lengths.map((length, i) => at(i) + length));
  const over = project.capacities.flatMap(({ name, limit, uses }) => {
    for (let moment = 0; moment < end; moment++) {
      const taken = uses.reduce((sum, use) => (at(use.from) + use.head <= moment && moment < at(use.to) + use.tail ? sum + use.amount : sum), 0);
      if (taken > limit) return [`${name} has ${taken} of ${limit} at ${moment}`];
    }
    return [];
  });
  return [...lags, ...over, ...(at(0) === 0 ? [] : ["the beginning is not at 0"])];
}
