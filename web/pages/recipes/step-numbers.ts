/**
 * Steps come, go and change places, and everything that names a step by its number follows: what comes after it, what waits for it, the
 * pots that stand through it, the time limits. Pure.
 */
import { numbersIn, pairsIn } from "./read-recipe.ts";
import { emptyStep, type RecipeFields, type StepFields } from "./recipe-form.ts";

/** A step at the end, after the one before it. */
export function withStep(fields: RecipeFields): RecipeFields {
  const taken = new Set(fields.steps.map((step) => step.id));
  let number = fields.steps.length + 1;
  while (taken.has(`step-${number}`)) number++;
  return { ...fields, steps: [...fields.steps, emptyStep(`step-${number}`, fields.steps.length === 0 ? "" : String(fields.steps.length))] };
}

/**
 * Without the step at `index`. What came after it comes after what it came after. A pot or a time limit that began or ended with it loses
 * that number and has to be said anew: a limit for safety must not move by itself.
 */
export function withoutStep(fields: RecipeFields, index: number): RecipeFields {
  const before = numbersIn(fields.steps[index]?.after ?? "") ?? [];
  const steps = fields.steps.map((step) => ({ ...step, after: inherited(step.after, index + 1, before) }));
  return inOrder({ ...fields, steps }, steps.map((_, i) => i).filter((i) => i !== index));
}

/** The step at `index` so many places on; left where it is at either end. */
export function movedStep(fields: RecipeFields, index: number, by: -1 | 1): RecipeFields {
  const to = index + by;
  if (to < 0 || to >= fields.steps.length) return fields;
  const order = fields.steps.map((_, i) => (i === index ? to : i === to ? index : i));
  return inOrder(fields, order);
}

function inherited(after: string, gone: number, before: readonly number[]): string {
  const numbers = numbersIn(after);
  if (!numbers?.includes(gone)) return after;
  return [...new Set([...numbers, ...before])].join(", ");
}

/** `order` holds the old places in their new order; a place that is missing is gone. */
function inOrder(fields: RecipeFields, order: readonly number[]): RecipeFields {
  const numbers = new Map(order.map((old, now) => [old + 1, now + 1]));
  const renumber = (text: string): string => {
    const n = Number(text.trim() || NaN);
    return Number.isInteger(n) && n >= 1 && n <= fields.steps.length ? String(numbers.get(n) ?? "") : text;
  };
  return {
    ...fields,
    steps: order.map((old) => renumbered(fields.steps[old] as StepFields, numbers)),
    holds: fields.holds.map((hold) => ({ ...hold, from: renumber(hold.from), to: renumber(hold.to) })),
    limits: fields.limits.map((limit) => ({ ...limit, from: renumber(limit.from), to: renumber(limit.to) })),
  };
}

/** What cannot be read is left as it was typed. */
function renumbered(step: StepFields, numbers: ReadonlyMap<number, number>): StepFields {
  const after = numbersIn(step.after)?.flatMap((n) => numbers.get(n) ?? []).sort((a, b) => a - b).join(", ");
  const within = /after/i.test(step.within) ? pairsIn(step.within)?.flatMap(({ min, step: n }) => (numbers.has(n) ? `${min} after ${numbers.get(n)}` : [])).join(", ") : step.within;
  return { ...step, after: after ?? step.after, within: within ?? step.within };
}
