/** A bed and a day → what still makes sense to sow or plant there, with the chance that it ripens before the frost and the end of its season. */
import { forecastPlanting, picksBySowingDay, summarise } from "../engines/harvest-forecast/index.ts";
import { waitsForTheGrower, type CropFacts, type Method } from "../kernel/crop-facts.ts";
import { dateOf, dayNumber, type LocalDate } from "../kernel/local-date.ts";
import type { Band } from "../kernel/band.ts";
import { mapBand } from "../kernel/band.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import { asKnown } from "./as-known.ts";
import { freeByBed } from "./bed-room.ts";
import { toDatesOrNull } from "./day-bands.ts";
import type { GardenFacts } from "./facts.ts";
import { asker, weatherBetween } from "./garden-forecasts.ts";
import type { DateBand } from "./outlook-types.ts";
import { thoughtOfPlanting, usualMethodOf } from "./thought-of-planting.ts";

export interface StillRipens {
  readonly crop: string;
  readonly name: string;
  readonly method: Method;
  /** Share of the reckoned seasons in which it comes to a pick, 0–1. */
  readonly chanceOfPick: number;
  readonly firstPick: DateBand;
  /** Season's grams of a metre of row. */
  readonly gramsPerRowM: Band;
  /** Ready from, waits for the grower. */
  readonly waits: boolean;
  readonly notes: readonly string[];
}

export interface BedAdvice {
  readonly on: LocalDate;
  /** Square metres free in the bed on the day of the facts. */
  readonly freeM2: number;
  /** Surest first, of equal chance the earliest. */
  readonly sensible: readonly StillRipens[];
  /** Ripens in some seasons only. */
  readonly gamble: readonly StillRipens[];
  readonly basis: readonly SourceRef[];
  readonly notes: readonly string[];
}

/** Seasons of ten in which it must ripen to be advised, and to be named as a gamble at all (common practice, no source). */
const SENSIBLE = 0.8;
const GAMBLE = 0.3;
/** What stands longer than this before its first pick is not "still" sown, days; garlic and overwintered beans stay within it. */
const LONGEST_WAIT_DAYS = 300;
const BEFORE_SOWING_DAYS = 31;
const SEASON_DAYS = 400;

/**
 * Every annual crop of the facts sown in place on a day (left out = that of the facts), or planted out where it is raised in trays.
 * Throws RangeError for a bed that is not in the facts.
 */
export function sowingAdviceForBed(facts: GardenFacts, bedId: string, on: LocalDate = facts.asOf): BedAdvice {
  const garden = asKnown(facts);
  const bed = garden.beds.find((one) => one.id === bedId);
  if (!bed) throw new RangeError(`no bed ${bedId}`);
  const day = dayNumber(on);
  const weather = weatherBetween(garden, Math.min(day, dayNumber(garden.asOf)) - BEFORE_SOWING_DAYS, day + SEASON_DAYS);
  const ask = asker(garden, weather.value);
  const annuals = [...garden.crops.values()].filter((crop) => !crop.perennial);
  const found = annuals.flatMap((crop): StillRipens[] => {
    const method = usualMethodOf(crop);
    const planting = thoughtOfPlanting(crop, method, bed.cover);
    const into = method === "transplant" ? { plantedOutOn: day } : { sownOn: day };
    const forecast = forecastPlanting(ask({ ...planting, ...into }));
    const { firstPick, chanceOfPick, totalGrams } = summarise(forecast.value);
    // as for advice: seed that lies too long is lost
    const chance = Math.min(chanceOfPick, picksBySowingDay(ask(planting), day, day).chance[0] ?? 0);
    if (!firstPick || firstPick.likely - day > LONGEST_WAIT_DAYS || chance < GAMBLE) return [];
    return [{ ...named(crop), method, chanceOfPick: chance, firstPick: toDatesOrNull(firstPick) as DateBand, gramsPerRowM: mapBand(totalGrams, Math.round), notes: forecast.notes }];
  });
  const sorted = found.sort((a, b) => b.chanceOfPick - a.chanceOfPick || (a.firstPick.likely < b.firstPick.likely ? -1 : a.firstPick.likely > b.firstPick.likely ? 1 : 0));
  return {
    on: dateOf(day),
    freeM2: freeByBed(garden).get(bedId) ?? 0,
    sensible: sorted.filter((one) => one.chanceOfPick >= SENSIBLE),
    gamble: sorted.filter((one) => one.chanceOfPick < SENSIBLE),
    basis: weather.basis,
    notes: weather.notes,
  };
}

const named = (crop: CropFacts): Pick<StillRipens, "crop" | "name" | "waits"> => ({ crop: crop.slug, name: crop.name, waits: waitsForTheGrower(crop) });
