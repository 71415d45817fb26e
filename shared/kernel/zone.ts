/** Time zones by their IANA names. */
import { DateTime } from "luxon";
import type { LocalDate } from "./local-date.ts";

export function isZone(name: string): boolean {
  // the platform's own table: the pages ask this too, and need no calendar library for it
  try {
    return new Intl.DateTimeFormat("en-US", { timeZone: name }).resolvedOptions().timeZone !== "" && name !== "";
  } catch {
    return false;
  }
}

/** The calendar day that an instant falls on in a zone. `utcMs` is milliseconds since 1970-01-01T00:00Z. */
export function localDateIn(zone: string, utcMs: number): LocalDate {
  return DateTime.fromMillis(utcMs, { zone }).toFormat("yyyy-MM-dd");
}
