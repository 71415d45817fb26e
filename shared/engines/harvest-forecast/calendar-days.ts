/**
 * Days of the year as the crop table means them. The table is written for the north; south of the equator
 * every calendar day moves by six months and a season is named by the year it ends in.
 */
import { dateOf, dayNumber } from "../../kernel/local-date.ts";
import type { DayNumber } from "../../kernel/local-date.ts";

/** First day of a month of the table in a season, e.g. month 2 = 1 February in the north, 1 August of the year before in the south. */
export function monthStart(season: number, month: number, southern: boolean): DayNumber {
  if (!southern) return firstOf(season, month);
  return month <= 6 ? firstOf(season - 1, month + 6) : firstOf(season, month - 6);
}

/** The season that a day belongs to: January to December in the north, July to June in the south. */
export function seasonOf(day: DayNumber, southern: boolean): number {
  const date = dateOf(day);
  const year = Number(date.slice(0, 4));
  return southern && Number(date.slice(5, 7)) >= 7 ? year + 1 : year;
}

function firstOf(year: number, month: number): DayNumber {
  return dayNumber(`${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-01`);
}

/** First slot of each month in a year of 366 days; slot 59 is 29 February. */
export const MONTH_SLOTS: readonly number[] = [0, 31, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335, 366];
const LEAP_DAY_SLOT = 59;
export const SLOTS = 366;

/** Calendar of a stretch of days: year, and slot 0–365 in a year of 366 days, so that 1 March is always slot 60. */
export function calendarOf(firstDay: DayNumber, days: number): { year: Int16Array; slot: Int16Array } {
  const year = new Int16Array(days);
  const slot = new Int16Array(days);
  let d = 0;
  while (d < days) {
    const thisYear = Number(dateOf(firstDay + d).slice(0, 4));
    const newYear = firstOf(thisYear, 1);
    const next = firstOf(thisYear + 1, 1);
    const leap = next - newYear === SLOTS;
    for (; d < days && firstDay + d < next; d++) {
      const n = firstDay + d - newYear;
      year[d] = thisYear;
      slot[d] = leap || n < LEAP_DAY_SLOT ? n : n + 1;
    }
  }
  return { year, slot };
}
