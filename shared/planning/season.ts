/** Seasons and weeks of a household's year. The season is the calendar year; south of the equator it runs July to June and has the name of the year it ends in. */
import { addWeeks, weekOf, weeksFrom, weekStart, type IsoWeek } from "../kernel/iso-week.ts";
import { dateOf, dayNumber, yearOf, type DayNumber, type LocalDate } from "../kernel/local-date.ts";
import type { Window } from "./facts.ts";

export function seasonOf(day: DayNumber, southern: boolean): number {
  const date = dateOf(day);
  return yearOf(date) + (southern && Number(date.slice(5, 7)) >= 7 ? 1 : 0);
}

/** First day of a season; the day before it is the last of the season before. */
export function seasonStart(season: number, southern: boolean): DayNumber {
  return southern ? dayNumber(`${String(season - 1).padStart(4, "0")}-07-01`) : dayNumber(`${String(season).padStart(4, "0")}-01-01`);
}

/** What stands for years counts its warmth from the second month of the season on, so nothing of it comes in the first. */
const NOTHING_BEFORE_DAYS = 31;

/** Seasons in which something established can be picked between two days, both included; at least the one of the first day. */
export function seasonsBetween(from: DayNumber, to: DayNumber, southern: boolean): number[] {
  const first = seasonOf(from, southern);
  const seasons = [first];
  for (let season = first + 1; seasonStart(season, southern) + NOTHING_BEFORE_DAYS <= to; season++) seasons.push(season);
  return seasons;
}

/** The weeks of the ISO year that a day lies in: what the calendar shows when nobody asks for others. */
export function yearWindow(day: LocalDate): Window {
  const year = weekOf(day).slice(0, 4);
  const from = `${year}-W01`;
  return { from, weeks: addWeeks(from, 52).startsWith(year) ? 53 : 52 };
}

/** A window with the weeks before it that its first weeks live on, and where the day of asking falls. */
export interface WeekSpan {
  readonly weeks: readonly IsoWeek[];
  readonly firstMonday: DayNumber;
  /** One past the last Sunday. */
  readonly untilDay: DayNumber;
  /** How many weeks stand before the window. */
  readonly lead: number;
  /** Index of the week that `asOf` lies in; below 0 or past the end when it lies outside. */
  readonly current: number;
}

export function weekSpan(window: Window, lead: number, asOf: LocalDate): WeekSpan {
  const weeks = weeksFrom(addWeeks(window.from, -lead), window.weeks + lead);
  const firstMonday = dayNumber(weekStart(weeks[0] as IsoWeek));
  return { weeks, firstMonday, untilDay: firstMonday + 7 * weeks.length, lead, current: Math.floor((dayNumber(asOf) - firstMonday) / 7) };
}
