/**
 * How well the forecasts have done: for every sowing whose first pick is known, what was forecast on the day it was sown and a month before
 * the pick, each from what was known on that day alone, against what came.
 */
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { dateOf, dayNumber, type DayNumber, type LocalDate } from "../kernel/local-date.ts";
import { asKnown } from "./as-known.ts";
import { dateBandOf } from "./day-bands.ts";
import type { GardenFacts, GardenPlanting } from "./facts.ts";
import { forecastOf } from "./forecast-memory.ts";
import { asker, beganOn, isEstablished, isSouthern, weatherBetween } from "./garden-forecasts.ts";
import type { DateBand } from "./outlook-types.ts";
import { seasonOf, seasonStart } from "./season.ts";

export interface ForecastThen {
  readonly asOf: LocalDate;
  /** Null where no season was reckoned to come to a pick. */
  readonly firstPick: DateBand | null;
  /** The first pick fell between low and high, both included. */
  readonly inside: boolean;
  /** Days from the likely day to the pick; negative where it came earlier. */
  readonly daysLater: number | null;
}

export interface TrackRow {
  readonly plantingId: string;
  readonly crop: string;
  readonly name: string;
  readonly variety: string | null;
  /** Of what stands for years, the season. */
  readonly season: number | null;
  /** The grower chose the day: shown, and not counted. */
  readonly chosen: boolean;
  readonly cameOn: LocalDate;
  readonly atSowing: ForecastThen;
  /** Null where the pick came within a month of the sowing. */
  readonly monthBefore: ForecastThen | null;
}

export interface TrackScore {
  readonly inside: number;
  readonly of: number;
  /** Mean size of the difference between likely day and pick, days; null without any. */
  readonly meanDaysOut: number | null;
}

export interface TrackRecord {
  /** By the day they came, latest first. */
  readonly rows: readonly TrackRow[];
  readonly atSowing: TrackScore;
  readonly monthBefore: TrackScore;
  /** What may be claimed, or that there are too few to claim anything. */
  readonly text: string;
}

/** With fewer finished sowings than this nothing is claimed (product rule). */
const FEWEST = 5;
/** Each row is two forecasts from the weather of their day, which later facts do not change, so they are kept; the latest hundred say enough. */
const MOST_ROWS = 100;
const MONTH_DAYS = 30;
const BEFORE_SOWING_DAYS = 31;
const SEASON_DAYS = 400;

/** Of the plantings of the facts that were picked, the latest hundred, each season of a standing plant once. Nothing dated after `facts.asOf` counts. */
export function trackRecordOf(facts: GardenFacts): TrackRecord {
  const garden = asKnown(facts);
  const forecastOn = forecaster(facts);
  const picked = garden.plantings.flatMap((planting) => pickedSeasons(garden, planting)).sort((a, b) => b.cameOn - a.cameOn);
  const rows = picked.slice(0, MOST_ROWS).map((one) => rowOf(one, forecastOn));
  const counted = rows.filter((row) => !row.chosen);
  const atSowing = scoreOf(counted.map((row) => row.atSowing));
  return { rows, atSowing, monthBefore: scoreOf(counted.flatMap((row) => row.monthBefore ?? [])), text: claimOf(atSowing) };
}

interface PickedSeason {
  readonly planting: GardenPlanting;
  readonly began: DayNumber;
  readonly cameOn: DayNumber;
}

function pickedSeasons(garden: GardenFacts, planting: GardenPlanting): PickedSeason[] {
  const southern = isSouthern(garden);
  const days = [...planting.picks.map((pick) => pick.day), ...planting.sightings.filter((seen) => seen.stage === "first-pick").map((seen) => seen.day)].sort((a, b) => a - b);
  const [first] = days;
  if (first === undefined) return [];
  if (!isEstablished(planting)) {
    const began = beganOn(planting);
    return began === null ? [] : [{ planting, began, cameOn: first }];
  }
  return [...new Set(days.map((day) => seasonOf(day, southern)))].map((season) => ({
    planting: { ...planting, season },
    began: seasonStart(season, southern),
    cameOn: days.find((day) => seasonOf(day, southern) === season) as DayNumber,
  }));
}

function rowOf({ planting, began, cameOn }: PickedSeason, forecastOn: Forecaster): TrackRow {
  const then = (asOf: DayNumber): ForecastThen => {
    const firstPick = forecastOn(planting, asOf, began);
    const came = dateOf(cameOn);
    return {
      asOf: dateOf(asOf),
      firstPick,
      inside: firstPick !== null && firstPick.low <= came && came <= firstPick.high,
      daysLater: firstPick === null ? null : cameOn - dayNumber(firstPick.likely),
    };
  };
  const { id, crop, variety, season } = planting;
  return {
    plantingId: id,
    crop: crop.slug,
    name: crop.name,
    variety,
    season,
    chosen: waitsForTheGrower(crop),
    cameOn: dateOf(cameOn),
    atSowing: then(began),
    monthBefore: cameOn - MONTH_DAYS > began ? then(cameOn - MONTH_DAYS) : null,
  };
}

type Forecaster = (planting: GardenPlanting, asOf: DayNumber, began: DayNumber) => DateBand | null;

/** Forecasts from what was known on a day: later weather, sightings, picks and other sowings' lessons are left out. */
function forecaster(facts: GardenFacts): Forecaster {
  return (planting, asOf, began) => {
    const then = asKnown({ ...facts, asOf: dateOf(asOf) });
    const known = then.plantings.find((one) => one.id === planting.id) ?? planting;
    const weather = weatherBetween(then, Math.min(began, asOf) - BEFORE_SOWING_DAYS, Math.max(began, asOf) + SEASON_DAYS);
    const { value } = forecastOf(asker(then, weather.value)({ ...known, season: planting.season }), facts.memory);
    return dateBandOf(value.firstPickDay);
  };
}

function scoreOf(forecasts: readonly ForecastThen[]): TrackScore {
  const out = forecasts.flatMap(({ daysLater }) => (daysLater === null ? [] : [Math.abs(daysLater)]));
  const meanDaysOut = out.length === 0 ? null : Math.round((10 * out.reduce((a, b) => a + b, 0)) / out.length) / 10;
  return { inside: forecasts.filter((one) => one.inside).length, of: forecasts.length, meanDaysOut };
}

function claimOf({ inside, of, meanDaysOut }: TrackScore): string {
  if (of < FEWEST) return `${of === 0 ? "No sowing has" : of === 1 ? "1 sowing has" : `${of} sowings have`} been forecast and picked so far; with fewer than ${FEWEST} nothing can be said of how good the forecasts are.`;
  return `${inside} of ${of} first picks fell inside the span forecast on the day of sowing; eight of ten should. The likely day was ${meanDaysOut ?? 0} days out on average.`;
}
