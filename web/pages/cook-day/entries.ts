/**
 * The steps of a timetable as the page lists them: by the clock, numbered from 1. A dish that goes through a pot or a tray in several
 * loads would fill the list with minutes, so loads that follow each other without another dish between them make one entry.
 */
import type { Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";

export interface Entry {
  readonly letter: string;
  /** Numbers of its first and last step. */
  readonly first: number;
  readonly last: number;
  readonly steps: readonly TimetableStep[];
}

/** One step of an entry with all its loads there. */
export interface Round {
  readonly text: string;
  readonly steps: readonly TimetableStep[];
}

export function entriesOf(plan: Timetable): Entry[] {
  const letters = new Map(plan.dishes.map(({ dish, letter }) => [dish, letter]));
  const loads = loadsOf(plan);
  const inLoads = (step: TimetableStep): boolean => (loads.get(keyOf(step)) ?? 1) > 1;
  const entries: { letter: string; first: number; last: number; steps: TimetableStep[] }[] = [];
  for (const [i, step] of inOrder(plan.steps).entries()) {
    const before = entries.at(-1);
    const last = before?.steps[0];
    if (before && last && last.dish === step.dish && inLoads(last) && inLoads(step)) {
      before.steps.push(step);
      before.last = i + 1;
    } else entries.push({ letter: letters.get(step.dish) ?? "", first: i + 1, last: i + 1, steps: [step] });
  }
  return entries;
}

/** The steps of an entry, each once, in the order of their first load. */
export function roundsOf(entry: Entry): Round[] {
  const rounds = new Map<string, TimetableStep[]>();
  for (const step of entry.steps) rounds.set(step.step, [...(rounds.get(step.step) ?? []), step]);
  return [...rounds.values()].map((steps) => ({ text: steps[0]?.text ?? "", steps }));
}

/** How many loads a step of a dish goes in, over the whole day. */
export function loadsOf(plan: Timetable): ReadonlyMap<string, number> {
  const loads = new Map<string, number>();
  for (const step of plan.steps) if (step.load !== undefined) loads.set(keyOf(step), Math.max(step.load, loads.get(keyOf(step)) ?? 0));
  return loads;
}

export const keyOf = ({ dish, step }: TimetableStep): string => `${dish} ${step}`;
export const endOf = (step: TimetableStep): number => step.startMin + step.handsOnMin + step.handsOffMin;

const inOrder = (steps: readonly TimetableStep[]): TimetableStep[] => [...steps].sort((a, b) => a.startMin - b.startMin);
