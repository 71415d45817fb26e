/**
 * Clauses over bounds: at least one literal of each holds. Two literals of each are watched; a clause is looked at only when one
 * of these fails, which a bound does when its opposite rises past a threshold.
 */
import { BY_CLAUSE, widened, type Trail } from "./search-trail.ts";

export class Clauses {
  /** All clauses one behind the other, b and v in turn. */
  literals = new Int32Array(8192);
  private used = 0;
  readonly first: number[] = [];
  readonly length: number[] = [];
  /** Levels that a learned clause touched when it was learned: few = worth keeping. 0 = given, kept always. */
  private readonly spread: number[] = [];
  private watches: Int32Array[];
  private readonly watched: Int32Array;
  private readonly trail: Trail;

  constructor(trail: Trail) {
    this.trail = trail;
    this.watches = Array.from(trail.now, () => new Int32Array(8));
    this.watched = new Int32Array(trail.now.length);
  }

  get count(): number {
    return this.first.length;
  }

  /** Adds a clause of at least two literals; the first two are watched, so neither may fail earlier than the others. */
  add(clause: readonly number[], spread: number): number {
    while (this.used + clause.length > this.literals.length) this.literals = widened(this.literals);
    const id = this.first.length;
    this.first.push(this.used);
    this.length.push(clause.length);
    this.spread.push(spread);
    for (let k = 0; k < clause.length; k++) this.literals[this.used + k] = clause[k] as number;
    this.used += clause.length;
    this.watch(clause[0] as number, clause[1] as number, id);
    this.watch(clause[2] as number, clause[3] as number, id);
    return id;
  }

  /** Looks at the clauses whose watched literal failed when bound b rose from `old` to `value`. */
  propagate(b: number, old: number, value: number): boolean {
    const list = this.watches[b] as Int32Array;
    const count = this.watched[b] as number;
    let kept = 0;
    for (let k = 0; k < count; k += 2) {
      const threshold = list[k] as number;
      const id = list[k + 1] as number;
      const stays = threshold > value || threshold <= old || this.keeps(id, b ^ 1, 1 - threshold);
      if (!stays) continue;
      list[kept] = threshold;
      list[kept + 1] = id;
      kept += 2;
      if (stays !== FAILS) continue;
      for (k += 2; k < count; k++) list[kept++] = list[k] as number;
      this.watched[b] = kept;
      return false;
    }
    this.watched[b] = kept;
    return true;
  }

  /** At the root: the longer half of the learned clauses is dropped, and those that hold for good. */
  halve(): void {
    const order = this.first.map((_, id) => id);
    const worth = (id: number): number => (this.spread[id] as number) * 10_000 + (this.length[id] as number);
    const learned = order.filter((id) => (this.spread[id] as number) > 2).sort((a, b) => worth(a) - worth(b) || b - a);
    const dropped = new Set(learned.slice(learned.length >> 1));
    const kept = order.filter((id) => !dropped.has(id)).map((id) => ({ literals: this.of(id), spread: this.spread[id] as number }));
    this.first.length = this.length.length = this.spread.length = 0;
    this.used = 0;
    this.watched.fill(0);
    for (const { literals, spread } of kept) this.addAtRoot(literals, spread);
  }

  /** The literals of a clause. */
  of(id: number): number[] {
    const from = this.first[id] as number;
    return Array.from(this.literals.subarray(from, from + (this.length[id] as number)));
  }

  /** Literals that fail for good are left out, so that the two watched ones are open. */
  private addAtRoot(clause: readonly number[], spread: number): void {
    const open: number[] = [];
    for (let k = 0; k < clause.length; k += 2) {
      const [b, v] = [clause[k] as number, clause[k + 1] as number];
      if (this.trail.holds(b, v)) return;
      if (!this.trail.fails(b, v)) open.push(b, v);
    }
    if (open.length >= 4) this.add(open, spread);
  }

  /** False when the watch moved elsewhere, true when it stays, FAILS when the clause has no literal left. */
  private keeps(id: number, b: number, v: number): boolean | typeof FAILS {
    const { literals, trail } = this;
    const at = this.first[id] as number;
    if (literals[at] === b && literals[at + 1] === v) {
      literals[at] = literals[at + 2] as number;
      literals[at + 1] = literals[at + 3] as number;
      literals[at + 2] = b;
      literals[at + 3] = v;
    }
    const [firstB, firstV] = [literals[at] as number, literals[at + 1] as number];
    if (trail.holds(firstB, firstV)) return true;
    const end = at + (this.length[id] as number);
    for (let k = at + 4; k < end; k += 2) {
      const [otherB, otherV] = [literals[k] as number, literals[k + 1] as number];
      if (trail.fails(otherB, otherV)) continue;
      literals[at + 2] = otherB;
      literals[at + 3] = otherV;
      literals[k] = b;
      literals[k + 1] = v;
      this.watch(otherB, otherV, id);
      return false;
    }
    return trail.raise(firstB, firstV, (id << 2) | BY_CLAUSE) ? true : FAILS;
  }

  private watch(b: number, v: number, id: number): void {
    const list = b ^ 1;
    const count = this.watched[list] as number;
    if (count + 2 > (this.watches[list] as Int32Array).length) this.watches[list] = widened(this.watches[list] as Int32Array);
    const room = this.watches[list] as Int32Array;
    room[count] = 1 - v;
    room[count + 1] = id;
    this.watched[list] = count + 2;
  }
}

const FAILS = 2;
