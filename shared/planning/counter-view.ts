/** The plan in hand held against what has happened: what hands are on, what comes next, what minds itself, what is late. Moments are milliseconds since 1970. */
import { checkCookDay, type PlannedStep } from "../engines/cook-day/index.ts";
import { begunMark, dayInHand, finishedMark, happenedTo, keyOf, msOf, stepsBefore, zeroMs, type AgreedPlan, type DayFacts, type Happened } from "./day-under-way.ts";

export type StepState = "waiting" | "ready" | "in hand" | "minding itself" | "done" | "late";

export interface StepToday {
  readonly key: string;
  readonly step: PlannedStep;
  readonly state: StepState;
  readonly startsMs: number;
  readonly handsUntilMs: number;
  readonly endsMs: number;
  readonly mustStartByMs: number | null;
  readonly happened: Happened | null;
  readonly waitsFor: readonly string[];
}

export interface CounterToday {
  readonly state: "draft" | "agreed" | "under way" | "finished";
  readonly stale: boolean;
  readonly zeroMs: number;
  readonly steps: readonly StepToday[];
  readonly inHand: readonly string[];
  readonly next: readonly string[];
  readonly minding: readonly string[];
  readonly skipped: readonly { readonly dish: string; readonly step: string; readonly text: string }[];
  /** What the plan in hand does not keep. */
  readonly passed: readonly string[];
  readonly headline: string;
}

const MS_A_MINUTE = 60_000;
/** A plan is made anew when something is late by so much (common practice, no source). */
const LATE_MS = 5 * MS_A_MINUTE;

export function counterToday(facts: DayFacts, nowMs: number): CounterToday {
  const zero = zeroMs(facts);
  const plan = facts.plans.at(-1);
  const begun = begunMark(facts) !== undefined;
  const finished = finishedMark(facts) !== undefined;
  const state = plan === undefined ? "draft" : finished ? "finished" : begun ? "under way" : "agreed";
  const stale = plan !== undefined && !begun && plan.dayVersion !== facts.version;
  const steps = plan === undefined ? [] : stepsToday(facts, plan, zero, nowMs, state === "under way");
  const keysOf = (wanted: StepState): string[] => steps.filter((step) => step.state === wanted).map(({ key }) => key);
  const view = {
    state, stale, zeroMs: zero, steps,
    inHand: keysOf("in hand"),
    next: plan === undefined ? [] : nextForEach(plan, steps),
    minding: keysOf("minding itself"),
    skipped: plan === undefined ? [] : skippedSteps(facts, plan),
    passed: plan === undefined ? [] : passedLimits(facts, plan),
  } as const;
  return { ...view, headline: headlineOf(view) };
}

function stepsToday(facts: DayFacts, plan: AgreedPlan, zero: number, nowMs: number, underWay: boolean): StepToday[] {
  const happened = happenedTo(facts, plan);
  return [...plan.steps]
    .sort((a, b) => a.startMin - b.startMin)
    .map((step): StepToday => {
      const key = keyOf(step);
      const one = happened.get(key) ?? null;
      const startsMs = one?.startedMs ?? msOf(step.startMin, zero);
      const handsUntilMs = startsMs + step.handsOnMin * MS_A_MINUTE;
      const endsMs = one?.doneMs ?? handsUntilMs + step.handsOffMin * MS_A_MINUTE;
      const mustStartByMs = step.mustStartByMin === null ? null : msOf(step.mustStartByMin, zero);
      const waitsFor = one !== null ? [] : stepsBefore(plan, step).map(keyOf).filter((before) => (happened.get(before)?.doneMs ?? null) === null);
      const isLate = underWay && (nowMs >= startsMs + LATE_MS || (mustStartByMs !== null && nowMs > mustStartByMs));
      return { key, step, state: stateOf(one, handsUntilMs, step, nowMs, isLate, waitsFor), startsMs, handsUntilMs, endsMs, mustStartByMs, happened: one, waitsFor };
    });
}

function stateOf(one: Happened | null, handsUntilMs: number, step: PlannedStep, nowMs: number, isLate: boolean, waitsFor: readonly string[]): StepState {
  if (one === null) return isLate ? "late" : waitsFor.length > 0 ? "waiting" : "ready";
  if (one.doneMs !== null) return "done";
  return step.handsOffMin > 0 && nowMs >= handsUntilMs ? "minding itself" : "in hand";
}

/** For each cook the first step with work for hands that has not begun; where nobody is named, the first of all. */
function nextForEach(plan: AgreedPlan, steps: readonly StepToday[]): string[] {
  const open = steps.filter(({ happened, step }) => happened === null && step.handsOnMin > 0);
  const cooks = Array.from({ length: plan.day.kitchen.cooks }, (_, c) => open.find(({ step }) => (step.cook ?? 1) === c + 1)?.key);
  return [...new Set(cooks.filter((key) => key !== undefined))];
}

/** What was in an earlier plan of this day and has been left out since. */
function skippedSteps({ plans }: DayFacts, inHand: AgreedPlan): CounterToday["skipped"] {
  const here = new Set(inHand.steps.map(({ dish, step }) => `${dish}/${step}`));
  const before = plans.slice(0, -1).flatMap(({ steps }) => steps);
  const skipped = before.filter(({ dish, step }) => !here.has(`${dish}/${step}`));
  return skipped.filter((one, i) => skipped.findIndex(({ dish, step }) => dish === one.dish && step === one.step) === i).map(({ dish, step, text }) => ({ dish, step, text }));
}

/** A day begun at another time than it was agreed for is held against the referee with its real beginning. */
function passedLimits(facts: DayFacts, plan: AgreedPlan): readonly string[] {
  if (plan.kind !== "agree" || begunMark(facts) === undefined) return plan.passed;
  const day = dayInHand(facts, plan);
  return day === plan.day ? plan.passed : checkCookDay(day, plan.steps).faults;
}

function headlineOf({ state, stale, steps, inHand, next }: Omit<CounterToday, "headline">): string {
  const text = (key: string | undefined): string | undefined => steps.find((step) => step.key === key)?.step.text;
  const late = steps.filter((step) => step.state === "late").length;
  const open = steps.filter((step) => step.state !== "done").length;
  switch (state) {
    case "draft":
      return "No timetable is agreed on yet.";
    case "agreed":
      return stale ? "The day was changed after its timetable was agreed on. Agree on it again." : "The timetable is agreed on. Begin when you are ready.";
    case "finished":
      return open === 0 ? "The day is finished." : `The day is finished; ${open} ${open === 1 ? "step was" : "steps were"} not marked as done.`;
    case "under way": {
      const now = text(inHand[0]);
      const then = text(next[0]);
      if (open === 0) return "Everything is done.";
      const said = now !== undefined ? `Now: ${now}.` : then !== undefined ? `Next: ${then}.` : "What is left minds itself.";
      return late === 0 ? said : `${said} ${late} ${late === 1 ? "step is" : "steps are"} late.`;
    }
  }
}
