/** Whether a recipe's order of steps can be: every fault with its field, so that the page can show them all at once. */
import type { NewRecipe } from "#shared/contracts/recipes.ts";
import type { FieldFault } from "#shared/kernel/outcome.ts";

type Steps = NewRecipe["steps"];
type Step = Steps[number];

export function stepFaults(recipe: Pick<NewRecipe, "steps" | "holds" | "limits">): FieldFault[] {
  const { steps, holds = [], limits = [] } = recipe;
  const ids = new Set(steps.map((step) => step.id));
  const known = (path: string, id: string): FieldFault[] => (ids.has(id) ? [] : [{ path, message: `there is no step "${id}"` }]);
  const faults = [
    ...steps.flatMap((step, i) => [...twice(steps, i), ...step.after.flatMap((id, k) => known(`steps.${i}.after.${k}`, id)), ...waitFaults(step, i), ...timeFaults(step, i)]),
    ...holds.flatMap((hold, i) => [...known(`holds.${i}.from`, hold.from), ...known(`holds.${i}.to`, hold.to)]),
    ...limits.flatMap((limit, i) => [...known(`limits.${i}.from`, limit.from), ...known(`limits.${i}.to`, limit.to)]),
  ];
  return faults.length > 0 ? faults : circleFaults(steps);
}

function twice(steps: Steps, i: number): FieldFault[] {
  const id = steps[i]?.id;
  return steps.findIndex((step) => step.id === id) < i ? [{ path: `steps.${i}.id`, message: `"${id}" is the id of an earlier step` }] : [];
}

function waitFaults(step: Steps[number], i: number): FieldFault[] {
  if (typeof step.maxWaitMin === "number" && step.after.length === 0) return [{ path: `steps.${i}.maxWaitMin`, message: "is the longest wait after an earlier step, and this one comes after none" }];
  if (typeof step.maxWaitMin !== "object") return [];
  return Object.keys(step.maxWaitMin).flatMap((id) => (step.after.includes(id) ? [] : [{ path: `steps.${i}.maxWaitMin.${id}`, message: `"${id}" is not one of the steps this one comes after` }]));
}

/** Times of one step that no day can keep: of work given as a range the shortest is looked at. */
function timeFaults({ handsOnMin, handsOffMin, startAtMin, notBeforeMin, endByMin }: Step, i: number): FieldFault[] {
  if (startAtMin !== undefined && notBeforeMin !== undefined && startAtMin < notBeforeMin)
    return [{ path: `steps.${i}.startAtMin`, message: `must not be before the ${notBeforeMin} min of notBeforeMin` }];
  const workMin = handsOnMin + (typeof handsOffMin === "number" ? handsOffMin : handsOffMin.low);
  const earliestEndMin = (startAtMin ?? notBeforeMin ?? 0) + workMin;
  if (endByMin === undefined || endByMin >= earliestEndMin) return [];
  return [{ path: `steps.${i}.endByMin`, message: `must be at least ${earliestEndMin}: the step starts at ${earliestEndMin - workMin} min at the earliest and takes ${workMin} min` }];
}

/** Takes away whatever waits for nothing, until only circles are left. */
function circleFaults(steps: Steps): FieldFault[] {
  const waiting = new Map(steps.map((step) => [step.id, new Set(step.after)]));
  for (let before = -1; before !== waiting.size; ) {
    before = waiting.size;
    for (const [id, after] of waiting) if ([...after].every((one) => !waiting.has(one))) waiting.delete(id);
  }
  const [first] = waiting.keys();
  if (first === undefined) return [];
  const i = steps.findIndex((step) => step.id === first);
  return [{ path: `steps.${i}.after`, message: `goes round in a circle: ${circleFrom(first, waiting).map((id) => `"${id}"`).join(" waits for ")}` }];
}

function circleFrom(first: string, waiting: ReadonlyMap<string, ReadonlySet<string>>): string[] {
  const walked = [first];
  for (;;) {
    const next = [...(waiting.get(walked[walked.length - 1] as string) ?? [])].find((id) => waiting.has(id)) as string;
    const seen = walked.indexOf(next);
    walked.push(next);
    if (seen >= 0) return walked.slice(seen);
  }
}
