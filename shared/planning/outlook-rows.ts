/** One row of the year sheet for each crop: its sowings, when it is lifted, its best week and its season. */
import { mapBand } from "../kernel/band.ts";
import { dateOf, type LocalDate } from "../kernel/local-date.ts";
import { dateBandOf } from "./day-bands.ts";
import { beganOn, isEstablished, type SeasonForecast } from "./garden-forecasts.ts";
import type { DateBand, OutlookRow } from "./outlook-types.ts";
import { bestWeekBand, sumBand, type CropOutlook } from "./outlook-supply.ts";
import type { WeekSpan } from "./season.ts";

/** Rows in the order of the first pick. */
export function outlookRows(crops: readonly CropOutlook[], span: WeekSpan): OutlookRow[] {
  return crops
    .map((outlook) => placedRow(outlook, span))
    .sort((a, b) => (a.first === b.first ? compare(a.row.name, b.row.name) : compare(a.first, b.first)))
    .map(({ row }) => row);
}

interface PlacedRow {
  readonly row: OutlookRow;
  /** Likely first pick; what brings none stands last. */
  readonly first: LocalDate;
}

/** An outlook belongs to its weeks, so its row is reckoned once for as long as it is kept. */
const ROWS = new WeakMap<CropOutlook, PlacedRow>();

function placedRow(outlook: CropOutlook, span: WeekSpan): PlacedRow {
  let placed = ROWS.get(outlook);
  if (!placed) ROWS.set(outlook, (placed = { row: rowOf(outlook, span), first: dateBandOf(earliestPicks(outlook.forecasts))?.likely ?? "9999-12-31" }));
  return placed;
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function rowOf({ crop, waits, forecasts, supply }: CropOutlook, span: WeekSpan): OutlookRow {
  return {
    crop: crop.slug,
    name: crop.name,
    waits,
    sowings: sowingsOf(forecasts),
    lift: waits && crop.habit === "one-cut" ? liftOf(forecasts, span) : null,
    bestWeekGrams: Math.round(bestWeekBand(supply.scenarios, span.lead, span.weeks.length).likely),
    seasonGrams: mapBand(sumBand(supply.scenarios, span.lead, span.weeks.length), Math.round),
  };
}

function sowingsOf(forecasts: readonly SeasonForecast[]): OutlookRow["sowings"] {
  return [...new Map(forecasts.map((one) => [one.planting.id, one])).values()].map((one) => {
    const { id, bedName, variety } = one.planting;
    const began = beganOn(one.planting);
    return { id, bedName, ...(variety === null ? {} : { variety }), from: began === null ? null : dateOf(began), until: lastDayOf(one) };
  });
}

/** Last likely day in the ground; null for what stands on, and where no season brings a pick. */
export function lastDayOf({ planting, value }: SeasonForecast): LocalDate | null {
  const finished = planting.sightings.filter((seen) => seen.stage === "finished" && seen.day <= value.asOf).map((seen) => seen.day);
  if (finished.length > 0) return isEstablished(planting) ? null : dateOf(Math.min(...finished));
  return isEstablished(planting) ? null : (dateBandOf(value.lastPickDay)?.likely ?? null);
}

/** The lift that falls into the weeks shown: the earliest of the plantings, scenario by scenario. */
function liftOf(forecasts: readonly SeasonForecast[], span: WeekSpan): DateBand | null {
  const lift = dateBandOf(earliestPicks(forecasts));
  const from = dateOf(span.firstMonday + 7 * span.lead);
  return lift && lift.high >= from && lift.low < dateOf(span.untilDay) ? lift : null;
}

/** First day on which any of them can be picked, in each scenario; −1 where none can. */
function earliestPicks(forecasts: readonly SeasonForecast[]): Int32Array {
  const [first, ...others] = forecasts.map((one) => one.value.firstPickDay);
  const earliest = new Int32Array(first ?? []);
  for (const days of others)
    for (let s = 0; s < earliest.length; s++) {
      const day = days[s] as number;
      if (day >= 0 && (day < (earliest[s] as number) || (earliest[s] as number) < 0)) earliest[s] = day;
    }
  return earliest;
}
