/**
 * What the lags alone imply: the longest path between any two starts, in the unit of the project's lags, and the cycle that
 * no plan can satisfy where there is one. Floyd–Warshall and Bellman–Ford (any textbook on graphs).
 */
import type { Lag, Project } from "./project.ts";

/** No path. Far below any sum of lags, far above the least 32-bit number. */
export const NONE = -100_000_000;

export interface Windows {
  readonly size: number;
  /** paths[i * size + j]: start(j) ≥ start(i) + this; NONE without a path. */
  readonly paths: Int32Array;
  /** Lags that together ask a start to be later than itself; null when the lags agree. */
  readonly cycle: readonly Lag[] | null;
}

/** All longest paths; `cycle` is set, and the paths are worthless, when the lags contradict each other. */
export function windowsOf(project: Project): Windows {
  const size = project.starts;
  const paths = new Int32Array(size * size).fill(NONE);
  for (let i = 0; i < size; i++) paths[i * size + i] = 0;
  let cycle: Lag[] | null = null;
  for (const lag of project.lags) {
    const at = lag.from * size + lag.to;
    if (lag.min > (paths[at] as number)) paths[at] = lag.min;
    if (lag.from === lag.to && lag.min > 0) cycle = [lag];
  }
  if (cycle === null) {
    close(paths, size);
    for (let i = 0; i < size; i++) if ((paths[i * size + i] as number) > 0) cycle ??= findCycle(project);
  }
  return { size, paths, cycle };
}

function close(paths: Int32Array, size: number): void {
  for (let k = 0; k < size; k++) {
    for (let i = 0; i < size; i++) {
      const first = paths[i * size + k] as number;
      if (first === NONE) continue;
      for (let j = 0; j < size; j++) {
        const second = paths[k * size + j] as number;
        // A positive cycle doubles at each turn, so sums are kept inside 32 bits.
        if (second !== NONE && first + second > (paths[i * size + j] as number)) paths[i * size + j] = Math.min(first + second, -NONE);
      }
    }
  }
}

/** Longest paths from everywhere at once; a start still moving after as many rounds as there are starts hangs on a cycle. */
function findCycle(project: Project): Lag[] {
  const latest = new Array<number>(project.starts).fill(0);
  const by = new Array<Lag | undefined>(project.starts);
  let moved = 0;
  for (let round = 0; round <= project.starts; round++) {
    for (const lag of project.lags) {
      const reach = (latest[lag.from] as number) + lag.min;
      if (reach <= (latest[lag.to] as number)) continue;
      latest[lag.to] = reach;
      by[lag.to] = lag;
      moved = lag.to;
    }
  }
  // Walking back as many steps as there are starts ends on the cycle itself.
  for (let i = 0; i < project.starts; i++) moved = (by[moved] as Lag).from;
  const cycle: Lag[] = [];
  let at = moved;
  do {
    const lag = by[at] as Lag;
    cycle.unshift(lag);
    at = lag.from;
  } while (at !== moved);
  return cycle;
}
