/**
 * The same day with every load written out as a step of its own, so that each can have its own length and time once the day is
 * under way. Minutes.
 */
import type { RecipeStep } from "../../kernel/recipe.ts";
import { copiesOf, type Copy, type DayCopies } from "./copies.ts";
import type { CookDayInput, DayDish } from "./types.ts";

/** A step of the day as the household knows it. */
export interface StepRef {
  readonly dish: string;
  readonly step: string;
  /** From 1 where the step comes in loads, else null. */
  readonly load: number | null;
}

export interface UnrolledDay {
  readonly day: CookDayInput;
  /** By `keyOf` of what the day is made of now: which step, and which load of it. */
  readonly refs: ReadonlyMap<string, StepRef>;
}

export const keyOf = (dish: string, step: string): string => JSON.stringify([dish, step]);
export const unrolledId = (step: string, load: number | null): string => (load === null ? step : `${step} #${load}`);

export function unrolled(day: CookDayInput): UnrolledDay {
  const model = copiesOf(day);
  const refs = new Map<string, StepRef>();
  const dishes = day.dishes.map((dish, d): DayDish => {
    const name = (copy: number): string => nameFrom(day, model.copies[copy] as Copy, d);
    const own = model.copies.flatMap((copy, i) => (copy.dish === d ? [{ copy, i }] : []));
    for (const { copy } of own) refs.set(keyOf(dish.id, unrolledId(copy.step.id, copy.load)), { dish: dish.id, step: copy.step.id, load: copy.load });
    return {
      id: dish.id,
      title: dish.title,
      batches: 1,
      steps: own.map(({ copy, i }) => stepOf(model, copy, i, name)),
      holds: model.holds.filter((hold) => model.copies[hold.from]?.dish === d).map(({ what, from, to }) => ({ what, from: name(from), to: name(to) })),
      limits: model.limits.filter((limit) => model.copies[limit.from]?.dish === d).map(({ from, to, maxMin, why }) => ({ from: name(from), to: name(to), maxMin, ...(why === undefined ? {} : { why }) })),
    };
  });
  return { day: { ...day, dishes }, refs };
}

function nameFrom(day: CookDayInput, copy: Copy, dish: number): string {
  const id = unrolledId(copy.step.id, copy.load);
  return copy.dish === dish ? id : `${day.dishes[copy.dish]?.id}/${id}`;
}

function stepOf({ links }: DayCopies, { step, load }: Copy, i: number, name: (copy: number) => string): RecipeStep {
  const { id, text, handsOnMin, handsOffMin, needs, startAtMin, notBeforeMin, endByMin } = step;
  const before = links.filter((link) => link.after === i);
  const waits = before.flatMap(({ before: other, maxWait }) => (maxWait === null ? [] : [[name(other), maxWait] as const]));
  // A fixed time is that of the first load; the others come then or later.
  const earliest = (load ?? 1) > 1 && startAtMin !== undefined ? Math.max(startAtMin, notBeforeMin ?? 0) : notBeforeMin;
  return {
    id: unrolledId(id, load),
    text: load === null ? text : `${text}, load ${load}`,
    handsOnMin,
    handsOffMin,
    needs,
    after: [...new Set(before.map((link) => name(link.before)))],
    ...(waits.length > 0 ? { maxWaitMin: Object.fromEntries(waits) } : {}),
    ...((load ?? 1) === 1 && startAtMin !== undefined ? { startAtMin } : {}),
    ...(earliest === undefined ? {} : { notBeforeMin: earliest }),
    ...(endByMin === undefined ? {} : { endByMin }),
  };
}
