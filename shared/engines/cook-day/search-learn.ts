/**
 * Learning from a clash: walks the trail backwards and replaces each bound by its reason until one bound of the last level is
 * left (first unique implication point); what is left can never hold together again. For each bound only the value that is
 * really needed is kept, which is what makes the learned clauses strong (lazy clause generation: Ohrimenko, Stuckey, Codish,
 * Constraints 14 (2009); from memory).
 */
import type { Clauses } from "./search-clauses.ts";
import type { Arcs } from "./search-model.ts";
import { BY_CLAUSE, BY_GUARD, BY_LAG, DECIDED, FACT, type Trail } from "./search-trail.ts";

const UNNEEDED = -2_000_000_000;

export interface Lesson {
  /** Literals in turn, the one to assert first, one of the level to go back to second. */
  readonly clause: readonly number[];
  readonly backTo: number;
  /** Levels touched. */
  readonly spread: number;
}

export class Learner {
  private readonly trail: Trail;
  private readonly clauses: Clauses;
  private readonly arcs: Arcs;
  private readonly bump: (variable: number) => void;
  /** The value of each bound that the clash rests on. */
  private readonly need: Int32Array;
  /** The entry that gave it. */
  private readonly entry: Int32Array;
  private readonly locked: Uint8Array;
  private readonly reason: number[] = [];
  private open = 0;
  private levelStart = 0;

  constructor(trail: Trail, clauses: Clauses, arcs: Arcs, bump: (variable: number) => void) {
    this.trail = trail;
    this.clauses = clauses;
    this.arcs = arcs;
    this.bump = bump;
    this.need = new Int32Array(trail.now.length).fill(UNNEEDED);
    this.entry = new Int32Array(trail.now.length);
    this.locked = new Uint8Array(trail.now.length);
  }

  /** What to learn from the trail's clash; null when it holds without any decision. Goes back to the level of the clash. */
  learn(): Lesson | null {
    const { trail } = this;
    if (trail.levels.length === 0) return null;
    const clash = this.clash();
    const level = this.levelOf(clash);
    if (level === 0) return null;
    trail.backTo(level);
    this.levelStart = trail.levels[level - 1] as number;
    this.open = 0;
    const needed: number[] = [];
    this.addAll(clash, needed);
    let at = trail.size - 1;
    for (; ; at--) {
      const b = trail.bound[at] as number;
      if (this.need[b] === UNNEEDED || this.entry[b] !== at) continue;
      if (this.open === 1) break;
      const v = this.need[b] as number;
      this.need[b] = UNNEEDED;
      this.open--;
      this.explain(at, b, v);
      this.addAll(this.reason, needed);
    }
    const lesson = this.lesson(trail.bound[at] as number, needed);
    for (const b of needed) [this.need[b], this.locked[b]] = [UNNEEDED, 0];
    return lesson;
  }

  private clash(): number[] {
    const { trail } = this;
    if (trail.failed < 0) return trail.clash;
    this.explain(trail.failed, trail.bound[trail.failed] as number, trail.value[trail.failed] as number);
    return [...trail.clash, ...this.reason];
  }

  private levelOf(literals: readonly number[]): number {
    const { trail } = this;
    let level = 0;
    for (let k = 0; k < literals.length; k += 2) {
      const [b, v] = [literals[k] as number, literals[k + 1] as number];
      if (v > (trail.root[b] as number)) level = Math.max(level, trail.level[trail.entryOf(b, v)] as number);
    }
    return level;
  }

  private addAll(literals: readonly number[], needed: number[]): void {
    const { trail, need } = this;
    for (let k = 0; k < literals.length; k += 2) {
      const [b, v] = [literals[k] as number, literals[k + 1] as number];
      if (v <= (trail.root[b] as number) || (need[b] as number) >= v) continue;
      const counted = need[b] !== UNNEEDED && (this.entry[b] as number) >= this.levelStart;
      if (need[b] === UNNEEDED) needed.push(b);
      need[b] = v;
      this.entry[b] = trail.entryOf(b, v);
      if (!counted && (this.entry[b]) >= this.levelStart) this.open++;
      this.bump(b >> 1);
    }
  }

  /** Sets `reason` to what made (b, v) hold at an entry; v may be less than the entry gave. */
  private explain(at: number, b: number, v: number): void {
    const { trail, arcs, reason } = this;
    const why = trail.why[at] as number;
    const index = why >> 2;
    reason.length = 0;
    switch (why & 3) {
      case BY_GUARD:
        reason.push(arcs.guardB[index] as number, arcs.guardV[index] as number, arcs.from[index] as number, v - (arcs.length[index] as number));
        return;
      case BY_LAG:
        reason.push(arcs.from[index] as number, v - (arcs.length[index] as number));
        return;
      case BY_CLAUSE: {
        const first = this.clauses.first[index] as number;
        const last = first + (this.clauses.length[index] as number);
        for (let k = first; k < last; k += 2) {
          const other = this.clauses.literals[k] as number;
          if (other !== b) reason.push(other ^ 1, 1 - (this.clauses.literals[k + 1] as number));
        }
        return;
      }
      default:
        for (let k = 1; k <= (trail.lists[index] as number); k++) reason.push(trail.lists[index + k] as number);
    }
  }

  private lesson(asserted: number, needed: readonly number[]): Lesson {
    const { trail, need } = this;
    const others = [...new Set(needed)].filter((b) => b !== asserted && need[b] !== UNNEEDED);
    // Latest first: a bound is often there only because of earlier ones.
    others.sort((a, b) => (this.entry[b] as number) - (this.entry[a] as number));
    for (const b of others) this.spare(b);
    const kept = others.filter((b) => need[b] !== UNNEEDED);
    const clause = [asserted ^ 1, 1 - (need[asserted] as number)];
    const levels = new Set(kept.map((b) => trail.level[this.entry[b] as number] as number));
    for (const b of kept) clause.push(b ^ 1, 1 - (need[b] as number));
    return { clause, backTo: Math.max(0, ...levels), spread: levels.size + 1 };
  }

  /**
   * Drops a bound that follows from the others. What it follows from must stay: else two that justify each other could both go.
   */
  private spare(b: number): void {
    const { trail, need, reason } = this;
    const at = this.entry[b] as number;
    if (this.locked[b] || trail.why[at] === DECIDED || trail.why[at] === FACT) return;
    this.explain(at, b, need[b] as number);
    for (let k = 0; k < reason.length; k += 2) {
      const [other, v] = [reason[k] as number, reason[k + 1] as number];
      // A bound pushed on from its own lower value does not follow from itself.
      if (v > (trail.root[other] as number) && (other === b || (need[other] as number) < v)) return;
    }
    for (let k = 0; k < reason.length; k += 2) this.locked[reason[k] as number] = 1;
    need[b] = UNNEEDED;
  }
}
