/** The only reader of the time. The day depends on where one stands, so the zone is an argument. */
import type { LocalDate } from "#shared/kernel/local-date.ts";

export interface Clock {
  /** The calendar day in an IANA zone. */
  today(zone: string): LocalDate;
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

export const realClock: Clock = { today: (zone) => dayAt(Date.now(), zone) };

/** The same day everywhere: for the demo and for tests. */
export const fixedClock = (day: LocalDate): Clock => ({ today: () => day });

/** The zone that the machine is set to; what a new household starts with. */
export const zoneOfMachine = (): string => new Intl.DateTimeFormat().resolvedOptions().timeZone;
