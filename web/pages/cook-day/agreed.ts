/** The plan that the cooks have agreed on, in the shape of a timetable, so that the page draws either alike. Pure. */
import type { Timetable } from "#shared/contracts/cook-days.ts";
import type { Counter } from "#shared/contracts/counter.ts";

/** Null while none is agreed, or the day was changed since: then the service's own timetable stands. */
export function agreedPlan(counter: Counter): Timetable | null {
  const { plan, stale, steps, dishes, cautions } = counter;
  if (plan === null || stale) return null;
  const sum = (of: (step: Timetable["steps"][number]) => number): number => steps.reduce((total, step) => total + of(step), 0);
  return {
    status: "feasible",
    endMin: plan.endMin,
    lowerBoundMin: null,
    endSpread: null,
    handsOnMin: sum(({ handsOnMin }) => handsOnMin),
    oneAfterAnotherMin: sum(({ handsOnMin, handsOffMin }) => handsOnMin + handsOffMin),
    longestStandMin: null,
    steps: [...steps],
    dishes: dishes.map(({ dish, letter, title, batches }) => ({ dish, letter, title, batches })),
    conflicts: [],
    cautions,
    notes: [...plan.passed, ...plan.notes],
  };
}
