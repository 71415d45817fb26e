/** Day numbers over scenarios → a spread of dates; whole days, the outer ones rounded outwards, as the forecast does. */
import { quantile } from "../kernel/band.ts";
import { dateOf, type DayNumber } from "../kernel/local-date.ts";
import type { DateBand } from "./outlook-types.ts";

/** Days below 0 stand for "no pick" and are left out; null when none is left. */
export function dateBandOf(days: Int32Array): DateBand | null {
  const sorted = days.filter((day) => day >= 0).sort();
  if (sorted.length === 0) return null;
  return toDates({ low: Math.floor(quantile(sorted, 0.1)), likely: Math.round(quantile(sorted, 0.5)), high: Math.ceil(quantile(sorted, 0.9)) });
}

export function toDates(band: { readonly low: DayNumber; readonly likely: DayNumber; readonly high: DayNumber }): DateBand {
  return { low: dateOf(band.low), likely: dateOf(band.likely), high: dateOf(band.high) };
}

export const toDatesOrNull = (band: Parameters<typeof toDates>[0] | null): DateBand | null => (band === null ? null : toDates(band));
