/** One sowing, or all of them, as a page says it: spans of dates and grams, twenty dots, what it rests on, and what does not fit the bed. */
import { frostDates, summarise, warmthSoFar, type ForecastSummary, type FrostDates, type PlantingForecast, type WarmthSoFar, type WeatherYears } from "../engines/harvest-forecast/index.ts";
import { mapBand, type Band } from "../kernel/band.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import type { IsoWeek } from "../kernel/iso-week.ts";
import { dateOf, dayNumber, type LocalDate } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import { asKnown, plantingAsKnown } from "./as-known.ts";
import { fitNotes, mayStandBeside } from "./bed-room.ts";
import { toDates, toDatesOrNull } from "./day-bands.ts";
import type { GardenFacts, GardenPlanting } from "./facts.ts";
import { asker, forecastPlantings, isEstablished, usualWeather, type GardenForecasts, type SeasonForecast } from "./garden-forecasts.ts";
import type { DateBand } from "./outlook-types.ts";
import { seasonOf } from "./season.ts";

export interface SowingForecast {
  readonly firstPick: DateBand | null;
  readonly lastPick: DateBand | null;
  readonly totalGrams: Band;
  readonly weeks: readonly { readonly week: IsoWeek; readonly grams: Band; readonly chanceInHarvest: number }[];
  readonly dots: readonly LocalDate[];
  readonly chanceOfPick: number;
  readonly frost: { readonly lastSpring: DateBand | null; readonly firstAutumn: DateBand | null };
  readonly waits: boolean;
  /** Of what waits: when it is at its best, and the last day before frost, seeding or age spoils it; null for the rest. */
  readonly lift: { readonly ready: DateBand; readonly bestFrom: DateBand; readonly bestUntil: DateBand; readonly outBy: DateBand } | null;
  /** What the household's own finished sowings moved the warmth needed, and the amount, by. */
  readonly own: PlantingForecast["own"];
  /** Of one sowing asked for by itself: its warmth against the usual; null before it counts and once it has been picked. */
  readonly warmth?: WarmthSoFar | null;
  readonly basis: readonly SourceRef[];
  readonly notes: readonly string[];
}

export interface SowingOutlook {
  readonly forecast: SowingForecast;
  readonly fits: readonly string[];
}

/**
 * Forecast and fit of one planting, which need not be among the garden's own yet. `season` is a year, for what is established only;
 * without it, that of the day of the facts.
 */
export function sowingOutlook(facts: GardenFacts, asked: GardenPlanting, season: number | null = null): SowingOutlook {
  const garden = asKnown(facts);
  const planting = plantingAsKnown(asked, dayNumber(garden.asOf));
  const inSeason = isEstablished(planting) ? { ...planting, season } : planting;
  const neighbours = garden.plantings.filter((one) => one.id !== planting.id && mayStandBeside(one, planting));
  const grown = forecastPlantings(garden, [inSeason, ...neighbours]);
  const [own] = grown.forecasts;
  if (!own) throw new RangeError("a planting has one forecast");
  const weather = grown.weatherOf(own.planting);
  const warmth = warmthSoFar(asker(garden, weather)(own.planting), () => usualWeather(garden, weather));
  return { forecast: { ...forecastWords(garden, grown, own), warmth }, fits: fitNotes(garden, grown.forecasts).get(planting.id) ?? [] };
}

/** The same for all plantings of the garden, or those of these ids, the weather drawn once. By planting. */
export function sowingOutlooks(facts: GardenFacts, ids?: ReadonlySet<string>): Map<string, SowingOutlook> {
  const garden = asKnown(facts);
  const asked = garden.plantings.filter((one) => ids?.has(one.id) ?? true);
  const beside = garden.plantings.filter((one) => !asked.includes(one) && asked.some((own) => mayStandBeside(one, own)));
  const grown = forecastPlantings(garden, [...asked, ...beside]);
  const fits = fitNotes(garden, grown.forecasts);
  return new Map(grown.forecasts.slice(0, asked.length).map((one) => [one.planting.id, { forecast: forecastWords(garden, grown, one), fits: fits.get(one.planting.id) ?? [] }]));
}

/** Spans of a forecast that is kept are taken once. */
const SUMMARIES = new WeakMap<PlantingForecast, ForecastSummary>();

function summaryOf(forecast: PlantingForecast): ForecastSummary {
  let found = SUMMARIES.get(forecast);
  if (!found) SUMMARIES.set(forecast, (found = summarise(forecast)));
  return found;
}

/** Frost dates of a season are those of all its plantings. */
const FROSTS = new WeakMap<WeatherYears, Map<number, FrostDates>>();

function frostsOf(weather: WeatherYears, season: number, southern: boolean): FrostDates {
  let bySeason = FROSTS.get(weather);
  if (!bySeason) FROSTS.set(weather, (bySeason = new Map<number, FrostDates>()));
  let found = bySeason.get(season);
  if (!found) bySeason.set(season, (found = frostDates(weather, season, southern)));
  return found;
}

function forecastWords(garden: GardenFacts, grown: GardenForecasts, one: SeasonForecast): SowingForecast {
  const summary = summaryOf(one.value);
  const { planting } = one;
  const season = planting.season ?? seasonOf(summary.firstPick?.likely ?? dayNumber(garden.asOf), grown.southern);
  const frost = frostsOf(grown.weatherOf(planting), season, grown.southern);
  return {
    firstPick: toDatesOrNull(summary.firstPick),
    lastPick: toDatesOrNull(summary.lastPick),
    totalGrams: mapBand(summary.totalGrams, Math.round),
    weeks: summary.weeks.map(({ week, grams, chanceInHarvest }) => ({ week, grams: mapBand(grams, Math.round), chanceInHarvest })),
    dots: summary.dots.map(dateOf),
    chanceOfPick: summary.chanceOfPick,
    frost: { lastSpring: toDatesOrNull(frost.lastSpring), firstAutumn: toDatesOrNull(frost.firstAutumn) },
    waits: waitsForTheGrower(planting.crop),
    lift: summary.lifting && { ready: toDates(summary.lifting.ready), bestFrom: toDates(summary.lifting.bestFrom), bestUntil: toDates(summary.lifting.bestUntil), outBy: toDates(summary.lifting.outBy) },
    own: one.value.own,
    basis: [...grown.weather.basis, ...(garden.weatherAttribution === null ? [] : [{ id: "household", text: garden.weatherAttribution }]), ...one.basis],
    notes: [...new Set([...one.notes, ...grown.weather.notes])],
  };
}
