/**
 * An easy plan where the budget has found none: dishes are laid into the day one after another, each by a short search around what
 * stands already. A dish that no longer fits goes first and the rest is laid anew; when that does not come out either, all are tried
 * together. No attempt at a least end. One conflict of a search costs one. Minutes.
 */
import { copiesOf, type DayCopies } from "./copies.ts";
import { projectOf, startOf } from "./day-to-lags.ts";
import { horizonOf, onGrid, type Plan, type Project } from "./project.ts";
import { Search } from "./search.ts";
import type { CookDayInput } from "./types.ts";
import { windowsOf } from "./windows.ts";

/** What one dish may cost, all of them together, and at last the whole day at once (found by trying). */
const ONE_DISH = 500;
const ALL_DISHES = 3_000;
const WHOLE_DAY = 1_000;

export interface LaidDay {
  /** Null where it did not come out; that proves nothing. */
  readonly plan: Plan | null;
  readonly used: number;
}

/** Starts and options of the project of the whole day. */
export function laidOneByOne(day: CookDayInput): LaidDay {
  let order = partsFirst(day);
  let used = 0;
  for (let again = 0; again <= day.dishes.length && used < ALL_DISHES; again++) {
    const standing = new Map<string, Place>();
    const stuck = order.find((_, k) => {
      const laid = layOne(day, new Set(order.slice(0, k + 1)), standing);
      used += laid;
      return standing.size < stepsOf(day, order.slice(0, k + 1));
    });
    if (stuck === undefined) return { plan: whole(day, standing), used };
    if (order[0] === stuck) break;
    order = [stuck, ...order.filter((dish) => dish !== stuck)];
  }
  const at = new Map<string, Place>();
  used += layOne(day, new Set(order), at, WHOLE_DAY);
  return { plan: at.size > 0 || order.length === 0 ? whole(day, at) : null, used };
}

interface Place {
  readonly start: number;
  readonly option: number;
}

/** Adds the places of the newest dish to what stands; returns what it has cost. */
function layOne(day: CookDayInput, among: ReadonlySet<number>, standing: Map<string, Place>, conflicts = ONE_DISH): number {
  const part = only(day, among);
  const model = copiesOf(part);
  const { project, grid } = onGrid(pinned(projectOf(part, model), model, standing));
  const windows = windowsOf(project);
  if (windows.cycle) return 0;
  const horizon = horizonOf(project);
  const search = new Search(project, windows, { horizon, latestEnd: horizon, enough: horizon });
  search.run(conflicts);
  const { plan } = search;
  if (plan) model.copies.forEach((_, i) => standing.set(keyOf(model, i), { start: (plan.starts[startOf(i)] as number) * grid, option: plan.options[startOf(i)] as number }));
  return search.conflicts;
}

/** The project in which what stands may not move any more. */
function pinned(project: Project, model: DayCopies, standing: ReadonlyMap<string, Place>): Project {
  const places = model.copies.flatMap((_, i) => {
    const place = standing.get(keyOf(model, i));
    return place ? [{ ...place, at: startOf(i) }] : [];
  });
  const options = new Map(places.map(({ at, option }) => [at, option]));
  return {
    ...project,
    lags: [...project.lags, ...places.flatMap(({ at, start }) => [{ from: 0, to: at, min: start, why: "" }, { from: at, to: 0, min: -start, why: "" }])],
    choices: project.choices.map((choice) => {
      const option = options.get(choice.start) ?? -1;
      return option < 0 ? choice : { ...choice, earliest: choice.earliest.map((earliest, k) => (k === option ? earliest : null)) };
    }),
  };
}

function whole(day: CookDayInput, standing: ReadonlyMap<string, Place>): Plan {
  const model = copiesOf(day);
  const places = model.copies.map((_, i) => standing.get(keyOf(model, i)) as Place);
  const end = places.reduce((last, { start }, i) => Math.max(last, start + (model.copies[i]?.step.handsOnMin ?? 0) + (model.copies[i]?.handsOff.likely ?? 0)), 0);
  return { starts: Int32Array.from([0, ...places.map(({ start }) => start), end]), options: Int32Array.from([-1, ...places.map(({ option }) => option), -1]) };
}

/** Dishes keep their numbers; those not asked for are empty. */
function only(day: CookDayInput, among: ReadonlySet<number>): CookDayInput {
  return { ...day, dishes: day.dishes.map((dish, d) => (among.has(d) ? dish : { ...dish, steps: [], holds: [], limits: [] })) };
}

const stepsOf = (day: CookDayInput, dishes: readonly number[]): number => copiesOf(only(day, new Set(dishes))).copies.length;

function keyOf({ copies }: DayCopies, i: number): string {
  const copy = copies[i];
  return JSON.stringify([copy?.dish, copy?.step.id, copy?.load]);
}

/** A dish whose step another dish waits for is laid before it; otherwise the order of the day. */
function partsFirst(day: CookDayInput): number[] {
  const order: number[] = [];
  const visit = (d: number, above: ReadonlySet<number>): void => {
    if (order.includes(d) || above.has(d)) return;
    const within = new Set([...above, d]);
    day.dishes.forEach((other, o) => {
      if (day.dishes[d]?.steps.some((step) => step.after.some((id) => id.startsWith(`${other.id}/`)))) visit(o, within);
    });
    order.push(d);
  };
  day.dishes.forEach((_, d) => visit(d, new Set()));
  return order;
}
