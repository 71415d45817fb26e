/** The store in the simple rule: portions by the week they must be eaten in, what is eaten each week, and whether there is room and time for more. */
import type { Draw, Method, Season } from "./types.ts";

interface Portions {
  readonly m: number;
  /** May lie beyond the season. */
  readonly lastWeek: number;
  portions: number;
}

export class EatingPlan {
  private readonly season: Season;
  private readonly made: readonly (readonly number[])[];
  private lots: Portions[];
  private readonly draws: Draw[] = [];
  /** Portions in store by method index. */
  private readonly stored: number[];

  constructor(season: Season, made: readonly (readonly number[])[]) {
    this.season = season;
    this.made = made;
    this.stored = season.methods.map(({ opening }) => opening);
    this.lots = season.methods.flatMap(({ opening }, m) => (opening > 0 ? [{ m, lastWeek: Infinity, portions: opening }] : []));
  }

  inStore(m: number): number {
    return this.stored[m] ?? 0;
  }

  store(m: number, t: number, portions: number): void {
    const method = this.season.methods[m] as Method;
    if (method.keptIn === "none" || portions <= 0) return;
    this.lots.push({ m, lastWeek: lastWeekOf(method, t), portions });
    this.stored[m] = this.inStore(m) + portions;
  }

  drawn(): Draw[] {
    return this.draws;
  }

  /** Room for so much more of a held resource, now and in every later week if nothing were eaten until then. */
  hasRoom(resource: string, t: number, use: number, m: number, more: number): boolean {
    const kept = this.season.methods.reduce((sum, method, i) => {
      const q = method.perBatch[resource] ?? 0;
      return q === 0 || method.portions <= 0 ? sum : sum + (q * this.inStore(i)) / method.portions;
    }, 0);
    const amount = this.season.resources.find(({ id }) => id === resource)?.amount ?? [];
    // what is not put into store ties up its room in this week only
    const passing = this.season.methods.reduce((sum, method, i) => {
      const batches = this.made[i]?.[t] ?? 0;
      if (batches === 0) return sum;
      return sum + (method.perSession[resource] ?? 0) + (method.keptIn === "none" || method.portions <= 0 ? batches * (method.perBatch[resource] ?? 0) : 0);
    }, 0);
    if (kept + passing + use > (amount[t] ?? 0) + 1e-9) return false;
    const method = this.season.methods[m] as Method;
    const stays = method.keptIn === "none" || method.portions <= 0 ? 0 : more * (method.perBatch[resource] ?? 0);
    return amount.slice(t + 1).every((room) => kept + stays <= room + 1e-9);
  }

  /** Whether all that spoils within the season can still be eaten in time when so many batches come on top. */
  canBeEatenInTime(m: number, t: number, more: number): boolean {
    const method = this.season.methods[m] as Method;
    const lastWeek = lastWeekOf(method, t);
    if (method.keptIn === "none" || lastWeek >= this.season.weeks || method.portions <= 0) return true;
    const lots = [...this.lots.filter((lot) => lot.lastWeek < this.season.weeks).map((lot) => ({ ...lot })), { m, lastWeek, portions: more * method.portions }];
    const until = Math.max(...lots.map((lot) => (lot.lastWeek < this.season.weeks ? lot.lastWeek : 0)));
    for (let week = t; week <= until; week++) {
      eatWeek(this.season, lots, week, new Map());
      if (lots.some((lot) => lot.lastWeek <= week && lot.portions > 1e-9)) return false;
    }
    return true;
  }

  /** Shortest-dated first, and never what a coming target still needs unless it would spoil. */
  eat(t: number): void {
    const draws = eatWeek(this.season, this.lots, t, spareOf(this.season, this.lots, t));
    for (const [m, portions] of draws) {
      this.draws.push({ method: this.season.methods[m]?.id ?? "", week: t, portions });
      this.stored[m] = this.inStore(m) - portions;
    }
    this.lots = this.lots.filter(({ portions }) => portions > 1e-9);
  }
}

function lastWeekOf(method: Method, t: number): number {
  return method.keepWeeks === null ? Infinity : t + method.keepWeeks - 1;
}

/** Portions of each method's lasting lots that no coming target needs; a method that no target names is all spare. */
function spareOf(season: Season, lots: readonly Portions[], t: number): Map<number, { portions: number }> {
  const spare = new Map<number, { portions: number }>();
  for (const { methods, portions, atWeek } of season.targets) {
    if (atWeek < t) continue;
    const indices = methods.map((id) => season.methods.findIndex((method) => method.id === id));
    const stored = lots.reduce((sum, lot) => sum + (indices.includes(lot.m) ? lot.portions : 0), 0);
    const over = { portions: Math.max(0, stored - portions) };
    for (const m of indices) if ((spare.get(m)?.portions ?? Infinity) > over.portions) spare.set(m, over);
  }
  return spare;
}

/** Takes a week's portions out of the lots; lots that keep beyond the season give only what is spare. */
function eatWeek(season: Season, lots: readonly Portions[], t: number, spare: ReadonlyMap<number, { portions: number }>): Map<number, number> {
  const draws = new Map<number, number>();
  let left = season.eatFromStorePortions[t] ?? 0;
  const order = [...lots].sort((a, b) => (a.lastWeek === b.lastWeek ? byId(season, a.m, b.m) : a.lastWeek - b.lastWeek));
  for (const lot of order) {
    const method = season.methods[lot.m] as Method;
    const keep = lot.lastWeek >= season.weeks ? spare.get(lot.m) : undefined;
    const most = Math.min(lot.portions, left, (method.eatPortions[t] ?? 0) - (draws.get(lot.m) ?? 0), keep?.portions ?? Infinity);
    if (most <= 0) continue;
    lot.portions -= most;
    left -= most;
    if (keep) keep.portions -= most;
    draws.set(lot.m, (draws.get(lot.m) ?? 0) + most);
  }
  return draws;
}

function byId(season: Season, a: number, b: number): number {
  const [first, second] = [season.methods[a]?.id ?? "", season.methods[b]?.id ?? ""];
  return first < second ? -1 : first > second ? 1 : 0;
}
