/**
 * The weeks that a season is reckoned in: those asked for, and before them a few in which nothing is cooked, so that what is on hand already enters
 * in the week it was picked in and goes off when its time is over.
 */
import { addWeeks, weeksFrom, weekOf, weekStart, type IsoWeek } from "../kernel/iso-week.ts";
import { addDays, dayNumber, type LocalDate } from "../kernel/local-date.ts";
import type { SeasonSettings } from "./season-facts.ts";

/** Further back nothing is looked for; what keeps for months is not spoilt by a few weeks. */
export const LEAD_WEEKS = 4;

export interface SeasonWeeks {
  readonly weeks: readonly IsoWeek[];
  /** Index of the first week asked for. */
  readonly first: number;
  /** Index of the running week; the weeks before it are past. */
  readonly running: number;
  /** Share of each week in which somebody is at home. */
  readonly atHome: readonly number[];
}

export function seasonWeeks(from: IsoWeek, count: number, today: LocalDate, settings: SeasonSettings): SeasonWeeks {
  const running = weekOf(today);
  const ahead = Math.max(0, Math.round((dayNumber(weekStart(from)) - dayNumber(weekStart(running))) / 7));
  const first = LEAD_WEEKS + ahead;
  const weeks = weeksFrom(addWeeks(running, -LEAD_WEEKS), first + count);
  return { weeks, first, running: LEAD_WEEKS, atHome: weeks.map((week) => shareAtHome(week, settings)) };
}

function shareAtHome(week: IsoWeek, { away }: SeasonSettings): number {
  const monday = weekStart(week);
  const days = Array.from({ length: 7 }, (_, i) => addDays(monday, i));
  return days.filter((day) => !away.some(({ firstDay, lastDay }) => firstDay <= day && day <= lastDay)).length / 7;
}
