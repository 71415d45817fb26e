import type { Cooling, Counter, CounterStep, Mark } from "#shared/contracts/counter.ts";
import type { DayPlan } from "#shared/contracts/day-plans.ts";
import type { Timer } from "#shared/contracts/timers.ts";
import { clockAt } from "#shared/kernel/clock-time.ts";
import { stepWords } from "#shared/planning/cook-day-proposal.ts";
import type { CoolingToday } from "#shared/planning/cooling.ts";
import type { StepToday } from "#shared/planning/counter-view.ts";
import { dayInHand, msOf, zeroMs, type DayFacts } from "#shared/planning/day-under-way.ts";
import { changeTitle, endOf } from "#shared/planning/plan-agreed.ts";
import { timerState } from "#shared/planning/timer-state.ts";
import type { NewDayPlan } from "#shared/contracts/day-plans.ts";
import { planFacts, toldBy, type MarkRow, type PlanRow, type TimerRow } from "../facts/counter.ts";
import { tagOf } from "../http/etag.ts";

export const instant = (ms: number): string => new Date(ms).toISOString();

export function toPlan(row: PlanRow, facts: DayFacts): DayPlan {
  const plan = planFacts(row);
  const said = row.said as NewDayPlan;
  const { moved, passed, notes } = toldBy(row);
  const endMin = endOf(plan.steps);
  return {
    id: row.id,
    kind: said.kind,
    title: titleOf(said, row, facts),
    at: new Date(row.at).toISOString(),
    endMin,
    endsAt: instant(msOf(endMin, zeroMs(facts))),
    steps: plan.steps.map((step) => ({ ...stepWords(step) })),
    moved: moved.map(({ load, ...one }) => ({ ...one, ...(load === null ? {} : { load }) })),
    passed: [...passed],
    notes: [...notes],
    undone: row.undoneAt !== null,
  };
}

function titleOf(said: NewDayPlan, row: PlanRow, facts: DayFacts): string {
  // what was left out is not in the day that the plan was made for, but it was in one before it
  const day = dayInHand(facts, planFacts(row));
  const known = { ...day, dishes: [...day.dishes, ...facts.plans.flatMap((plan) => plan.day.dishes)] };
  const named = { ...known, dishes: known.dishes.map((dish) => ({ ...dish, steps: known.dishes.filter(({ id }) => id === dish.id).flatMap(({ steps }) => steps) })) };
  if (said.kind === "agree") return changeTitle({ kind: "agree", byHand: said.steps !== undefined }, named);
  if (said.kind === "dish-more") return changeTitle({ kind: "one-dish-more", dish: named.dishes.find(({ id }) => id === said.recipeId) ?? { id: said.recipeId, title: "a dish more", batches: said.batches, steps: [], holds: [], limits: [] } }, named);
  if (said.kind === "late") return changeTitle({ kind: "late", byMin: said.byMin, ...(said.step === undefined ? {} : { step: { ...said.step, load: said.step.load ?? null } }) }, named);
  if (said.kind === "skip") return changeTitle({ kind: "skip", dish: said.dish, ...(said.step === undefined ? {} : { step: said.step }) }, named);
  return changeTitle(said, named);
}

export function toStep({ key, step, state, startsMs, handsUntilMs, endsMs, mustStartByMs, happened, waitsFor }: StepToday): CounterStep {
  return {
    ...stepWords(step),
    key,
    state,
    startsAt: instant(startsMs),
    handsUntil: instant(handsUntilMs),
    endsAt: instant(endsMs),
    ...(mustStartByMs === null ? {} : { mustStartBy: instant(mustStartByMs) }),
    ...(happened === null ? {} : { startedAt: instant(happened.startedMs) }),
    ...(happened === null || happened.doneMs === null ? {} : { doneAt: instant(happened.doneMs) }),
    ...(happened?.startedMark ? { startedMark: happened.startedMark } : {}),
    ...(happened?.doneMark ? { doneMark: happened.doneMark } : {}),
    waitsFor: [...waitsFor],
  };
}

export function toMark({ id, kind, dish, step, load, oven, line, stage, at, undoneAt }: MarkRow): Mark {
  const said = Object.fromEntries(Object.entries({ dish, step, load, oven, line, stage }).filter(([, value]) => value !== null));
  return { id, kind: kind as Mark["kind"], ...said, at: new Date(at).toISOString(), undone: undoneAt !== null };
}

export function toTimer(row: TimerRow, zone: string, nowMs: number): Timer {
  const { id, label, pot, dish, step, load, minutes, clock, heardAt, stoppedAt } = row;
  const endsMs = Date.parse(row.endsAt);
  return {
    id,
    label,
    ...(pot === null ? {} : { pot }),
    ...(dish === null || step === null ? {} : { step: { dish, step, ...(load === null ? {} : { load }) } }),
    ...(minutes === null ? {} : { minutes }),
    ...(clock === null ? {} : { clock }),
    endsAt: instant(endsMs),
    endsAtClock: clockAt(zone, endsMs),
    state: timerState({ endsMs, heardMs: heardAt === null ? null : Date.parse(heardAt), stoppedMs: stoppedAt === null ? null : Date.parse(stoppedAt) }, nowMs),
    ...(heardAt === null ? {} : { heardAt: new Date(heardAt).toISOString() }),
    ...(stoppedAt === null ? {} : { stoppedAt: new Date(stoppedAt).toISOString() }),
    etag: tagOf(row),
  };
}

export function toCooling(dish: string, { needed, state, hotUntilMs, stages, mayGoCold, text, sources }: CoolingToday): Cooling {
  return {
    dish,
    needed,
    state,
    ...(hotUntilMs === null ? {} : { hotUntil: instant(hotUntilMs) }),
    stages: stages.map(({ stage, toC, byMs, reachedMs, mark }) => ({ stage, toC, ...(byMs === null ? {} : { by: instant(byMs) }), ...(reachedMs === null ? {} : { reachedAt: instant(reachedMs) }), ...(mark === null ? {} : { mark }) })),
    mayGoCold,
    text,
    sources: sources.map((source) => ({ ...source })),
  };
}

/** Ringing first, then soonest. */
export const inOrder = (timers: readonly Timer[]): Counter["timers"] =>
  timers.filter(({ state }) => state !== "stopped").sort((a, b) => Number(b.state === "ringing") - Number(a.state === "ringing") || (a.endsAt < b.endsAt ? -1 : 1));
