/** Whole past years of a daily record, each in 366 slots so that calendar days line up; nothing after `asOf` is read. */
import type { DayNumber } from "../../kernel/local-date.ts";
import { calendarOf, SLOTS } from "./calendar-days.ts";
import type { DailyRecord, MonthlyNormal } from "./types.ts";
import { MONTH_SLOTS } from "./calendar-days.ts";

/** One year by slot (see calendar-days.ts). */
export interface SlotYear {
  readonly label: string;
  readonly tmaxC: Float64Array;
  readonly tminC: Float64Array;
}

/** Gaps up to so many days in a row are bridged by a straight line; a year with a longer one is left out. */
export const LONGEST_BRIDGE_DAYS = 5;

/** Whether a day has no pair of readings that can be: one is missing, or the minimum lies above the maximum. */
export function unread(maxC: number | undefined, minC: number | undefined): boolean {
  return !((minC ?? NaN) <= (maxC ?? NaN));
}

/** Whole years that ended by `asOf`, oldest first. */
export const wholeYears = (record: DailyRecord, asOf: DayNumber): SlotYear[] => sortedYears(record, asOf).whole;

interface SortedYears {
  readonly whole: SlotYear[];
  /** Years of which there are readings, with too long a gap among them. */
  readonly leftOut: string[];
}

/** By record and the first year that has not ended: a track record asks for the same years many times. */
const SORTED = new WeakMap<DailyRecord, Map<number, SortedYears>>();

export function sortedYears(record: DailyRecord, asOf: DayNumber): SortedYears {
  const [running = 0] = calendarOf(asOf + 1, 1).year;
  let byYear = SORTED.get(record);
  if (!byYear) SORTED.set(record, (byYear = new Map<number, SortedYears>()));
  let found = byYear.get(running);
  if (!found) byYear.set(running, (found = sortYears(record, asOf)));
  return found;
}

function sortYears(record: DailyRecord, asOf: DayNumber): SortedYears {
  const days = Math.min(record.tmaxC.length, asOf - record.firstDay + 1);
  const years: SlotYear[] = [];
  const leftOut: string[] = [];
  if (days < 365) return { whole: years, leftOut };
  const { year, slot } = calendarOf(record.firstDay, days);
  for (let from = 0; from < days; ) {
    let until = from;
    while (until < days && year[until] === year[from]) until++;
    if (slot[from] === 0 && slot[until - 1] === SLOTS - 1) {
      const missing = (d: number): boolean => unread(record.tmaxC[d], record.tminC[d]);
      const tmaxC = bridged(record.tmaxC, missing, from, until);
      const tminC = bridged(record.tminC, missing, from, until);
      if (tmaxC && tminC) years.push({ label: String(year[from]), tmaxC: inSlots(tmaxC), tminC: inSlots(tminC) });
      else if (anyRead(missing, from, until)) leftOut.push(String(year[from]));
    }
    from = until;
  }
  return { whole: years, leftOut };
}

function anyRead(missing: (d: number) => boolean, from: number, until: number): boolean {
  for (let d = from; d < until; d++) if (!missing(d)) return true;
  return false;
}

/** Twelve monthly means of what a short record holds, where every month has four weeks of it; else null. */
export function normalsOfRecord(record: DailyRecord, asOf: DayNumber): MonthlyNormal[] | null {
  const days = Math.max(0, Math.min(record.tmaxC.length, asOf - record.firstDay + 1));
  const { slot } = calendarOf(record.firstDay, days);
  const sums = Array.from({ length: 12 }, () => ({ n: 0, max: 0, min: 0 }));
  for (let d = 0; d < days; d++) {
    const max = record.tmaxC[d] as number;
    const min = record.tminC[d] as number;
    if (unread(max, min)) continue;
    const sum = sums[MONTH_SLOTS.findLastIndex((first) => first <= (slot[d] as number))];
    if (!sum) continue;
    sum.n++;
    sum.max += max;
    sum.min += min;
  }
  if (sums.some((sum) => sum.n < 28)) return null;
  return sums.map((sum, i) => ({ month: i + 1, tmaxC: sum.max / sum.n, tminC: sum.min / sum.n }));
}

/** Days `from` … `until` − 1 with short gaps bridged. Null where a gap is too long. */
function bridged(series: Float64Array, missing: (d: number) => boolean, from: number, until: number): Float64Array | null {
  const out = series.slice(from, until);
  for (let d = from; d < until; d++) {
    if (!missing(d)) continue;
    let end = d;
    while (end < until && missing(end)) end++;
    if (end - d > LONGEST_BRIDGE_DAYS || d === from || end === until) return null;
    const before = out[d - 1 - from] as number;
    const step = ((series[end] as number) - before) / (end - d + 1);
    for (let i = d; i < end; i++) out[i - from] = before + step * (i - d + 1);
    d = end;
  }
  return out;
}

/** 29 February repeats the 28th in a year that has none. */
function inSlots(year: Float64Array): Float64Array {
  if (year.length === SLOTS) return year;
  const slots = new Float64Array(SLOTS);
  slots.set(year.subarray(0, 59));
  slots[59] = year[58] as number;
  slots.set(year.subarray(59), 60);
  return slots;
}
