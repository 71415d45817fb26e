/**
 * One programme held open and the best columns known for it. A level is either solved as a whole, or improved piece by piece: some weeks
 * (or the methods of some crops) are set free while the rest stays, which keeps each run at the size of a small season. Effort is counted in
 * steps of the solver, so that equal seasons give equal plans; the clock and a cancel end it early, and `cutShort` says so.
 */
import { seededRandom } from "../../kernel/seeded-random.ts";
import type { SeasonModel } from "./model.ts";
import { Neighbourhoods, wholeColumns, type WholeColumn } from "./neighbourhoods.ts";
import type { OpenProgramme, Solved, Solver } from "./programme.ts";

const ROLL_WEEKS = 3;
/** Pieces need no proof: a few grams or a hundredth of a point are left for the levels themselves. */
const PIECE_GAP = 0.02;
const STEPS_A_PIECE = 2000;
/** What a run costs before its first step: a counted effort must end even where every run is over at once. */
const STEPS_TO_BEGIN = 100;
const SETTLE_STEPS = 20_000;
const STEPS_A_CROSSING = 8000;

export interface Patience {
  /** Of the solver's clock for everything together. */
  readonly seconds: number;
  readonly stop: () => boolean;
}

export class SeasonSearch {
  private readonly model: SeasonModel;
  private readonly open: OpenProgramme;
  private readonly wholes: readonly WholeColumn[];
  private readonly near: Neighbourhoods;
  private readonly patience: Patience;
  /** Good plans of different kinds, to be crossed with the best. */
  private readonly others: Float64Array[] = [];
  best: Float64Array | null = null;
  spentSteps = 0;
  spentSeconds = 0;
  /** The clock or a cancel ended a run before its steps were spent. */
  cutShort = false;

  constructor(model: SeasonModel, solver: Solver, patience: Patience) {
    this.model = model;
    this.open = solver.open(model.programme);
    this.wholes = wholeColumns(model);
    this.near = new Neighbourhoods(model.season, this.wholes, seededRandom(1));
    this.patience = patience;
  }

  get size(): number {
    return this.wholes.length;
  }

  /** Cancelled, or out of time: nothing more is begun. */
  get over(): boolean {
    if (!this.patience.stop() && this.spentSeconds < this.patience.seconds) return false;
    this.cutShort = true;
    return true;
  }

  close(): void {
    this.open.close();
  }

  lock(costs: Float64Array, most: number): void {
    this.open.lock(costs, most);
  }

  unlockTo(locks: number): void {
    this.open.unlockTo(locks);
  }

  valueOf(costs: Float64Array, values: Float64Array): number {
    return costs.reduce((sum, cost, i) => (cost === 0 ? sum : sum + cost * (values[i] ?? 0)), 0);
  }

  /** The best there is with the whole numbers of `wholes`; null where they do not fit. */
  settle(costs: Float64Array, wholes: Float64Array): Float64Array | null {
    return this.within(wholes, () => false, () => this.run(costs, SETTLE_STEPS, 0, null, { surely: true })).values;
  }

  whole(costs: Float64Array, steps: number, gap: number, seed = 0): Solved {
    const solved = this.run(costs, steps, gap, this.best, { seed });
    if (solved.values && (!this.best || solved.value <= this.valueOf(costs, this.best) + 1e-9)) this.best = solved.values;
    return solved;
  }

  /** What the level would be in fractions of batches: none can be better. Null where that was not found in time. */
  fractions(costs: Float64Array): number | null {
    this.open.setWhole(new Int32Array(this.model.programme.whole.length));
    try {
      const { status, value } = this.run(costs, SETTLE_STEPS, 0, null);
      return status === "optimal" ? value : null;
    } finally {
      this.open.setWhole(this.model.programme.whole);
    }
  }

  /** Piece by piece until the steps are spent or nothing is left to try; `told` after each piece that helped. */
  improve(costs: Float64Array, steps: number, told: () => void): void {
    const until = this.spentSteps + steps;
    let idle = 0;
    this.near.again();
    while (this.spentSteps < until && idle < this.near.enough && !this.over) {
      const start = this.best;
      if (!start) return;
      const free = this.near.next();
      const before = this.valueOf(costs, start);
      const solved = this.within(start, free, () => this.run(costs, Math.min(STEPS_A_PIECE, until - this.spentSteps), PIECE_GAP, start));
      const better = solved.values !== null && solved.value < before - 1e-6;
      idle = better ? 0 : idle + 1;
      if (!better) continue;
      this.best = solved.values;
      told();
    }
  }

  /** Keeps a plan to be crossed later. */
  remember(values: Float64Array | null): void {
    if (values && !this.others.includes(values)) this.others.push(values);
  }

  /**
   * The best against each remembered plan: what both have in common stays, where they differ is free. Good plans share most of a season, so
   * the rest is small, and holds what is good in either. Newest first, until the steps are spent or a round brings nothing.
   */
  cross(costs: Float64Array, steps: number, told: () => void): void {
    const until = this.spentSteps + steps;
    const tried = new Map<Float64Array, Float64Array>();
    for (let gained = true; gained; ) {
      gained = false;
      for (const other of this.others.toReversed()) {
        const start = this.best;
        if (!start || this.spentSteps >= until || this.over) return;
        if (other === start || tried.get(other) === start) continue;
        tried.set(other, start);
        const differs = ({ column }: WholeColumn): boolean => Math.abs((start[column] ?? 0) - (other[column] ?? 0)) > 0.5;
        if (!this.wholes.some(differs)) continue;
        const solved = this.within(start, differs, () => this.run(costs, Math.min(STEPS_A_CROSSING, until - this.spentSteps), PIECE_GAP, start));
        if (solved.values === null || solved.value >= this.valueOf(costs, start) - 1e-6) continue;
        this.best = solved.values;
        gained = true;
        told();
      }
    }
  }

  /**
   * Once through the season: the weeks in hand in whole batches, those to come in fractions, those gone as they were decided. Gives a good
   * plan at the cost of some small runs, because the fractions already know what the later weeks will need.
   */
  rollForward(costs: Float64Array, stepsAWindow: number): void {
    const { programme, season } = this.model;
    const [lower, upper] = [Float64Array.from(programme.lower), Float64Array.from(programme.upper)];
    let found: Float64Array | null = null;
    try {
      for (let from = 0; from < season.weeks; from += ROLL_WEEKS) {
        if (this.over) return;
        const whole = new Int32Array(programme.whole.length);
        for (const { column, week } of this.wholes) {
          if (week >= from && week < from + ROLL_WEEKS + 1) whole[column] = 1;
          if (week >= from || !found) continue;
          lower[column] = upper[column] = Math.round(found[column] ?? 0);
        }
        this.open.setBounds(lower, upper);
        this.open.setWhole(whole);
        // where a window finds nothing in its steps, any plan will do: without it there is none at all
        found = this.run(costs, stepsAWindow, PIECE_GAP, null).values ?? this.run(costs, 20 * stepsAWindow, Infinity, null).values;
        if (!found) return;
      }
    } finally {
      this.open.setBounds(programme.lower, programme.upper);
      this.open.setWhole(programme.whole);
    }
    const settled = found && this.settle(costs, found);
    if (settled && (!this.best || this.valueOf(costs, settled) < this.valueOf(costs, this.best))) this.best = settled;
  }

  /** Runs with all whole numbers kept but those set free. */
  private within(kept: Float64Array, free: (whole: WholeColumn) => boolean, run: () => Solved): Solved {
    const { lower, upper } = this.model.programme;
    const [from, to] = [Float64Array.from(lower), Float64Array.from(upper)];
    for (const whole of this.wholes) {
      if (free(whole)) continue;
      const value = Math.round(kept[whole.column] ?? 0);
      from[whole.column] = value;
      to[whole.column] = value;
    }
    this.open.setBounds(from, to);
    try {
      return run();
    } finally {
      this.open.setBounds(lower, upper);
    }
  }

  /** `surely`: a plan that is shown must be settled even when it was cancelled. */
  private run(costs: Float64Array, steps: number, gap: number, start: Float64Array | null, { surely = false, seed = 0 } = {}): Solved {
    const left = surely ? Math.max(5, this.patience.seconds) : Math.max(0.05, this.patience.seconds - this.spentSeconds);
    const solved = this.open.minimise(costs, { steps, seconds: left, gap, seed, ...(surely ? {} : { stop: this.patience.stop }) }, start);
    this.spentSteps += solved.steps + STEPS_TO_BEGIN;
    this.spentSeconds += solved.seconds;
    this.cutShort ||= solved.cutShort;
    return solved;
  }
}
