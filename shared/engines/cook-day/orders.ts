/**
 * Orders in which the serial scheme may take the starts: every list keeps to the lags, and starts tied together by a short
 * longest wait may follow each other at once, so that a tight chain is placed as one block. Units of the project.
 */
import type { Project } from "./project.ts";
import { NONE, type Windows } from "./windows.ts";

export interface ActivityRank {
  readonly criticalPath: number;
  /** Latest start of every start for the critical path, by longest tail. */
  readonly latest: number[];
  precedes(a: number, b: number): boolean;
  /** A list by least value; starts bound to the one just taken with no more freedom than `tie` come next (−1 = never). */
  listBy(value: readonly number[], tie: number): Int32Array;
}

/** Rules, one list each: latest start, latest end, least freedom, most work behind; with and without blocks. */
export function ruleOrders(project: Project, { paths, size }: Windows, horizon: number, rank: ActivityRank): Int32Array[] {
  const all = Array.from({ length: size }, (_, i) => i);
  const path = (i: number, j: number): number => paths[i * size + j] as number;
  const latest = all.map((i) => Math.min(tail(rank.criticalPath, path(i, project.end)), path(i, 0) === NONE ? horizon : -path(i, 0)));
  const earliest = all.map((i) => path(0, i));
  const behind = all.map((i) => -all.reduce((sum, j) => sum + (path(i, j) !== NONE && path(i, j) > 0 ? (project.lengths[j] as number) : 0), project.lengths[i] as number));
  const values = [
    latest,
    latest.map((at, i) => at + (project.lengths[i] as number)),
    latest.map((at, i) => at - (earliest[i] as number)),
    behind,
    earliest,
  ];
  const shortWait = Math.max(1, Math.round(rank.criticalPath / 20));
  const ties = project.lags.some((lag) => lag.min < 0 && lag.to !== 0) ? [0, shortWait, 4 * shortWait, -1] : [-1];
  return ties.flatMap((tie) => values.map((value) => rank.listBy(value, tie)));
}

export function activityRank(project: Project, { paths, size }: Windows): ActivityRank {
  const path = (i: number, j: number): number => paths[i * size + j] as number;
  const criticalPath = path(0, project.end);
  const starts = Array.from({ length: size }, (_, i) => i).filter((i) => i !== 0 && i !== project.end);
  // Equal starts (lag 0 both ways) precede each other in neither order.
  const precedes = (a: number, b: number): boolean => path(a, b) >= 0 && path(b, a) < 0;
  const before = Array.from({ length: size }, (_, b) => starts.filter((a) => a !== b && precedes(a, b)));
  const listBy = (value: readonly number[], tie: number): Int32Array => {
    const waiting = before.map((list) => list.length);
    const open = new Set(starts);
    const order: number[] = [];
    let last = 0;
    while (open.size > 0) {
      const ready = [...open].filter((i) => waiting[i] === 0);
      const bound = tie < 0 || last === 0 ? [] : ready.filter((i) => path(i, last) !== NONE && path(last, i) !== NONE && -(path(i, last) + path(last, i)) <= tie);
      const from = bound.length > 0 ? bound : ready;
      last = from.reduce((best, i) => ((value[i] as number) < (value[best] as number) ? i : best));
      order.push(last);
      open.delete(last);
      for (const i of open) if (precedes(last, i)) waiting[i] = (waiting[i] as number) - 1;
    }
    return Int32Array.from(order);
  };
  return { criticalPath, latest: Array.from({ length: size }, (_, i) => tail(criticalPath, path(i, project.end))), precedes, listBy };
}

function tail(criticalPath: number, path: number): number {
  return criticalPath - (path === NONE ? 0 : path);
}
