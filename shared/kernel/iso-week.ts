/**
 * A week by ISO 8601: Monday to Sunday, week 1 holds 4 January, written 2027-W32. Reckoned on day numbers and not by a calendar
 * library, because the first page of the browser needs it and the library would be half of what that page fetches.
 */
import { dateOf, dayNumber, dayOfYear, type DayNumber, type LocalDate } from "./local-date.ts";

export type IsoWeek = string;

/** 1970-01-01, day 0, was a Thursday: three days after a Monday. */
const FIRST_WEEKDAY = 3;

const mondayBefore = (day: DayNumber): DayNumber => day - ((((day + FIRST_WEEKDAY) % 7) + 7) % 7);

function mondayOf(week: IsoWeek): DayNumber {
  const [, year, n] = /^(\d{4})-W(\d{2})$/.exec(week) ?? [];
  if (year === undefined) throw new RangeError(`${week} is not an ISO week`);
  const monday = mondayBefore(dayNumber(`${year}-01-04`)) + 7 * (Number(n) - 1);
  // W00, W54 and the W53 of a year that has 52 read back under another name
  if (nameOf(monday) !== week) throw new RangeError(`${week} is not an ISO week`);
  return monday;
}

/** The week's Thursday lies in the year that names it (ISO 8601:2019, 3.1.1.23). */
function nameOf(monday: DayNumber): IsoWeek {
  const thursday = dateOf(monday + 3);
  return `${thursday.slice(0, 4)}-W${String(Math.floor((dayOfYear(thursday) - 1) / 7) + 1).padStart(2, "0")}`;
}

/** True for a week that exists: 2026-W53 does, 2027-W53 and every W54 do not. */
export function isIsoWeek(text: string): boolean {
  try {
    mondayOf(text);
    return true;
  } catch {
    return false;
  }
}

export function weekOf(date: LocalDate): IsoWeek {
  return nameOf(mondayBefore(dayNumber(date)));
}

/** The Monday. */
export function weekStart(week: IsoWeek): LocalDate {
  return dateOf(mondayOf(week));
}

/** The Sunday. */
export function weekEnd(week: IsoWeek): LocalDate {
  return dateOf(mondayOf(week) + 6);
}

export function addWeeks(week: IsoWeek, weeks: number): IsoWeek {
  return nameOf(mondayOf(week) + 7 * weeks);
}

/** `count` weeks in a row, the first being `from`. */
export function weeksFrom(from: IsoWeek, count: number): IsoWeek[] {
  const monday = mondayOf(from);
  return Array.from({ length: count }, (_, i) => nameOf(monday + 7 * i));
}
