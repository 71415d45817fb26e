/**
 * A day that has begun, as a day to plan: what is done and what is running stands where it was, the rest comes from now on. Minutes
 * from the start of the day.
 */
import type { OvenNeed, RecipeStep } from "../../kernel/recipe.ts";
import { suits } from "./heats.ts";
import type { CookDayInput, DayDish, Oven } from "./types.ts";
import { keyOf, unrolledId, type StepRef, type UnrolledDay } from "./unrolled.ts";
import { lengthWords } from "./words.ts";

/** A step that has been begun. `endMin` null: it is running. */
export interface Begun extends StepRef {
  readonly startMin: number;
  readonly endMin: number | null;
  /** The oven that it went into, from 1. */
  readonly oven?: number | null;
}

export interface Fact {
  readonly startMin: number;
  readonly endMin: number;
  readonly running: boolean;
  readonly oven: number | null;
}

/** By `keyOf`. A running step ends when its recipe says, and not before now. */
export type Facts = ReadonlyMap<string, Fact>;

export function factsOf({ day }: UnrolledDay, begun: readonly Begun[], nowMin: number, overrunMin: ReadonlyMap<string, number>): Facts {
  const facts = new Map<string, Fact>();
  for (const dish of day.dishes) {
    for (const step of dish.steps) {
      const one = begun.find((b) => b.dish === dish.id && unrolledId(b.step, b.load) === step.id);
      if (!one) continue;
      const key = keyOf(dish.id, step.id);
      const likely = one.startMin + step.handsOnMin + likelyOff(step) + (overrunMin.get(key) ?? 0);
      facts.set(key, { startMin: one.startMin, endMin: one.endMin ?? Math.max(likely, nowMin), running: one.endMin === null, oven: one.oven ?? null });
    }
  }
  return facts;
}

export const likelyOff = (step: RecipeStep): number => (typeof step.handsOffMin === "number" ? step.handsOffMin : step.handsOffMin.likely);

export interface UnderWay {
  readonly day: CookDayInput;
  /** What was broken before now, in words. */
  readonly passed: readonly string[];
}

/** The rest of the day around its facts. `from` is the earliest start of what has not begun. */
export function underWay(day: CookDayInput, facts: Facts, nowMin: number, from: number): UnderWay {
  const passed: string[] = [];
  const lastIn = lastBakes(day, facts);
  const hands = busyHands(day, facts, nowMin);
  const kept = keptThings(day, facts);
  const dishes = day.dishes.map((dish): DayDish => {
    const factOf = (id: string): Fact | undefined => facts.get(id.includes("/") && !dish.steps.some((step) => step.id === id) ? keyOf(...foreign(day, id)) : keyOf(dish.id, id));
    const steps = dish.steps.map((step): RecipeStep => {
      const key = keyOf(dish.id, step.id);
      const fact = facts.get(key);
      if (!fact) return coming(dish, step, from, passed);
      const handsOnMin = hands.has(key) ? Math.min(step.handsOnMin, fact.endMin - fact.startMin) : 0;
      const needs = kept.has(key) ? step.needs : !fact.running && lastIn.has(key) && step.needs.oven ? { oven: step.needs.oven } : {};
      sayOldWaits(dish, step, fact, factOf, passed);
      return { id: step.id, text: step.text, handsOnMin, handsOffMin: fact.endMin - fact.startMin - handsOnMin, needs, after: [], startAtMin: fact.startMin };
    });
    const begun = (id: string): boolean => factOf(id) !== undefined;
    const holds = dish.holds.filter((hold) => factOf(hold.to)?.running ?? true);
    const limits = dish.limits.filter((limit) => !(begun(limit.from) && begun(limit.to)));
    for (const limit of dish.limits) {
      const [start, end] = [factOf(limit.to)?.startMin, factOf(limit.from)?.endMin];
      if (start !== undefined && end !== undefined && start - end > limit.maxMin) passed.push(`${nameOf(dish, limit.to)} was begun ${lengthWords(start - end - limit.maxMin)} too late${limit.why === undefined ? "" : `: ${limit.why}`}.`);
    }
    return { ...dish, steps, holds, limits };
  });
  return { day: { ...day, dishes, kitchen: { ...day.kitchen, ovens: heatedSince(day, facts) } }, passed };
}

/** An oven in which something has been is hot, however soon that was. */
function heatedSince(day: CookDayInput, facts: Facts): Oven[] {
  return day.kitchen.ovens.map((oven, o) => {
    const used = day.dishes.flatMap((dish) => dish.steps.flatMap((step) => {
      const fact = facts.get(keyOf(dish.id, step.id));
      return fact && step.needs.oven && (fact.oven ?? 1) === o + 1 ? [fact.startMin] : [];
    }));
    return { ...oven, preheatMin: Math.min(oven.preheatMin, ...used) };
  });
}

/** A step that has not begun: not before `from`, and a fixed time that is gone is given up and said. */
function coming(dish: DayDish, step: RecipeStep, from: number, passed: string[]): RecipeStep {
  const { startAtMin, ...rest } = step;
  const notBeforeMin = Math.max(from, step.notBeforeMin ?? 0);
  if (startAtMin === undefined || startAtMin >= from) return { ...step, notBeforeMin };
  passed.push(`${nameOf(dish, step.id)} was to start at its time, and that is ${lengthWords(from - startAtMin)} gone.`);
  return { ...rest, notBeforeMin };
}

function sayOldWaits(dish: DayDish, step: RecipeStep, fact: Fact, factOf: (id: string) => Fact | undefined, passed: string[]): void {
  for (const id of step.after) {
    const wait = typeof step.maxWaitMin === "object" ? step.maxWaitMin[id] : step.maxWaitMin;
    const before = factOf(id);
    if (wait === undefined || before === undefined || fact.startMin - before.endMin <= wait) continue;
    passed.push(`${nameOf(dish, step.id)} had waited ${lengthWords(fact.startMin - before.endMin - wait)} too long when it was begun.`);
  }
}

/** The last thing that was in each oven: its heat still counts. */
function lastBakes(day: CookDayInput, facts: Facts): Set<string> {
  const last = new Map<number, { key: string; endMin: number }>();
  for (const dish of day.dishes) {
    for (const step of dish.steps) {
      const fact = facts.get(keyOf(dish.id, step.id));
      const oven = fact?.oven ?? 1;
      if (!fact || !step.needs.oven || fact.endMin <= (last.get(oven)?.endMin ?? 0)) continue;
      last.set(oven, { key: keyOf(dish.id, step.id), endMin: fact.endMin });
    }
  }
  return new Set([...last.values()].map(({ key }) => key));
}

/** Running steps that still have somebody's hands: no more of them than there are cooks left. */
function busyHands(day: CookDayInput, facts: Facts, nowMin: number): Set<string> {
  const busy = runningOf(day, facts).filter(({ fact, step }) => fact.startMin + step.handsOnMin > nowMin);
  const until = Math.max(nowMin, ...busy.map(({ fact, step }) => fact.startMin + step.handsOnMin));
  const away = day.unavailable.filter((absence) => absence.fromMin < until && absence.toMin > nowMin).length;
  return new Set(busy.slice(0, Math.max(0, day.kitchen.cooks - away)).map(({ key }) => key));
}

/** Running steps whose needs are there together. What was begun beyond that stands all the same, and is not counted. */
function keptThings(day: CookDayInput, facts: Facts): Set<string> {
  const kept = new Set<string>();
  const left = { burners: day.kitchen.burners, pots: day.kitchen.pots, sinks: day.kitchen.sinks };
  const ovens = day.kitchen.ovens.map(({ trays }) => ({ trays, needs: [] as OvenNeed[] }));
  const appliances = new Map((day.kitchen.appliances ?? []).map(({ name, count }) => [name, count]));
  for (const { key, fact, step } of runningOf(day, facts)) {
    const { burners = 0, pots = 0, sinks = 0, oven, appliance } = step.needs;
    const inside = ovens[(fact.oven ?? 1) - 1];
    if (burners > left.burners || pots > left.pots || sinks > left.sinks) continue;
    if (appliance !== undefined && (appliances.get(appliance) ?? 0) < 1) continue;
    if (oven && (!inside || inside.trays < oven.trays || inside.needs.some((other) => !suits(other, oven)))) continue;
    [left.burners, left.pots, left.sinks] = [left.burners - burners, left.pots - pots, left.sinks - sinks];
    if (oven && inside) {
      inside.trays -= oven.trays;
      inside.needs.push(oven);
    }
    if (appliance !== undefined) appliances.set(appliance, (appliances.get(appliance) ?? 0) - 1);
    kept.add(key);
  }
  return kept;
}

function runningOf(day: CookDayInput, facts: Facts): { key: string; fact: Fact; step: RecipeStep }[] {
  return day.dishes.flatMap((dish) => dish.steps.flatMap((step) => {
    const key = keyOf(dish.id, step.id);
    const fact = facts.get(key);
    return fact?.running ? [{ key, fact, step }] : [];
  }));
}

function foreign(day: CookDayInput, id: string): [string, string] {
  const dish = day.dishes.find((other) => id.startsWith(`${other.id}/`));
  return [dish?.id ?? "", id.slice((dish?.id.length ?? -1) + 1)];
}

/** “Bake” (Loaf). */
export function nameOf(dish: DayDish, id: string): string {
  return `“${dish.steps.find((step) => step.id === id)?.text ?? "a step"}” (${dish.title})`;
}
