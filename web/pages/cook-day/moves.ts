/** Moving steps of a timetable by hand: which go along, where they then stand, and with which cook and burner. Pure; the referee judges. */
import type { TimetableStep } from "#shared/contracts/cook-days.ts";
import { endOf } from "./entries.ts";

/** What one press moves; what is dragged goes by as much. */
export const MOVE_MIN = 5;

/** The steps, with those of `moving` so many minutes later (earlier, where negative). */
export function shifted(steps: readonly TimetableStep[], moving: readonly TimetableStep[], byMin: number): TimetableStep[] {
  const along = new Set(moving.map(nameOf));
  return steps.map((step) => (along.has(nameOf(step)) ? { ...step, startMin: step.startMin + byMin } : step));
}

/** The step with everything that begins with it or after it: what a cook who begins it later pushes back. */
export function andAllAfter(steps: readonly TimetableStep[], moving: readonly TimetableStep[]): TimetableStep[] {
  const from = startOfAll(moving);
  const along = new Set(moving.map(nameOf));
  return steps.filter((step) => along.has(nameOf(step)) || step.startMin >= from);
}

/** How far to move so that the first of `moving` begins when the last of `before` is done. */
export function minutesToAfter(moving: readonly TimetableStep[], before: readonly TimetableStep[]): number {
  return Math.max(...before.map(endOf)) - startOfAll(moving);
}

/**
 * The same steps with hands and burners that are free: each keeps its number where it can, else takes the lowest free one. For cooks
 * one is always free where no minute has more work than cooks.
 */
export function renumbered(steps: readonly TimetableStep[]): TimetableStep[] {
  const cooks = givenOut(steps, (step) => (step.handsOnMin > 0 ? step.cook : undefined), (step) => step.startMin + step.handsOnMin);
  const burners = givenOut(steps, (step) => step.burner, endOf);
  return steps.map((step, i) => {
    const [cook, burner] = [cooks.get(i), burners.get(i)];
    return { ...step, ...(cook === undefined ? {} : { cook }), ...(burner === undefined ? {} : { burner }) };
  });
}

/** By index of the step: the number it has from its start until `until`. */
function givenOut(steps: readonly TimetableStep[], numberOf: (step: TimetableStep) => number | undefined, until: (step: TimetableStep) => number): Map<number, number> {
  const given = new Map<number, number>();
  const busyUntil = new Map<number, number>();
  const order = steps.map((_, i) => i).sort((a, b) => (steps[a] as TimetableStep).startMin - (steps[b] as TimetableStep).startMin);
  for (const i of order) {
    const step = steps[i] as TimetableStep;
    const wanted = numberOf(step);
    if (wanted === undefined) continue;
    const isFree = (n: number): boolean => (busyUntil.get(n) ?? 0) <= step.startMin;
    let number = wanted;
    if (!isFree(wanted)) for (number = 1; !isFree(number); ) number++;
    given.set(i, number);
    busyUntil.set(number, until(step));
  }
  return given;
}

export const nameOf = ({ dish, step, load }: TimetableStep): string => `${dish} ${step} ${load ?? ""}`;

const startOfAll = (steps: readonly TimetableStep[]): number => Math.min(...steps.map(({ startMin }) => startMin));
