/**
 * Forecasts that were reckoned before, found again by everything they were reckoned from: after one more pick only what the pick bears on is
 * reckoned anew. The engine answers the same question the same way every time, so this changes how long an answer takes and nothing in it.
 */
import { forecastPlanting, type ForecastQuestion, type PlantingForecast } from "../engines/harvest-forecast/index.ts";
import type { Outcome } from "../kernel/outcome.ts";

/** Holds forecasts of one weather record, set of normals and seed, and one book of crops. May forget at any time. */
export interface ForecastMemory {
  find(question: string): Outcome<PlantingForecast> | undefined;
  keep(question: string, forecast: Outcome<PlantingForecast>): void;
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
