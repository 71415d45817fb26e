/**
 * Serial schedule generation on the lag form: takes starts in a given order and puts each at the earliest moment that lags,
 * capacities and pairs allow beside those already placed. Where a longest wait has closed the window, the start that closed it
 * is raised and everything placed since is taken up again ("unscheduling": Franck, Neumann, Schwindt, OR Spektrum 23 (2001)
 * 297–324; from memory). Units are those of the project.
 */
import { NONE, type Windows } from "./windows.ts";
import type { Plan, Project, Use } from "./project.ts";

/** A start that stands before anything else is placed. */
export type Anchor = readonly [start: number, at: number];

const REPAIRS_PER_START = 10;
const UNPLACED = -1;

export class SerialScheme {
  readonly starts: Int32Array;
  readonly options: Int32Array;
  private readonly floors: Int32Array;
  private readonly usage: Int32Array[];
  private readonly usesOf: { use: Use; capacity: number }[][];
  private readonly pairsOf: { other: number; toOther: number; fromOther: number; option: number }[][];
  private readonly choiceOf: (readonly (number | null)[] | undefined)[];
  /** Capacities of which a start takes more than once, for itself and for what is kept through it. */
  private readonly twiceOf: number[][];
  private readonly placed: number[] = [];
  /** Where the last refusal of a held thing came from: that hold's first start and the least it must be raised to. */
  private heldBy = UNPLACED;
  private heldTo = 0;
  private readonly project: Project;
  private readonly windows: Windows;
  private readonly slots: number;

  constructor(project: Project, windows: Windows, slots: number) {
    this.project = project;
    this.windows = windows;
    this.slots = slots;
    const n = project.starts;
    this.starts = new Int32Array(n);
    this.options = new Int32Array(n);
    this.floors = new Int32Array(n);
    this.usage = project.capacities.map(() => new Int32Array(slots));
    this.usesOf = Array.from({ length: n }, () => []);
    this.pairsOf = Array.from({ length: n }, () => []);
    this.choiceOf = new Array<undefined>(n);
    project.capacities.forEach(({ uses }, capacity) => {
      for (const use of uses) {
        this.usesOf[use.from]?.push({ use, capacity });
        if (use.to !== use.from) this.usesOf[use.to]?.push({ use, capacity });
      }
    });
    this.twiceOf = this.usesOf.map((uses) => uses.flatMap(({ capacity }, k) => (uses.findIndex((other) => other.capacity === capacity) < k ? [capacity] : [])));
    for (const { a, b, ab, ba, option } of project.pairs) {
      this.pairsOf[a]?.push({ other: b, toOther: ab, fromOther: ba, option });
      this.pairsOf[b]?.push({ other: a, toOther: ba, fromOther: ab, option });
    }
    for (const choice of project.choices) this.choiceOf[choice.start] = choice.earliest;
  }

  /** Places all starts in `order` (each once; anchors may be left out). False when the repairs are used up. */
  place(order: ArrayLike<number>, anchors: readonly Anchor[]): boolean {
    this.starts.fill(UNPLACED);
    this.options.fill(-1);
    this.floors.fill(0);
    this.placed.length = 0;
    for (const counts of this.usage) counts.fill(0);
    for (const [start, at] of anchors) if (!this.put(start, at, -1)) return false;
    let repairs = REPAIRS_PER_START * order.length;
    for (let k = 0; k < order.length; k++) {
      const start = order[k] as number;
      if (this.starts[start] !== UNPLACED) continue;
      const closedBy = this.placeOne(start);
      if (closedBy === DONE) continue;
      if (closedBy === UNPLACED || anchors.some(([anchor]) => anchor === closedBy) || repairs-- === 0) return false;
      this.takeUp(closedBy, anchors);
      k = -1;
    }
    return true;
  }

  plan(): Plan {
    return { starts: this.starts.slice(), options: this.options.slice() };
  }

  /** DONE, or the start whose lag closed the window (its floor is raised by what was lacking), or UNPLACED for none. */
  private placeOne(start: number): number {
    const { low, high, closer } = this.window(start);
    const earliest = this.choiceOf[start];
    let best = NEVER;
    let bestOption = -1;
    this.heldBy = UNPLACED;
    for (let option = earliest ? 0 : -1; option < (earliest?.length ?? 0); option++) {
      const from = option < 0 ? 0 : earliest?.[option];
      if (from === null || from === undefined) continue;
      const at = this.firstFree(start, Math.max(low, from), option, Math.min(high, best - 1));
      if (at < best) [best, bestOption] = [at, option];
    }
    if (best <= high && best < NEVER && this.put(start, best, bestOption)) return DONE;
    if (this.heldBy !== UNPLACED) {
      this.floors[this.heldBy] = Math.max(this.floors[this.heldBy] as number, this.heldTo);
      return this.heldBy;
    }
    if (closer === UNPLACED) return UNPLACED;
    const lacking = Math.max(1, Math.min(best, this.slots) - high);
    this.floors[closer] = (this.starts[closer] as number) + lacking;
    return closer;
  }

  private window(start: number): { low: number; high: number; closer: number } {
    const { paths, size } = this.windows;
    let low = this.floors[start] as number;
    let high = this.slots;
    let closer = UNPLACED;
    for (const other of this.placed) {
      const at = this.starts[other] as number;
      const to = paths[other * size + start] as number;
      if (to !== NONE && at + to > low) low = at + to;
      const back = paths[start * size + other] as number;
      if (back !== NONE && at - back < high) [high, closer] = [at - back, other];
    }
    return { low, high, closer };
  }

  /** Earliest moment from `low` on that is free; the first one tried past `high` when there is none. */
  private firstFree(start: number, low: number, option: number, high: number): number {
    let at = low;
    while (at <= high) {
      const next = this.blockedUntil(start, at, option);
      if (next === at) return at;
      at = next;
    }
    return at;
  }

  /** `at` when the start fits there, else a later moment before which it does not. */
  private blockedUntil(start: number, at: number, option: number): number {
    for (const { other, toOther, fromOther, option: only } of this.pairsOf[start] as (typeof this.pairsOf)[number]) {
      const there = this.starts[other] as number;
      if (there === UNPLACED || (only >= 0 && (only !== option || this.options[other] !== only))) continue;
      if (at + toOther > there && at < there + fromOther) return there + fromOther;
    }
    for (const { use, capacity } of this.usesOf[start] as (typeof this.usesOf)[number]) {
      if (use.option >= 0 && use.option !== option) continue;
      const counts = this.usage[capacity] as Int32Array;
      const room = (this.project.capacities[capacity]?.limit ?? 0) - use.amount;
      if (use.from === use.to) {
        for (let t = Math.min(at + use.tail, this.slots) - 1; t >= at + use.head; t--) if (t >= 0 && (counts[t] as number) > room) return t + 1 - use.head;
      } else {
        const blocked = this.holdBlocked(start, at, use, counts, room);
        if (blocked !== at) return blocked;
      }
    }
    return this.twiceOf[start]?.length && !this.fitsTogether(start, at, option) ? at + 1 : at;
  }

  /** Each use of a start by itself has room; have all of them together? */
  private fitsTogether(start: number, at: number, option: number): boolean {
    this.options[start] = option;
    this.book(start, at, 1);
    const fits = (this.twiceOf[start] as number[]).every((capacity) => {
      const limit = this.project.capacities[capacity]?.limit ?? 0;
      return (this.usage[capacity] as Int32Array).every((taken) => taken <= limit);
    });
    this.book(start, at, -1);
    return fits;
  }

  /** A thing held between two starts: reserved for its least length with the first, lengthened with the second. */
  private holdBlocked(start: number, at: number, use: Use, counts: Int32Array, room: number): number {
    const other = start === use.from ? use.to : use.from;
    const there = this.starts[other] as number;
    const [from, to] = this.holdSpan(use, start, at);
    // What the hold has reserved itself is not in its way.
    const mine = there === UNPLACED ? 0 : use.amount;
    const [ownFrom, ownTo] = there === UNPLACED ? [0, 0] : this.holdSpan(use, other, there);
    for (let t = Math.min(to, this.slots) - 1; t >= Math.max(0, from); t--) {
      if ((counts[t] as number) - (t >= ownFrom && t < ownTo ? mine : 0) <= room) continue;
      if (there === UNPLACED || start === use.from) return t + 1 - use.head > at ? t + 1 - use.head : at + 1;
      this.heldBy = use.from;
      this.heldTo = t + 1 - use.head;
      return NEVER;
    }
    return at;
  }

  /** Span of a hold when `start` stands at `at`: to its other end where that is placed, else of the least length. */
  private holdSpan(use: Use, start: number, at: number): [number, number] {
    const least = Math.max(0, this.windows.paths[use.from * this.windows.size + use.to] as number);
    if (start === use.from) {
      const to = this.starts[use.to] as number;
      return [at + use.head, (to === UNPLACED ? at + least : Math.max(to, at)) + use.tail];
    }
    const from = this.starts[use.from] as number;
    return [(from === UNPLACED ? at - least : Math.min(from, at)) + use.head, at + use.tail];
  }

  private put(start: number, at: number, option: number): boolean {
    if (at >= this.slots) return false;
    this.options[start] = option;
    this.book(start, at, 1);
    this.starts[start] = at;
    this.placed.push(start);
    return true;
  }

  private book(start: number, at: number, sign: 1 | -1): void {
    for (const { use, capacity } of this.usesOf[start] as (typeof this.usesOf)[number]) {
      if (use.option >= 0 && use.option !== this.options[start]) continue;
      const counts = this.usage[capacity] as Int32Array;
      const other = start === use.from ? use.to : use.from;
      if (use.from === use.to) this.fill(counts, at + use.head, at + use.tail, sign * use.amount);
      else if (this.starts[other] === UNPLACED) this.fill(counts, ...this.holdSpan(use, start, at), sign * use.amount);
      else {
        this.fill(counts, ...this.holdSpan(use, other, this.starts[other] as number), -sign * use.amount);
        this.fill(counts, ...this.holdSpan(use, start, at), sign * use.amount);
      }
    }
  }

  private fill(counts: Int32Array, from: number, to: number, amount: number): void {
    const stop = Math.min(to, this.slots);
    for (let t = Math.max(0, from); t < stop; t++) counts[t] = (counts[t] as number) + amount;
  }

  /** Takes up `start` and everything placed since, in the reverse order. */
  private takeUp(start: number, anchors: readonly Anchor[]): void {
    while (this.placed.length > anchors.length) {
      const last = this.placed.pop() as number;
      const at = this.starts[last] as number;
      this.starts[last] = UNPLACED;
      this.book(last, at, -1);
      if (last === start) return;
    }
  }
}

const DONE = -2;
const NEVER = 1_000_000_000;
