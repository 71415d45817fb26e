/**
 * The referee: is this plan allowed, and what does it score? It walks the day minute by minute and shares nothing with the
 * scheduler, so that a mistake in one is seen by the other. Used in tests, before saving, and after a step was moved by hand.
 * Every fault is a sentence for the household. Minutes from the start of the day.
 */
import { heatSpan } from "./check-heat.ts";
import { checkMinutes } from "./check-minutes.ts";
import { checkOrder } from "./check-order.ts";
import { measure, type Measures } from "./check-measures.ts";
import type { CookDayInput, PlannedStep } from "./types.ts";
import { clockWords } from "./words.ts";
import type { RecipeStep } from "../../kernel/recipe.ts";

export type PlacedStep = Pick<PlannedStep, "dish" | "step" | "load" | "startMin"> &
  Partial<Pick<PlannedStep, "handsOnMin" | "handsOffMin" | "cook" | "oven" | "ovenC" | "burner">>;

export interface Verdict {
  /** Empty when the plan is allowed. */
  readonly faults: readonly string[];
  /** Null while a step is missing. */
  readonly measures: Measures | null;
}

/** A step of the day where the plan has put it. */
export interface Seen {
  readonly dish: number;
  readonly step: RecipeStep;
  readonly load: number;
  readonly loads: number;
  readonly name: string;
  readonly at: number;
  readonly handsEnd: number;
  readonly end: number;
  readonly placed: PlacedStep;
}

/** All faults of a plan in words, and its measures (levels 1 to 6 of the README). */
export function checkCookDay(day: CookDayInput, placed: readonly PlacedStep[]): Verdict {
  const faults: string[] = [];
  const seen = lookUp(day, placed, faults);
  if (seen === null) return { faults, measures: null };
  for (const one of seen) {
    if (!Number.isInteger(one.at) || one.at < 0) faults.push(`${one.name} does not start at a whole minute of the day.`);
    const { handsOnMin, handsOffMin, ovenC } = one.placed;
    if ((handsOnMin ?? one.step.handsOnMin) !== one.step.handsOnMin || (handsOffMin ?? one.end - one.handsEnd) !== one.end - one.handsEnd) {
      faults.push(`${one.name} is not as long as its recipe says.`);
    }
    const [low, high] = heatSpan(one);
    if (typeof ovenC === "number" && (one.step.needs.oven === undefined || ovenC < low || ovenC > high)) faults.push(`${one.name} has another oven temperature than its recipe says.`);
  }
  if (faults.length > 0) return { faults, measures: null };
  faults.push(...checkOrder(day, seen), ...checkMinutes(day, seen));
  const measures = measure(day, seen);
  if (day.endByMin !== null && measures.endMin > day.endByMin) {
    faults.push(`The day ends at ${clockWords(day, measures.endMin)}, and all should be done by ${clockWords(day, day.endByMin)}.`);
  }
  return { faults, measures };
}

/** Every step of the day with its place in the plan; null, with faults, when one is missing or one too many. */
function lookUp(day: CookDayInput, placed: readonly PlacedStep[], faults: string[]): Seen[] | null {
  const waiting = new Map<string, PlacedStep[]>();
  for (const one of placed) {
    const key = keyOf(one.dish, one.step, one.load ?? 1);
    waiting.set(key, [...(waiting.get(key) ?? []), one]);
  }
  const seen: Seen[] = [];
  day.dishes.forEach((dish, d) => {
    for (const step of dish.steps) {
      const loads = step.loads === undefined ? 1 : Math.max(1, Math.ceil((step.loads.of * dish.batches) / step.loads.holds));
      for (let load = 1; load <= loads; load++) {
        const name = `“${step.text}” (${dish.title}${loads > 1 ? `, load ${load}` : ""})`;
        const found = waiting.get(keyOf(dish.id, step.id, load))?.shift();
        if (!found) {
          faults.push(`${name} is not in the plan.`);
          continue;
        }
        const handsEnd = found.startMin + step.handsOnMin;
        const off = typeof step.handsOffMin === "number" ? step.handsOffMin : step.handsOffMin.likely;
        seen.push({ dish: d, step, load, loads, name, at: found.startMin, handsEnd, end: handsEnd + off, placed: found });
      }
    }
  });
  for (const extra of [...waiting.values()].flat()) faults.push(`The plan has a step that is not in this day, at ${clockWords(day, extra.startMin)}.`);
  return faults.length > 0 ? null : seen;
}

const keyOf = (dish: string, step: string, load: number): string => JSON.stringify([dish, step, load]);
