/**
 * The day's steps as they are really done: a step that comes in loads stands here once for each load, batches multiply what
 * there is to load, and every "after" is resolved to the loads it waits for. Minutes.
 */
import type { MinuteRange, RecipeStep } from "../../kernel/recipe.ts";
import type { CookDayInput, DayDish } from "./types.ts";

export interface Copy {
  readonly dish: number;
  readonly step: RecipeStep;
  /** From 1; null where the step is done once. */
  readonly load: number | null;
  readonly handsOff: MinuteRange;
}

/** `after` starts when `before` has ended, and at most `maxWait` minutes later (null = any time later). */
export interface Link {
  readonly before: number;
  readonly after: number;
  readonly maxWait: number | null;
}

export interface CopyLimit {
  readonly from: number;
  readonly to: number;
  readonly maxMin: number;
  readonly why: string | undefined;
}

export interface CopyHold {
  readonly what: "pots" | "burners" | "sinks";
  readonly from: number;
  readonly to: number;
}

export interface DayCopies {
  readonly copies: readonly Copy[];
  readonly links: readonly Link[];
  readonly limits: readonly CopyLimit[];
  readonly holds: readonly CopyHold[];
  /** What was asked for but names no step of the day. */
  readonly notes: readonly string[];
}

/** Another dish's step is named `dish id/step id` in `after`, for a part that is made the same day. */
export function copiesOf(day: CookDayInput): DayCopies {
  const copies: Copy[] = [];
  const where = day.dishes.map((dish, d) => {
    const own = new Map<string, number[]>();
    for (const step of dish.steps) {
      const loads = loadsOf(step, dish);
      own.set(step.id, Array.from({ length: loads }, (_, k) => copies.push({ dish: d, step, load: loads > 1 ? k + 1 : null, handsOff: rangeOf(step) }) - 1));
    }
    return own;
  });
  const notes: string[] = [];
  const find = (d: number, id: string): readonly number[] => {
    const own = where[d]?.get(id);
    if (own) return own;
    for (const [other, dish] of day.dishes.entries()) {
      const found = id.startsWith(`${dish.id}/`) ? where[other]?.get(id.slice(dish.id.length + 1)) : undefined;
      if (found) return found;
    }
    notes.push(`“${day.dishes[d]?.title}” names a step that is not in this day; that order or limit was left aside.`);
    return [];
  };
  const links = linksOf(day, copies, find);
  return { copies, links, limits: limitsOf(day, find, links), holds: holdsOf(day, find), notes };
}

/** Steps of the day with each load counted, without laying them out. */
export function stepsWithLoads(day: CookDayInput): number {
  return day.dishes.reduce((sum, dish) => dish.steps.reduce((count, step) => count + loadsOf(step, dish), sum), 0);
}

export const likelyMin = (copy: Copy): number => copy.step.handsOnMin + copy.handsOff.likely;
export const highMin = (copy: Copy): number => copy.step.handsOnMin + copy.handsOff.high;

/** Loads that a step comes in on this day; at least one. */
export function loadsOf(step: RecipeStep, dish: DayDish): number {
  return step.loads ? Math.max(1, Math.ceil((step.loads.of * dish.batches) / step.loads.holds)) : 1;
}

type Find = (dish: number, id: string) => readonly number[];

function rangeOf(step: RecipeStep): MinuteRange {
  const off = step.handsOffMin;
  return typeof off === "number" ? { low: off, likely: off, high: off } : off;
}

function linksOf(day: CookDayInput, copies: readonly Copy[], find: Find): Link[] {
  const links: Link[] = [];
  day.dishes.forEach((dish, d) => {
    for (const step of dish.steps) {
      const own = find(d, step.id);
      for (const id of step.after) {
        const maxWait = typeof step.maxWaitMin === "object" ? (step.maxWaitMin[id] ?? null) : (step.maxWaitMin ?? null);
        const others = find(d, id);
        const isPart = others.length > 0 && copies[others[0] as number]?.dish !== d;
        for (const [before, after] of isPart ? everyPair(others, own) : matched(others, own)) links.push({ before, after, maxWait });
      }
    }
  });
  return links;
}

/** Load by load where both come in the same number of loads, else every load with every load. */
function matched(before: readonly number[], after: readonly number[]): [number, number][] {
  if (before.length === after.length) return before.map((copy, k) => [copy, after[k] as number]);
  return everyPair(before, after);
}

/** A part made the same day is used when the last load of it is done, however many loads either comes in. */
function everyPair(before: readonly number[], after: readonly number[]): [number, number][] {
  return before.flatMap((b) => after.map((a): [number, number] => [b, a]));
}

function limitsOf(day: CookDayInput, find: Find, links: readonly Link[]): CopyLimit[] {
  return day.dishes.flatMap((dish, d) =>
    dish.limits.flatMap((limit) => {
      const from = find(d, limit.from);
      const to = find(d, limit.to);
      // Food that is put together in between belongs to every load, so each pair that is joined by a way must keep the limit.
      const pairs = from.flatMap((f) => to.map((t): [number, number] => [f, t]));
      const joined = pairs.filter(([f, t]) => reaches(f, t, links));
      return (joined.length > 0 ? joined : pairs).map(([f, t]) => ({ from: f, to: t, maxMin: limit.maxMin, why: limit.why }));
    }),
  );
}

function reaches(from: number, to: number, links: readonly Link[]): boolean {
  const seen = new Set([from]);
  for (const at of seen) for (const link of links) if (link.before === at) seen.add(link.after);
  return seen.has(to);
}

/** A thing kept over steps with equal loads is kept once for each load; else once, from the first load to the last. */
function holdsOf(day: CookDayInput, find: Find): CopyHold[] {
  return day.dishes.flatMap((dish, d) =>
    dish.holds.flatMap((hold) => {
      const from = find(d, hold.from);
      const to = find(d, hold.to);
      if (from.length === 0 || to.length === 0) return [];
      if (from.length === to.length) return from.map((f, k) => ({ what: hold.what, from: f, to: to[k] as number }));
      return [{ what: hold.what, from: from[0] as number, to: to[to.length - 1] as number }];
    }),
  );
}
