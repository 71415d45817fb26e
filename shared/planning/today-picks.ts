/** What is worth picking today: what has likely come on each plant since the last pick. Grams, day numbers. */
import { forecastPlanting, weeklySupply, type ForecastQuestion } from "../engines/harvest-forecast/index.ts";
import { bandOf, mapBand, type Band } from "../kernel/band.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { weekOf } from "../kernel/iso-week.ts";
import { dateOf, type DayNumber } from "../kernel/local-date.ts";
import type { GardenPlanting } from "./facts.ts";
import type { SeasonForecast } from "./garden-forecasts.ts";
import { WORTH_SAYING_GRAMS } from "./outlook-words.ts";
import type { PickRow } from "./today-types.ts";

/** In harvest in at least half the scenarios. */
const IN_HARVEST_FROM = 0.5;
/** Without a pick so far, what has ripened in the last week is counted; what hangs longer is past its best (common practice, no source). */
const HANGS_DAYS = 7;
/** A planting picked so lately is still being picked, whatever the book says. */
const STILL_PICKED_DAYS = 14;

/** Most first. Crops that wait for the grower are left out: they are no pick that must be made. */
export function picksToday(forecasts: readonly SeasonForecast[], today: DayNumber, ask: (planting: GardenPlanting) => ForecastQuestion): PickRow[] {
  return forecasts
    .flatMap((one) => {
      const { planting } = one;
      const { crop } = planting;
      const last = lastPick(planting, today);
      if (waitsForTheGrower(crop) || isFinished(planting, today) || !isInHarvest(one, today, last)) return [];
      const grams = mapBand(noMoreThanLeft(grownSince(planting, last, today, ask), one), Math.round);
      if (grams.likely < WORTH_SAYING_GRAMS) return [];
      const row: PickRow = {
        sowingId: planting.id, crop: crop.slug, name: crop.name, bedName: planting.bedName, grams,
        daysSince: last === null ? null : today - last, gramsPerPiece: crop.gramsPerPiece,
      };
      return [row];
    })
    .sort((a, b) => b.grams.likely - a.grams.likely || (a.sowingId < b.sowingId ? -1 : 1));
}

export function lastPick(planting: GardenPlanting, today: DayNumber): DayNumber | null {
  const days = planting.picks.map((pick) => pick.day).filter((day) => day <= today);
  return days.length === 0 ? null : Math.max(...days);
}

export const isFinished = (planting: GardenPlanting, today: DayNumber): boolean =>
  planting.method !== "established" && planting.sightings.some((seen) => seen.stage === "finished" && seen.day <= today);

function isInHarvest({ value }: SeasonForecast, today: DayNumber, last: DayNumber | null): boolean {
  if (last !== null && today - last <= STILL_PICKED_DAYS) return true;
  const { firstPickDay, lastPickDay } = value;
  let n = 0;
  for (let s = 0; s < firstPickDay.length; s++) {
    const first = firstPickDay[s] as number;
    if (first >= 0 && first <= today && (lastPickDay[s] as number) >= today) n++;
  }
  return n >= IN_HARVEST_FROM * firstPickDay.length;
}

/** Looked at from today a planting may have less left than was reckoned at its last pick; more than that is never said to be there. */
function noMoreThanLeft(grown: Band, { value }: SeasonForecast): Band {
  const picked = value.curve.picks.reduce((sum, pick) => sum + pick.grams, 0);
  const left = bandOf([...value.totalGrams].map((grams) => Math.max(0, grams - picked)));
  return { low: Math.min(grown.low, left.low), likely: Math.min(grown.likely, left.likely), high: Math.min(grown.high, left.high) };
}

/** The forecast as it stood on the day of the last pick, summed over the days since; within a week evenly. */
function grownSince(planting: GardenPlanting, last: DayNumber | null, today: DayNumber, ask: (planting: GardenPlanting) => ForecastQuestion): Band {
  const base = last ?? today - HANGS_DAYS;
  const days = today - base;
  if (days <= 0) return { low: 0, likely: 0, high: 0 };
  const forecast = forecastPlanting({ ...ask(planting), asOf: base }).value;
  const count = Math.ceil(days / 7);
  const firstMonday = base + 1;
  const weeks = Array.from({ length: count }, (_, w) => weekOf(dateOf(firstMonday + 7 * w)));
  const { scenarios } = weeklySupply(forecast, { weeks, firstMonday });
  const lastShare = days / 7 - (count - 1);
  return bandOf(scenarios.map((grams) => grams.reduce((sum, g, w) => sum + g * (w === count - 1 ? lastShare : 1), 0)));
}
