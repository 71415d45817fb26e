/**
 * What no plan can beat, in the unit of the project: the longest path, the energy of each capacity over every pair of heads and
 * tails (for hands: min head + ⌈Σ hands-on / cooks⌉ + min tail), and the temperatures of a single oven one after another.
 */
import type { Capacity, Project, Use } from "./project.ts";
import { NONE, type Windows } from "./windows.ts";

/** Longest path from the beginning to the end, without any capacity. */
export function criticalPath(project: Project, { paths }: Windows): number {
  return paths[project.end] as number;
}

/** The greatest of all bounds on the end. */
export function lowerBound(project: Project, windows: Windows): number {
  const bounds = project.capacities.map((capacity) => energyBound(project, windows, capacity));
  return Math.max(criticalPath(project, windows), groupBound(project, windows), ...bounds);
}

interface Part {
  readonly head: number;
  readonly tail: number;
  readonly energy: number;
}

/**
 * For every head a and tail b: the uses that cannot begin before a and have at least b after them need energy ÷ limit between.
 * Uses tied to the clock (absences) take their share of the span they fall in.
 */
function energyBound(project: Project, windows: Windows, { uses, limit }: Capacity): number {
  if (limit <= 0) return 0;
  const fixed = uses.filter((use) => use.from === 0 && use.to === 0);
  const parts = uses.filter((use) => use.from !== 0 && use.option < 0).map((use) => partOf(project, windows, use));
  const heads = [...new Set(parts.map((part) => part.head))];
  let bound = 0;
  for (const head of heads) {
    let energy = 0;
    for (const part of parts.filter((p) => p.head >= head).sort((a, b) => b.tail - a.tail)) {
      energy += part.energy;
      let span = Math.ceil(energy / limit);
      while (span * limit - takenBy(fixed, head, head + span) < energy) span++;
      bound = Math.max(bound, head + span + part.tail);
    }
  }
  return bound;
}

function partOf(project: Project, { paths, size }: Windows, use: Use): Part {
  const toEnd = paths[use.to * size + project.end] as number;
  // A thing kept until a step that may come before the first one need not be kept at all.
  const least = (paths[use.from * size + use.to] as number) + use.tail - use.head;
  return {
    head: (paths[use.from] as number) + use.head,
    tail: toEnd === NONE ? -use.tail : toEnd - use.tail,
    energy: use.amount * Math.max(0, least),
  };
}

function takenBy(fixed: readonly Use[], from: number, to: number): number {
  return fixed.reduce((sum, use) => sum + use.amount * Math.max(0, Math.min(to, use.tail) - Math.max(from, use.head)), 0);
}

/** Starts of one oven that must keep apart, each from all others (temperatures), follow each other with a change between. */
function groupBound(project: Project, { paths, size }: Windows): number {
  const pairs = project.pairs.filter((pair) => pair.option < 0);
  if (pairs.length === 0) return 0;
  const members = [...new Set(pairs.flatMap(({ a, b }) => [a, b]))];
  const apart = new Set(pairs.flatMap(({ a, b }) => [a * size + b, b * size + a]));
  // The longest first, then every other one that has to keep apart from all taken: no two of these can be in the oven together.
  const length = (start: number): number => project.lengths[start] as number;
  const taken: number[] = [];
  for (const start of members.sort((a, b) => length(b) - length(a))) if (taken.every((other) => apart.has(other * size + start))) taken.push(start);
  const change = Math.min(...pairs.map(({ a, ab }) => ab - (project.lengths[a] as number)));
  const longest = taken.reduce((sum, start) => sum + length(start), 0);
  const head = Math.min(...members.map((start) => paths[start] as number));
  const tail = Math.min(...members.map((start) => (paths[start * size + project.end] as number) - (project.lengths[start] as number)));
  return head + longest + change * (taken.length - 1) + tail;
}
