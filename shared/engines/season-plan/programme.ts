/** A linear programme with whole numbers, and what a solver of such programmes must be able to do. The solver itself is handed in. */

export interface Programme {
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** 1 where only whole numbers will do. */
  readonly whole: Int32Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  /** Row by row: entries of row i lie at starts[i] … starts[i + 1] − 1. */
  readonly starts: Int32Array;
  readonly indices: Int32Array;
  readonly values: Float64Array;
}

export interface Effort {
  /** Iterations of the solver's linear programmes; counted and not timed, so that the same effort gives the same plan on every machine. */
  readonly steps: number;
  /** Of the clock that the solver reads: the last resort. What is found by then is passed on. */
  readonly seconds: number;
  /** A proof may leave so much open, in units of the costs. */
  readonly gap: number;
  /** Asked now and then during a run; true ends it with the best so far. */
  readonly stop?: () => boolean;
  /** Of the solver's own dice, 0 where left out: equal programmes give equal ties, another number another road. */
  readonly seed?: number;
}

export interface Solved {
  /** `stopped`: the effort ended first; `none`: there is no plan within the limits. */
  readonly status: "optimal" | "stopped" | "none";
  /** Null when nothing was found. */
  readonly values: Float64Array | null;
  readonly value: number;
  /** No plan costs less. */
  readonly bound: number;
  readonly steps: number;
  readonly seconds: number;
  /** Ended by the clock or by `stop`: with the same effort another machine may have found more. */
  readonly cutShort: boolean;
}

/** One programme held open, so that a level follows another without building it anew. */
export interface OpenProgramme {
  minimise(costs: Float64Array, effort: Effort, start?: Float64Array | null): Solved;
  setBounds(lower: Float64Array, upper: Float64Array): void;
  /** 1 where only whole numbers will do, from now on. */
  setWhole(whole: Int32Array): void;
  /** Σ costs · x ≤ most, from now on. */
  lock(costs: Float64Array, most: number): void;
  /** Takes back the newest locks until so many are left. */
  unlockTo(locks: number): void;
  close(): void;
}

export interface Solver {
  open(programme: Programme): OpenProgramme;
}

/** Puts a programme together column by column and row by row. */
export class ProgrammeWriter {
  private readonly lower: number[] = [];
  private readonly upper: number[] = [];
  private readonly whole: number[] = [];
  private readonly rows: { lower: number; upper: number; entries: readonly (readonly [number, number])[] }[] = [];

  column(lower: number, upper: number, whole = false): number {
    this.lower.push(lower);
    this.upper.push(upper);
    this.whole.push(whole ? 1 : 0);
    return this.lower.length - 1;
  }

  get columns(): number {
    return this.lower.length;
  }

  /** Entries of one column are added up; a row without entries is left out. */
  row(lower: number, upper: number, entries: readonly (readonly [number, number])[]): void {
    const sums = new Map<number, number>();
    for (const [column, value] of entries) sums.set(column, (sums.get(column) ?? 0) + value);
    const kept = [...sums].filter(([, value]) => value !== 0);
    if (kept.length > 0) this.rows.push({ lower, upper, entries: kept });
  }

  written(): Programme {
    const starts = new Int32Array(this.rows.length + 1);
    this.rows.forEach(({ entries }, i) => (starts[i + 1] = (starts[i] ?? 0) + entries.length));
    const all = this.rows.flatMap(({ entries }) => entries);
    return {
      lower: Float64Array.from(this.lower),
      upper: Float64Array.from(this.upper),
      whole: Int32Array.from(this.whole),
      rowLower: Float64Array.from(this.rows, ({ lower }) => lower),
      rowUpper: Float64Array.from(this.rows, ({ upper }) => upper),
      starts,
      indices: Int32Array.from(all, ([column]) => column),
      values: Float64Array.from(all, ([, value]) => value),
    };
  }
}
