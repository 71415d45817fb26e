/** What may happen while a day is under way, and what each makes of the day. Minutes from the start of the day. */
import type { CookDayInput, DayDish } from "./types.ts";
import type { DayUnderWay } from "./late.ts";
import { likelyOff, nameOf, type Begun } from "./under-way.ts";
import { keyOf, unrolledId, type StepRef } from "./unrolled.ts";

export type DayEvent =
  /** Nothing new before `byMin` from now; with a running step, that step takes so much longer. */
  | { readonly kind: "late"; readonly byMin: number; readonly step?: StepRef }
  /** A dish, or one step of it with all its loads, is not done any more, as far as it has not been begun. */
  | { readonly kind: "skip"; readonly dish: string; readonly step?: string }
  /** By number, from 1. */
  | { readonly kind: "oven-broken"; readonly oven: number }
  | { readonly kind: "one-dish-more"; readonly dish: DayDish };

export interface ChangedDay {
  readonly day: CookDayInput;
  readonly begun: readonly Begun[];
  /** Nothing that has not begun may start before. */
  readonly fromMin: number;
  /** By `keyOf`: how much longer a running step takes. */
  readonly overrunMin: ReadonlyMap<string, number>;
  readonly notes: readonly string[];
}

export function afterEvents({ day, begun, nowMin, events }: DayUnderWay): ChangedDay {
  const start: ChangedDay = { day, begun: inOvens(day, begun), fromMin: nowMin, overrunMin: new Map(), notes: [] };
  return events.reduce((so, event) => after(so, event, nowMin), start);
}

/** With a single oven it need not be said which. */
function inOvens(day: CookDayInput, begun: readonly Begun[]): Begun[] {
  return begun.map((one) => (one.oven === undefined && day.kitchen.ovens.length === 1 ? { ...one, oven: 1 } : one));
}

function after(so: ChangedDay, event: DayEvent, nowMin: number): ChangedDay {
  switch (event.kind) {
    case "late": {
      const { step, byMin } = event;
      if (step === undefined) return { ...so, fromMin: nowMin + byMin };
      return { ...so, overrunMin: new Map([...so.overrunMin, [keyOf(step.dish, unrolledId(step.step, step.load)), byMin]]) };
    }
    case "skip":
      return { ...so, day: { ...so.day, dishes: so.day.dishes.map((dish) => (dish.id === event.dish ? without(dish, so.begun, event.step) : dish)) } };
    case "one-dish-more":
      return { ...so, day: { ...so.day, dishes: [...so.day.dishes, event.dish] } };
    case "oven-broken":
      return broken(so, event.oven, nowMin);
  }
}

/** What comes after a step that is left out comes after what that one came after; steps that were begun stay. */
export function without(dish: DayDish, begun: readonly Begun[], only: string | undefined): DayDish {
  const isBegun = (id: string): boolean => begun.some((one) => one.dish === dish.id && one.step === id);
  const out = new Set(dish.steps.filter((step) => (only === undefined || step.id === only) && !isBegun(step.id)).map((step) => step.id));
  const before = (ids: readonly string[]): string[] => [...new Set(ids.flatMap((id) => (out.has(id) ? before(dish.steps.find((step) => step.id === id)?.after ?? []) : [id])))];
  const named = ({ from, to }: { from: string; to: string }): boolean => !out.has(from) && !out.has(to);
  const steps = dish.steps.filter((step) => !out.has(step.id)).map((step) => {
    const { maxWaitMin, ...rest } = step;
    const waits = typeof maxWaitMin === "object" ? maxWaitMin : maxWaitMin === undefined ? {} : Object.fromEntries(step.after.map((id) => [id, maxWaitMin]));
    const kept = Object.fromEntries(Object.entries(waits).filter(([id]) => !out.has(id)));
    return { ...rest, after: before(step.after), ...(Object.keys(kept).length > 0 ? { maxWaitMin: kept } : {}) };
  });
  return { ...dish, steps, holds: dish.holds.filter(named), limits: dish.limits.filter(named) };
}

/** It takes nothing more; what was in it has to go on elsewhere for the minutes it lacks. */
function broken(so: ChangedDay, oven: number, nowMin: number): ChangedDay {
  const inside = so.begun.filter((one) => one.oven === oven && one.endMin === null && so.day.dishes.some((dish) => dish.id === one.dish && dish.steps.some((step) => step.id === one.step && step.needs.oven)));
  const ovens = so.day.kitchen.ovens.map((one, o) => (o + 1 === oven ? { ...one, trays: 0 } : one));
  const dishes = so.day.dishes.map((dish) => ({ ...dish, steps: dish.steps.map((step) => {
    const one = inside.find((b) => b.dish === dish.id && b.step === step.id);
    if (!one || step.loads) return step;
    const left = Math.max(0, one.startMin + step.handsOnMin + likelyOff(step) - nowMin);
    return { ...step, handsOnMin: Math.min(step.handsOnMin, left), handsOffMin: Math.max(0, left - step.handsOnMin) };
  }) }));
  const notes = inside.flatMap((one) => {
    const dish = so.day.dishes.find((other) => other.id === one.dish);
    return dish ? [`${nameOf(dish, one.step)} was in the oven that broke; it goes on elsewhere for the time it lacks, and may come out differently.`] : [];
  });
  // What was baked in it is done, and its heat counts no more.
  const begun = so.begun.filter((one) => !inside.includes(one)).map((one) => (one.oven === oven ? { ...one, oven: null } : one));
  return { ...so, day: { ...so.day, kitchen: { ...so.day.kitchen, ovens }, dishes }, begun, notes: [...so.notes, ...notes] };
}
