/**
 * Bounds and how they came about. Start or choice x has two bounds: 2x is "x is at least", 2x + 1 is "−x is at least". A literal
 * (b, v) says now[b] ≥ v; its negation is (b ^ 1, 1 − v). So every rule of the search is written once and serves both ends.
 */

/** Why an entry stands on the trail; other values are (index << 2) | kind. */
export const DECIDED = -1;
export const FACT = -2;
export const BY_LAG = 0;
export const BY_GUARD = 1;
export const BY_CLAUSE = 2;
export const BY_LIST = 3;

export class Trail {
  readonly now: Int32Array;
  /** What held before the first decision. */
  readonly root: Int32Array;
  /** Latest entry of each bound, −1 for none. */
  readonly latest: Int32Array;
  size = 0;
  bound = new Int32Array(1024);
  old = new Int32Array(1024);
  value = new Int32Array(1024);
  why = new Int32Array(1024);
  /** The entry before it of the same bound. */
  previous = new Int32Array(1024);
  level = new Int32Array(1024);
  /** Literals of listed reasons: count, then b and v in turn. */
  lists = new Int32Array(4096);
  listSize = 0;
  /** First entry of each level above 0. */
  readonly levels: number[] = [];
  private readonly listLevels: number[] = [];
  /** b and v in turn: literals that hold and cannot all hold, together with the reason of the entry `failed` (−1 = none). */
  clash: number[] = [];
  failed = -1;

  constructor(variables: number) {
    this.now = new Int32Array(2 * variables);
    this.root = new Int32Array(2 * variables);
    this.latest = new Int32Array(2 * variables).fill(-1);
  }

  /** Makes the literal true; false, with `clash` set, when its negation already holds. */
  raise(b: number, v: number, why: number): boolean {
    const old = this.now[b] as number;
    if (v <= old) return true;
    if (this.size === this.bound.length) this.grow();
    const entry = this.size++;
    this.bound[entry] = b;
    this.old[entry] = old;
    this.value[entry] = v;
    this.why[entry] = why;
    this.previous[entry] = this.latest[b] as number;
    this.level[entry] = this.levels.length;
    this.latest[b] = entry;
    this.now[b] = v;
    if (v + (this.now[b ^ 1] as number) <= 0) return true;
    this.clash = [b ^ 1, 1 - v];
    this.failed = entry;
    return false;
  }

  /** Says what cannot all hold. */
  refuse(literals: readonly number[]): false {
    this.clash = [...literals];
    this.failed = -1;
    return false;
  }

  /** The reason for the next raise, from literals that hold: b and v in turn. At the root nothing needs a reason. */
  list(literals: readonly number[]): number {
    if (this.levels.length === 0) return FACT;
    while (this.listSize + literals.length + 1 > this.lists.length) this.lists = widened(this.lists);
    const at = this.listSize;
    this.lists[at] = literals.length;
    for (let k = 0; k < literals.length; k++) this.lists[at + 1 + k] = literals[k] as number;
    this.listSize += literals.length + 1;
    return (at << 2) | BY_LIST;
  }

  holds(b: number, v: number): boolean {
    return (this.now[b] as number) >= v;
  }

  /** A literal whose negation holds. */
  fails(b: number, v: number): boolean {
    return (this.now[b ^ 1] as number) >= 1 - v;
  }

  fixed(variable: number): boolean {
    return (this.now[2 * variable] as number) + (this.now[2 * variable + 1] as number) === 0;
  }

  /** The entry that made (b, v) hold. */
  entryOf(b: number, v: number): number {
    let entry = this.latest[b] as number;
    while ((this.old[entry] as number) >= v) entry = this.previous[entry] as number;
    return entry;
  }

  open(): void {
    this.levels.push(this.size);
    this.listLevels.push(this.listSize);
  }

  /** Back to `level`; what that level had is kept. */
  backTo(level: number): void {
    if (level >= this.levels.length) return;
    const first = this.levels[level] as number;
    while (this.size > first) {
      const entry = --this.size;
      const b = this.bound[entry] as number;
      this.now[b] = this.old[entry] as number;
      this.latest[b] = this.previous[entry] as number;
    }
    this.listSize = this.listLevels[level] as number;
    this.levels.length = level;
    this.listLevels.length = level;
  }

  /** At the root: all that holds now is a fact and needs no trail. */
  settle(): void {
    this.root.set(this.now);
    this.latest.fill(-1);
    this.size = 0;
    this.listSize = 0;
  }

  private grow(): void {
    for (const field of ["bound", "old", "value", "why", "previous", "level"] as const) this[field] = widened(this[field]);
  }
}

export function widened(array: Int32Array): Int32Array<ArrayBuffer> {
  const wide = new Int32Array(array.length * 2);
  wide.set(array);
  return wide;
}
