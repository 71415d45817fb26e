/** Last frost of spring and first of autumn in the scenario years. Frost: minimum at or below 0 °C at screen height. */
import { quantile } from "../../kernel/band.ts";
import { monthStart } from "./calendar-days.ts";
import type { DayBand, FrostDates, WeatherYears } from "./types.ts";

const FROST_C = 0;

/**
 * Bands over the years that bring a frost; null where none does. Spring runs from 1 January, autumn from 1 July to the next 30 June (six months
 * later in the south), as far as the weather reaches. A night counts with a minimum of `atMostC` or less.
 */
export function frostDates(weather: WeatherYears, season: number, southern: boolean, atMostC: number = FROST_C): FrostDates {
  const newYear = monthStart(season, 1, southern);
  const midsummer = monthStart(season, 7, southern);
  const nextMidsummer = monthStart(season + 1, 7, southern);
  const last: number[] = [];
  const first: number[] = [];
  for (const { tminC } of weather.years) {
    const frosty = (day: number): boolean => (tminC[day - weather.firstDay] ?? NaN) <= atMostC;
    for (let day = midsummer - 1; day >= newYear; day--)
      if (frosty(day)) {
        last.push(day);
        break;
      }
    for (let day = midsummer; day < nextMidsummer; day++)
      if (frosty(day)) {
        first.push(day);
        break;
      }
  }
  return { lastSpring: dayBandOf(last), firstAutumn: dayBandOf(first) };
}

/** 10, 50 and 90 % of days; whole days, the outer ones rounded outwards so that the span is never narrower than reckoned. */
export function dayBandOf(days: readonly number[] | Int32Array): DayBand | null {
  if (days.length === 0) return null;
  const sorted = (days instanceof Int32Array ? days.slice() : Float64Array.from(days)).sort();
  return { low: Math.floor(quantile(sorted, 0.1)), likely: Math.round(quantile(sorted, 0.5)), high: Math.ceil(quantile(sorted, 0.9)) };
}
