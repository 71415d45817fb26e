/** The only reader of the time. The day depends on where one stands, so the zone is an argument. */
import { dayNumber, type LocalDate } from "#shared/kernel/local-date.ts";

export interface Clock {
  /** The calendar day in an IANA zone. */
  today(zone: string): LocalDate;
  /** Milliseconds since 1970: timers and steps of a cook day hang on it. */
  now(): number;
}

/** One formatter for each zone: making one costs more than the rest of a short request. */
const formatters = new Map<string, Intl.DateTimeFormat>();

function formatterFor(zone: string): Intl.DateTimeFormat {
  let formatter = formatters.get(zone);
  if (!formatter) {
    // en-CA writes YYYY-MM-DD
    formatter = new Intl.DateTimeFormat("en-CA", { timeZone: zone, year: "numeric", month: "2-digit", day: "2-digit" });
    formatters.set(zone, formatter);
  }
  return formatter;
}

/** The calendar day of an instant in a zone. */
export function dayAt(epochMs: number, zone: string): LocalDate {
  return formatterFor(zone).format(epochMs);
}

export const realClock: Clock = { today: (zone) => dayAt(Date.now(), zone), now: () => Date.now() };

/** The same day everywhere: for the demo and for tests. Its hours pass as the machine's do, so that timers run. */
export function fixedClock(day: LocalDate): Clock {
  const aheadMs = (dayNumber(day) - Math.floor(Date.now() / MS_A_DAY)) * MS_A_DAY;
  return { today: () => day, now: () => Date.now() + aheadMs };
}
const MS_A_DAY = 86_400_000;

/** The zone that the machine is set to; what a new household starts with. */
export const zoneOfMachine = (): string => new Intl.DateTimeFormat().resolvedOptions().timeZone;
