/**
 * One programme held open and the best columns known for it. A level is either solved as a whole, or improved piece by piece: some weeks
 * (or the methods of some crops) are set free while the rest stays, which keeps each run at the size of a small season.
 */
import { seededRandom, type Random } from "../../kernel/seeded-random.ts";
import type { SeasonModel } from "./model.ts";
import type { OpenProgramme, Solved, Solver } from "./programme.ts";

const WEEKS_AT_ONCE = 8;
const ROLL_WEEKS = 3;
/** Pieces need no proof: a few grams or a hundredth of a point are left for the levels themselves. */
const PIECE_GAP = 0.02;
const SECONDS_A_PIECE = 3;

interface WholeColumn {
  readonly column: number;
  readonly week: number;
  readonly method: number;
}

export class SeasonSearch {
  private readonly model: SeasonModel;
  private readonly open: OpenProgramme;
  private readonly wholes: readonly WholeColumn[];
  private readonly random: Random;
  best: Float64Array | null = null;
  /** Of the solver's clock, over all runs. */
  spent = 0;

  constructor(model: SeasonModel, solver: Solver) {
    this.model = model;
    this.open = solver.open(model.programme);
    this.wholes = wholeColumns(model);
    this.random = seededRandom(1);
  }

  get size(): number {
    return this.wholes.length;
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
  settle(costs: Float64Array, wholes: Float64Array, seconds = 5): Float64Array | null {
    return this.within(wholes, () => false, () => this.run(costs, seconds, 0, null)).values;
  }

  whole(costs: Float64Array, seconds: number, gap: number): Solved {
    const solved = this.run(costs, seconds, gap, this.best);
    if (solved.values && (!this.best || solved.value <= this.valueOf(costs, this.best) + 1e-9)) this.best = solved.values;
    return solved;
  }

  /** Piece by piece until the seconds are spent or two rounds bring nothing; `stop` is asked between pieces. */
  improve(costs: Float64Array, seconds: number, stop: () => boolean): void {
    const until = this.spent + seconds;
    let idle = 0;
    for (let piece = 0; this.spent < until && idle < 2 * this.pieces && !stop(); piece++) {
      const start = this.best;
      if (!start) return;
      const free = this.neighbourhood(piece);
      const before = this.valueOf(costs, start);
      const solved = this.within(start, free, () => this.run(costs, Math.min(SECONDS_A_PIECE, until - this.spent), PIECE_GAP, start));
      const better = solved.values !== null && solved.value < before - 1e-6;
      if (better) this.best = solved.values;
      idle = better ? 0 : idle + 1;
    }
  }

  /**
   * Once through the season: the weeks in hand in whole batches, those to come in fractions, those gone as they were decided. Gives a good
   * plan at the cost of some small runs, because the fractions already know what the later weeks will need.
   */
  rollForward(costs: Float64Array, seconds: number, stop: () => boolean): void {
    const { programme, season } = this.model;
    const [lower, upper] = [Float64Array.from(programme.lower), Float64Array.from(programme.upper)];
    const until = this.spent + seconds;
    let found: Float64Array | null = null;
    try {
      for (let from = 0; from < season.weeks; from += ROLL_WEEKS) {
        if (stop()) return;
        const whole = new Int32Array(programme.whole.length);
        for (const { column, week } of this.wholes) {
          if (week >= from && week < from + ROLL_WEEKS + 1) whole[column] = 1;
          if (week >= from || !found) continue;
          lower[column] = upper[column] = Math.round(found[column] ?? 0);
        }
        this.open.setBounds(lower, upper);
        this.open.setWhole(whole);
        const left = Math.max(0.3, (until - this.spent) / Math.ceil((season.weeks - from) / ROLL_WEEKS));
        // on a busy machine a step may find nothing in its share of the time; without it there is no plan at all
        found = this.run(costs, left, PIECE_GAP, null).values ?? this.run(costs, seconds, Infinity, null).values;
        if (!found) return;
      }
    } finally {
      this.open.setBounds(programme.lower, programme.upper);
      this.open.setWhole(programme.whole);
    }
    const settled = found && this.settle(costs, found);
    if (settled && (!this.best || this.valueOf(costs, settled) < this.valueOf(costs, this.best))) this.best = settled;
  }

  private get pieces(): number {
    return Math.max(1, Math.ceil(this.model.season.weeks / (WEEKS_AT_ONCE / 2)));
  }

  /** In turns: a span of weeks, and all weeks of a handful of methods. */
  private neighbourhood(piece: number): (whole: WholeColumn) => boolean {
    const { season } = this.model;
    if (piece % 3 !== 2) {
      const from = (((piece * WEEKS_AT_ONCE) / 2) % (season.weeks + WEEKS_AT_ONCE)) - WEEKS_AT_ONCE / 2;
      return ({ week }) => week >= from && week < from + WEEKS_AT_ONCE;
    }
    const share = Math.min(0.9, 200 / this.size);
    const chosen = new Set(season.methods.flatMap((_, m) => (this.random.next() < share ? [m] : [])));
    return ({ method }) => chosen.has(method);
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

  private run(costs: Float64Array, seconds: number, gap: number, start: Float64Array | null): Solved {
    const solved = this.open.minimise(costs, { seconds, gap }, start);
    this.spent += solved.seconds;
    return solved;
  }
}

function wholeColumns({ season, columns }: SeasonModel): WholeColumn[] {
  const grids = season.scenarios.length > 1 ? [columns.booked, ...columns.courses.map(({ made }) => made)] : [columns.booked];
  return grids.flatMap((grid) =>
    grid.flatMap((weeks, method) =>
      weeks.flatMap((cell, week): WholeColumn[] => {
        if (!cell) return [];
        const n = { column: cell.n, week, method };
        return cell.y < 0 ? [n] : [n, { column: cell.y, week, method }];
      }),
    ),
  );
}
