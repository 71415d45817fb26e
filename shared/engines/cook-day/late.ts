/**
 * Planning again while the day is under way. What is done and what is running stays where it was; the rest is planned from now on,
 * as early as can be and otherwise as close to the old plan as can be. A limit that can no longer be kept is never said to be kept:
 * it gives way by as little as it must, times first, then waits, safety last, and every one that is passed is named. Minutes from the start
 * of the day.
 */
import { checkCookDay } from "./check.ts";
import { closest } from "./close.ts";
import { copiesOf } from "./copies.ts";
import { startOf } from "./day-to-lags.ts";
import { answerFor, SOLVER, type Solver } from "./door.ts";
import { afterEvents, type DayEvent } from "./events.ts";
import { giveWay } from "./give-way.ts";
import type { Project } from "./project.ts";
import type { Budget, CookDayInput, CookDayPlan, PlannedStep } from "./types.ts";
import { factsOf, underWay, type Begun, type Facts } from "./under-way.ts";
import { keyOf, unrolled, unrolledId, type StepRef, type UnrolledDay } from "./unrolled.ts";
import { clockWords } from "./words.ts";

export interface DayUnderWay {
  readonly day: CookDayInput;
  /** The plan that the cooks have in hand. */
  readonly plan: readonly PlannedStep[];
  /** What has been begun, with its real times; all else has not. */
  readonly begun: readonly Begun[];
  readonly nowMin: number;
  readonly events: readonly DayEvent[];
}

export interface MovedStep extends StepRef {
  readonly fromMin: number;
  readonly toMin: number;
  /** “Bake” (Loaf) moves from 15:20 to 15:40. */
  readonly text: string;
}

export interface Replan {
  /** Its steps are all those of the day, begun or not; `infeasible` only where not even passed limits would help. */
  readonly plan: CookDayPlan;
  readonly moved: readonly MovedStep[];
  /** Limits that were, or will be, passed. Sentences for the household; empty when all are kept. */
  readonly passed: readonly string[];
  readonly notes: readonly string[];
  /** The day as the events have left it: what the next replanning starts from. */
  readonly day: CookDayInput;
  /** Running steps that do not count as begun any more, because their oven broke. */
  readonly brokenOff: readonly StepRef[];
}

/** The rest of the day anew. Pure: the same moment and events give the same plan. */
export function replanCookDay(ask: DayUnderWay, budget: Budget): Replan {
  const changed = afterEvents(ask);
  const whole = unrolled(changed.day);
  const facts = factsOf(whole, changed.begun, ask.nowMin, changed.overrunMin);
  const rest = underWay(whole.day, facts, ask.nowMin, changed.fromMin);
  const old = new Map(ask.plan.map((one) => [keyOf(one.dish, unrolledId(one.step, one.load)), one.startMin]));
  const plan = firstThatCanBe(rest.day, budget, facts, standing(rest.day, facts, old, changed.fromMin));
  const faults = plan.endMin === null ? [] : checkCookDay(rest.day, plan.steps).faults;
  const brokenOff = ask.begun.filter((one) => !changed.begun.some((left) => left.dish === one.dish && left.step === one.step && left.load === one.load)).map(({ dish, step, load }) => ({ dish, step, load }));
  const steps = plan.steps.map((step): PlannedStep => {
    const ref = whole.refs.get(keyOf(step.dish, step.step)) as StepRef;
    const text = changed.day.dishes.find((dish) => dish.id === ref.dish)?.steps.find((one) => one.id === ref.step)?.text;
    return { ...step, ...ref, text: text ?? step.text };
  });
  return { plan: { ...plan, steps, status: faults.length > 0 && plan.status === "optimal" ? "feasible" : plan.status }, moved: movedSteps(whole, plan, facts, old), passed: [...rest.passed, ...faults], notes: changed.notes, day: changed.day, brokenOff };
}

/** As it stands, or with limits giving way step by step until there is a plan. */
function firstThatCanBe(day: CookDayInput, budget: Budget, facts: Facts, wanted: ReadonlyMap<number, number>): CookDayPlan {
  const strict = answerFor(day, budget, standingSolver(day, facts, wanted));
  if (strict.endMin !== null) return strict;
  const answer = giveWay(day, (key) => facts.has(key), (looser) => {
    const plan = answerFor(looser, budget, standingSolver(looser, facts, wanted));
    return plan.endMin === null ? null : plan;
  });
  return answer ?? answerFor(day, budget, { ...standingSolver(day, facts, wanted), explain: SOLVER.explain });
}

/** Where steps that have not begun stood in the old plan, by start of the project, as far as that is still to come. */
function standing(day: CookDayInput, facts: Facts, old: ReadonlyMap<string, number>, fromMin: number): Map<number, number> {
  const wanted = new Map<number, number>();
  copiesOf(day).copies.forEach(({ dish, step }, i) => {
    const key = keyOf(day.dishes[dish]?.id ?? "", step.id);
    const at = old.get(key);
    if (at !== undefined && at >= fromMin && !facts.has(key)) wanted.set(startOf(i), at);
  });
  return wanted;
}

/** Each fact keeps its oven; at the same end the old plan is kept to where it can be. */
function standingSolver(day: CookDayInput, facts: Facts, wanted: ReadonlyMap<number, number>): Solver {
  const inOwnOven = (project: Project): Project => ({ ...project, choices: project.choices.map((choice) => ({ ...choice, earliest: ovensFor(day, facts, choice.start) })) });
  return {
    solve: (project, budget) => SOLVER.solve(inOwnOven(project), budget),
    settle: (project, _model, plan) => closest(inOwnOven(project), plan, wanted),
    lay: () => ({ plan: null, used: 0 }),
    // Why a day cannot be is only asked when nothing has helped.
    explain: () => ({ clashes: [], used: 0 }),
  };
}

function ovensFor(day: CookDayInput, facts: Facts, start: number): (number | null)[] {
  const copy = copiesOf(day).copies[start - 1];
  const trays = copy?.step.needs.oven?.trays ?? 0;
  const oven = facts.get(keyOf(day.dishes[copy?.dish ?? -1]?.id ?? "", copy?.step.id ?? ""))?.oven ?? null;
  return day.kitchen.ovens.map((one, o) => (one.trays < trays || (oven !== null && oven !== o + 1) ? null : one.preheatMin));
}

function movedSteps(whole: UnrolledDay, plan: CookDayPlan, facts: Facts, old: ReadonlyMap<string, number>): MovedStep[] {
  return plan.steps.flatMap((step) => {
    const key = keyOf(step.dish, step.step);
    const fromMin = old.get(key);
    const ref = whole.refs.get(key);
    if (fromMin === undefined || ref === undefined || facts.has(key) || fromMin === step.startMin) return [];
    const title = whole.day.dishes.find((dish) => dish.id === step.dish)?.title ?? "";
    const text = `“${step.text}” (${title}) moves from ${clockWords(whole.day, fromMin)} to ${clockWords(whole.day, step.startMin)}.`;
    return [{ ...ref, fromMin, toMin: step.startMin, text }];
  });
}
