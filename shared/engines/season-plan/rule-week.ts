/** One run of the simple rule over one course, a week at a time: what is on hand, in store and used up, and the steps of a week. */
import { refusalOf } from "./legal.ts";
import { EatingPlan } from "./rule-eating.ts";
import type { Batches, Course, Method, Season } from "./types.ts";

export interface Limits {
  /** Batches that were booked are the most that may be made; null: free. */
  readonly booked: readonly Batches[] | null;
  readonly recourse: boolean;
}

interface Lot {
  readonly lastWeek: number;
  grams: number;
}

export class RuleWeek {
  private t = 0;
  private readonly lots = new Map<string, Lot[]>();
  /** By method index, then week. */
  private readonly made: number[][];
  private readonly usedWeekly = new Map<string, number>();
  private readonly usedSoFar = new Map<string, number>();
  private readonly eating: EatingPlan;
  private readonly done: { made: Batches[]; eat: Course["eat"][number][]; give: Course["give"][number][] } = { made: [], eat: [], give: [] };
  private readonly season: Season;
  private readonly s: number;
  private readonly limits: Limits;
  /** Allowed methods by index, in the order of their ids, so that ties go to the first. */
  private readonly order: readonly number[];
  private readonly indexOf: ReadonlyMap<string, number>;

  constructor(season: Season, s: number, limits: Limits) {
    this.season = season;
    this.s = s;
    this.limits = limits;
    this.made = season.methods.map(() => new Array<number>(season.weeks).fill(0));
    this.eating = new EatingPlan(season, this.made);
    for (const { crop } of season.crops) this.lots.set(crop, []);
    this.indexOf = new Map(season.methods.map(({ id }, m) => [id, m]));
    const allowed = season.methods.flatMap((method, m) => (refusalOf(method, season.equipment) === null && (limits.recourse || !method.recourse) ? [m] : []));
    this.order = allowed.sort((a, b) => byId(season.methods[a] as Method, season.methods[b] as Method));
  }

  begin(t: number): void {
    this.t = t;
    this.usedWeekly.clear();
    for (const crop of this.season.crops) {
      const grams = crop.harvestGrams[this.s]?.[t] ?? 0;
      if (grams > 0) this.lots.get(crop.crop)?.push({ lastWeek: t + crop.keepWeeks - 1, grams });
    }
  }

  eatFresh(): void {
    for (const { crop, freshGrams } of this.season.crops) {
      const grams = this.take(crop, freshGrams[this.t] ?? 0, Infinity);
      if (grams > 0) this.done.eat.push({ crop, week: this.t, grams });
    }
  }

  makeAgreed(): void {
    for (const { method, week, batches } of this.season.agreed) {
      const m = this.indexOf.get(method) ?? -1;
      if (week !== this.t || !this.order.includes(m)) continue;
      let made = 0;
      while (made < batches) {
        const more = this.fits(m);
        if (more === 0 || made + more > batches) break;
        this.make(m, more);
        made += more;
      }
    }
  }

  saveWhatGoesOff(): void {
    for (;;) {
      const crops = this.season.crops.map(({ crop }) => ({ crop, grams: this.goesOff(crop) })).filter(({ grams }) => grams > 0);
      crops.sort((a, b) => b.grams - a.grams || (a.crop < b.crop ? -1 : 1));
      const short = new Set(this.shortfalls().flatMap(({ methods }) => methods));
      const best = firstOf(crops, ({ crop }) => this.bestFor(crop, short));
      if (!best) return;
      this.make(best.m, best.batches);
    }
  }

  makeWhatIsAskedFor(): void {
    for (;;) {
      const wanted = this.shortfalls().sort((a, b) => b.portions - a.portions || (a.id < b.id ? -1 : 1));
      const best = firstOf(wanted, ({ methods }) => this.mostPortions(methods));
      if (!best) return;
      this.make(best.m, best.batches);
    }
  }

  give(): void {
    for (const { crop, giveGrams } of this.season.crops) {
      const grams = this.take(crop, giveGrams[this.t] ?? 0, this.t);
      if (grams > 0) this.done.give.push({ crop, week: this.t, grams });
    }
  }

  /** What goes off is lost; then the week's portions are eaten. */
  end(): void {
    for (const [crop, lots] of this.lots) this.lots.set(crop, lots.filter(({ lastWeek, grams }) => lastWeek > this.t && grams > 0));
    this.eating.eat(this.t);
  }

  course(): Course {
    return { ...this.done, draw: this.eating.drawn() };
  }

  private goesOff(crop: string): number {
    return (this.lots.get(crop) ?? []).reduce((sum, lot) => sum + (lot.lastWeek === this.t ? lot.grams : 0), 0);
  }

  private onHand(crop: string): number {
    return (this.lots.get(crop) ?? []).reduce((sum, { grams }) => sum + grams, 0);
  }

  /** First to expire; only lots whose last week is no later than `until`. Lots are kept in that order. */
  private take(crop: string, most: number, until: number): number {
    let taken = 0;
    for (const lot of this.lots.get(crop) ?? []) {
      if (lot.lastWeek > until) break;
      const grams = Math.min(lot.grams, most - taken);
      lot.grams -= grams;
      taken += grams;
    }
    return taken;
  }

  private bestFor(crop: string, short: ReadonlySet<string>): { m: number; batches: number } | null {
    let best: { m: number; batches: number; asked: boolean; rate: number } | null = null;
    for (const m of this.order) {
      const method = this.season.methods[m] as Method;
      const grams = method.uses.find((use) => use.crop === crop)?.grams ?? 0;
      if (grams <= 0) continue;
      const batches = this.fits(m);
      if (batches === 0) continue;
      const asked = short.has(method.id);
      const rate = grams / Math.max(1, method.perBatch["hands-on"] ?? 0);
      if (!best || (asked && !best.asked) || (asked === best.asked && rate > best.rate)) best = { m, batches, asked, rate };
    }
    return best;
  }

  private mostPortions(methods: readonly string[]): { m: number; batches: number } | null {
    let best: { m: number; batches: number; rate: number } | null = null;
    for (const m of this.order) {
      const method = this.season.methods[m] as Method;
      if (!methods.includes(method.id) || method.portions <= 0) continue;
      const batches = this.fits(m);
      const rate = method.portions / Math.max(1, method.perBatch["hands-on"] ?? 0);
      if (batches > 0 && (!best || rate > best.rate)) best = { m, batches, rate };
    }
    return best;
  }

  /** Targets not past and wishes open this week that are still short, with the portions that are missing now. */
  private shortfalls(): { id: string; methods: readonly string[]; portions: number }[] {
    const { season, t } = this;
    const index = (id: string): number => this.indexOf.get(id) ?? -1;
    const targets = season.targets.filter(({ atWeek }) => t <= atWeek).map((target) => ({
      ...target,
      portions: target.portions - target.methods.reduce((sum, id) => sum + this.eating.inStore(index(id)), 0),
    }));
    const wishes = season.wishes.filter(({ from, until }) => t >= from && t < until).map((wish) => ({
      ...wish,
      portions: wish.portions - wish.methods.reduce((sum, id) => sum + (season.methods[index(id)]?.portions ?? 0) * sumOf(this.made[index(id)] ?? [], wish.from, wish.until), 0),
    }));
    return [...targets, ...wishes].filter(({ portions }) => portions > 0);
  }

  /** How many batches the next step adds (one, or a session's least), or 0 where that does not fit. */
  private fits(m: number): number {
    const { season, t } = this;
    const method = season.methods[m] as Method;
    const made = this.made[m]?.[t] ?? 0;
    const more = made === 0 ? Math.max(1, method.sessionBatches.min) : 1;
    if (made + more > Math.min(method.sessionBatches.max, this.mostBooked(method))) return 0;
    if (method.uses.some(({ crop, grams }) => this.onHand(crop) < grams * more)) return 0;
    for (const { id, kind, amount } of season.resources) {
      const use = (made === 0 ? (method.perSession[id] ?? 0) : 0) + more * (method.perBatch[id] ?? 0);
      if (use <= 0) continue;
      if (kind === "weekly" && (this.usedWeekly.get(id) ?? 0) + use > (amount[t] ?? 0) + 1e-9) return 0;
      if (kind === "consumed" && (this.usedSoFar.get(id) ?? 0) + use > leastFrom(amount, t) + 1e-9) return 0;
      if (kind === "held" && !this.eating.hasRoom(id, t, use, m, more)) return 0;
    }
    return this.eating.canBeEatenInTime(m, t, more) ? more : 0;
  }

  private mostBooked(method: Method): number {
    const { booked } = this.limits;
    const closed = this.season.atMost?.find((line) => line.method === method.id && line.week === this.t)?.batches ?? Infinity;
    if (!booked || method.recourse) return closed;
    return booked.find((line) => line.method === method.id && line.week === this.t)?.batches ?? 0;
  }

  private make(m: number, more: number): void {
    const method = this.season.methods[m] as Method;
    const weeks = this.made[m] as number[];
    const first = (weeks[this.t] ?? 0) === 0;
    weeks[this.t] = (weeks[this.t] ?? 0) + more;
    for (const { crop, grams } of method.uses) this.take(crop, grams * more, Infinity);
    for (const { id, kind } of this.season.resources) {
      const use = (first ? (method.perSession[id] ?? 0) : 0) + more * (method.perBatch[id] ?? 0);
      const sums = kind === "weekly" ? this.usedWeekly : this.usedSoFar;
      sums.set(id, (sums.get(id) ?? 0) + use);
    }
    this.eating.store(m, this.t, more * method.portions);
    const line = this.done.made.findIndex(({ method: id, week }) => id === method.id && week === this.t);
    const batches = { method: method.id, week: this.t, batches: weeks[this.t] as number };
    if (line < 0) this.done.made.push(batches);
    else this.done.made[line] = batches;
  }
}

function sumOf(weeks: readonly number[], from: number, until: number): number {
  return weeks.slice(from, until).reduce((sum, batches) => sum + batches, 0);
}

function byId(a: Method, b: Method): number {
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

/** What was bought is there from then on, so the least amount from now is what may be used up. */
function leastFrom(amount: readonly number[], t: number): number {
  let least = amount[t] ?? 0;
  for (let later = t + 1; later < amount.length; later++) least = Math.min(least, amount[later] as number);
  return least;
}

function firstOf<T, Found>(list: readonly T[], find: (item: T) => Found | null): Found | null {
  for (const item of list) {
    const found = find(item);
    if (found !== null) return found;
  }
  return null;
}
