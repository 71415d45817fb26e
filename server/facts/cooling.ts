/** What is known of a dish's heat: its last hot step, when that was done, and what was measured since. */
import type { DayDish } from "#shared/engines/cook-day/index.ts";
import type { CoolingFacts } from "#shared/planning/cooling.ts";
import { happenedTo, keyOf, type DayFacts } from "#shared/planning/day-under-way.ts";
import { lastHotStep } from "#shared/planning/hot-food.ts";

/** With several loads the heat has ended when the last is done, and what was done first cools since then: the earliest end counts. */
export function heatOf(facts: DayFacts, dish: Pick<DayDish, "id" | "title" | "steps" | "holds">): CoolingFacts {
  const hot = lastHotStep(dish);
  const plan = facts.plans.at(-1);
  const loads = plan?.steps.filter((step) => step.dish === dish.id && step.step === hot) ?? [];
  const happened = plan === undefined ? new Map<string, never>() : happenedTo(facts, plan);
  const ended = loads.map((step) => happened.get(keyOf(step))?.doneMs ?? null);
  const allDone = ended.length > 0 && ended.every((ms) => ms !== null);
  return {
    title: dish.title,
    hotStep: hot === undefined ? null : (dish.steps.find(({ id }) => id === hot)?.text ?? hot),
    heatEndedMs: allDone ? Math.min(...ended) : null,
    marks: facts.marks.filter((mark) => mark.dish === dish.id),
    zone: facts.zone,
  };
}
