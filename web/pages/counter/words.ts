/** The sentences of the counter, short enough for arm's length. Pure. */
import type { Counter, CounterStep } from "#shared/contracts/counter.ts";
import { capital, day as dayWords, length } from "../../format.ts";
import { ovenHeat } from "../../parts/heat.ts";
import { clockIn } from "../../parts/instants.ts";
import type { Awake } from "../../parts/keep-awake.ts";
import { firstWords } from "./pots.ts";

const AWAKE: Readonly<Record<Awake, string>> = {
  on: "Screen stays on.",
  off: "The screen may go dark.",
  refused: "This device would not keep the screen on; it may be low on power.",
  cannot: "This browser cannot keep the screen on: set a longer screen time on the device itself.",
};

/** What this device can and cannot do, said before it matters. */
export function deviceWords(awake: Awake, rings: boolean, sent: string): string {
  const ring = rings ? "Rings here while this page is open and the screen is on; not while it is locked." : "No sound here yet; timers show, and ring once you let them.";
  const send = sent === "not-sent" ? " The last press was not sent." : "";
  return `${AWAKE[awake]} ${ring}${send}`;
}

/** What a step asks beyond its text: “2 min of hands, then 15 min on burner 1, until 11:05”. */
export function stepWords({ zone }: Pick<Counter, "zone">, step: CounterStep): string {
  const where = step.ovenC !== undefined ? `in the oven at ${ovenHeat(step.ovenC)}` : step.burner !== undefined ? `on burner ${step.burner}` : "by itself";
  const parts = [
    step.handsOnMin > 0 ? `${length(step.handsOnMin)} of hands` : "",
    step.handsOffMin > 0 ? `${step.handsOnMin > 0 ? "then " : ""}${length(step.handsOffMin)} ${where}` : "",
  ].filter(Boolean);
  const until = step.startedAt === undefined ? "" : `until ${clockIn(zone, step.endsAt)}`;
  return capital([...parts, until].filter(Boolean).join(", "));
}

/** “By 15:45 at the latest.” Said only where little play is left. */
export function byWords({ zone }: Pick<Counter, "zone">, step: CounterStep, now: number): string {
  if (step.mustStartBy === undefined || step.startedAt !== undefined) return "";
  const left = Date.parse(step.mustStartBy) - now;
  if (left > WORTH_SAYING_MS) return "";
  return left < 0 ? `Should have begun by ${clockIn(zone, step.mustStartBy)}.` : `Begin by ${clockIn(zone, step.mustStartBy)} at the latest.`;
}

/** A quarter of an hour is what a cook keeps in mind (own choice). */
const WORTH_SAYING_MS = 15 * 60_000;

const WEEKDAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];

/** “Sunday, 1 August, 10:00”. */
export function whenWords({ on, zone, zeroAt }: Pick<Counter, "on" | "zone" | "zeroAt">): string {
  const weekday = WEEKDAYS[new Date(`${on}T12:00:00Z`).getUTCDay()] ?? "";
  return `${weekday}, ${dayWords(on, on)}, ${clockIn(zone, zeroAt)}`;
}

/** “load 2 of 4”; nothing where a step is done once. */
export function loadWords(counter: Counter, step: CounterStep): string {
  if (step.load === undefined) return "";
  const of = Math.max(...counter.steps.filter((one) => one.dish === step.dish && one.step === step.step).map(({ load }) => load ?? 1));
  return of > 1 ? `load ${step.load} of ${of}` : "";
}

/** “Fold the dough (Slow-proved loaves): from 21:17 to 21:09”, by the clock of the day as it was really begun. */
export function movedWords({ steps, dishes, zone, zeroAt }: Counter, { dish, step, load, fromMin, toMin }: NonNullable<Counter["plan"]>["moved"][number]): string {
  const text = steps.find((one) => one.dish === dish && one.step === step && one.load === load)?.text ?? "";
  const title = dishes.find((one) => one.dish === dish)?.title ?? "";
  const at = (minute: number): string => clockIn(zone, Date.parse(zeroAt) + minute * 60_000);
  return `${firstWords(text)} (${title}${load === undefined ? "" : `, load ${load}`}): from ${at(fromMin)} to ${at(toMin)}`;
}
