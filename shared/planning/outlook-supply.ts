/** Forecasts → supply by crop: plantings added up scenario by scenario, past weeks as the picking book has them. Percentiles last. */
import { weeklySupply } from "../engines/harvest-forecast/index.ts";
import { quantile, type Band } from "../kernel/band.ts";
import { waitsForTheGrower, type CropFacts } from "../kernel/crop-facts.ts";
import { addSupplies, type CropSupply } from "../kernel/supply.ts";
import type { DayNumber } from "../kernel/local-date.ts";
import type { GardenPlanting } from "./facts.ts";
import type { SeasonForecast } from "./garden-forecasts.ts";
import type { WeekSpan } from "./season.ts";

export interface CropOutlook {
  readonly crop: CropFacts;
  readonly waits: boolean;
  readonly forecasts: readonly SeasonForecast[];
  /** Past weeks hold what was picked, the running week that and what is still to come. */
  readonly supply: CropSupply;
  /** What the kitchen reckons with: of a crop that waits also what stands unpicked since past weeks. */
  readonly kept: CropSupply;
  /** By week. */
  readonly pickedGrams: Float64Array;
  /** By week, percentiles of `supply`. */
  readonly bands: readonly Band[];
}

/** Crops in the order in which they come first in the forecasts. */
export function cropOutlooks(forecasts: readonly SeasonForecast[], span: WeekSpan, asOf: DayNumber): CropOutlook[] {
  const byCrop = new Map<string, SeasonForecast[]>();
  for (const one of forecasts) byCrop.set(one.planting.crop.slug, [...(byCrop.get(one.planting.crop.slug) ?? []), one]);
  return [...byCrop.values()].map((ofCrop): CropOutlook => {
    const { crop } = (ofCrop[0] as SeasonForecast).planting;
    const waits = waitsForTheGrower(crop);
    const parts = ofCrop.map((one) => weeklySupply(one.value, span));
    const reckoned = parts.length === 1 ? (parts[0] as CropSupply) : addSupplies(crop.slug, parts);
    const pickedGrams = pickedByWeek(ofCrop.map((one) => one.planting), span, asOf);
    const supply = withPast(reckoned, pickedGrams, span.current);
    return { crop, waits, forecasts: ofCrop, supply, kept: waits ? reckoned : supply, pickedGrams, bands: weekBands(supply.scenarios, span.weeks.length) };
  });
}

/** What was picked of these plantings in each week, up to and including the day asked about; a planting in two seasons counts once. */
function pickedByWeek(plantings: readonly GardenPlanting[], span: WeekSpan, asOf: DayNumber): Float64Array {
  const grams = new Float64Array(span.weeks.length);
  for (const planting of new Map(plantings.map((one) => [one.id, one])).values())
    for (const pick of planting.picks) {
      const w = Math.floor((pick.day - span.firstMonday) / 7);
      if (pick.day <= asOf && w >= 0 && w < grams.length) grams[w] = (grams[w] as number) + pick.grams;
    }
  return grams;
}

/** A week gone by is what was picked in it, whatever had been expected. */
function withPast(supply: CropSupply, pickedGrams: Float64Array, current: number): CropSupply {
  const past = Math.min(Math.max(0, current), supply.weeks.length);
  if (past === 0) return supply;
  const scenarios = supply.scenarios.map((grams) => {
    const known = new Float64Array(grams);
    known.set(pickedGrams.subarray(0, past));
    return known;
  });
  return { ...supply, scenarios };
}

/** Percentiles of each week over the scenarios; weeks in which nothing comes in any scenario cost no sorting. */
export function weekBands(scenarios: readonly Float64Array[], weeks: number): Band[] {
  const filled = new Uint8Array(weeks);
  for (const grams of scenarios) for (let w = 0; w < weeks; w++) if (grams[w] !== 0) filled[w] = 1;
  const values = new Float64Array(scenarios.length);
  return Array.from(filled, (any, w) => {
    if (any === 0) return NOTHING;
    for (let s = 0; s < values.length; s++) values[s] = (scenarios[s] as Float64Array)[w] as number;
    return bandInPlace(values);
  });
}

/** Percentiles of the sums over weeks `from` … `until` − 1 of each scenario. */
export function sumBand(scenarios: readonly Float64Array[], from: number, until: number): Band {
  return scenarios.length === 0 ? NOTHING : bandInPlace(reduced(scenarios, from, until, (sum, grams) => sum + grams));
}

/** Percentiles of the greatest week among `from` … `until` − 1 of each scenario, whichever week it is. */
export function bestWeekBand(scenarios: readonly Float64Array[], from: number, until: number): Band {
  return scenarios.length === 0 ? NOTHING : bandInPlace(reduced(scenarios, from, until, Math.max));
}

function reduced(scenarios: readonly Float64Array[], from: number, until: number, join: (a: number, b: number) => number): Float64Array {
  const out = new Float64Array(scenarios.length);
  for (let s = 0; s < out.length; s++) {
    const grams = scenarios[s] as Float64Array;
    let value = 0;
    for (let w = from; w < until; w++) value = join(value, grams[w] as number);
    out[s] = value;
  }
  return out;
}

const NOTHING: Band = { low: 0, likely: 0, high: 0 };

function bandInPlace(values: Float64Array): Band {
  values.sort();
  return { low: quantile(values, 0.1), likely: quantile(values, 0.5), high: quantile(values, 0.9) };
}
