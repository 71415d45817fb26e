/** Weeks side by side on one axis that all strips of the season share, and what stands on it. Pixels; pure. */
import { addDays, daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";

export interface WeekAxis {
  readonly width: number;
  readonly weeks: number;
  /** Left edge of a week by its index; fractions allowed. */
  readonly x: (week: number) => number;
  /** First days of months inside the weeks; labelled where there is room for the word. */
  readonly months: readonly { readonly first: LocalDate; readonly x: number; readonly labelled: boolean }[];
}

/** `starts` are the Mondays. */
export function weekAxis(starts: readonly LocalDate[], width: number, rem: number): WeekAxis {
  const weeks = Math.max(1, starts.length);
  const x = (week: number): number => (week * width) / weeks;
  const first = starts[0];
  if (first === undefined) return { width, weeks, x, months: [] };
  const months: { first: LocalDate; x: number; labelled: boolean }[] = [];
  let month = nextMonth(first);
  let free = 0;
  while (daysBetween(first, month) < weeks * 7) {
    const at = x(daysBetween(first, month) / 7);
    const labelled = at >= free && at + 2.2 * rem <= width;
    if (labelled) free = at + 3 * rem;
    months.push({ first: month, x: at, labelled });
    month = nextMonth(month);
  }
  return { width, weeks, x, months };
}

const nextMonth = (date: LocalDate): LocalDate => `${addDays(`${date.slice(0, 7)}-01`, 32).slice(0, 7)}-01`;

export interface Bar {
  readonly x: number;
  readonly width: number;
  readonly y: number;
  readonly height: number;
}

/** One bar a week from the ground up, `from` and `to` in the unit of `most`; none where there is nothing. */
export function barsOf(spans: readonly { readonly from: number; readonly to: number }[], most: number, height: number, axis: WeekAxis): Bar[] {
  const scale = (value: number): number => (most > 0 ? (value / most) * height : 0);
  return spans.flatMap(({ from, to }, i) => {
    if (to <= from) return [];
    const [left, right] = [axis.x(i + 0.12), axis.x(i + 0.88)];
    return [{ x: left, width: right - left, y: height - scale(to), height: scale(to) - scale(from) }];
  });
}

/** A line that is level within a week, broken where nothing is known. */
export function levelPath(values: readonly (number | null)[], most: number, height: number, axis: WeekAxis): string {
  let drawn = "";
  let before: number | null = null;
  for (const [i, value] of values.entries()) {
    if (value !== null) {
      const y = (height - (most > 0 ? (value / most) * height : 0)).toFixed(1);
      drawn += before === null ? `M${axis.x(i).toFixed(1)} ${y}` : value === before ? "" : `V${y}`;
      drawn += `H${axis.x(i + 1).toFixed(1)}`;
    }
    before = value;
  }
  return drawn;
}

/** The field under such a line. */
export function levelField(values: readonly number[], most: number, height: number, axis: WeekAxis): string {
  if (values.length === 0) return "";
  return `${levelPath(values, most, height, axis)}V${height}H0Z`;
}
