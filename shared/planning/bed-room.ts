/** Beds and their plantings → what stands free, and what does not fit, in square metres and weeks. The end of a planting is its forecast's likely last pick. */
import { freeM2, shortagesOf, shortageWords, squareMetresOf, type Occupant } from "../engines/bed-space/index.ts";
import { dayNumber, type DayNumber } from "../kernel/local-date.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { sentenceCase } from "../kernel/words.ts";
import { asKnown } from "./as-known.ts";
import type { GardenFacts, GardenPlanting } from "./facts.ts";
import { beganOn, forecastPlantings, isEstablished, isSouthern, OVER_AFTER_DAYS, type SeasonForecast } from "./garden-forecasts.ts";
import { lastDayOf } from "./outlook-rows.ts";
import { seasonOf, seasonStart } from "./season.ts";

/** A plant raised under cover goes out some four weeks after sowing, where nobody has said when (common practice, no source). */
const RAISED_DAYS = 28;

/** Square metres free on the day of the facts, by bed. */
export function freeByBed(facts: GardenFacts): Map<string, number> {
  const garden = asKnown(facts);
  const today = dayNumber(garden.asOf);
  const standing = standingIn(garden, forecastPlantings(garden, garden.plantings.filter((planting) => mayStand(planting, today))).forecasts);
  return new Map(
    garden.beds.map((bed) => {
      const occupants = (standing.get(bed.id) ?? []).map((one) => one.occupant);
      return [bed.id, Math.round(100 * freeM2(bed.lengthM * bed.widthM, occupants, today)) / 100];
    }),
  );
}

/** Cheap to ask of years of records; what is left is forecast. */
function mayStand(planting: GardenPlanting, today: DayNumber): boolean {
  const began = beganOn(planting) ?? today;
  return began <= today && began + OVER_AFTER_DAYS > today && (clearedOn(planting, today) ?? today + 1) > today;
}

/** Whether two plantings may take each other's room, before either is forecast: one bed, and seasons that can touch. */
export function mayStandBeside(one: GardenPlanting, other: GardenPlanting): boolean {
  if (one.bedId !== other.bedId) return false;
  const [a, b] = [beganOn(one), beganOn(other)];
  return a === null || b === null || Math.abs(a - b) < OVER_AFTER_DAYS;
}

/** What does not fit its bed, a sentence for each run of weeks; empty where all is well. By planting. */
export function fitNotes(garden: GardenFacts, forecasts: readonly SeasonForecast[]): Map<string, string[]> {
  const standing = standingIn(garden, forecasts);
  return new Map(forecasts.map(({ planting }) => [planting.id, notesOn(garden, planting, standing.get(planting.bedId) ?? [])]));
}

interface Standing {
  readonly plantingId: string;
  readonly occupant: Occupant;
}

function standingIn(garden: GardenFacts, forecasts: readonly SeasonForecast[]): Map<string, Standing[]> {
  const beds = new Map<string, Standing[]>();
  for (const one of forecasts) {
    const occupant = occupantOf(garden, one);
    const bed = beds.get(one.planting.bedId) ?? [];
    if (occupant) bed.push({ plantingId: one.planting.id, occupant });
    beds.set(one.planting.bedId, bed);
  }
  return beds;
}

/** Null where the crop's spacing is not known and no area was given. */
function occupantOf(garden: GardenFacts, one: SeasonForecast): Occupant | null {
  const { planting } = one;
  const m2 = squareMetresOf(planting, planting.crop.spacingCm ?? null);
  if (m2 === null) return null;
  const last = lastDayOf(one);
  const fromDay = goesInOn(garden, planting);
  if (last !== null) return { m2, fromDay, untilDay: dayNumber(last) + 1 };
  return { m2, fromDay, untilDay: isEstablished(planting) ? clearedOn(planting, one.value.asOf) : fromDay + usualDays(planting) };
}

function goesInOn(garden: GardenFacts, planting: GardenPlanting): DayNumber {
  const southern = isSouthern(garden);
  const season = planting.standsSince ?? planting.season ?? seasonOf(dayNumber(garden.asOf), southern);
  const began = beganOn(planting) ?? seasonStart(season, southern);
  return planting.method === "transplant" && planting.plantedOutOn === null ? began + RAISED_DAYS : began;
}

const clearedOn = (planting: GardenPlanting, asOf: DayNumber): DayNumber | null => planting.sightings.find((seen) => seen.stage === "finished" && seen.day <= asOf)?.day ?? null;

/** From sowing to clearing by the crop table alone, for a planting that no season brings to a pick. */
function usualDays({ crop }: GardenPlanting): number {
  return (crop.daysToMaturity?.high ?? 0) + 7 * crop.pickWeeks.high;
}

function notesOn(garden: GardenFacts, planting: GardenPlanting, inBed: readonly Standing[]): string[] {
  const bed = garden.beds.find((one) => one.id === planting.bedId);
  const own = inBed.find((one) => one.plantingId === planting.id);
  if (!bed) return [];
  if (!own) return [`${sentenceCase(cropWord(planting.crop.name))}: the room they take is not known; give the square metres.`];
  const others = inBed.filter((one) => one !== own).map((one) => one.occupant);
  return shortagesOf({ bedM2: bed.lengthM * bed.widthM, sowing: own.occupant, others }).map(shortageWords);
}
