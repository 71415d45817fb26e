/** Facts of the garden → weather years, once → a forecast for each planting and season that matters in a span of days. */
import {
  daysInName, finishedSowingOf, weatherYears,
  type FinishedSowing, type ForecastQuestion, type PlantingForecast, type WeatherYears,
} from "../engines/harvest-forecast/index.ts";
import { keepWeeksOf } from "../engines/glut/index.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { dayNumber, type DayNumber } from "../kernel/local-date.ts";
import type { Outcome } from "../kernel/outcome.ts";
import type { GardenFacts, GardenPlanting } from "./facts.ts";
import { forecastOf } from "./forecast-memory.ts";
import { seasonOf, seasonsBetween, seasonStart } from "./season.ts";

export interface SeasonForecast extends Outcome<PlantingForecast> {
  readonly planting: GardenPlanting;
}

export interface GardenForecasts {
  readonly weather: Outcome<WeatherYears>;
  /** The scenario years that a planting's forecast was made from: mostly those above. */
  readonly weatherOf: (planting: GardenPlanting) => WeatherYears;
  readonly forecasts: readonly SeasonForecast[];
  readonly southern: boolean;
}

export interface DaySpan {
  readonly fromDay: DayNumber;
  /** One past the last. */
  readonly untilDay: DayNumber;
}

/** A sowing is over, whatever became of it, so many days after it began: a year to be ready, half a year to be picked. */
export const OVER_AFTER_DAYS = 540;
/** The soil's warmth is reckoned from days before the sowing on. */
const BEFORE_SOWING_DAYS = 31;
/** A planting's own season is forecast whole, also past the span asked for. */
const SEASON_DAYS = 400;

export const isSouthern = (garden: GardenFacts): boolean => garden.placed && garden.latitude < 0;

/** Forecasts of everything that can be picked in the span, and of what is sown in it. */
export function forecastGarden(garden: GardenFacts, span: DaySpan): GardenForecasts {
  const southern = isSouthern(garden);
  return forecastAll(garden, garden.plantings.flatMap((planting) => inSpan(planting, span, southern)), span);
}

/** Forecasts of these plantings, each for its own season whole; an established one for its `season`, or that of the day of the facts. */
export function forecastPlantings(garden: GardenFacts, plantings: readonly GardenPlanting[]): GardenForecasts {
  const asOf = dayNumber(garden.asOf);
  return forecastAll(garden, plantings, { fromDay: asOf, untilDay: asOf + 1 });
}

/**
 * Whatever is asked for a day, the weather is that of one stretch round its season, so that calendar, day's list, beds and sowings ask the same questions and
 * a forecast made for one of them serves the others. What began before the stretch, or ends after it, has weather of its own.
 */
function forecastAll(garden: GardenFacts, plantings: readonly GardenPlanting[], span: DaySpan): GardenForecasts {
  const southern = isSouthern(garden);
  const round = stretchFor(garden, span);
  const weather = weatherBetween(garden, round.from, round.until);
  const ask = asker(garden, weather.value);
  const outside = plantings.map((planting) => ({ planting, ...stretchOf(planting, round.season, southern) })).filter((need) => !holds(round, need));
  const wider = outside.length === 0 ? null : weatherBetween(garden, Math.min(...outside.map(({ from }) => from)), Math.max(...outside.map(({ until }) => until))).value;
  const apart = new Set(outside.map(({ planting }) => planting));
  const weatherOf = (planting: GardenPlanting): WeatherYears => (wider !== null && apart.has(planting) ? wider : weather.value);
  return { weather, weatherOf, southern, forecasts: plantings.map((planting) => ({ planting, ...forecastOf({ ...ask(planting), weather: weatherOf(planting) }, garden.memory) })) };
}

/** Day a sown planting went into the ground; null for what stands for years. */
export function beganOn(planting: GardenPlanting): DayNumber | null {
  return isEstablished(planting) ? null : (planting.plantedOutOn ?? planting.sownOn);
}

export const isEstablished = (planting: GardenPlanting): boolean => planting.method === "established" || planting.crop.perennial;

/** The questions to the engine that all plantings of one garden share. */
export function asker(garden: GardenFacts, weather: WeatherYears): (planting: GardenPlanting) => ForecastQuestion {
  const asOf = dayNumber(garden.asOf);
  const southern = isSouthern(garden);
  const logsPicks = garden.plantings.some((planting) => planting.picks.some((pick) => pick.day <= asOf));
  const learned = lessons(garden);
  return (planting) => ({
    planting: ofItsVariety(planting),
    weather,
    asOf,
    southern,
    latitudeDeg: garden.placed ? garden.latitude : null,
    logsPicks,
    ownSowings: learned(planting),
  });
}

/** Days to maturity that stand beside the variety's name take the place of the crop's range. */
function ofItsVariety(planting: GardenPlanting): GardenPlanting {
  const varietyDays = planting.varietyDays ?? daysInName(planting.variety);
  return varietyDays ? { ...planting, varietyDays } : planting;
}

/** A planting counts from the weeks on whose picks may still be kept on the first day asked for. */
function inSpan(planting: GardenPlanting, { fromDay, untilDay }: DaySpan, southern: boolean): GardenPlanting[] {
  const from = fromDay - 7 * (keepWeeksOf(planting.crop, waitsForTheGrower(planting.crop)) - 1);
  if (isEstablished(planting)) return seasonsBetween(from, untilDay - 1, southern).map((season) => ({ ...planting, season }));
  const began = beganOn(planting) ?? from;
  const finished = planting.sightings.find((sighting) => sighting.stage === "finished")?.day ?? Infinity;
  const picked = planting.picks.some((pick) => pick.day >= from && pick.day < untilDay);
  return picked || (began < untilDay && began + OVER_AFTER_DAYS > fromDay && finished >= from) ? [planting] : [];
}

/** Days, both included. */
interface Stretch {
  readonly from: DayNumber;
  readonly until: DayNumber;
}

/** What goes in from August on is picked in the season after. */
const AUTUMN_BEFORE_DAYS = 153;

/** From the autumn before the season of a span to where what goes in on its last day may end; the first frost of its autumn may come as late as the midsummer after. */
function stretchFor(garden: GardenFacts, span: DaySpan): Stretch & { readonly season: number } {
  const southern = isSouthern(garden);
  const season = seasonOf(Math.max(span.fromDay, Math.min(dayNumber(garden.asOf), span.untilDay - 1)), southern);
  return {
    season,
    from: Math.min(seasonStart(season, southern) - AUTUMN_BEFORE_DAYS, span.fromDay) - BEFORE_SOWING_DAYS,
    until: Math.max(seasonStart(season + 1, southern) + SEASON_DAYS, span.untilDay),
  };
}

/** The weather that a planting's own season needs. */
function stretchOf(planting: GardenPlanting, season: number, southern: boolean): Stretch {
  const began = beganOn(planting) ?? seasonStart(planting.season ?? season, southern);
  return { from: began - BEFORE_SOWING_DAYS, until: began + SEASON_DAYS };
}

const holds = (round: Stretch, need: Stretch): boolean => round.from <= need.from && need.until <= round.until;

/** The scenario years of a stretch of days, both ends included, as known on the day of the facts. */
export function weatherBetween(garden: GardenFacts, from: DayNumber, until: DayNumber): Outcome<WeatherYears> {
  return weatherYears({ record: garden.record, normals: garden.normals, asOf: dayNumber(garden.asOf), from, until, seed: garden.seed });
}

/** The same stretch of days as it usually is. */
export function usualWeather(garden: GardenFacts, { firstDay, days }: WeatherYears): WeatherYears {
  return weatherYears({ record: garden.record, normals: garden.normals, asOf: dayNumber(garden.asOf), from: firstDay, until: firstDay + days - 1, seed: garden.seed, usual: true }).value;
}

/**
 * What the household's own first picks of a crop teach about its requirement. Read from the observed weather alone, each sowing once;
 * a planting learns nothing from itself in the season asked about.
 */
function lessons(garden: GardenFacts): (planting: GardenPlanting) => FinishedSowing[] {
  const southern = isSouthern(garden);
  const asOf = dayNumber(garden.asOf);
  const past = garden.record ? garden.plantings.flatMap((planting) => pickedSeasons(planting, asOf, southern)) : [];
  const read = lessonReader(garden, past);
  const byCrop = new Map<string, { planting: GardenPlanting; lesson: FinishedSowing }[]>();
  const taughtBy = (crop: string): { planting: GardenPlanting; lesson: FinishedSowing }[] => {
    const known = byCrop.get(crop);
    if (known) return known;
    const found = past.filter((planting) => planting.crop.slug === crop).flatMap((planting) => {
      const lesson = read(planting);
      return lesson ? [{ planting, lesson }] : [];
    });
    byCrop.set(crop, found);
    return found;
  };
  return (planting) =>
    taughtBy(planting.crop.slug)
      .filter((from) => !(from.planting.id === planting.id && from.planting.season === planting.season))
      .map((from) => ({ ...from.lesson, sameVariety: isSameVariety(from.planting, planting) }));
}

/** Reads lessons from the weather that was observed, which is put together when the first is asked for. */
function lessonReader(garden: GardenFacts, past: readonly GardenPlanting[]): (planting: GardenPlanting) => FinishedSowing | null {
  const southern = isSouthern(garden);
  const asOf = dayNumber(garden.asOf);
  const observed = (): WeatherYears => {
    const begins = past.map((one) => beganOn(one) ?? seasonStart(one.season ?? 0, southern));
    const from = Math.max(garden.record?.firstDay ?? asOf, Math.min(asOf, ...begins) - BEFORE_SOWING_DAYS);
    return weatherYears({ record: garden.record, normals: garden.normals, asOf, from, until: asOf, seed: garden.seed, maxYears: 1 }).value;
  };
  let seen: WeatherYears | null = null;
  return (planting) => {
    seen ??= observed();
    return finishedSowingOf({ planting: ofItsVariety(planting), weather: seen, asOf, southern, latitudeDeg: garden.placed ? garden.latitude : null }, true);
  };
}

function pickedSeasons(planting: GardenPlanting, asOf: DayNumber, southern: boolean): GardenPlanting[] {
  const days = [...planting.picks.map((pick) => pick.day), ...planting.sightings.filter((seen) => seen.stage === "first-pick").map((seen) => seen.day)].filter((day) => day <= asOf);
  if (days.length === 0) return [];
  if (!isEstablished(planting)) return [planting];
  return [...new Set(days.map((day) => seasonOf(day, southern)))].map((season) => ({ ...planting, season }));
}

const isSameVariety = (a: GardenPlanting, b: GardenPlanting): boolean =>
  a.id === b.id || (a.variety !== null && b.variety !== null && a.variety.toLowerCase() === b.variety.toLowerCase());
