/** What goes on by itself: timers and steps without one, with the minutes that are left. All from instants; nothing is counted. Pure. */
import type { Counter, CounterStep } from "#shared/contracts/counter.ts";
import type { NewTimer, Timer } from "#shared/contracts/timers.ts";
import { capital, length } from "../../format.ts";
import { ovenHeat } from "../../parts/heat.ts";

export interface Pot {
  readonly id: string;
  /** “Tomato stew, burner 2”. */
  readonly name: string;
  /** What comes when the time is over. */
  readonly then: string;
  readonly endsAt: string;
  readonly timer: Timer | null;
  readonly step: CounterStep | null;
}

/** Soonest first. A step that goes on by itself is there also where nobody has set a timer for it. */
export function potsOf(counter: Counter): Pot[] {
  const steps = new Map(counter.steps.map((step) => [step.key, step]));
  const ofTimers = counter.timers.filter(({ state }) => state !== "stopped").map((timer): Pot => {
    const step = counter.steps.find((one) => timer.step && isStep(one, timer.step)) ?? null;
    return { id: timer.id, name: timer.pot ?? timer.label, then: timer.pot === undefined ? "" : timer.label, endsAt: timer.endsAt, timer, step };
  });
  const ofSteps = counter.minding.flatMap((key): Pot[] => {
    const step = steps.get(key);
    if (!step || ofTimers.some((pot) => pot.step === step)) return [];
    return [{ id: key, name: potName(counter, step), then: thenWords(counter, step), endsAt: step.endsAt, timer: null, step }];
  });
  return [...ofTimers, ...ofSteps].sort((a, b) => a.endsAt.localeCompare(b.endsAt));
}

const isStep = (step: CounterStep, ref: { readonly dish: string; readonly step: string; readonly load?: number | undefined }): boolean => step.dish === ref.dish && step.step === ref.step && (ref.load === undefined || step.load === ref.load);

/** “Tomato stew, burner 2”, “Loaves, oven 220 °C”. */
export function potName(counter: Counter, step: CounterStep): string {
  const dish = counter.dishes.find((one) => one.dish === step.dish)?.title ?? "";
  const where = step.ovenC !== undefined ? `, oven ${ovenHeat(step.ovenC)}` : step.burner !== undefined ? `, burner ${step.burner}` : "";
  return `${dish}${where}`;
}

/** What follows a step: the first words of the step that waits for it. */
export function thenWords(counter: Counter, step: CounterStep): string {
  const next = counter.steps.filter(({ waitsFor, state }) => state !== "done" && waitsFor.includes(step.key)).sort((a, b) => a.startMin - b.startMin)[0];
  return next ? firstWords(next.text) : "see whether it is done";
}

export const firstWords = (text: string): string => (text.split(/[,;.:(]/)[0] ?? text).trim();

/** The timer that a step takes along when it is begun; null where nothing of it goes on by itself. */
export function timerFor(counter: Counter, step: CounterStep): NewTimer | null {
  if (step.handsOffMin === 0) return null;
  return {
    label: capital(thenWords(counter, step)).slice(0, LONGEST),
    pot: potName(counter, step).slice(0, LONGEST),
    step: { dish: step.dish, step: step.step, ...(step.load === undefined ? {} : { load: step.load }) },
    minutes: step.handsOnMin + step.handsOffMin,
  };
}

/** A name takes no more. */
const LONGEST = 120;

/** The same timer with something changed, as it is sent back. */
export function changed(timer: Timer, change: Partial<Pick<NewTimer, "heard" | "stopped" | "endsAt">>): NewTimer {
  const { label, pot, step, minutes, clock, endsAt } = timer;
  const when = change.endsAt !== undefined ? {} : minutes !== undefined ? { minutes } : clock !== undefined ? { clock } : { endsAt };
  return {
    label,
    ...(pot === undefined ? {} : { pot }),
    ...(step === undefined ? {} : { step: { dish: step.dish, step: step.step, ...(step.load === undefined ? {} : { load: step.load }) } }),
    ...when,
    ...change,
  };
}

const SECOND = 1000;
const MINUTE = 60 * SECOND;

/** Over, and nobody has heard it yet. `now` is the service's time in ms. */
export const rings = ({ timer }: Pick<Pot, "timer">, now: number): boolean => timer !== null && timer.state !== "heard" && timer.state !== "stopped" && Date.parse(timer.endsAt) <= now;

/** The figure and its unit: “10”, “min”; “45”, “s” in the last minute; “1 h 15” beyond the hour. */
export function leftFigure(endsAt: string, now: number): { readonly figure: string; readonly unit: string } {
  const left = Date.parse(endsAt) - now;
  if (left <= 0) return { figure: "0", unit: "min" };
  if (left <= MINUTE) return { figure: String(Math.ceil(left / SECOND)), unit: "s" };
  const minutes = Math.ceil(left / MINUTE);
  return minutes < 60 ? { figure: String(minutes), unit: "min" } : { figure: length(minutes), unit: "" };
}

/** “over since 2 min”; empty while there is time left. */
export function overWords(endsAt: string, now: number): string {
  const over = now - Date.parse(endsAt);
  if (over < 0) return "";
  return over < MINUTE ? "over just now" : `over for ${length(Math.floor(over / MINUTE))}`;
}
