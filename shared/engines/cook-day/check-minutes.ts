/** The referee's walk through the day, minute by minute: hands, burners, pots, sinks, trays, and the heat of each oven. */
import type { Seen } from "./check.ts";
import { heatSpan, heatWords, shareHeat } from "./check-heat.ts";
import type { CookDayInput, Oven } from "./types.ts";
import { clockWords, countWords, lengthWords, listWords } from "./words.ts";

/** Faults of too much at once and of the oven's heat; each is told at the first minute it is seen. */
export function checkMinutes(day: CookDayInput, seen: readonly Seen[]): string[] {
  const end = seen.reduce((last, one) => Math.max(last, one.end), 0);
  const told = new Map<string, string>();
  const kept = keptThings(day, seen);
  const ovens = day.kitchen.ovens.map((oven): Heat => ({ oven, used: [] }));
  for (const one of seen) for (const fault of ovenFaults(day, one)) told.set(fault, fault);
  for (const { what, from, to } of kept) {
    if (to.at < from.at) told.set(`${what} ${from.name} ${to.name}`, `A ${THING_WORDS[what][0]} is kept from ${from.name} to ${to.name}, which starts before it.`);
  }
  for (let minute = 0; minute < end; minute++) {
    const tell = (kind: string, who: readonly Seen[], words: string): void => {
      const key = `${kind} ${who.map((one) => one.name).join(" ")}`;
      if (!told.has(key)) told.set(key, `${clockWords(day, minute)}: ${words}`);
    };
    hands(day, seen, minute, tell);
    for (const what of ["burners", "pots", "sinks"] as const) things(day, seen, kept, what, minute, tell);
    appliances(day, seen, minute, tell);
    numbers(seen, minute, tell);
    ovens.forEach((heat, o) => heatAt(heat, o + 1, seen.filter((one) => inOven(day, one) === o + 1 && one.at <= minute && minute < one.end), minute, tell));
  }
  return [...told.values()];
}

type Tell = (kind: string, who: readonly Seen[], words: string) => void;

const names = (who: readonly Seen[]): string => listWords(who.map((one) => one.name));

function hands(day: CookDayInput, seen: readonly Seen[], minute: number, tell: Tell): void {
  const busy = seen.filter((one) => one.at <= minute && minute < one.handsEnd);
  const away = day.unavailable.filter((absence) => absence.fromMin <= minute && minute < absence.toMin).length;
  const there = Math.max(0, day.kitchen.cooks - away);
  if (busy.length > there) tell("hands", busy, `${names(busy)} ${busy.length === 1 ? "needs" : "need"} hands, and ${countWords(there, "cook is", "cooks are")} there.`);
}

type Thing = "burners" | "pots" | "sinks";

interface Kept {
  readonly what: Thing;
  readonly from: Seen;
  readonly to: Seen;
}

/** What is kept over several steps, pauses included: once for each load where both ends have equal loads, else once in all. */
function keptThings(day: CookDayInput, seen: readonly Seen[]): Kept[] {
  return day.dishes.flatMap((dish, d) =>
    dish.holds.flatMap((hold): Kept[] => {
      const froms = seen.filter((one) => one.dish === d && one.step.id === hold.from);
      const tos = seen.filter((one) => one.dish === d && one.step.id === hold.to);
      if (froms.length === 0 || tos.length === 0) return [];
      if (froms.length === tos.length) return froms.flatMap((from) => tos.filter((to) => to.load === from.load).map((to) => ({ what: hold.what, from, to })));
      const first = froms.reduce((a, b) => (b.at < a.at ? b : a));
      const last = tos.reduce((a, b) => (b.end > a.end ? b : a));
      return [{ what: hold.what, from: first, to: last }];
    }),
  );
}

const THING_WORDS = { burners: ["burner", "burners"], pots: ["large pot", "large pots"], sinks: ["sink", "sinks"] } as const;

function things(day: CookDayInput, seen: readonly Seen[], kept: readonly Kept[], what: Thing, minute: number, tell: Tell): void {
  const users = seen.filter((one) => (one.step.needs[what] ?? 0) > 0 && one.at <= minute && minute < one.end);
  const keepers = kept.filter((hold) => hold.what === what && hold.from.at <= minute && minute < hold.to.end);
  const taken = users.reduce((sum, one) => sum + (one.step.needs[what] ?? 0), keepers.length);
  if (taken <= day.kitchen[what]) return;
  const who = [...users, ...keepers.map((hold) => hold.from)];
  const [one, many] = THING_WORDS[what];
  tell(what, who, `${names(who)} together take ${countWords(taken, one, many)}; the kitchen has ${countWords(day.kitchen[what], one, many)}.`);
}

/** What is asked for by name, and is not there, or not so often. */
function appliances(day: CookDayInput, seen: readonly Seen[], minute: number, tell: Tell): void {
  const inUse = seen.filter((one) => one.step.needs.appliance !== undefined && one.at <= minute && minute < one.end);
  for (const name of new Set(inUse.map((one) => one.step.needs.appliance as string))) {
    const users = inUse.filter((one) => one.step.needs.appliance === name);
    const there = (day.kitchen.appliances ?? []).filter((one) => one.name === name).reduce((sum, one) => sum + one.count, 0);
    if (users.length > there) tell(name, users, `${names(users)} ${users.length === 1 ? "takes" : "take"} the ${name}; the kitchen has ${there === 0 ? "none" : there}.`);
  }
}

/** A numbered cook or burner cannot be in two places. */
function numbers(seen: readonly Seen[], minute: number, tell: Tell): void {
  const clash = (kind: string, busy: readonly Seen[], number: (one: Seen) => number | null | undefined): void => {
    for (const one of busy) {
      const same = busy.filter((other) => typeof number(one) === "number" && number(other) === number(one));
      if (same.length > 1 && same[0] === one) tell(kind, same, `${kind} ${number(one)} has ${names(same)} at once.`);
    }
  };
  clash("cook", seen.filter((one) => one.at <= minute && minute < one.handsEnd), (one) => one.placed.cook);
  clash("burner", seen.filter((one) => (one.step.needs.burners ?? 0) > 0 && one.at <= minute && minute < one.end), (one) => one.placed.burner);
}

interface Heat {
  readonly oven: Oven;
  /** All that is or has been in it. */
  readonly used: Seen[];
}

function inOven(day: CookDayInput, one: Seen): number | null {
  if (one.step.needs.oven === undefined || one.end === one.at) return null;
  return one.placed.oven ?? (day.kitchen.ovens.length === 1 ? 1 : null);
}

function ovenFaults(day: CookDayInput, one: Seen): string[] {
  const need = one.step.needs.oven;
  if (need === undefined || one.end === one.at) return [];
  if (day.kitchen.ovens.length === 0) return [`${one.name} needs an oven; the kitchen has none.`];
  const number = inOven(day, one);
  const oven = number === null ? undefined : day.kitchen.ovens[number - 1];
  if (!oven) return [`${one.name} is not given to one of the ovens.`];
  return oven.trays < need.trays ? [`${one.name} needs ${countWords(need.trays, "tray", "trays")}; the oven holds ${oven.trays}.`] : [];
}

/** Faults of one oven at one minute: room, one heat for all inside, time to heat, time to change. */
function heatAt(heat: Heat, number: number, inside: readonly Seen[], minute: number, tell: Tell): void {
  if (inside.length === 0) return;
  const trays = inside.reduce((sum, one) => sum + (one.step.needs.oven?.trays ?? 0), 0);
  if (trays > heat.oven.trays) tell("trays", inside, `${names(inside)} take ${trays} trays together; oven ${number} holds ${heat.oven.trays}.`);
  const hottestLow = Math.max(...inside.map((one) => heatSpan(one)[0]));
  const coolestHigh = Math.min(...inside.map((one) => heatSpan(one)[1]));
  if (hottestLow > coolestHigh) tell("heat", inside, `${names(inside)} ask oven ${number} for ${listWords([...new Set(inside.map((one) => `${heatWords(one)} °C`))])} at once.`);
  if (heat.used.length === 0 && minute < heat.oven.preheatMin) {
    tell("preheat", inside, `${names(inside)} cannot be in oven ${number} yet; it takes ${lengthWords(heat.oven.preheatMin)} to heat.`);
  }
  for (const one of inside) {
    const before = heat.used.find((other) => other.end <= minute && minute - other.end < heat.oven.changeMin && !shareHeat(one, other));
    if (before) tell("change", [one], `${one.name} cannot be in oven ${number} yet; from ${heatWords(before)} to ${heatWords(one)} °C takes it ${lengthWords(heat.oven.changeMin)}.`);
    if (!heat.used.includes(one)) heat.used.push(one);
  }
}
