/** Between moments (milliseconds since 1970-01-01T00:00Z) and what a clock on the wall shows in a zone, where two nights a year are an hour longer or shorter. */
import { DateTime } from "luxon";
import { addDays, type LocalDate } from "./local-date.ts";

const MS_A_MINUTE = 60_000;

/** The moment at which the clock shows HH:MM on that day; the first of two. Null where it never does: the clocks were put forward over it. */
export function momentAt(zone: string, day: LocalDate, clock: string): number | null {
  const [first] = momentsAt(zone, day, clock);
  return first ?? null;
}

/** The next moment after `afterMs` at which the clock shows HH:MM, and the day it is asked of: where that day has no such time, `ms` is null. */
export function nextMoment(zone: string, clock: string, afterMs: number): { readonly day: LocalDate; readonly ms: number | null } {
  const today = DateTime.fromMillis(afterMs, { zone }).toFormat("yyyy-MM-dd");
  const later = momentsAt(zone, today, clock).find((ms) => ms > afterMs);
  if (later !== undefined) return { day: today, ms: later };
  // a time that today's clock leaves out, and that was still to come, is asked of today
  if (momentsAt(zone, today, clock).length === 0 && clockAt(zone, afterMs) < clock) return { day: today, ms: null };
  const tomorrow = addDays(today, 1);
  return { day: tomorrow, ms: momentAt(zone, tomorrow, clock) };
}

/** HH:MM as the clock shows it. */
export const clockAt = (zone: string, ms: number): string => DateTime.fromMillis(ms, { zone }).toFormat("HH:mm");

/** None in the hour that spring leaves out, two in the hour that autumn has twice. */
function momentsAt(zone: string, day: LocalDate, clock: string): number[] {
  const [year, month, date] = day.split("-").map(Number) as [number, number, number];
  const [hour, minute] = clock.split(":").map(Number) as [number, number];
  const one = DateTime.fromObject({ year, month, day: date, hour, minute }, { zone });
  const shown = (at: DateTime): boolean => at.toFormat("yyyy-MM-dd HH:mm") === `${day} ${clock}`;
  // zones have moved by half an hour too
  const near = [-60, -30, 0, 30, 60].map((minutes) => one.toMillis() + minutes * MS_A_MINUTE);
  return near.filter((ms) => shown(DateTime.fromMillis(ms, { zone }))).sort((a, b) => a - b);
}
