/**
 * Forecasts that were reckoned before, found again by everything they were reckoned from: after one more pick only what the pick bears on is
 * reckoned anew. The engine answers the same question the same way every time, so this changes how long an answer takes and nothing in it.
 */
import { forecastPlanting, type ForecastQuestion, type PlantingForecast } from "../engines/harvest-forecast/index.ts";
import type { Outcome } from "../kernel/outcome.ts";
import type { DayNumber } from "../kernel/local-date.ts";
import type { SeasonForecast } from "./garden-forecasts.ts";
import { cropOutlooks, type CropOutlook } from "./outlook-supply.ts";
import type { WeekSpan } from "./season.ts";

/** Holds forecasts of one weather record, set of normals and seed, and one book of crops. May forget at any time. */
export interface ForecastMemory {
  find(question: string): Outcome<PlantingForecast> | undefined;
  keep(question: string, forecast: Outcome<PlantingForecast>): void;
  /** What was added up of a crop's forecasts, by the weeks and the crop; left out = it is added up each time. */
  readonly outlooks?: {
    find(place: string): KeptOutlook | undefined;
    keep(place: string, outlook: KeptOutlook): void;
  };
}

/** A crop's weeks, and the forecasts they were added up from. */
export interface KeptOutlook {
  readonly of: readonly PlantingForecast[];
  readonly outlook: CropOutlook;
}

export function forecastOf(question: ForecastQuestion, memory: ForecastMemory | undefined): Outcome<PlantingForecast> {
  if (memory === undefined) return forecastPlanting(question);
  const asked = inWords(question);
  const known = memory.find(asked);
  if (known) return known;
  const forecast = forecastPlanting(question);
  memory.keep(asked, forecast);
  return forecast;
}

/** The whole question: of the weather the stretch of days and the day up to which it was known, of the crop its name, because record and book are the memory's own. */
function inWords({ weather, planting, ...rest }: ForecastQuestion): string {
  return JSON.stringify([weather.firstDay, weather.days, weather.asOf, weather.years.length, { ...planting, crop: planting.crop.slug }, rest]);
}

/**
 * Crops in the order in which they come first in the forecasts. A crop whose forecasts are the very same ones as before is not added up anew: a
 * forecast holds the picks it was made with, so the weeks gone by are the same too.
 */
export function outlooksOf(forecasts: readonly SeasonForecast[], span: WeekSpan, asOf: DayNumber, memory: ForecastMemory | undefined): CropOutlook[] {
  const byCrop = new Map<string, SeasonForecast[]>();
  for (const one of forecasts) {
    const ofCrop = byCrop.get(one.planting.crop.slug);
    if (ofCrop) ofCrop.push(one);
    else byCrop.set(one.planting.crop.slug, [one]);
  }
  return [...byCrop].flatMap(([crop, ofCrop]) => {
    const place = `${crop} ${span.firstMonday} ${span.weeks.length} ${span.lead} ${asOf}`;
    const known = memory?.outlooks?.find(place);
    if (known && known.of.length === ofCrop.length && known.of.every((value, i) => value === ofCrop[i]?.value)) return [known.outlook];
    const found = cropOutlooks(ofCrop, span, asOf);
    for (const outlook of found) memory?.outlooks?.keep(place, { of: ofCrop.map((one) => one.value), outlook });
    return found;
  });
}
