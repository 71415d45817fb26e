/**
 * A capacity seen through what is certain: a use surely lasts over [latest beginning, earliest end). More than the limit at one
 * moment is a clash; a use that cannot cover a moment moves past it. Reasons are given for one moment each
 * (Schutt, Feydy, Stuckey, Wallace, Journal of Scheduling 16 (2013) 273–289; from the abstract and from memory).
 */
import type { Capacity } from "./project.ts";
import type { Trail } from "./search-trail.ts";

export class Timetable {
  readonly limit: number;
  readonly count: number;
  readonly from: Int32Array;
  readonly head: Int32Array;
  readonly to: Int32Array;
  readonly tail: Int32Array;
  readonly amount: Int32Array;
  /** 0/1 variable that says the use counts; −1 = always. */
  readonly taken: Int32Array;
  /** Uses by latest beginning and by earliest end; kept from call to call because little changes. */
  private readonly byBegin: Int32Array;
  private readonly byEnd: Int32Array;
  private readonly begin: Int32Array;
  private readonly end: Int32Array;
  /** Steps of the profile: height over [at[k], at[k + 1]). */
  private readonly at: Int32Array;
  private readonly height: Int32Array;
  private steps = 0;
  private readonly trail: Trail;
  private readonly reason: number[] = [];

  constructor(trail: Trail, { limit, uses }: Capacity, choiceOf: readonly (readonly number[] | undefined)[]) {
    this.trail = trail;
    this.limit = limit;
    this.count = uses.length;
    this.from = Int32Array.from(uses, (use) => use.from);
    this.head = Int32Array.from(uses, (use) => use.head);
    this.to = Int32Array.from(uses, (use) => use.to);
    this.tail = Int32Array.from(uses, (use) => use.tail);
    this.amount = Int32Array.from(uses, (use) => use.amount);
    this.taken = Int32Array.from(uses, (use) => (use.option < 0 ? -1 : (choiceOf[use.from]?.[use.option] ?? -1)));
    this.byBegin = Int32Array.from(uses, (_, k) => k);
    this.byEnd = Int32Array.from(uses, (_, k) => k);
    this.begin = new Int32Array(uses.length);
    this.end = new Int32Array(uses.length);
    this.at = new Int32Array(2 * uses.length + 1);
    this.height = new Int32Array(2 * uses.length + 1);
  }

  /** True unless there is a clash; raises what follows from the profile as it stands. */
  propagate(): boolean {
    this.refresh();
    if (!this.raiseProfile()) return false;
    for (let k = 0; k < this.count; k++) {
      if ((this.amount[k] as number) === 0 || this.steps === 0) continue;
      if (!this.isOpen(k)) continue;
      if (this.counts(k)) {
        if (!this.pushLater(k) || !this.pushEarlier(k)) return false;
      } else if (!this.refuse(k)) return false;
    }
    return true;
  }

  private refresh(): void {
    const { now } = this.trail;
    for (let k = 0; k < this.count; k++) {
      this.begin[k] = (this.head[k] as number) - (now[2 * (this.from[k] as number) + 1] as number);
      this.end[k] = (now[2 * (this.to[k] as number)] as number) + (this.tail[k] as number);
    }
    sortBy(this.byBegin, this.begin);
    sortBy(this.byEnd, this.end);
  }

  private counts(k: number): boolean {
    const taken = this.taken[k] as number;
    return taken < 0 || (this.trail.now[2 * taken] as number) === 1;
  }

  private isOpen(k: number): boolean {
    const taken = this.taken[k] as number;
    return taken < 0 || (this.trail.now[2 * taken + 1] as number) < 0;
  }

  private surely(k: number): boolean {
    return (this.begin[k] as number) < (this.end[k] as number) && this.counts(k);
  }

  /** Lays the certain parts on top of each other; false, with the clash set, where they pass the limit. */
  private raiseProfile(): boolean {
    const { count, byBegin, byEnd } = this;
    let [b, e, level] = [0, 0, 0];
    this.steps = 0;
    while (e < count) {
      if (b < count && !this.surely(byBegin[b] as number)) {
        b++;
        continue;
      }
      if (!this.surely(byEnd[e] as number)) {
        e++;
        continue;
      }
      const opens = b < count ? (this.begin[byBegin[b] as number] as number) : MAX;
      const closes = this.end[byEnd[e] as number] as number;
      if (opens < closes) level += this.amount[byBegin[b++] as number] as number;
      else level -= this.amount[byEnd[e++] as number] as number;
      const moment = Math.min(opens, closes);
      if (this.steps > 0 && this.at[this.steps - 1] === moment) this.height[this.steps - 1] = level;
      else {
        this.at[this.steps] = moment;
        this.height[this.steps++] = level;
      }
    }
    for (let k = 0; k + 1 < this.steps; k++) if ((this.height[k] as number) > this.limit) return this.overload(((this.at[k] as number) + (this.at[k + 1] as number)) >> 1);
    return true;
  }

  private overload(moment: number): boolean {
    this.reason.length = 0;
    this.cover(moment, -1, this.limit + 1);
    return this.trail.refuse(this.reason);
  }

  /** Literals of certain uses at a moment, except `but`, that together take at least `needed`; none that could be spared. */
  private cover(moment: number, but: number, needed: number): void {
    let spare = -needed;
    for (let k = 0; k < this.count; k++) if (this.covers(k, moment, but)) spare += this.amount[k] as number;
    for (let k = 0; k < this.count; k++) {
      if (!this.covers(k, moment, but)) continue;
      if ((this.amount[k] as number) <= spare) {
        spare -= this.amount[k] as number;
        continue;
      }
      this.reason.push(2 * (this.to[k] as number), moment - (this.tail[k] as number) + 1, 2 * (this.from[k] as number) + 1, (this.head[k] as number) - moment);
      if ((this.taken[k] as number) >= 0) this.reason.push(2 * (this.taken[k] as number), 1);
    }
  }

  private covers(k: number, moment: number, but: number): boolean {
    return k !== but && (this.begin[k] as number) <= moment && moment < (this.end[k] as number) && (this.amount[k] as number) > 0 && this.counts(k);
  }

  /** Height of the profile in step s without what use k itself lays there. */
  private heightWithout(k: number, s: number): number {
    const own = this.surely(k) && (this.begin[k] as number) <= (this.at[s] as number) && (this.at[s] as number) < (this.end[k] as number);
    return (this.height[s] as number) - (own ? (this.amount[k] as number) : 0);
  }

  private pushLater(k: number): boolean {
    const { trail } = this;
    const [from, to] = [2 * (this.from[k] as number), 2 * (this.to[k] as number)];
    const [head, tail, room] = [this.head[k] as number, this.tail[k] as number, this.limit - (this.amount[k] as number)];
    for (let s = 0; s + 1 < this.steps; s++) {
      if ((this.at[s] as number) >= (trail.now[to] as number) + tail) break;
      const stepEnd = this.at[s + 1] as number;
      while (stepEnd > (trail.now[from] as number) + head && (this.at[s] as number) < (trail.now[to] as number) + tail && this.heightWithout(k, s) > room) {
        const moment = Math.min(stepEnd, (trail.now[to] as number) + tail) - 1;
        if (moment < (trail.now[from] as number) + head) break;
        this.reason.length = 0;
        this.cover(moment, k, room + 1);
        this.reason.push(to, moment - tail + 1);
        if ((this.taken[k] as number) >= 0) this.reason.push(2 * (this.taken[k] as number), 1);
        if (!trail.raise(from, moment - head + 1, trail.list(this.reason))) return false;
      }
    }
    return true;
  }

  private pushEarlier(k: number): boolean {
    const { trail } = this;
    const [from, to] = [2 * (this.from[k] as number) + 1, 2 * (this.to[k] as number) + 1];
    const [head, tail, room] = [this.head[k] as number, this.tail[k] as number, this.limit - (this.amount[k] as number)];
    for (let s = this.steps - 2; s >= 0; s--) {
      const stepEnd = this.at[s + 1] as number;
      if (stepEnd <= head - (trail.now[from] as number)) break;
      while ((this.at[s] as number) < tail - (trail.now[to] as number) && stepEnd > head - (trail.now[from] as number) && this.heightWithout(k, s) > room) {
        const moment = Math.max(this.at[s] as number, head - (trail.now[from] as number));
        if (moment >= tail - (trail.now[to] as number)) break;
        this.reason.length = 0;
        this.cover(moment, k, room + 1);
        this.reason.push(from, head - moment);
        if ((this.taken[k] as number) >= 0) this.reason.push(2 * (this.taken[k] as number), 1);
        if (!trail.raise(to, tail - moment, trail.list(this.reason))) return false;
      }
    }
    return true;
  }

  /** A use that would surely overload a moment is not taken. */
  private refuse(k: number): boolean {
    const room = this.limit - (this.amount[k] as number);
    for (let s = 0; s + 1 < this.steps; s++) {
      const moment = Math.max(this.at[s] as number, this.begin[k] as number);
      if (moment >= Math.min(this.at[s + 1] as number, this.end[k] as number) || (this.height[s] as number) <= room) continue;
      this.reason.length = 0;
      this.cover(moment, k, room + 1);
      this.reason.push(2 * (this.to[k] as number), moment - (this.tail[k] as number) + 1, 2 * (this.from[k] as number) + 1, (this.head[k] as number) - moment);
      return this.trail.raise(2 * (this.taken[k] as number) + 1, 0, this.trail.list(this.reason));
    }
    return true;
  }
}

const MAX = 1_000_000_000;

/** Insertion sort: the order of the last call is nearly right. */
function sortBy(order: Int32Array, key: Int32Array): void {
  for (let k = 1; k < order.length; k++) {
    const item = order[k] as number;
    const value = key[item] as number;
    let j = k - 1;
    for (; j >= 0 && (key[order[j] as number] as number) > value; j--) order[j + 1] = order[j] as number;
    order[j + 1] = item;
  }
}
