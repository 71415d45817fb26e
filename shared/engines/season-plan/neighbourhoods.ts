/**
 * Which whole numbers are set free together while the rest stays: in turns the weeks that follow one another, all that is made of some
 * crops, and a mixture. Each piece is filled up to about the size of a small season, whatever the size of the whole.
 */
import type { Random } from "../../kernel/seeded-random.ts";
import type { SeasonModel } from "./model.ts";
import type { SeasonColumns } from "./model-columns.ts";
import type { Season } from "./types.ts";

export interface WholeColumn {
  readonly column: number;
  readonly week: number;
  readonly method: number;
}

/** Whole numbers that are free at once. */
const FREE_AT_ONCE = 80;

export class Neighbourhoods {
  private readonly season: Season;
  private readonly random: Random;
  /** Whole numbers by week, and by method. */
  private readonly inWeek: readonly number[];
  private readonly ofMethod: readonly number[];
  private turn = 0;
  private nextWeek = 0;

  constructor(season: Season, wholes: readonly WholeColumn[], random: Random) {
    this.season = season;
    this.random = random;
    this.inWeek = countOf(wholes, season.weeks, ({ week }) => week);
    this.ofMethod = countOf(wholes, season.methods.length, ({ method }) => method);
  }

  /** So many pieces in a row without a gain, and there is little left to find. */
  get enough(): number {
    const all = this.inWeek.reduce((a, b) => a + b, 0);
    return 8 + Math.ceil((6 * all) / FREE_AT_ONCE);
  }

  again(): void {
    this.turn = 0;
    this.nextWeek = 0;
  }

  next(): (whole: WholeColumn) => boolean {
    const turn = this.turn++ % 3;
    if (turn === 0) return this.weeksInARow();
    if (turn === 1) return this.cropsTogether();
    return this.someOfMoreWeeks();
  }

  /** Overlapping spans, once through the season and from the start again. */
  private weeksInARow(): (whole: WholeColumn) => boolean {
    const from = this.nextWeek;
    const until = this.fullFrom(from, FREE_AT_ONCE);
    this.nextWeek = until >= this.season.weeks ? 0 : Math.max(from + 1, Math.floor((from + until) / 2));
    return ({ week }) => week >= from && week < until;
  }

  /** All methods of some crops, so that what one of them makes can go to another. */
  private cropsTogether(): (whole: WholeColumn) => boolean {
    const chosen = new Set<number>();
    let free = 0;
    for (const c of this.shuffled(this.season.crops.length)) {
      const crop = this.season.crops[c]?.crop;
      const methods = this.season.methods.flatMap(({ uses }, m) => (uses.some((use) => use.crop === crop) && !chosen.has(m) ? [m] : []));
      const more = methods.reduce((sum, m) => sum + (this.ofMethod[m] ?? 0), 0);
      if (more === 0 || (free > 0 && free + more > FREE_AT_ONCE)) continue;
      for (const m of methods) chosen.add(m);
      free += more;
    }
    return ({ method }) => chosen.has(method);
  }

  /** Twice as many weeks, with half of the methods. */
  private someOfMoreWeeks(): (whole: WholeColumn) => boolean {
    const busy = this.inWeek.flatMap((free, week) => (free > 0 ? [week] : []));
    const from = busy[this.random.below(Math.max(1, busy.length))] ?? 0;
    const until = this.fullFrom(from, 2 * FREE_AT_ONCE);
    const order = this.shuffled(this.season.methods.length);
    const chosen = new Set(order.slice(0, Math.ceil(order.length / 2)));
    return ({ week, method }) => week >= from && week < until && chosen.has(method);
  }

  private fullFrom(from: number, most: number): number {
    let free = 0;
    let until = from;
    while (until < this.season.weeks && (until === from || free + (this.inWeek[until] ?? 0) <= most)) free += this.inWeek[until++] ?? 0;
    return until;
  }

  private shuffled(length: number): number[] {
    const list = Array.from({ length }, (_, i) => i);
    for (let i = length - 1; i > 0; i--) {
      const k = this.random.below(i + 1);
      [list[i], list[k]] = [list[k] as number, list[i] as number];
    }
    return list;
  }
}

export function wholeColumns({ season, columns }: SeasonModel): WholeColumn[] {
  const grids: SeasonColumns["booked"][] = season.scenarios.length > 1 ? [columns.booked, ...columns.courses.map(({ made }) => made)] : [columns.booked];
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

function countOf(wholes: readonly WholeColumn[], length: number, of: (whole: WholeColumn) => number): number[] {
  const counts = new Array<number>(length).fill(0);
  for (const whole of wholes) counts[of(whole)] = (counts[of(whole)] ?? 0) + 1;
  return counts;
}
