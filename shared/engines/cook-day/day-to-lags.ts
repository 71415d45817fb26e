/**
 * From dishes, hands and ovens to the lag form of project.ts. Start 0 is the beginning of the day, start i + 1 is copy i of
 * copies.ts, the last start is the end of the day. All in minutes; grids are made afterwards.
 */
import { highMin, likelyMin, type Copy, type CopyHold, type DayCopies, type Link } from "./copies.ts";
import type { Capacity, Choice, Lag, Pair, Project, Use } from "./project.ts";
import type { Absence, CookDayInput } from "./types.ts";
import { suits } from "./heats.ts";
import { lengthWords, stepName } from "./words.ts";

const BEGIN = 0;
const NEVER = -100_000_000;

export const startOf = (copy: number): number => copy + 1;

export function projectOf(day: CookDayInput, model: DayCopies): Project {
  const { copies, links, holds } = model;
  const end = copies.length + 1;
  const name = (copy: number): string => stepName(day, copies[copy]);
  const lags: Lag[] = copies.flatMap((copy, i): Lag[] => [
    { from: BEGIN, to: startOf(i), min: 0, why: "" },
    { from: startOf(i), to: end, min: likelyMin(copy), why: `${name(i)} takes ${lengthWords(likelyMin(copy))}` },
    ...fixedTimes(copies, i),
  ]);
  for (const { before, after, maxWait } of links) {
    const length = likelyMin(copies[before] as Copy);
    lags.push({ from: startOf(before), to: startOf(after), min: length, why: `${name(before)} takes ${lengthWords(length)} and comes before ${name(after)}` });
    if (maxWait !== null) lags.push({ from: startOf(after), to: startOf(before), min: -(length + maxWait), why: "" });
  }
  // What is kept from one step to another puts the two in that order.
  for (const { from, to } of holds) if (from !== to) lags.push({ from: startOf(from), to: startOf(to), min: 0, why: `${name(from)} comes before ${name(to)}` });
  lags.push(...loadOrder(copies), ...limitLags(model));
  if (day.endByMin !== null) lags.push({ from: end, to: BEGIN, min: -day.endByMin, why: "" });
  const things = (["burners", "pots", "sinks"] as const).map((what): Capacity => ({ name: what, limit: day.kitchen[what], uses: thingUses(what, copies, holds) }));
  const appliances = appliancesOf(day, copies);
  const ovens = ovenParts(day, copies);
  return {
    starts: copies.length + 2,
    end,
    lengths: [0, ...copies.map(likelyMin), 0],
    lags: [...lags, ...ovens.lags],
    capacities: [{ name: "cooks", limit: day.kitchen.cooks, uses: cookUses(day, copies) }, ...things, ...appliances, ...ovens.capacities],
    pairs: ovens.pairs,
    choices: ovens.choices,
  };
}

function fixedTimes(copies: readonly Copy[], i: number): Lag[] {
  const copy = copies[i] as Copy;
  const { notBeforeMin, startAtMin, endByMin } = copy.step;
  const lags: Lag[] = [];
  const earliest = (min: number): void => void lags.push({ from: BEGIN, to: startOf(i), min, why: "" });
  const latest = (min: number): void => void lags.push({ from: startOf(i), to: BEGIN, min: -min, why: "" });
  if (notBeforeMin !== undefined) earliest(notBeforeMin);
  if (startAtMin !== undefined) earliest(startAtMin);
  // A fixed start is that of the first load; the others follow.
  if (startAtMin !== undefined && (copy.load ?? 1) === 1) latest(startAtMin);
  if (endByMin !== undefined) latest(endByMin - likelyMin(copy));
  return lags;
}

/** Loads are alike, so they may as well start in their order: it spares proving the same thing for every order of them. */
function loadOrder(copies: readonly Copy[]): Lag[] {
  return copies.flatMap((copy, i) => ((copy.load ?? 1) > 1 ? [{ from: startOf(i - 1), to: startOf(i), min: 0, why: "" }] : []));
}

/**
 * The limit itself, and for every step in between that has a range: from its planned start, with everything up to the end of
 * the chain at its longest, the limit is still kept.
 */
function limitLags({ copies, links, limits }: DayCopies): Lag[] {
  const lags: Lag[] = [];
  for (const { from, to, maxMin } of limits) {
    const length = likelyMin(copies[from] as Copy);
    lags.push({ from: startOf(to), to: startOf(from), min: -(length + maxMin), why: "" });
    for (const [copy, longest] of longestTo(copies, links, from, to)) {
      lags.push({ from: startOf(copy), to: startOf(from), min: longest - length - maxMin, why: "" });
    }
  }
  return lags;
}

/** Copies between two others, with the longest time from their start to the start of the last, ranges at their high end. */
function longestTo(copies: readonly Copy[], links: readonly Link[], from: number, to: number): Map<number, number> {
  const between = new Map<number, number>();
  const longest = (copy: number): number => {
    if (copy === to) return 0;
    const known = between.get(copy);
    if (known !== undefined) return known;
    let most = NEVER;
    // A step that waits for itself is found as a cycle of the lags; here it must only not run for ever.
    between.set(copy, NEVER);
    for (const link of links) if (link.before === copy) most = Math.max(most, longest(link.after) + highMin(copies[copy] as Copy));
    between.set(copy, most);
    return most;
  };
  longest(from);
  return new Map([...between].filter(([copy, most]) => copy !== from && most > NEVER / 2));
}

function cookUses(day: CookDayInput, copies: readonly Copy[]): Use[] {
  const away = absencesByCook(day).map(({ fromMin, toMin }) => ({ from: BEGIN, head: fromMin, to: BEGIN, tail: toMin, amount: 1, option: -1 }));
  const hands = copies.flatMap((copy, i) => (copy.step.handsOnMin > 0 ? [whole(i, copy.step.handsOnMin, 1)] : []));
  return [...away, ...hands];
}

/**
 * Absences say "a cook", so they are given to cooks as they begin; where more are away than there are cooks, the part that
 * takes nobody away falls out. Half-open spans of minutes.
 */
export function absencesByCook(day: CookDayInput): (Absence & { cook: number })[] {
  const backAt = new Array<number>(day.kitchen.cooks).fill(0);
  const sorted = [...day.unavailable].sort((a, b) => a.fromMin - b.fromMin || a.toMin - b.toMin);
  return sorted.flatMap((absence) => {
    let cook = 0;
    for (let c = 1; c < backAt.length; c++) if ((backAt[c] as number) < (backAt[cook] as number)) cook = c;
    const fromMin = Math.max(absence.fromMin, backAt[cook] ?? absence.toMin);
    if (fromMin >= absence.toMin) return [];
    backAt[cook] = absence.toMin;
    return [{ ...absence, fromMin, cook }];
  });
}

function thingUses(what: "burners" | "pots" | "sinks", copies: readonly Copy[], holds: readonly CopyHold[]): Use[] {
  const needed = copies.flatMap((copy, i) => ((copy.step.needs[what] ?? 0) > 0 ? [whole(i, likelyMin(copy), copy.step.needs[what] as number)] : []));
  const kept = holds.filter((hold) => hold.what === what);
  const held = kept.map(({ from, to }): Use => ({ from: startOf(from), head: 0, to: startOf(to), tail: likelyMin(copies[to] as Copy), amount: 1, option: -1 }));
  return [...needed, ...held].filter((use) => use.from !== use.to || use.tail > use.head);
}

/** Everything that a step asks for by name, whether the kitchen has it or not. */
function appliancesOf(day: CookDayInput, copies: readonly Copy[]): Capacity[] {
  const names = new Set(copies.flatMap(({ step }) => step.needs.appliance ?? []));
  return [...names].map((name) => ({
    name,
    limit: (day.kitchen.appliances ?? []).reduce((sum, one) => sum + (one.name === name ? one.count : 0), 0),
    uses: copies.flatMap((copy, i) => (copy.step.needs.appliance === name && likelyMin(copy) > 0 ? [whole(i, likelyMin(copy), 1)] : [])),
  }));
}

const whole = (copy: number, tail: number, amount: number, option = -1): Use => ({ from: startOf(copy), head: 0, to: startOf(copy), tail, amount, option });

function ovenParts(day: CookDayInput, copies: readonly Copy[]): { lags: Lag[]; capacities: Capacity[]; pairs: Pair[]; choices: Choice[] } {
  const { ovens } = day.kitchen;
  const baked = copies.flatMap((copy, i) => (copy.step.needs.oven && likelyMin(copy) > 0 ? [{ i, copy, ...copy.step.needs.oven, heat: copy.step.needs.oven }] : []));
  const single = ovens.length <= 1;
  const lags: Lag[] = [];
  const choices: Choice[] = [];
  const uses: Use[][] = ovens.map(() => []);
  const nowhere: Use[] = [];
  for (const { i, copy, trays } of baked) {
    const earliest = ovens.map((oven) => (oven.trays >= trays ? oven.preheatMin : null));
    if (earliest.every((e) => e === null)) nowhere.push(whole(i, likelyMin(copy), trays));
    else if (single) lags.push({ from: BEGIN, to: startOf(i), min: earliest[0] as number, why: "the oven has to heat first" });
    else choices.push({ start: startOf(i), earliest: alike(ovens) && choices.length === 0 ? earliest.map((e, k) => (k === 0 ? e : null)) : earliest });
    ovens.forEach((_, k) => (uses[k] as Use[]).push(whole(i, likelyMin(copy), trays, single ? -1 : k)));
  }
  const pairs = ovens.flatMap((oven, k) =>
    baked.flatMap((one, at) =>
      baked.slice(at + 1).flatMap((other): Pair[] => {
        if (suits(one.heat, other.heat)) return [];
        const gap = (copy: number): number => likelyMin(copies[copy] as Copy) + oven.changeMin;
        return [{ a: startOf(one.i), b: startOf(other.i), ab: gap(one.i), ba: gap(other.i), option: single ? -1 : k }];
      }),
    ),
  );
  const capacities = ovens.map((oven, k): Capacity => ({ name: "trays", limit: oven.trays, uses: uses[k] as Use[] }));
  return { lags, choices, pairs, capacities: [...capacities, { name: "ovens", limit: 0, uses: nowhere }] };
}

/** Ovens that are alike may be numbered by who is baked first, which spares trying both numbers. */
function alike(ovens: CookDayInput["kitchen"]["ovens"]): boolean {
  return ovens.every((oven) => oven.trays === ovens[0]?.trays && oven.preheatMin === ovens[0].preheatMin && oven.changeMin === ovens[0].changeMin);
}
