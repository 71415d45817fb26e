/** Grams by ISO week and scenario: the curve integrated over each week, and what was picked in weeks gone by. */
import type { DayNumber } from "../../kernel/local-date.ts";
import { dateOf } from "../../kernel/local-date.ts";
import { weekOf } from "../../kernel/iso-week.ts";
import type { CropSupply } from "../../kernel/supply.ts";
import { gramsBefore, shareGone } from "./grams.ts";
import type { PlantingForecast, WeekGrid } from "./types.ts";
import { shareBy } from "./yield-curve.ts";

export function weeklySupply(forecast: PlantingForecast, grid: WeekGrid): CropSupply {
  const weeks = grid.weeks.length;
  const n = forecast.firstPickDay.length;
  const { curve } = forecast;
  const grams = new Float64Array(n * weeks);
  const flags = new Uint8Array(n * weeks);
  const picked = pickedByWeek(forecast, grid);
  for (let s = 0; s < n; s++) {
    const row = s * weeks;
    grams.set(picked, row);
    const first = forecast.firstPickDay[s] as number;
    const last = forecast.lastPickDay[s] as number;
    if (first < 0) continue;
    const from = Math.max(0, weekIndex(first, grid));
    const until = Math.min(weeks, weekIndex(last, grid) + 1);
    const [start, span, whole, ends] = [curve.startDay[s] as number, curve.spanDays[s] as number, curve.wholeGrams[s] as number, curve.untilDay[s] as number];
    const opens = Math.max(curve.openFrom, start);
    const gone = shareGone(curve, s);
    let came = gramsBefore(curve, s, grid.firstMonday + 7 * from);
    for (let w = from; w < until; w++) {
      const day = Math.min(ends, grid.firstMonday + 7 * (w + 1));
      const comes = day <= opens ? 0 : whole * (shareBy(curve.shape, day - start, span) - gone);
      flags[row + w] = 1;
      grams[row + w] = (grams[row + w] as number) + comes - came;
      came = comes;
    }
  }
  const each = Array.from({ length: n }, (_, s) => s * weeks);
  return {
    crop: forecast.crop,
    weeks: grid.weeks,
    scenarios: each.map((row) => grams.subarray(row, row + weeks)),
    inHarvest: each.map((row) => flags.subarray(row, row + weeks)),
  };
}

/** The weeks from the first pick of the earliest scenario to the last of the latest; null where nothing comes. */
export function harvestWeeks(forecast: PlantingForecast): WeekGrid | null {
  let first = Infinity;
  let last = -Infinity;
  for (let s = 0; s < forecast.firstPickDay.length; s++) {
    if ((forecast.firstPickDay[s] as number) < 0) continue;
    first = Math.min(first, forecast.firstPickDay[s] as number);
    last = Math.max(last, forecast.lastPickDay[s] as number);
  }
  for (const { day } of forecast.curve.picks) [first, last] = [Math.min(first, day), Math.max(last, day)];
  if (first > last) return null;
  const firstMonday = mondayOf(first);
  const count = Math.floor((last - firstMonday) / 7) + 1;
  return { firstMonday, weeks: Array.from({ length: count }, (_, w) => weekOf(dateOf(firstMonday + 7 * w))) };
}

/** 1970-01-01 was a Thursday. */
function mondayOf(day: DayNumber): DayNumber {
  return day - ((((day + 3) % 7) + 7) % 7);
}

const weekIndex = (day: DayNumber, grid: WeekGrid): number => Math.floor((day - grid.firstMonday) / 7);

function pickedByWeek(forecast: PlantingForecast, grid: WeekGrid): Float64Array {
  const weeks = new Float64Array(grid.weeks.length);
  for (const { day, grams } of forecast.curve.picks) {
    const w = weekIndex(day, grid);
    if (w >= 0 && w < weeks.length) weeks[w] = (weeks[w] as number) + grams;
  }
  return weeks;
}
