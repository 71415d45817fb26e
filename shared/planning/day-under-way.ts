/** A cook day that may have begun: the plan in hand, what has happened, and both in minutes from its beginning. Moments are milliseconds since 1970. */
import type { Begun, CookDayInput, PlannedStep, StepRef } from "../engines/cook-day/index.ts";
import { clockAt, momentAt } from "../kernel/clock-time.ts";
import type { LocalDate } from "../kernel/local-date.ts";
import type { RecipeStep } from "../kernel/recipe.ts";

export interface AgreedPlan {
  readonly id: string;
  readonly kind: string;
  readonly atMs: number;
  readonly dayVersion: number;
  /** The day that it was made for. */
  readonly day: CookDayInput;
  readonly steps: readonly PlannedStep[];
  /** Marks that do not count under it: what was in an oven that broke. */
  readonly brokenOff: readonly string[];
  readonly passed: readonly string[];
}

export interface MarkFacts {
  readonly id: string;
  readonly kind: string;
  readonly dish: string | null;
  readonly step: string | null;
  readonly load: number | null;
  readonly oven: number | null;
  readonly line: number | null;
  readonly stage: number | null;
  readonly atMs: number;
}

export interface DayFacts {
  readonly on: LocalDate;
  readonly startsAt: string;
  readonly zone: string;
  readonly version: number;
  /** Those that stand, the one in hand last. */
  readonly plans: readonly AgreedPlan[];
  /** Those that stand. */
  readonly marks: readonly MarkFacts[];
}

const MS_A_MINUTE = 60_000;
const HALF_A_DAY_MIN = 720;

export const keyOf = ({ dish, step, load }: StepRef): string => `${dish}/${step}${load === null ? "" : `#${load}`}`;

export const begunMark = ({ marks }: Pick<DayFacts, "marks">): MarkFacts | undefined => marks.find(({ kind }) => kind === "begun");
export const finishedMark = ({ marks }: Pick<DayFacts, "marks">): MarkFacts | undefined => marks.find(({ kind }) => kind === "finished");

/** Minute 0: the whole minute in which the day was begun, or the moment at which it is to begin. */
export function zeroMs(facts: Pick<DayFacts, "on" | "startsAt" | "zone" | "marks">): number {
  const begun = begunMark(facts);
  return begun === undefined ? plannedZeroMs(facts) : Math.floor(begun.atMs / MS_A_MINUTE) * MS_A_MINUTE;
}

/** A day that begins in the hour that spring leaves out begins when the clocks have been put forward. */
export function plannedZeroMs({ on, startsAt, zone }: Pick<DayFacts, "on" | "startsAt" | "zone">): number {
  for (let later = 0; later <= 120; later += 30) {
    const at = clockMin(startsAt) + later;
    const ms = momentAt(zone, on, `${String(Math.floor(at / 60)).padStart(2, "0")}:${String(at % 60).padStart(2, "0")}`);
    if (ms !== null) return ms;
  }
  throw new RangeError(`${zone} has no ${startsAt} on ${on}`);
}

export const minuteOf = (ms: number, zero: number): number => Math.max(0, Math.floor((ms - zero) / MS_A_MINUTE));
export const msOf = (minute: number, zero: number): number => zero + minute * MS_A_MINUTE;

/**
 * The day and steps of a plan, counted from the day's real beginning. Steps agreed on before it keep their distance from the beginning; what hangs on
 * the clock (done by, away, fixed times) stays where it was on the clock. A day begun on another date is meant for that date: its limits keep their
 * distance from the beginning too, and only the clock that is read out is the real one.
 */
export function dayInHand(facts: DayFacts, plan: AgreedPlan): CookDayInput {
  if (plan.kind !== "agree" || begunMark(facts) === undefined) return plan.day;
  const laterMin = Math.round((zeroMs(facts) - plannedZeroMs(facts)) / MS_A_MINUTE);
  return Math.abs(laterMin) > HALF_A_DAY_MIN ? { ...plan.day, startsAtMin: clockMin(clockAt(facts.zone, zeroMs(facts))) } : begunLater(plan.day, laterMin);
}

function clockMin(clock: string): number {
  const [hours, minutes] = clock.split(":").map(Number) as [number, number];
  return hours * 60 + minutes;
}

function begunLater(day: CookDayInput, laterMin: number): CookDayInput {
  if (laterMin === 0) return day;
  const earlier = (at: number | undefined, name: string): Record<string, number> => (at === undefined ? {} : { [name]: at - laterMin });
  return {
    ...day,
    startsAtMin: (day.startsAtMin ?? 0) + laterMin,
    endByMin: day.endByMin === null ? null : day.endByMin - laterMin,
    unavailable: day.unavailable.flatMap((away) => (away.toMin <= laterMin ? [] : [{ ...away, fromMin: Math.max(0, away.fromMin - laterMin), toMin: away.toMin - laterMin }])),
    dishes: day.dishes.map((dish) => ({
      ...dish,
      steps: dish.steps.map((step) => ({ ...step, ...earlier(step.startAtMin, "startAtMin"), ...earlier(step.notBeforeMin, "notBeforeMin"), ...earlier(step.endByMin, "endByMin") })),
    })),
  };
}

/** When a step was begun and done, by its key. */
export interface Happened {
  readonly startedMs: number;
  readonly doneMs: number | null;
  readonly startedMark: string | null;
  readonly doneMark: string | null;
  readonly oven: number | null;
}

/**
 * What has happened to the steps of a plan. A step marked done alone was begun as planned, or as late as it can have been. A rest that needs nobody and
 * nothing begins by itself when what it follows is done, and ends when what follows it is begun.
 */
export function happenedTo(facts: DayFacts, plan: AgreedPlan): Map<string, Happened> {
  const zero = zeroMs(facts);
  const marks = facts.marks.filter(({ id }) => !plan.brokenOff.includes(id));
  const happened = new Map<string, Happened>();
  for (const step of plan.steps) {
    const of = (kind: string): MarkFacts | undefined => marks.find((mark) => mark.kind === kind && mark.dish === step.dish && mark.step === step.step && mark.load === step.load);
    const [started, done] = [of("started"), of("done")];
    if (started === undefined && done === undefined) continue;
    const plannedMs = msOf(step.startMin, zero);
    const lengthMs = (step.handsOnMin + step.handsOffMin) * MS_A_MINUTE;
    const startedMs = started?.atMs ?? Math.max(zero, Math.min(plannedMs, (done as MarkFacts).atMs - lengthMs));
    happened.set(keyOf(step), {
      startedMs,
      doneMs: done === undefined ? null : Math.max(startedMs, done.atMs),
      startedMark: started?.id ?? null,
      doneMark: done?.id ?? null,
      oven: started?.oven ?? step.oven,
    });
  }
  return withRests(plan, happened);
}

function withRests(plan: AgreedPlan, marked: ReadonlyMap<string, Happened>): Map<string, Happened> {
  const happened = new Map(marked);
  const inOrder = [...plan.steps].sort((a, b) => a.startMin - b.startMin);
  for (const step of inOrder) {
    const before = stepsBefore(plan, step);
    if (happened.has(keyOf(step)) || before.length === 0 || !isRest(plan.day, step)) continue;
    const ended = before.map((one) => happened.get(keyOf(one))?.doneMs ?? null);
    if (ended.some((ms) => ms === null)) continue;
    const startedMs = Math.max(...(ended as number[]));
    const followed = plan.steps.filter((other) => stepsBefore(plan, other).some((one) => keyOf(one) === keyOf(step))).flatMap((other) => marked.get(keyOf(other))?.startedMs ?? []);
    happened.set(keyOf(step), { startedMs, doneMs: followed.length === 0 ? null : Math.max(startedMs, Math.min(...followed)), startedMark: null, doneMark: null, oven: null });
  }
  return happened;
}

const recipeStep = (day: CookDayInput, { dish, step }: Pick<StepRef, "dish" | "step">): RecipeStep | undefined => day.dishes.find(({ id }) => id === dish)?.steps.find(({ id }) => id === step);

function isRest(day: CookDayInput, ref: StepRef): boolean {
  const step = recipeStep(day, ref);
  return step !== undefined && step.handsOnMin === 0 && Object.values(step.needs).every((need) => need === undefined || need === 0);
}

/** The planned steps that one waits for: all loads of the step before it, or the same load where there are as many. */
export function stepsBefore({ day, steps }: Pick<AgreedPlan, "day" | "steps">, ref: StepRef): PlannedStep[] {
  const loadsOf = (dish: string, step: string): PlannedStep[] => steps.filter((one) => one.dish === dish && one.step === step);
  const own = loadsOf(ref.dish, ref.step).length;
  return (recipeStep(day, ref)?.after ?? []).flatMap((id) => {
    const same = loadsOf(ref.dish, id);
    const other = day.dishes.find((dish) => id.startsWith(`${dish.id}/`));
    const before = same.length > 0 || other === undefined ? same : loadsOf(other.id, id.slice(other.id.length + 1));
    return before.length > 1 && before.length === own ? before.filter(({ load }) => load === ref.load) : before;
  });
}

/** For planning again: minutes from the beginning. */
export function begunSteps(facts: DayFacts, plan: AgreedPlan): Begun[] {
  const zero = zeroMs(facts);
  const happened = happenedTo(facts, plan);
  return plan.steps.flatMap((step): Begun[] => {
    const one = happened.get(keyOf(step));
    if (one === undefined) return [];
    const startMin = minuteOf(one.startedMs, zero);
    return [{ dish: step.dish, step: step.step, load: step.load, startMin, endMin: one.doneMs === null ? null : Math.max(startMin, minuteOf(one.doneMs, zero)), oven: one.oven }];
  });
}
