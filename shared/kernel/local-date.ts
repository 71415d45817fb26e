/**
 * A calendar day without a clock time, written YYYY-MM-DD. No zone, no moment: a day in the garden.
 * Arithmetic runs on day numbers (whole days since 1970-01-01), which engines use as array indexes.
 */

export type LocalDate = string;
/** Whole days since 1970-01-01; 2027-07-26 is 20,660. */
export type DayNumber = number;

const MS_A_DAY = 86_400_000;

/** True for a real calendar day; 2027-04-31 and 2027-02-29 are not. */
export function isLocalDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const ms = Date.parse(`${text}T00:00:00Z`);
  // some readers of dates turn 31 April into 1 May
  return !Number.isNaN(ms) && dateOf(Math.round(ms / MS_A_DAY)) === text;
}

/** Day number of a date. Throws RangeError for a day that does not exist. */
export function dayNumber(date: LocalDate): DayNumber {
  const ms = Date.parse(`${date}T00:00:00Z`);
  if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== date) throw new RangeError(`${date} is not a calendar day`);
  return Math.round(ms / MS_A_DAY);
}

/** The date of a day number. */
export function dateOf(day: DayNumber): LocalDate {
  return new Date(day * MS_A_DAY).toISOString().slice(0, 10);
}

export function addDays(date: LocalDate, days: number): LocalDate {
  return dateOf(dayNumber(date) + days);
}

/** Days from `source` to `target`; negative when target is earlier. */
export function daysBetween(source: LocalDate, target: LocalDate): number {
  return dayNumber(target) - dayNumber(source);
}

export function yearOf(date: LocalDate): number {
  return Number(date.slice(0, 4));
}

/** 1 on 1 January. */
export function dayOfYear(date: LocalDate): number {
  return daysBetween(`${date.slice(0, 4)}-01-01`, date) + 1;
}

/** The same month and day in another year; 29 February becomes 28 February where there is none. */
export function inYear(date: LocalDate, year: number): LocalDate {
  const moved = `${String(year).padStart(4, "0")}${date.slice(4)}`;
  return isLocalDate(moved) ? moved : `${moved.slice(0, 8)}28`;
}
