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

export interface CoveredYear {
  readonly tmaxC: Float64Array;
  readonly tminC: Float64Array;
}

/** The weather under one cover, and what was already reckoned from it. */
export interface CoveredWeather {
  readonly years: readonly CoveredYear[];
  readonly days: number;
  readonly calendar: { readonly year: Int16Array; readonly slot: Int16Array };
  readonly kept: Map<string, Sums>;
  readonly nextDays: Map<string, Int32Array>;
  /** Soil by year, once something asks for it. */
  readonly soil: Float64Array[];
}

const KEPT = new WeakMap<WeatherYears, Map<Cover, CoveredWeather>>();

export function covered(weather: WeatherYears, cover: Cover): CoveredWeather {
  let byCover = KEPT.get(weather);
  if (!byCover) KEPT.set(weather, (byCover = new Map<Cover, CoveredWeather>()));
  let found = byCover.get(cover);
  if (!found) {
    const years = weather.years.map((year) => underCover(cover, year.tmaxC, year.tminC));
    found = { years, days: weather.days, calendar: calendarOf(weather.firstDay, weather.days), kept: new Map(), nextDays: new Map(), soil: [] };
    byCover.set(cover, found);
  }
  return found;
}

/** Soil temperature by day in year `y`, °C. */
export function soilOf(weather: CoveredWeather, y: number): Float64Array {
  const year = weather.years[y] as CoveredYear;
  return (weather.soil[y] ??= soilFromAir(year.tmaxC, year.tminC));
}

/** Degree-days by single sine, horizontal cut-off, °C d; with a latitude, slowed by short days as leaf crops are. */
export function degreeDaySums(weather: CoveredWeather, baseC: number, upperC: number, slowedAtLatitudeDeg: number | null): Sums {
  return keep(weather, `warmth ${baseC} ${upperC} ${slowedAtLatitudeDeg}`, () => {
    const pace = slowedAtLatitudeDeg === null ? null : shortDayPace(weather, slowedAtLatitudeDeg);
    return runningSums(weather, ({ tmaxC, tminC }, gains) => {
      for (let d = 0; d < gains.length; d++) {
        const max = tmaxC[d] as number;
        const min = tminC[d] as number;
        if (max <= baseC) continue;
        // wholly between the two temperatures the sine is the mean; most summer days are
        const gain = min >= baseC && max <= upperC ? (max + min) / 2 - baseC : singleSine(max, min, baseC, upperC);
        gains[d] = pace ? gain * (pace[d] as number) : gain;
      }
    });
  });
}

/** Warmth of the soil towards emergence, °C d. */
export function emergenceSums(weather: CoveredWeather, baseC: number, germinationMinC: number): Sums {
  return keep(weather, `soil ${baseC} ${germinationMinC}`, () =>
    runningSums(weather, (_, gains, y) => {
      const soil = soilOf(weather, y);
      for (let d = 0; d < gains.length; d++) gains[d] = emergenceUnits(soil[d] as number, baseC, germinationMinC);
    }),
  );
}

/** Days on which `is` holds, counted. */
export function countingSums(weather: CoveredWeather, key: string, is: (year: CoveredYear, d: number) => boolean): Sums {
  return keep(weather, key, () =>
    runningSums(weather, (year, gains) => {
      for (let d = 0; d < gains.length; d++) gains[d] = is(year, d) ? 1 : 0;
    }),
  );
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
export function nextDays(weather: CoveredWeather, key: string, is: (year: CoveredYear, d: number, y: number) => boolean): Int32Array {
  const found = weather.nextDays.get(key);
  if (found) return found;
  const stride = weather.days + 1;
  const next = new Int32Array(stride * weather.years.length);
  weather.years.forEach((year, y) => {
    let coming = weather.days;
    next[y * stride + weather.days] = coming;
    for (let d = weather.days - 1; d >= 0; d--) {
      if (is(year, d, y)) coming = d;
      next[y * stride + d] = coming;
    }
  });
  weather.nextDays.set(key, next);
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

/** Adds up what `fill` says each day of a year brings; a day without a reading brings nothing. */
function runningSums(weather: CoveredWeather, fill: (year: CoveredYear, gains: Float64Array, y: number) => void): Sums {
  const stride = weather.days + 1;
  const values = new Float64Array(stride * weather.years.length);
  weather.years.forEach((year, y) => {
    const row = values.subarray(y * stride, (y + 1) * stride);
    const gains = row.subarray(1);
    fill(year, gains, y);
    let sum = 0;
    for (let d = 0; d < gains.length; d++) {
      const gain = gains[d] as number;
      if (gain > 0) sum += gain;
      gains[d] = sum;
    }
  });
  return { values, stride };
}

function keep(weather: CoveredWeather, key: string, make: () => Sums): Sums {
  let found = weather.kept.get(key);
  if (!found) weather.kept.set(key, (found = make()));
  return found;
}
