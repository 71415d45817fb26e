/** A week by ISO 8601: Monday to Sunday, week 1 holds 4 January, written 2027-W32. */
import { DateTime } from "luxon";
import type { LocalDate } from "./local-date.ts";

export type IsoWeek = string;

function mondayOf(week: IsoWeek): DateTime {
  const day = /^\d{4}-W\d{2}$/.test(week) ? DateTime.fromISO(`${week}-1`, { zone: "utc" }) : DateTime.invalid("shape");
  // luxon accepts W53 of a year that has 52; such a week reads back under another name
  if (!day.isValid || nameOf(day) !== week) throw new RangeError(`${week} is not an ISO week`);
  return day;
}

function nameOf(day: DateTime): IsoWeek {
  return `${String(day.weekYear).padStart(4, "0")}-W${String(day.weekNumber).padStart(2, "0")}`;
}

const isoDay = (day: DateTime): LocalDate => day.toFormat("yyyy-MM-dd");

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
  return nameOf(DateTime.fromISO(date, { zone: "utc" }));
}

/** The Monday. */
export function weekStart(week: IsoWeek): LocalDate {
  return isoDay(mondayOf(week));
}

/** The Sunday. */
export function weekEnd(week: IsoWeek): LocalDate {
  return isoDay(mondayOf(week).plus({ days: 6 }));
}

export function addWeeks(week: IsoWeek, weeks: number): IsoWeek {
  return nameOf(mondayOf(week).plus({ weeks }));
}

/** `count` weeks in a row, the first being `from`. */
export function weeksFrom(from: IsoWeek, count: number): IsoWeek[] {
  const monday = mondayOf(from);
  return Array.from({ length: count }, (_, i) => nameOf(monday.plus({ weeks: i })));
}
