/** Where the twenty seasons stand: one dot each, stacked in columns one dot wide on an axis of dates. Pixels; pure. */
import { addDays, daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";

export interface DotsPlate {
  readonly width: number;
  readonly height: number;
  readonly base: number;
  readonly rem: number;
  readonly radius: number;
  readonly x: (date: LocalDate) => number;
  readonly dots: readonly { readonly cx: number; readonly cy: number }[];
  /** First days of months on the axis. */
  readonly months: readonly { readonly first: LocalDate; readonly x: number; readonly labelled: boolean }[];
  readonly long: boolean;
}

interface DotsInput {
  readonly dates: readonly LocalDate[];
  /** The day the sowing starts from; the axis begins a little before it. Null for what stands for years: then the axis begins before the first dot. */
  readonly start: LocalDate | null;
  readonly width: number;
  readonly rem: number;
  /** Inside a row: lower, with smaller dots. */
  readonly small?: boolean;
}

const BEFORE_DAYS = 6;
const AFTER_DAYS = 20;
const SHORTEST_DAYS = 110;
/** Space between neighbouring columns, in radii. */
const STEP = 2.3;

export function layOutDots({ dates, start, width, rem, small = false }: DotsInput): DotsPlate {
  const sorted = [...dates].sort();
  const first = start ?? addDays(sorted[0] as LocalDate, -30);
  const from = addDays(first, -BEFORE_DAYS);
  const lastDot = sorted[sorted.length - 1] ?? first;
  const days = Math.max(daysBetween(from, lastDot) + AFTER_DAYS, SHORTEST_DAYS);
  const x = (date: LocalDate): number => 6 + (daysBetween(from, date) / days) * (width - 12);
  const long = width > 29 * rem;
  const radius = Math.min((long && !small ? 0.42 : 0.28) * rem, width / 72);
  const height = dotsHeight(width, rem, small);
  const base = height - 1.9 * rem;
  return { width, height, base, rem, radius, x, dots: stack(sorted.map(x), radius, base), months: monthsOn(from, days, x, width - 3 * rem), long };
}

/** The plate keeps its height whether it has dots or not. */
export function dotsHeight(width: number, rem: number, small = false): number {
  return (small ? 6.5 : width > 29 * rem ? 11.5 : 7.5) * rem;
}

/** Dots as coins in columns, each column one dot wide. */
export function stack(xs: readonly number[], radius: number, base: number): { cx: number; cy: number }[] {
  const inColumn = new Map<number, number>();
  return xs.map((x) => {
    const column = Math.round(x / (STEP * radius));
    const level = inColumn.get(column) ?? 0;
    inColumn.set(column, level + 1);
    return { cx: column * STEP * radius, cy: base - radius - 2 - level * STEP * radius };
  });
}

/** Firsts of months on an axis that begins at `from`, so many days long; labels stand at least `gap` pixels apart. */
export function monthsOn(from: LocalDate, days: number, x: (date: LocalDate) => number, lastLabel: number, gap = 0): DotsPlate["months"] {
  const months: { first: LocalDate; x: number; labelled: boolean }[] = [];
  let first = `${addDays(`${from.slice(0, 7)}-01`, 32).slice(0, 7)}-01`;
  const every = Math.max(1, Math.ceil(days / 250));
  let free = -Infinity;
  for (let n = 0; daysBetween(from, first) < days; n++) {
    const labelled = n % every === 0 && x(first) < lastLabel && x(first) >= free;
    months.push({ first, x: x(first), labelled });
    if (labelled) free = x(first) + gap;
    first = `${addDays(first, 32).slice(0, 7)}-01`;
  }
  return months;
}
