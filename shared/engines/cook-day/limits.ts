/**
 * The limits that a household has set itself, each by name: longest waits, times, absences, how many there are of a thing, that a
 * dish is made today at all. Each can be taken out of a day, and most can be loosened step by step. Lengths and order are not
 * limits but nature, and a limit for safety (cooling) is named and never loosened. Minutes.
 */
import type { RecipeStep } from "../../kernel/recipe.ts";
import type { Absence, CookDayInput, DayDish } from "./types.ts";
import { clockWords, countWords, lengthWords, waitWords } from "./words.ts";

export interface Change {
  /** An instruction: "Let … wait 30 min instead of 20 min". */
  readonly words: string;
  readonly apply: (day: CookDayInput) => CookDayInput;
}

export interface NamedLimit {
  readonly kind: "dish" | "count" | "safety" | "earliest" | "wait" | "latest" | "done-by" | "away" | "fixed";
  /** The dish it belongs to; null for the day and the kitchen. */
  readonly dish: string | null;
  /** A noun phrase: “Bake” within 10 min of the end of “Fill”. */
  readonly words: string;
  readonly without: (day: CookDayInput) => CookDayInput;
  /** Ways to loosen it, least first, each allowing all that the one before allows. */
  readonly ladders: readonly (readonly Change[])[];
}

/** Loosenings are tried in steps that a person would name. */
const STEP_MIN = 5;
const MOST_LATER_MIN = 120;
const PLENTY = 1_000;

/** All named limits of a day, those first that one would least like to hear named. */
export function namedLimits(day: CookDayInput): NamedLimit[] {
  const dishes = day.dishes.flatMap((dish, d): NamedLimit[] => {
    if (dish.steps.length === 0) return [];
    const without = (from: CookDayInput): CookDayInput => withDish(from, d, (one) => ({ ...one, steps: [], holds: [], limits: [] }));
    return [{ kind: "dish", dish: dish.title, words: `${dish.title} today`, without, ladders: [[{ words: `Leave out ${dish.title}`, apply: without }]] }];
  });
  const safety = day.dishes.flatMap((dish, d) => dish.limits.map((limit, k): NamedLimit => {
    const [from, to] = [limit.from, limit.to].map((id) => quoted(dish.steps.find((step) => step.id === id)));
    const words = `${to} within ${lengthWords(limit.maxMin)} of the end of ${from}${limit.why === undefined ? "" : ` (${limit.why})`}`;
    const others = (own: DayDish): DayDish => ({ ...own, limits: own.limits.filter((other) => other !== dish.limits[k]) });
    return { kind: "safety", dish: dish.title, words, ladders: [], without: (from) => withDish(from, d, others) };
  }));
  const steps = day.dishes.flatMap((dish, d) => dish.steps.flatMap((step) => stepLimits(day, dish, d, step)));
  const rank = (limit: NamedLimit): number => ORDER.indexOf(limit.kind);
  return [...dishes, ...counts(day), ...safety, ...steps, ...doneBy(day), ...day.unavailable.map((absence) => away(day, absence))].sort((a, b) => rank(a) - rank(b));
}

const ORDER: readonly NamedLimit["kind"][] = ["dish", "count", "safety", "earliest", "wait", "latest", "done-by", "away", "fixed"];

/** Fixed times of several steps moved together by the same minutes. */
export function movedTogether(day: CookDayInput, limits: readonly NamedLimit[], byMin: number): Change {
  const isMoved = (dish: DayDish, step: RecipeStep): boolean => limits.some((limit) => limit.dish === dish.title && limit.words === fixedWords(day, step));
  const names = day.dishes.flatMap((dish) => dish.steps.filter((step) => isMoved(dish, step)).map((step) => nameOf(dish, step)));
  const words = `Move ${names.join(" and ")} ${lengthWords(Math.abs(byMin))} ${byMin > 0 ? "later" : "earlier"}`;
  const moved = (dish: DayDish, step: RecipeStep): RecipeStep =>
    step.startAtMin !== undefined && names.includes(nameOf(dish, step)) ? { ...step, startAtMin: step.startAtMin + byMin } : step;
  return { words, apply: (from) => ({ ...from, dishes: from.dishes.map((dish) => ({ ...dish, steps: dish.steps.map((step) => moved(dish, step)) })) }) };
}

function stepLimits(day: CookDayInput, dish: DayDish, d: number, step: RecipeStep): NamedLimit[] {
  const limits = step.after.flatMap((id) => waitLimit(dish, d, step, id));
  const { notBeforeMin, startAtMin, endByMin } = step;
  const clock = (minute: number): string => clockWords(day, minute);
  const time = (kind: NamedLimit["kind"], field: Time, words: string, ladder: Change[]): void =>
    void limits.push({ kind, dish: dish.title, words, ladders: [ladder], without: (from) => withStep(from, d, step.id, (one) => lacking(one, field)) });
  const moved = (field: Time, value: number, words: string): Change => ({ words, apply: (from) => withStep(from, d, step.id, (one) => ({ ...one, [field]: value })) });
  if (notBeforeMin !== undefined) {
    const ladder = rungs(notBeforeMin).map((by) => moved("notBeforeMin", notBeforeMin - by, `Let ${nameOf(dish, step)} start from ${clock(notBeforeMin - by)} instead of ${clock(notBeforeMin)}`));
    time("earliest", "notBeforeMin", `${quoted(step)} not before ${clock(notBeforeMin)}`, ladder);
  }
  // Fixed times are moved together, see `movedTogether`.
  if (startAtMin !== undefined) time("fixed", "startAtMin", fixedWords(day, step), []);
  if (endByMin !== undefined) {
    const ladder = rungs(MOST_LATER_MIN).map((by) => moved("endByMin", endByMin + by, `Let ${nameOf(dish, step)} be done by ${clock(endByMin + by)} instead of ${clock(endByMin)}`));
    time("latest", "endByMin", `${quoted(step)} done by ${clock(endByMin)}`, ladder);
  }
  return limits;
}

type Time = "notBeforeMin" | "startAtMin" | "endByMin";

/** A wait may grow to twice its length, or by a quarter of an hour: more than that is another recipe. */
function waitLimit(dish: DayDish, d: number, step: RecipeStep, id: string): NamedLimit[] {
  const wait = typeof step.maxWaitMin === "object" ? step.maxWaitMin[id] : step.maxWaitMin;
  if (wait === undefined) return [];
  const name = nameOf(dish, step);
  const set = (from: CookDayInput, value: number | undefined): CookDayInput => withStep(from, d, step.id, (one) => waiting(one, id, value));
  const ladder = rungs(Math.max(15, wait)).map((by): Change => ({
    words: `Let ${name} wait ${lengthWords(wait + by)} instead of ${lengthWords(wait)}`,
    apply: (from) => set(from, wait + by),
  }));
  const before = quoted(dish.steps.find((other) => other.id === id));
  return [{ kind: "wait", dish: dish.title, words: waitWords(quoted(step), before, wait), ladders: [ladder], without: (from) => set(from, undefined) }];
}

function waiting(step: RecipeStep, id: string, value: number | undefined): RecipeStep {
  const { maxWaitMin, ...rest } = step;
  const all: Record<string, number> = typeof maxWaitMin === "object" ? { ...maxWaitMin } : maxWaitMin === undefined ? {} : Object.fromEntries(step.after.map((one) => [one, maxWaitMin]));
  if (value === undefined) delete all[id];
  else all[id] = value;
  return { ...rest, maxWaitMin: all };
}

const THINGS = [
  ["cooks", "pair of hands", "pairs of hands"],
  ["burners", "burner", "burners"],
  ["pots", "large pot", "large pots"],
  ["sinks", "sink", "sinks"],
] as const;

function counts(day: CookDayInput): NamedLimit[] {
  const needs = day.dishes.flatMap((dish) => dish.steps.map((step) => step.needs));
  const things = THINGS.map(([what, one, many]): NamedLimit => {
    const count = day.kitchen[what === "cooks" ? "cooks" : what];
    const needed = what === "cooks" ? 1 : needs.reduce((most, need) => Math.max(most, need[what] ?? 0), 0);
    const set = (value: number) => (from: CookDayInput): CookDayInput => ({ ...from, kitchen: { ...from.kitchen, [what]: value } });
    const more = Math.max(count + 1, needed);
    return { kind: "count", dish: null, words: countWords(count, one, many), without: set(PLENTY), ladders: [[{ words: `Work with ${countWords(more, one, many)}`, apply: set(more) }]] };
  });
  return [...things, ...applianceLimits(day), ...ovenLimits(day)];
}

function applianceLimits(day: CookDayInput): NamedLimit[] {
  const names = [...new Set(day.dishes.flatMap((dish) => dish.steps.flatMap(({ needs }) => needs.appliance ?? [])))];
  return names.map((name): NamedLimit => {
    const count = (day.kitchen.appliances ?? []).reduce((sum, one) => sum + (one.name === name ? one.count : 0), 0);
    const set = (value: number) => (from: CookDayInput): CookDayInput => {
      const others = (from.kitchen.appliances ?? []).filter((one) => one.name !== name);
      return { ...from, kitchen: { ...from.kitchen, appliances: [...others, { name, count: value }] } };
    };
    const words = `Work with ${count === 0 ? `a ${name}` : `another ${name}`}`;
    return { kind: "count", dish: null, words: `${count === 0 ? "no" : count} ${name}`, without: set(PLENTY), ladders: [[{ words, apply: set(count + 1) }]] };
  });
}

function ovenLimits(day: CookDayInput): NamedLimit[] {
  const { ovens } = day.kitchen;
  const baked = day.dishes.flatMap((dish) => dish.steps.flatMap((step) => (step.needs.oven ? [step.needs.oven] : [])));
  if (baked.length === 0) return [];
  const trays = ovens.reduce((most, oven) => Math.max(most, oven.trays), 0);
  const set = (value: number) => (from: CookDayInput): CookDayInput => ({ ...from, kitchen: { ...from.kitchen, ovens: from.kitchen.ovens.map((oven) => ({ ...oven, trays: value })) } });
  const more = Math.max(trays + 1, ...baked.map((need) => need.trays));
  const another = (from: CookDayInput): CookDayInput => ({
    ...from,
    kitchen: { ...from.kitchen, ovens: [...from.kitchen.ovens, from.kitchen.ovens[0] ?? { trays: Math.max(...baked.map((need) => need.trays)), preheatMin: 0, changeMin: 0 }] },
  });
  const oneHeat = (from: CookDayInput): CookDayInput => ({
    ...another(from),
    dishes: from.dishes.map((dish) => ({ ...dish, steps: dish.steps.map((step) => (step.needs.oven ? { ...step, needs: { ...step.needs, oven: { c: 0, trays: step.needs.oven.trays } } } : step)) })),
  });
  const heat: NamedLimit = {
    kind: "count",
    dish: null,
    words: ovens.length === 0 ? "no oven" : `${countWords(ovens.length, "oven", "ovens")}, holding one heat at a time`,
    without: ovens.length === 0 ? another : (from) => ({ ...oneHeat(from), kitchen: from.kitchen }),
    ladders: [[{ words: ovens.length === 0 ? "Work with an oven" : "Work with another oven", apply: another }]],
  };
  if (ovens.length === 0) return [heat];
  const larger: Change = { words: `Work with an oven for ${more} trays`, apply: set(more) };
  return [heat, { kind: "count", dish: null, words: `an oven for ${countWords(trays, "tray", "trays")}`, without: set(PLENTY), ladders: [[larger]] }];
}

function doneBy(day: CookDayInput): NamedLimit[] {
  const { endByMin } = day;
  if (endByMin === null) return [];
  // The last rung is no deadline at all; what end it comes to is found by solving.
  const ladder = rungs(24 * 60).map((by): Change => ({
    words: `Have all done by ${clockWords(day, endByMin + by)} instead of ${clockWords(day, endByMin)}`,
    apply: (from) => ({ ...from, endByMin: endByMin + by }),
  }));
  return [{ kind: "done-by", dish: null, words: `all done by ${clockWords(day, endByMin)}`, ladders: [ladder], without: (from) => ({ ...from, endByMin: null }) }];
}

function away(day: CookDayInput, absence: Absence): NamedLimit {
  const { fromMin, toMin, why } = absence;
  const change = (words: string, other: Partial<Absence> | null): Change => ({
    words,
    apply: (from) => ({ ...from, unavailable: from.unavailable.flatMap((one) => (one !== absence ? [one] : other === null ? [] : [{ ...one, ...other }])) }),
  });
  const inside = rungs(toMin - fromMin - 1);
  const none = change(`Be there from ${clockWords(day, fromMin)} to ${clockWords(day, toMin)} after all`, null);
  const later = inside.map((by) => change(`Be away from ${clockWords(day, fromMin + by)} instead of ${clockWords(day, fromMin)}`, { fromMin: fromMin + by }));
  const back = inside.map((by) => change(`Be back by ${clockWords(day, toMin - by)} instead of ${clockWords(day, toMin)}`, { toMin: toMin - by }));
  const words = `a cook away from ${clockWords(day, fromMin)} to ${clockWords(day, toMin)}${why === undefined ? "" : ` (${why})`}`;
  return { kind: "away", dish: null, words, without: none.apply, ladders: later.length > 0 ? [later, back] : [[none]] };
}

/** 5, 10, 15 … up to `most`. */
function rungs(most: number): number[] {
  return Array.from({ length: Math.max(0, Math.floor(most / STEP_MIN)) }, (_, k) => (k + 1) * STEP_MIN);
}

function fixedWords(day: CookDayInput, step: RecipeStep): string {
  return `${quoted(step)} at ${clockWords(day, step.startAtMin ?? 0)}`;
}

function lacking(step: RecipeStep, field: Time): RecipeStep {
  const rest = { ...step };
  delete rest[field];
  return rest;
}

const nameOf = (dish: DayDish, step: RecipeStep): string => `${quoted(step)} (${dish.title})`;
const quoted = (step: RecipeStep | undefined): string => (step === undefined ? "another dish" : `“${step.text}”`);

function withDish(day: CookDayInput, d: number, change: (dish: DayDish) => DayDish): CookDayInput {
  return { ...day, dishes: day.dishes.map((dish, k) => (k === d ? change(dish) : dish)) };
}

function withStep(day: CookDayInput, d: number, id: string, change: (step: RecipeStep) => RecipeStep): CookDayInput {
  return withDish(day, d, (dish) => ({ ...dish, steps: dish.steps.map((step) => (step.id === id ? change(step) : step)) }));
}
