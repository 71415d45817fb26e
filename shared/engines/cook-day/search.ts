/**
 * Exact search that learns from its clashes. It knows nothing of kitchens: lags, capacities and pairs in, a plan of least end or
 * the proof that there is none out. One clash costs one of the budget; no clock, no dice.
 * Method: lazy clause generation on start bounds (Schutt, Feydy, Stuckey, Wallace, Journal of Scheduling 16 (2013) 273–289).
 */
import type { Plan, Project } from "./project.ts";
import { Clauses } from "./search-clauses.ts";
import { Learner } from "./search-learn.ts";
import { searchModel, type SearchModel } from "./search-model.ts";
import { Timetable } from "./search-timetable.ts";
import { BY_GUARD, BY_LAG, DECIDED, FACT, Trail } from "./search-trail.ts";
import type { Windows } from "./windows.ts";

export interface SearchAsk {
  /** No start is later than this. */
  readonly horizon: number;
  /** Only plans that end here or before. */
  readonly latestEnd: number;
  /** A plan that ends here is good enough: it cannot be, or need not be, earlier. */
  readonly enough: number;
  /** True: no clause is learned and no end found cuts what is still to be tried; all is tried in turn. To show what these are worth. */
  readonly plain?: boolean;
  /** True: stays near the best plan known, and takes the starts in order of time in every other stretch between restarts. */
  readonly guided?: boolean;
  /** A plan to stay near from the beginning. */
  readonly near?: Plan;
}

/** `exhausted`: there is nothing better than the plan found, or nothing at all; `stopped`: the budget is used up. */
export type SearchStatus = "enough" | "exhausted" | "stopped";

/** Restart after so many clashes, then after 1.2 times as many each time; keep at most so many clauses (all found by trying). */
const FIRST_RESTART = 100;
const RESTART_GROWTH = 1.2;
const MOST_CLAUSES = 4_000;
const DECAY = 0.95;

/** One search that may be stopped, told of a better plan, and gone on with. */
export class Search {
  /** Best plan found here, and its end. */
  plan: Plan | null = null;
  end: number | null = null;
  conflicts = 0;
  private readonly trail: Trail;
  private readonly clauses: Clauses;
  private readonly learner: Learner;
  private readonly model: SearchModel;
  private readonly ask: SearchAsk;
  private readonly timetables: Timetable[];
  private readonly tablesOf: number[][];
  private readonly dirty: Uint8Array;
  private readonly activity: Float64Array;
  private bump = 1;
  private interval = FIRST_RESTART;
  private restartAt = FIRST_RESTART;
  private seen = 0;
  private stretch = 0;
  /** Starts of the best plan known. */
  private guide: Int32Array | null = null;
  /** False once facts alone contradict each other. */
  private consistent = true;

  constructor(project: Project, windows: Windows, ask: SearchAsk) {
    const model = searchModel(project, windows);
    this.model = model;
    this.ask = ask;
    this.trail = new Trail(model.variables);
    this.clauses = new Clauses(this.trail);
    this.activity = new Float64Array(model.variables);
    this.learner = new Learner(this.trail, this.clauses, model.arcs, (variable) => this.liven(variable));
    this.timetables = model.capacities.map((capacity) => new Timetable(this.trail, capacity, model.choiceOf));
    this.dirty = new Uint8Array(this.timetables.length).fill(1);
    if (ask.near) [this.guide, this.stretch] = [ask.near.starts, 1];
    this.tablesOf = Array.from({ length: model.variables }, (): number[] => []);
    this.timetables.forEach((table, t) => {
      for (const variable of new Set([...table.from, ...table.to, ...table.taken])) if (variable > 0) this.tablesOf[variable]?.push(t);
    });
    this.setFacts();
  }

  /** Goes on until so many conflicts have been met since the beginning. */
  run(conflicts: number): SearchStatus {
    while (this.consistent) {
      if (!this.propagate()) {
        this.conflicts++;
        if (this.ask.plain) this.turnBack();
        else this.learnFromClash();
      } else if (this.conflicts >= conflicts) {
        return "stopped";
      } else if (this.conflicts >= this.restartAt && !this.ask.plain) {
        this.stretch++;
        this.interval *= RESTART_GROWTH;
        this.restartAt = this.conflicts + this.interval;
        this.restart();
      } else if (!this.decide()) {
        this.note();
        if ((this.end as number) <= this.ask.enough) return "enough";
      }
    }
    return "exhausted";
  }

  /** From now on only plans that end here or before; `guide`: a plan to stay near. */
  limitEnd(latest: number, guide: Plan | null = null): void {
    if (this.ask.plain) return;
    if (guide !== null) this.guide = guide.starts;
    this.restart();
    this.consistent &&= this.trail.raise(2 * this.model.end + 1, -latest, FACT);
  }

  private setFacts(): void {
    const { trail, model } = this;
    const { starts, end } = model;
    trail.now.fill(-this.ask.horizon);
    for (let x = 0; x < starts; x++) trail.now[2 * x] = 0;
    trail.now[1] = 0;
    for (let x = starts; x < model.variables; x++) [trail.now[2 * x], trail.now[2 * x + 1]] = [0, -1];
    trail.root.set(trail.now);
    for (const clause of model.clauses) {
      if (clause.length === 0) this.consistent = false;
      else if (clause.length === 2) this.consistent &&= trail.raise(clause[0] as number, clause[1] as number, FACT);
      else this.clauses.add(clause, 0);
    }
    // Every arc is looked at once, from whatever bound it leaves.
    for (let b = 0; b < trail.now.length; b++) this.consistent &&= this.followArcs(b);
    this.consistent &&= trail.raise(2 * end + 1, -this.ask.latestEnd, FACT);
  }

  private propagate(): boolean {
    const { trail } = this;
    for (;;) {
      while (this.seen < trail.size) {
        const entry = this.seen++;
        const b = trail.bound[entry] as number;
        if (trail.latest[b] === entry && !this.followArcs(b)) return false;
        const [old, value] = [trail.old[entry] as number, trail.value[entry] as number];
        if (!this.switchOn(b, old, value) || !this.clauses.propagate(b, old, value)) return false;
        for (const table of this.tablesOf[b >> 1] as number[]) this.dirty[table] = 1;
      }
      const table = this.dirty.indexOf(1);
      if (table < 0) return true;
      this.dirty[table] = 0;
      if (!(this.timetables[table] as Timetable).propagate()) return false;
    }
  }

  /** Lags out of a bound; for one whose guard is open, the guard is refused when the lag can no longer be. */
  private followArcs(b: number): boolean {
    const { trail } = this;
    const { to, length, guardB, guardV, first, leaving } = this.model.arcs;
    const value = trail.now[b] as number;
    const last = first[b + 1] as number;
    for (let k = first[b] as number; k < last; k++) {
      const arc = leaving[k] as number;
      const reach = value + (length[arc] as number);
      const target = to[arc] as number;
      const guard = guardB[arc] as number;
      if (guard < 0) {
        if (reach > (trail.now[target] as number) && !trail.raise(target, reach, (arc << 2) | BY_LAG)) return false;
      } else if ((trail.now[guard] as number) >= (guardV[arc] as number)) {
        if (reach > (trail.now[target] as number) && !trail.raise(target, reach, (arc << 2) | BY_GUARD)) return false;
      } else if (reach + (trail.now[target ^ 1] as number) > 0) {
        const off = 1 - (guardV[arc] as number);
        if (!trail.holds(guard ^ 1, off) && !trail.raise(guard ^ 1, off, trail.list([b, value, target ^ 1, 1 - reach]))) return false;
      }
    }
    return true;
  }

  private switchOn(b: number, old: number, value: number): boolean {
    const { trail } = this;
    const { from, to, length, guardV, switchedBy } = this.model.arcs;
    for (const arc of switchedBy[b] as readonly number[]) {
      if ((guardV[arc] as number) <= old || (guardV[arc] as number) > value) continue;
      if (!trail.raise(to[arc] as number, (trail.now[from[arc] as number] as number) + (length[arc] as number), (arc << 2) | BY_GUARD)) return false;
    }
    return true;
  }

  private learnFromClash(): void {
    const { trail } = this;
    const lesson = this.learner.learn();
    if (lesson === null) {
      this.consistent = false;
      return;
    }
    this.goBack(lesson.backTo);
    const [b, v] = [lesson.clause[0] as number, lesson.clause[1] as number];
    if (lesson.clause.length === 2) this.consistent = trail.raise(b, v, FACT);
    else trail.raise(b, v, (this.clauses.add(lesson.clause, lesson.spread) << 2) | 2);
    this.bump /= DECAY;
  }

  /** Takes the last decision back and its opposite as settled for as long as the decisions before it stand. */
  private turnBack(): void {
    const { trail } = this;
    for (let level = trail.levels.length; level > 0; level--) {
      const decision = trail.levels[level - 1] as number;
      const [b, v] = [trail.bound[decision] as number, trail.value[decision] as number];
      this.goBack(level - 1);
      if (trail.raise(b ^ 1, 1 - v, FACT)) return;
    }
    this.consistent = false;
  }

  private goBack(level: number): void {
    this.trail.backTo(level);
    this.seen = Math.min(this.seen, this.trail.size);
    this.dirty.fill(0);
  }

  /** To the root; what the last stretch proved for good is settled. */
  private restart(): void {
    this.goBack(0);
    // Facts that nothing has followed from yet must stay on the trail, or what follows from them is lost.
    if (this.seen === this.trail.size) this.settle();
    if (this.clauses.count > MOST_CLAUSES) this.clauses.halve();
  }

  /** Facts need no reasons. */
  private settle(): void {
    this.trail.settle();
    this.seen = 0;
  }

  /** Narrows one open start, or takes the first option of an open choice; false when all are fixed. */
  private decide(): boolean {
    const { trail, model } = this;
    const start = this.openStart();
    const asked = start < 0 ? model.choiceOf.findIndex((taken) => this.isUndecided(taken)) : start;
    if (asked < 0) return false;
    if (trail.levels.length === 0) this.settle();
    trail.open();
    const taken = model.choiceOf[asked];
    const option = taken?.find((variable) => variable >= 0 && !trail.fixed(variable));
    if (option !== undefined && this.isUndecided(taken)) trail.raise(2 * option, 1, DECIDED);
    else trail.raise(2 * asked + 1, -this.latestWanted(asked), DECIDED);
    return true;
  }

  /** The start to look at next, −1 when all are fixed. In order of time the search behaves like the serial scheme: its first leaf is a good plan. */
  private openStart(): number {
    const { trail, model } = this;
    const inOrder = this.isInOrder();
    let best = -1;
    let bestScore = -Infinity;
    for (let x = 1; x < model.starts; x++) {
      if (trail.fixed(x)) continue;
      const activity = this.activity[x] as number;
      // Of several that could begin at one moment the livelier comes first, once there is something to go by.
      const score = inOrder ? (this.stretch > 0 ? activity / (activity + this.bump) : 0) - (trail.now[2 * x] as number) : activity;
      if (score > bestScore) [best, bestScore] = [x, score];
    }
    return best;
  }

  /** Until the first restart; where the search is guided, in every other stretch. */
  private isInOrder(): boolean {
    return this.stretch === 0 || (this.isGuided() && this.stretch % 2 === 0);
  }

  private isGuided(): boolean {
    return this.ask.guided === true || this.ask.near !== undefined;
  }

  /** Its earliest moment; or where the best plan has it, if that still leaves something to decide. */
  private latestWanted(start: number): number {
    const [earliest, latest] = [this.trail.now[2 * start] as number, -(this.trail.now[2 * start + 1] as number)];
    const wanted = this.guide?.[start] ?? earliest;
    return this.isGuided() && !this.isInOrder() && wanted > earliest && wanted < latest ? wanted : earliest;
  }

  private isUndecided(taken: readonly number[] | undefined): boolean {
    return taken !== undefined && !taken.some((variable) => variable >= 0 && this.trail.holds(2 * variable, 1));
  }

  /** Keeps the plan that stands and asks for a better one. */
  private note(): void {
    const { trail, model } = this;
    if (this.ask.plain) {
      this.conflicts++;
      if (this.end !== null && (trail.now[2 * model.end] as number) >= this.end) return this.turnBack();
    }
    const starts = Int32Array.from({ length: model.starts }, (_, x) => trail.now[2 * x] as number);
    const options = Int32Array.from({ length: model.starts }, (_, x) => model.choiceOf[x]?.findIndex((variable) => variable >= 0 && trail.holds(2 * variable, 1)) ?? -1);
    this.plan = { starts, options };
    this.end = starts[model.end] as number;
    if (this.ask.plain) this.turnBack();
    else this.limitEnd(this.end - 1, this.plan);
  }

  private liven(variable: number): void {
    this.activity[variable] = (this.activity[variable] as number) + this.bump;
    if ((this.activity[variable]) < 1e100) return;
    for (let x = 0; x < this.activity.length; x++) this.activity[x] = (this.activity[x] as number) * 1e-100;
    this.bump *= 1e-100;
  }
}
