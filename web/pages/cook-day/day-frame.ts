/** The frame of a cook day as typed, and the body it makes: day, hours, cooks, times away, kitchen. Pure: words in, body or faults out. */
import { NewCookDay, type CookDay } from "#shared/contracts/cook-days.ts";
import type { Kitchen } from "#shared/contracts/kitchen.ts";
import { clock, day as dayWords } from "../../format.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { readDay } from "../../parts/typed-day.ts";
import { minutesOf } from "./day-words.ts";

export interface DayFrame {
  readonly on: string;
  readonly startsAt: string;
  readonly endsBy?: string | undefined;
  readonly cooks: number;
  readonly kitchen: Kitchen;
  readonly unavailable: CookDay["unavailable"];
  readonly title?: string | undefined;
}

export interface AwayFields {
  readonly from: string;
  readonly to: string;
  readonly why: string;
}

export type WholeName = "cooks" | "burners" | "pots" | "sinks" | "ovens" | "trays" | "preheatMin" | "changeMin";
export type FrameName = WholeName | "on" | "startsAt" | "endsBy" | "title";

export interface FrameFields extends Readonly<Record<FrameName, string>> {
  readonly away: readonly AwayFields[];
}

export const LABELS: Readonly<Record<FrameName, string>> = {
  on: "Day",
  startsAt: "Begin at",
  endsBy: "Done by",
  title: "A name for the day",
  cooks: "Cooks",
  burners: "Burners",
  pots: "Large pots",
  sinks: "Sinks",
  ovens: "Ovens",
  trays: "Trays in an oven",
  preheatMin: "Minutes to heat up",
  changeMin: "Minutes to change heat",
};

export const emptyAway: AwayFields = { from: "", to: "", why: "" };

/** Times away are typed by the clock and stored in minutes from the start, so they stay where they are when the start moves. */
export function frameFields(frame: DayFrame, today: string): FrameFields {
  const oven = frame.kitchen.ovens[0] ?? { trays: 2, preheatMin: 15, changeMin: 10 };
  const at = (minutes: number): string => clock(minutesOf(frame.startsAt) + minutes);
  return {
    on: dayWords(frame.on, today),
    startsAt: frame.startsAt,
    endsBy: frame.endsBy ?? "",
    title: frame.title ?? "",
    cooks: String(frame.cooks),
    burners: String(frame.kitchen.burners),
    pots: String(frame.kitchen.pots ?? 1),
    sinks: String(frame.kitchen.sinks ?? 1),
    ovens: String(frame.kitchen.ovens.length),
    trays: String(oven.trays),
    preheatMin: String(oven.preheatMin),
    changeMin: String(oven.changeMin),
    away: frame.unavailable.map(({ fromMin, toMin, why }) => ({ from: at(fromMin), to: at(toMin), why: why ?? "" })),
  };
}

export type ReadFrame = { readonly ok: true; readonly body: NewCookDay } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** The body to send, or each field with what is wrong and what would work. `stored` keeps ovens that differ from one another. */
export function readFrame(fields: FrameFields, today: string, dishes: NewCookDay["dishes"], stored?: Kitchen): ReadFrame {
  const faults: FieldProblem[] = [];
  const bad = (field: string, label: string, words: string): void => {
    if (!faults.some((fault) => fault.field === field)) faults.push({ field, text: `${label}: ${words}` });
  };
  const whole = (name: WholeName): number => {
    const text = fields[name].trim();
    const [least, most] = LIMITS[name];
    const n = /^\d{1,4}$/.test(text) ? Number(text) : NaN;
    if (!(n >= least && n <= most)) bad(name, LABELS[name], `a whole number from ${least} to ${most} is needed`);
    return n;
  };
  const on = readDay(fields.on, today);
  if (!on.ok) bad("on", LABELS.on, `${on.wrong} ${on.works}`);
  const startsAt = timeIn(fields.startsAt);
  if (startsAt === null) bad("startsAt", LABELS.startsAt, NO_TIME);
  const endsBy = fields.endsBy.trim() === "" ? undefined : timeIn(fields.endsBy);
  if (endsBy === null) bad("endsBy", LABELS.endsBy, `${NO_TIME}, or leave it empty for no end`);
  if (endsBy && startsAt && endsBy <= startsAt) bad("endsBy", LABELS.endsBy, `must be after ${startsAt}, when the day begins, and on the same day`);
  const body = {
    on: on.ok ? on.value.date : "",
    startsAt: startsAt ?? "",
    ...(endsBy ? { endsBy } : {}),
    cooks: whole("cooks"),
    kitchen: { ovens: ovensIn(whole, stored), burners: whole("burners"), pots: whole("pots"), sinks: whole("sinks") },
    dishes: dishes.map(({ recipeId, batches }) => ({ recipeId, batches })),
    unavailable: fields.away.flatMap((away, i) => awayIn(away, i, startsAt, bad)),
    ...(fields.title.trim() === "" ? {} : { title: fields.title }),
  };
  if (faults.length > 0) return { ok: false, faults };
  const parsed = NewCookDay.safeParse(body);
  if (parsed.success) return { ok: true, body: parsed.data };
  for (const { path, message } of parsed.error.issues) {
    const field = fieldAt(path.map(String));
    bad(field, labelAt(field), message);
  }
  return { ok: false, faults };
}

const NO_TIME = "write a time such as 9:00";
const OVENS_MOST = 4;
const DAY_MIN = 1440;
/** Least and most, as the contract of a cook day has them. */
const LIMITS: Readonly<Record<WholeName, readonly [number, number]>> = { cooks: [1, 6], burners: [0, 12], pots: [0, 20], sinks: [0, 6], ovens: [0, OVENS_MOST], trays: [1, 12], preheatMin: [0, DAY_MIN], changeMin: [0, DAY_MIN] };

/** Ovens that differ stay as they are stored while the form says what it said of the first. */
function ovensIn(whole: (name: WholeName) => number, stored?: Kitchen): Kitchen["ovens"] {
  const oven = { trays: whole("trays"), preheatMin: whole("preheatMin"), changeMin: whole("changeMin") };
  const first = stored?.ovens[0];
  const asStored = first && first.trays === oven.trays && first.preheatMin === oven.preheatMin && first.changeMin === oven.changeMin;
  return Array.from({ length: Math.min(OVENS_MOST, whole("ovens") || 0) }, (_, i) => (asStored ? (stored?.ovens[i] ?? oven) : oven));
}

function awayIn({ from, to, why }: AwayFields, i: number, startsAt: string | null, bad: (field: string, label: string, words: string) => void): NonNullable<NewCookDay["unavailable"]> {
  if (`${from}${to}${why}`.trim() === "") return [];
  const [begins, ends] = [timeIn(from), timeIn(to)];
  if (begins === null) bad(`away-${i}-from`, "Away from", NO_TIME);
  if (ends === null) bad(`away-${i}-to`, "Away until", NO_TIME);
  if (begins === null || ends === null || startsAt === null) return [];
  if (begins < startsAt) bad(`away-${i}-from`, "Away from", `must not be before ${startsAt}, when the day begins`);
  if (ends <= begins) bad(`away-${i}-to`, "Away until", `must be after ${begins}`);
  const minutes = (time: string): number => minutesOf(time) - minutesOf(startsAt);
  return [{ what: "cook", fromMin: minutes(begins), toMin: minutes(ends), ...(why.trim() === "" ? {} : { why }) }];
}

/** "9", "9:00", "9.30", "9h30", "0930" as HH:MM; null where there is no such time. */
export function timeIn(text: string): string | null {
  const found = /^(\d{1,2})(?:[:.h ]?(\d{2}))?\s*h?$/.exec(text.trim());
  const [hours, minutes] = [Number(found?.[1]), Number(found?.[2] ?? 0)];
  return found && hours < 24 && minutes < 60 ? `${String(hours).padStart(2, "0")}:${String(minutes).padStart(2, "0")}` : null;
}

/** The control that a path of the body belongs to; also for the paths of the service's answers. */
export function fieldAt(path: readonly string[]): string {
  if (path[0] === "unavailable" && path[1] !== undefined) return `away-${path[1]}-${path[2] === "toMin" ? "to" : path[2] === "why" ? "why" : "from"}`;
  if (path[0] === "dishes") return "add-dish";
  return path.findLast((part) => part in LABELS) ?? "on";
}

export const labelAt = (field: string): string => (field in LABELS ? LABELS[field as FrameName] : field.startsWith("away") ? "Away" : "Dishes");
