/** Facts of the garden → its frost dates: the last of spring and the first of autumn in the same weather years as the forecasts. */
import { frostDates } from "../engines/harvest-forecast/index.ts";
import { dayNumber, yearOf } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import { betweenWords, dayWords } from "../kernel/words.ts";
import { toDatesOrNull } from "./day-bands.ts";
import type { GardenFacts } from "./facts.ts";
import { isSouthern, weatherBetween } from "./garden-forecasts.ts";
import type { DateBand } from "./outlook-types.ts";
import { seasonOf, seasonStart } from "./season.ts";

export interface FrostCalendar {
  /** A year; south of the equator the one in which the season ends. */
  readonly season: number;
  /** 10, 50 and 90 % of the years that have one; null where none does. Minimum of 0 °C or less at screen height. */
  readonly lastSpring: DateBand | null;
  readonly firstAutumn: DateBand | null;
  /** The same of nights of −2 °C or less, which take half-hardy leaves. */
  readonly lastHardSpring: DateBand | null;
  readonly firstHardAutumn: DateBand | null;
  /** One or two plain sentences with the numbers. */
  readonly text: string;
  readonly basis: readonly SourceRef[];
  readonly notes: readonly string[];
}

/** Nights that take half-hardy leaves: 2 °C below freezing at screen height (common practice, no source). */
const HARD_C = -2;
/** The first frost of autumn may come as late as the midsummer after it. */
const UNTIL_MIDSUMMER_DAYS = 181;

/** Frost dates of a season, without one of that of the day of the facts. Days already past are what was observed. */
export function frostDatesOf(garden: GardenFacts, asked: number | null = null): FrostCalendar {
  const southern = isSouthern(garden);
  const season = asked ?? seasonOf(dayNumber(garden.asOf), southern);
  const { value: weather, basis, notes } = weatherBetween(garden, seasonStart(season, southern), seasonStart(season + 1, southern) + UNTIL_MIDSUMMER_DAYS);
  const frost = frostDates(weather, season, southern);
  const hard = frostDates(weather, season, southern, HARD_C);
  const [lastSpring, firstAutumn] = [toDatesOrNull(frost.lastSpring), toDatesOrNull(frost.firstAutumn)];
  const named = garden.weatherAttribution === null ? [] : [{ id: "household", text: garden.weatherAttribution }];
  const text = weather.restsOn === "nothing" ? "There is no weather yet, so frost dates are not known." : words(lastSpring, firstAutumn, yearOf(garden.asOf));
  return { season, lastSpring, firstAutumn, lastHardSpring: toDatesOrNull(hard.lastSpring), firstHardAutumn: toDatesOrNull(hard.firstAutumn), text, basis: [...basis, ...named], notes };
}

function words(spring: DateBand | null, autumn: DateBand | null, thisYear: number): string {
  const sentence = (what: string, band: DateBand | null): string => {
    if (!band) return `No year has a ${what}.`;
    if (band.low === band.high) return `The ${what} is that of ${dayWords(band.likely, thisYear)}.`;
    return `The ${what} comes between ${betweenWords(band.low, band.high, thisYear)} in eight years of ten, most likely on ${dayWords(band.likely, thisYear)}.`;
  };
  return `${sentence("last frost of spring", spring)} ${sentence("first frost of autumn", autumn)}`;
}
