/**
 * How much play a plan has: how late a step may start, how long food stands, and when the day ends if everything with a range
 * is quick or slow and the order stays. Minutes; `starts` by copy.
 */
import { likelyMin, type Copy, type DayCopies } from "./copies.ts";
import { absencesByCook } from "./day-to-lags.ts";
import type { Hands } from "./assign.ts";
import { suits } from "./heats.ts";
import type { CookDayInput, CookDayPlan } from "./types.ts";

type Starts = readonly number[];

/** The longest actual wait over links with a longest wait; 0 where there is none. */
export function longestStand({ copies, links }: DayCopies, starts: Starts): number {
  return links.reduce((longest, { before, after, maxWait }) => (maxWait === null ? longest : Math.max(longest, (starts[after] as number) - endOf(copies, starts, before))), 0);
}

/** How late each copy may start without breaking a longest wait, a limit or a fixed time, the rest as planned; null = no such bound. */
export function mustStartBy({ copies, links, limits }: DayCopies, starts: Starts): (number | null)[] {
  const latest = copies.map((copy): number | null => {
    const { startAtMin, endByMin } = copy.step;
    const bounds = [(copy.load ?? 1) === 1 ? startAtMin : undefined, endByMin === undefined ? undefined : endByMin - likelyMin(copy)];
    return bounds.reduce((least: number | null, at) => earlier(least, at ?? null), null);
  });
  for (const { before, after, maxWait } of links) if (maxWait !== null) latest[after] = earlier(latest[after] ?? null, endOf(copies, starts, before) + maxWait);
  for (const { from, to, maxMin } of limits) latest[to] = earlier(latest[to] ?? null, endOf(copies, starts, from) + maxMin);
  return latest;
}

/**
 * The end with every range at its low, likely and high: the same order of everything that shares hands, ovens or things, each
 * step as soon as what it follows allows. Longest waits are not looked at; what stands too long then is told at the counter.
 */
export function endSpread(day: CookDayInput, model: DayCopies, starts: Starts, hands: readonly Hands[]): NonNullable<CookDayPlan["endSpread"]> {
  const likely = model.copies.reduce((last, _, i) => Math.max(last, endOf(model.copies, starts, i)), 0);
  const low = replay(day, model, starts, hands, (copy) => copy.handsOff.low);
  const high = replay(day, model, starts, hands, (copy) => copy.handsOff.high);
  return { low: Math.min(low, likely), likely, high: Math.max(high, likely) };
}

function replay(day: CookDayInput, model: DayCopies, starts: Starts, hands: readonly Hands[], off: (copy: Copy) => number): number {
  const { copies, links } = model;
  const order = copies.map((_, i) => i).sort((a, b) => (starts[a] as number) - (starts[b] as number) || endOf(copies, starts, a) - endOf(copies, starts, b));
  const follows = followers(day, model, starts, hands);
  const away = absencesByCook(day);
  const begun = new Array<number>(copies.length).fill(0);
  const ended = (i: number): number => (begun[i] as number) + (copies[i] as Copy).step.handsOnMin + off(copies[i] as Copy);
  for (const i of order) {
    const { step } = copies[i] as Copy;
    let at = Math.max(step.notBeforeMin ?? 0, step.startAtMin ?? 0, step.needs.oven ? (day.kitchen.ovens[(hands[i]?.oven ?? 1) - 1]?.preheatMin ?? 0) : 0);
    for (const link of links) if (link.after === i) at = Math.max(at, ended(link.before));
    for (const { earlier: other, hands: onlyHands, gap } of follows[i] as Follow[]) {
      at = Math.max(at, gap + (onlyHands ? (begun[other] as number) + (copies[other] as Copy).step.handsOnMin : ended(other)));
    }
    // Work pushed into an absence waits until that cook is back; who is away is not told, so every cook's absence counts for one cook only.
    if (day.kitchen.cooks === 1 && step.handsOnMin > 0) for (const { fromMin, toMin } of away) if (at < toMin && at + step.handsOnMin > fromMin) at = toMin;
    begun[i] = at;
  }
  return copies.reduce((last, _, i) => Math.max(last, ended(i)), 0);
}

interface Follow {
  readonly earlier: number;
  /** Waits for the hands-on part only. */
  readonly hands: boolean;
  readonly gap: number;
}

/** What each copy takes over from: the same cook's work before it, the oven's before it, the things that had just come free. */
function followers(day: CookDayInput, model: DayCopies, starts: Starts, hands: readonly Hands[]): Follow[][] {
  const { copies, holds } = model;
  const follows: Follow[][] = copies.map(() => []);
  copies.forEach((copy, i) => {
    copies.forEach((other, j) => {
      if (i === j) return;
      const handsEnd = (starts[j] as number) + other.step.handsOnMin;
      if (hands[i]?.cook && hands[i].cook === hands[j]?.cook && handsEnd <= (starts[i] as number)) follows[i]?.push({ earlier: j, hands: true, gap: 0 });
      const [bake, baked] = [copy.step.needs.oven, other.step.needs.oven];
      const oven = hands[i]?.oven ?? 0;
      if (!bake || !baked || oven !== hands[j]?.oven || suits(bake, baked) || endOf(copies, starts, j) > (starts[i] as number)) return;
      follows[i]?.push({ earlier: j, hands: false, gap: day.kitchen.ovens[oven - 1]?.changeMin ?? 0 });
    });
  });
  const span = (from: number, to: number, units: number): Span => ({ first: from, last: to, from: starts[from] as number, to: endOf(copies, starts, to), units });
  for (const what of ["burners", "pots", "sinks"] as const) {
    const needed = copies.flatMap((copy, i) => ((copy.step.needs[what] ?? 0) > 0 ? [span(i, i, copy.step.needs[what] as number)] : []));
    handOver([...needed, ...holds.filter((hold) => hold.what === what).map((hold) => span(hold.from, hold.to, 1))], day.kitchen[what], follows);
  }
  day.kitchen.ovens.forEach((oven, o) => {
    const baked = copies.flatMap((copy, i) => (copy.step.needs.oven && hands[i]?.oven === o + 1 ? [span(i, i, copy.step.needs.oven.trays)] : []));
    handOver(baked, oven.trays, follows);
  });
  return follows;
}

interface Span {
  readonly first: number;
  readonly last: number;
  readonly from: number;
  readonly to: number;
  readonly units: number;
}

/** Each takes the units that have been free longest, so that a late step pushes as little as it must. */
function handOver(spans: readonly Span[], count: number, follows: Follow[][]): void {
  const units = Array.from({ length: count }, () => ({ freeAt: 0, last: -1 }));
  for (const span of [...spans].sort((a, b) => a.from - b.from || a.to - b.to)) {
    const free = units.filter((unit) => unit.freeAt <= span.from).sort((a, b) => a.freeAt - b.freeAt);
    for (const unit of free.slice(0, span.units)) {
      if (unit.last >= 0) follows[span.first]?.push({ earlier: unit.last, hands: false, gap: 0 });
      [unit.freeAt, unit.last] = [span.to, span.last];
    }
  }
}

function endOf(copies: readonly Copy[], starts: Starts, i: number): number {
  return (starts[i] as number) + likelyMin(copies[i] as Copy);
}

function earlier(one: number | null, other: number | null): number | null {
  if (one === null || other === null) return one ?? other;
  return Math.min(one, other);
}
