/** Plantings, questions and weathers for the tests, with everything plain unless said. */
import { forecastPlanting } from "#shared/engines/harvest-forecast/index.ts";
import type { ForecastQuestion, Planting, PlantingForecast, WeatherYears } from "#shared/engines/harvest-forecast/index.ts";
import { dayNumber } from "#shared/kernel/local-date.ts";
import type { DayNumber } from "#shared/kernel/local-date.ts";
import { cropOf } from "./records.ts";

/** Five metres of row unless another size is given; sown in place unless it says it was planted out, or stands for years. */
export function plantingOf(slug: string, change: Partial<Planting> = {}): Planting {
  const crop = change.crop ?? cropOf(slug);
  const sized = change.plants !== undefined || change.areaM2 !== undefined;
  return {
    id: `a planting of ${slug}`,
    crop,
    method: crop.perennial ? "established" : (change.plantedOutOn ?? null) !== null ? "transplant" : "direct",
    sownOn: null,
    plantedOutOn: null,
    rowM: sized ? null : 5,
    plants: null,
    areaM2: null,
    standsSince: null,
    season: null,
    cover: "open",
    sightings: [],
    picks: [],
    ...change,
  };
}

/** The same temperatures every day of every year. */
export function steadyWeather(maxC: number, minC: number, from: DayNumber, days: number, years = 3): WeatherYears {
  return weatherFrom(from, days, years, () => [maxC, minC]);
}

/** Weather by day and year. */
export function weatherFrom(from: DayNumber, days: number, years: number, of: (day: DayNumber, y: number) => readonly [number, number]): WeatherYears {
  const each = Array.from({ length: years }, (_, y) => ({
    label: `year ${y}`,
    tmaxC: Float64Array.from({ length: days }, (_, d) => of(from + d, y)[0]),
    tminC: Float64Array.from({ length: days }, (_, d) => of(from + d, y)[1]),
  }));
  return { firstDay: from, days, asOf: from - 1, years: each, restsOn: "record" };
}

export function questionOf(planting: Planting, weather: WeatherYears, change: Partial<ForecastQuestion> = {}): ForecastQuestion {
  return { planting, weather, asOf: weather.asOf, southern: false, ...change };
}

export const day = dayNumber;

export const forecastOf = (planting: Planting, weather: WeatherYears, change: Partial<ForecastQuestion> = {}): PlantingForecast =>
  forecastPlanting(questionOf(planting, weather, change)).value;

export const notesOf = (planting: Planting, weather: WeatherYears, change: Partial<ForecastQuestion> = {}): string =>
  forecastPlanting(questionOf(planting, weather, change)).notes.join(" ");
