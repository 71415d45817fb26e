/** What ends the picking of a crop besides the length of its season, and what the length of the day holds up. */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import { monthStart, seasonOf } from "./calendar-days.ts";
import { dayLengthHours } from "./day-length.ts";
import { nextDays, soilOf } from "./thermal-time.ts";
import type { CoveredWeather } from "./thermal-time.ts";

const FOLIAGE = "foliage tender";

/** Tender and half-hardy crops, and what has tender leaves, are lost to a killing frost before they are ready; hardy ones stand it. */
export function diesUnripe(crop: CropFacts): boolean {
  return !crop.perennial && (crop.frostClass === "tender" || crop.frostClass === "half-hardy" || crop.frostClass === FOLIAGE);
}

/** Frost takes the tops of these and leaves what is in the ground. */
export const bearsUnderground = (crop: CropFacts): boolean => crop.frostClass === FOLIAGE;

/** Tubers near the surface freeze in nights of so many °C at screen height (common practice, no source). */
const TUBERS_FREEZE_C = -5;
/** Once the tops are dead the skins set, days; potatoes are lifted two weeks after the tops have died (common practice). */
export const SKINS_SET_DAYS = 14;
/** Tubers form when two fifths of the warmth has gone by and fill evenly from then on; with less than three fifths of it they are too small to lift (common practice, no source). */
const TUBERS_FROM = 0.4;
const WORTH_LIFTING_FROM = 0.6;

/** Part of the whole yield under tops killed at a share of their warmth; 0 where it is not worth lifting. */
export function yieldUnderDeadTops(ripeness: number): number {
  return ripeness < WORTH_LIFTING_FROM ? 0 : Math.min(1, (ripeness - TUBERS_FROM) / (1 - TUBERS_FROM));
}

/** Next day, from each day on, whose night ends the picking of what is ready; null where none does. */
export function endingDays(crop: CropFacts, weather: CoveredWeather): Int32Array | null {
  if (!bearsUnderground(crop)) return killingDays(crop, weather);
  return nextDays(weather, `kills at ${TUBERS_FREEZE_C}`, (year, d) => (year.tminC[d] as number) <= TUBERS_FREEZE_C);
}

/** First day on which a killing night counts: what lost its leaves in spring shoots again, so of potatoes only nights from midsummer on. */
export function hurtFrom(crop: CropFacts, beganOn: DayNumber, southern: boolean): DayNumber {
  return crop.frostClass === FOLIAGE ? monthStart(seasonOf(beganOn, southern), 7, southern) : -Infinity;
}

/** Next day, from each day on, whose minimum kills the crop; null where it has no killing temperature. */
export function killingDays(crop: CropFacts, weather: CoveredWeather): Int32Array | null {
  const killC = crop.killC;
  return killC === null ? null : nextDays(weather, `kills at ${killC}`, (year, d) => (year.tminC[d] as number) <= killC);
}

/** Long days and warmth make these run to seed (common practice): days above this length with soil above this mean. */
const BOLTERS = new Set(["spinach", "rocket", "coriander", "radish"]);
const BOLTS_ABOVE_HOURS = 14;
const BOLTS_ABOVE_C = 18;
/** Even then there is this long to pick. */
export const BOLTER_PICK_DAYS = 7;

/** Next day, from each day on, in which the crop runs to seed; null for crops that do not, or without a latitude. */
export function boltingDays(crop: CropFacts, weather: CoveredWeather, latitudeDeg: number | null): Int32Array | null {
  if (latitudeDeg === null || !BOLTERS.has(crop.slug)) return null;
  const hours = weather.calendar.slot;
  const long = Uint8Array.from(hours, (slot) => (dayLengthHours(latitudeDeg, slot + 1) > BOLTS_ABOVE_HOURS ? 1 : 0));
  return nextDays(weather, `bolts at ${latitudeDeg}`, (_, d, y) => long[d] === 1 && (soilOf(weather, y)[d] as number) > BOLTS_ABOVE_C);
}

/** Onion bulbs form only after this warmth and in days of this length (long-day types; Lancaster et al. 1996). */
export const BULBING = { warmthCd: 600, hours: 13.75 };
/** Nearer the equator other types are grown. */
const LONG_DAY_TYPES_FROM_DEG = 40;

/** Next day, from each day on, that is long enough for onion bulbs; null where day length does not matter. */
export function bulbingDays(crop: CropFacts, weather: CoveredWeather, latitudeDeg: number | null): Int32Array | null {
  if (crop.slug !== "onion" || latitudeDeg === null || Math.abs(latitudeDeg) < LONG_DAY_TYPES_FROM_DEG) return null;
  const long = Uint8Array.from(weather.calendar.slot, (slot) => (dayLengthHours(latitudeDeg, slot + 1) >= BULBING.hours ? 1 : 0));
  return nextDays(weather, `bulbs at ${latitudeDeg}`, (_, d) => long[d] === 1);
}

/** Leaf crops all but stand still in short days (common practice). */
const LEAVES = new Set(["lettuce-head", "chicory", "pak-choi", "chinese-cabbage"]);

export function slowedByShortDays(crop: CropFacts): boolean {
  return !crop.perennial && (crop.habit === "cut-again" || LEAVES.has(crop.slug));
}
