/**
 * Every placing of the steps of a small day, tried one after another. Nothing of the scheduler is used: what is plainly taken
 * already is passed over by counts kept here, and each whole placing is judged by the referee. Minutes.
 */
import { checkCookDay, type CookDayInput, type DayDish, type PlacedStep } from "#shared/engines/cook-day/index.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";

export interface BestPlacing {
  readonly endMin: number;
  /** Shortest longest stand among placings that end there. */
  readonly longestStandMin: number;
}

interface Part {
  readonly dish: DayDish;
  readonly step: RecipeStep;
  readonly load: number;
  readonly loads: number;
  readonly length: number;
  /** Numbers of the parts it waits for, with the longest wait. */
  before: { part: number; longest: number | undefined }[];
  /** Longest chain of lengths from its start on. */
  tail: number;
}

/** Best placing, null when there is none, undefined when that would take more than `mostTries` looks. */
export function bestPlacing(day: CookDayInput, mostTries: number): BestPlacing | null | undefined {
  const parts = partsOf(day);
  if (parts === null) return null;
  const tries = new Tries(day, parts, mostTries);
  return tries.all() ? tries.best : undefined;
}

/** In an order in which everything comes after what it waits for; null when there is none. */
function partsOf(day: CookDayInput): Part[] | null {
  const all = day.dishes.flatMap((dish) => dish.steps.flatMap((step) => {
    const loads = step.loads ? Math.max(1, Math.ceil((step.loads.of * dish.batches) / step.loads.holds)) : 1;
    const length = step.handsOnMin + (typeof step.handsOffMin === "number" ? step.handsOffMin : step.handsOffMin.likely);
    return Array.from({ length: loads }, (_, k): Part => ({ dish, step, load: k + 1, loads, length, before: [], tail: 0 }));
  }));
  const waitsFor = (one: Part): { other: Part; longest: number | undefined }[] =>
    one.step.after.flatMap((id) => {
      const longest = typeof one.step.maxWaitMin === "object" ? one.step.maxWaitMin[id] : one.step.maxWaitMin;
      const own = all.filter((other) => (other.dish === one.dish && other.step.id === id) || `${other.dish.id}/${other.step.id}` === id);
      return own.filter((other) => other.dish !== one.dish || other.loads !== one.loads || other.load === one.load).map((other) => ({ other, longest }));
    });
  const order: Part[] = [];
  while (order.length < all.length) {
    const next = all.find((one) => !order.includes(one) && waitsFor(one).every(({ other }) => order.includes(other)));
    if (!next) return null;
    order.push(next);
  }
  for (const one of order) one.before = waitsFor(one).map(({ other, longest }) => ({ part: order.indexOf(other), longest }));
  for (const one of [...order].reverse()) one.tail = one.length + Math.max(0, ...order.filter((later) => later.before.some(({ part }) => order[part] === one)).map((later) => later.tail));
  return order;
}

/** What is kept from the start of the first part to the end of the last. */
interface Kept {
  readonly what: Thing;
  readonly from: readonly number[];
  readonly to: readonly number[];
}

type Thing = "burners" | "pots" | "sinks";
const THINGS: readonly Thing[] = ["burners", "pots", "sinks"];

/** What one verdict of the referee counts for. */
const LOOKS_OF_A_REFEREE = 100;

class Tries {
  best: BestPlacing | null = null;
  private readonly day: CookDayInput;
  private readonly parts: readonly Part[];
  private left: number;
  private readonly starts: number[] = [];
  private readonly ovens: (number | null)[] = [];
  private readonly latest: number;
  /** What is left at each minute: hands, burners, pots, sinks, then the trays of each oven. */
  private readonly free: Int16Array[];
  /** By part: the burners, pots and sinks it takes, and what is kept over parts of which it is the last. */
  private readonly things: readonly (readonly { row: number; amount: number }[])[];
  private readonly kept: readonly (readonly Kept[])[];
  /** By two parts: whether one heat suits both. */
  private readonly shared: readonly (readonly boolean[])[];
  private readonly within: readonly { from: number; to: number; most: number }[];

  constructor(day: CookDayInput, parts: readonly Part[], mostTries: number) {
    this.day = day;
    this.parts = parts;
    this.left = mostTries;
    this.latest = day.endByMin ?? longestEnd(day, parts);
    const { kitchen, unavailable } = day;
    this.free = [kitchen.cooks, kitchen.burners, kitchen.pots, kitchen.sinks, ...kitchen.ovens.map((oven) => oven.trays)].map((most) => new Int16Array(this.latest + 1).fill(most));
    for (const away of unavailable) for (let t = away.fromMin; t < Math.min(away.toMin, this.latest); t++) (this.free[0] as Int16Array)[t] = Math.max(0, ((this.free[0] as Int16Array)[t] as number) - 1);
    this.things = parts.map(({ step }) => THINGS.flatMap((what, t) => (step.needs[what] ? [{ row: t + 1, amount: step.needs[what] }] : [])));
    const kept = keptOf(day, parts);
    this.kept = parts.map((_, k) => kept.filter(({ from, to }) => Math.max(...from, ...to) === k));
    this.shared = parts.map((one) => parts.map((other) => shareHeat(one, other)));
    this.within = limitsOf(day, parts);
  }

  all(): boolean {
    this.place(0, 0, 0);
    return this.left > 0;
  }

  private place(k: number, end: number, stand: number): void {
    const part = this.parts[k];
    if (part === undefined) return this.judge();
    let [from, to] = [0, this.latest - part.tail];
    for (const { part: before, longest } of part.before) {
      from = Math.max(from, this.endOf(before));
      if (longest !== undefined) to = Math.min(to, this.endOf(before) + longest);
    }
    const { startAtMin, notBeforeMin, endByMin } = part.step;
    from = Math.max(from, notBeforeMin ?? 0, startAtMin ?? 0);
    if (startAtMin !== undefined && part.load === 1) to = Math.min(to, startAtMin);
    if (endByMin !== undefined) to = Math.min(to, endByMin - part.length);
    for (const limit of this.within) if (limit.to === k) to = Math.min(to, this.endOf(limit.from) + limit.most);
    const bakes = part.step.needs.oven !== undefined && part.length > 0;
    const ovens = bakes ? this.day.kitchen.ovens.length : 1;
    for (let at = from; at <= to; at++) {
      let stands = stand;
      for (const { part: before, longest } of part.before) if (longest !== undefined) stands = Math.max(stands, at - this.endOf(before));
      if (this.isNoBetter(Math.max(end, at + part.tail), stands)) continue;
      for (let o = 0; o < ovens; o++) {
        if (this.left-- <= 0) return;
        [this.starts[k], this.ovens[k]] = [at, bakes ? o + 1 : null];
        const fits = this.take(k, -1);
        if (fits) this.place(k + 1, Math.max(end, at + part.length), stands);
        this.take(k, 1);
      }
    }
  }

  private isNoBetter(end: number, stand: number): boolean {
    return this.best !== null && (end > this.best.endMin || (end === this.best.endMin && stand >= this.best.longestStandMin));
  }

  private endOf(k: number): number {
    return (this.starts[k] as number) + (this.parts[k] as Part).length;
  }

  /** Takes (−1) or gives back (1) all that part k needs; false where something is then lacking, or two heats come too close. */
  private take(k: number, sign: 1 | -1): boolean {
    const { step, length } = this.parts[k] as Part;
    const at = this.starts[k] as number;
    let fits = this.span(0, at, at + step.handsOnMin, sign);
    for (const { row, amount } of this.things[k] as Tries["things"][number]) fits = this.span(row, at, at + length, sign * amount) && fits;
    const oven = this.ovens[k];
    if (step.needs.oven && typeof oven === "number") fits = this.span(3 + oven, at, at + length, sign * step.needs.oven.trays) && this.heatFits(k) && fits;
    for (const { what, from, to } of this.kept[k] as readonly Kept[]) {
      fits = this.span(THINGS.indexOf(what) + 1, Math.min(...from.map((one) => this.starts[one] as number)), Math.max(...to.map((one) => this.endOf(one))), sign) && fits;
    }
    return fits;
  }

  private span(what: number, from: number, to: number, amount: number): boolean {
    if (amount === 0) return true;
    const left = this.free[what] as Int16Array;
    let fits = true;
    for (let t = Math.max(0, from); t < Math.min(to, left.length); t++) {
      left[t] = (left[t] as number) + amount;
      fits &&= (left[t] as number) >= 0;
    }
    return fits;
  }

  private heatFits(k: number): boolean {
    const oven = this.ovens[k] as number;
    const { preheatMin, changeMin } = this.day.kitchen.ovens[oven - 1] as CookDayInput["kitchen"]["ovens"][number];
    const at = this.starts[k] as number;
    if (this.endOf(k) === at) return true;
    for (let i = 0; i < k; i++) {
      if (this.ovens[i] !== oven || this.shared[i]?.[k] || this.endOf(i) === this.starts[i]) continue;
      if (at < this.endOf(i) + changeMin && (this.starts[i] as number) < this.endOf(k) + changeMin) return false;
    }
    return at >= preheatMin;
  }

  private judge(): void {
    this.left -= LOOKS_OF_A_REFEREE;
    const placed = this.parts.map(({ dish, step, load, loads }, k): PlacedStep => ({ dish: dish.id, step: step.id, load: loads > 1 ? load : null, startMin: this.starts[k] as number, oven: this.ovens[k] ?? null }));
    const { faults, measures } = checkCookDay(this.day, placed);
    if (faults.length > 0 || measures === null) return;
    const { endMin, longestStandMin } = measures;
    if (!this.isNoBetter(endMin, longestStandMin)) this.best = { endMin, longestStandMin };
  }
}

function shareHeat(one: Part, other: Part): boolean {
  const [a, b] = [one.step.needs.oven, other.step.needs.oven];
  return !a || !b || ((a.fromC ?? a.c) <= (b.toC ?? b.c) && (b.fromC ?? b.c) <= (a.toC ?? a.c));
}

const numbersOf = (parts: readonly Part[], dish: DayDish, id: string): number[] => parts.flatMap((part, k) => (part.dish === dish && part.step.id === id ? [k] : [])).sort((a, b) => (parts[a] as Part).load - (parts[b] as Part).load);

function keptOf(day: CookDayInput, parts: readonly Part[]): Kept[] {
  return day.dishes.flatMap((dish) => dish.holds.flatMap(({ what, from, to }): Kept[] => {
    const [froms, tos] = [numbersOf(parts, dish, from), numbersOf(parts, dish, to)];
    return froms.length === tos.length ? froms.map((one, k) => ({ what, from: [one], to: [tos[k] as number] })) : [{ what, from: froms, to: tos }];
  }));
}

/** Limits between parts of which one waits for the other, directly or not, where the later one is placed later; the rest is the referee's. */
function limitsOf(day: CookDayInput, parts: readonly Part[]): { from: number; to: number; most: number }[] {
  const leads = (from: number, to: number): boolean => from === to || (parts[to] as Part).before.some(({ part }) => leads(from, part));
  return day.dishes.flatMap((dish) => dish.limits.flatMap(({ from, to, maxMin }) =>
    numbersOf(parts, dish, from).flatMap((one) => numbersOf(parts, dish, to).flatMap((other) => (one < other && leads(one, other) ? [{ from: one, to: other, most: maxMin }] : []))),
  ));
}

/** No plan of least end is longer: all minutes one after another, each with a change of the oven, from the last fixed moment on. */
function longestEnd(day: CookDayInput, parts: readonly Part[]): number {
  const change = day.kitchen.ovens.reduce((most, oven) => Math.max(most, oven.changeMin), 0);
  const moments = [
    ...day.unavailable.map((one) => one.toMin),
    ...day.kitchen.ovens.map((oven) => oven.preheatMin),
    ...parts.flatMap(({ step }) => [step.notBeforeMin ?? 0, step.startAtMin ?? 0]),
  ];
  return Math.max(0, ...moments) + parts.reduce((sum, part) => sum + part.length + (part.step.needs.oven ? change : 0), 0);
}
