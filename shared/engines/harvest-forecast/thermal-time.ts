/**
 * Running sums of daily warmth through every scenario year, kept for as long as the weather they belong to, so that sixty sowings
 * share them. A sum at day d holds the days before d: it is what has been gained by the morning of d.
 */
import type { Cover } from "../../kernel/way.ts";
import { calendarOf, MONTH_SLOTS } from "./calendar-days.ts";
import { underCover } from "./cover.ts";
import { dayLengthHours } from "./day-length.ts";
import { singleSine } from "./degree-days.ts";
import { emergenceUnits, soilFromAir } from "./soil.ts";
import type { WeatherYears } from "./types.ts";

/** Sums of all years in one array; year y starts at y · stride. */
export interface Sums {
  readonly values: Float64Array;
  readonly stride: number;
}

/** The weather under one cover, and what was already reckoned from it. */
export interface CoveredWeather {
  readonly years: readonly { readonly tmaxC: Float64Array; readonly tminC: Float64Array; readonly soilC: Float64Array }[];
  readonly days: number;
  readonly calendar: { readonly year: Int16Array; readonly slot: Int16Array };
  readonly kept: Map<string, Sums | Int32Array>;
}

const KEPT = new WeakMap<WeatherYears, Map<Cover, CoveredWeather>>();

export function covered(weather: WeatherYears, cover: Cover): CoveredWeather {
  let byCover = KEPT.get(weather);
  if (!byCover) KEPT.set(weather, (byCover = new Map<Cover, CoveredWeather>()));
  let found = byCover.get(cover);
  if (!found) {
    const years = weather.years.map((year) => {
      const { tmaxC, tminC } = underCover(cover, year.tmaxC, year.tminC);
      return { tmaxC, tminC, soilC: soilFromAir(tmaxC, tminC) };
    });
    found = { years, days: weather.days, calendar: calendarOf(weather.firstDay, weather.days), kept: new Map() };
    byCover.set(cover, found);
  }
  return found;
}

/** Degree-days by single sine, horizontal cut-off, °C d; with a latitude, slowed by short days as leaf crops are. */
export function degreeDaySums(weather: CoveredWeather, baseC: number, upperC: number, slowedAtLatitudeDeg: number | null): Sums {
  return keep(weather, `warmth ${baseC} ${upperC} ${slowedAtLatitudeDeg}`, () => {
    const pace = slowedAtLatitudeDeg === null ? null : shortDayPace(weather, slowedAtLatitudeDeg);
    return runningSums(weather, (year, d) => singleSine(year.tmaxC[d] as number, year.tminC[d] as number, baseC, upperC) * (pace ? (pace[d] as number) : 1));
  });
}

/** Warmth of the soil towards emergence, °C d. */
export function emergenceSums(weather: CoveredWeather, baseC: number, germinationMinC: number): Sums {
  return keep(weather, `soil ${baseC} ${germinationMinC}`, () => runningSums(weather, (year, d) => emergenceUnits(year.soilC[d] as number, baseC, germinationMinC)));
}

/** First day of year `y` by whose morning the sum has reached `target`, searched from day `from`; −1 where it never does. */
export function firstDayReaching(sums: Sums, y: number, from: number, target: number): number {
  const { values, stride } = sums;
  let low = y * stride + from;
  let high = y * stride + stride - 1;
  // the day after the last is outside the stretch asked for
  if (low >= high || (values[high - 1] as number) < target) return -1;
  high--;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] as number) >= target) high = middle;
    else low = middle + 1;
  }
  return low - y * stride;
}

/**
 * First day from each day on for which `is` holds; `days` where none follows. Laid out as the sums are.
 */
export function nextDays(weather: CoveredWeather, key: string, is: (year: CoveredWeather["years"][number], d: number) => boolean): Int32Array {
  const found = weather.kept.get(key);
  if (found instanceof Int32Array) return found;
  const stride = weather.days + 1;
  const next = new Int32Array(stride * weather.years.length);
  weather.years.forEach((year, y) => {
    let coming = weather.days;
    next[y * stride + weather.days] = coming;
    for (let d = weather.days - 1; d >= 0; d--) {
      if (is(year, d)) coming = d;
      next[y * stride + d] = coming;
    }
  });
  weather.kept.set(key, next);
  return next;
}

/** First and one past the last slot of the months in which short days count: from 1 September, until 1 March. */
const DARK_FROM = MONTH_SLOTS[8] as number;
const DARK_UNTIL = MONTH_SLOTS[2] as number;

/**
 * Pace of a leaf crop by day length, 0.1–1: clip((hours − 8) / 4, 0.1, 1) from 1 September to the end of February, else 1 (common
 * practice, no source: below ten hours leaf crops practically stand still). South of the equator from 1 March to the end of August.
 */
export function shortDayPace(weather: CoveredWeather, latitudeDeg: number): Float64Array {
  return Float64Array.from(weather.calendar.slot, (slot) => {
    const dark = slot >= DARK_FROM || slot < DARK_UNTIL;
    if (dark === latitudeDeg < 0) return 1;
    return Math.min(1, Math.max(0.1, (dayLengthHours(latitudeDeg, slot + 1) - 8) / 4));
  });
}

function runningSums(weather: CoveredWeather, gained: (year: CoveredWeather["years"][number], d: number) => number): Sums {
  const stride = weather.days + 1;
  const values = new Float64Array(stride * weather.years.length);
  weather.years.forEach((year, y) => {
    let sum = 0;
    for (let d = 0; d < weather.days; d++) {
      const gain = gained(year, d);
      // a day without a reading brings nothing
      if (gain > 0) sum += gain;
      values[y * stride + d + 1] = sum;
    }
  });
  return { values, stride };
}

function keep(weather: CoveredWeather, key: string, make: () => Sums): Sums {
  const found = weather.kept.get(key);
  if (found && !(found instanceof Int32Array)) return found;
  const made = make();
  weather.kept.set(key, made);
  return made;
}
