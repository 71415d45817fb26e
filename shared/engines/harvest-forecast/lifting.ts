/** When what waits for the grower is at its best and by when it must be out of the ground, scenario by scenario (common practice throughout). */
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import type { CropFacts } from "../../kernel/crop-facts.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import type { Seasons } from "./seasons.ts";
import { nextDays } from "./thermal-time.ts";
import type { CoveredWeather } from "./thermal-time.ts";
import type { ForecastQuestion, LiftingDays } from "./types.ts";

/** Stand through the winter until frost takes them or they run to seed; the rest turn woody, split or rot after their usual weeks. */
const STANDS_ON = new Set("leek parsnip brussels-sprouts winter-cabbage swede jerusalem-artichoke".split(" "));
/** Sweeter after a frost: from the first night of −2 °C on. */
const SWEETER_AFTER_FROST = new Set(["parsnip", "brussels-sprouts"]);
const FROST_C = -2;
/** Bulbs: lifted within a fortnight of half the tops having fallen, or the skins go. */
const BULBS = new Set(["onion", "shallot", "garlic"]);
const BULBS_KEEP_DAYS = 14;
/** Skins set and rinds harden for a fortnight after it is ready; what is lifted before does not keep. */
const HARDENS = new Set(["potato", "sweet-potato", "butternut-squash", "winter-squash", "pumpkin"]);
const HARDENS_DAYS = 14;

/** Rinds and vines end with the frost, not with the weeks in which they are usually gathered. */
const STANDS_TO_FROST = new Set(["sweet-potato", "butternut-squash", "winter-squash", "pumpkin"]);

/** Last day it may stand for its quality, frost and seeding apart. */
export function standsUntil(crop: CropFacts, ready: DayNumber): DayNumber {
  return STANDS_ON.has(crop.slug) || STANDS_TO_FROST.has(crop.slug) ? Infinity : ready + 7 * crop.pickWeeks.high;
}

/** Null for what must be picked when it ripens. */
export function liftingDays({ planting, weather }: ForecastQuestion, air: CoveredWeather, { first, outBy }: Seasons, perYear: number): LiftingDays | null {
  const { crop } = planting;
  if (!waitsForTheGrower(crop)) return null;
  const frosts = SWEETER_AFTER_FROST.has(crop.slug) ? nextDays(air, `frost of ${FROST_C}`, (year, d) => (year.tminC[d] as number) <= FROST_C) : null;
  const frostFrom = (s: number, day: DayNumber): DayNumber => {
    const at = Math.min(air.days, Math.max(0, day - weather.firstDay));
    return weather.firstDay + (frosts?.[Math.floor(s / perYear) * (air.days + 1) + at] ?? 0);
  };
  const bestFrom = new Int32Array(first.length).fill(-1);
  const bestUntil = new Int32Array(first.length).fill(-1);
  first.forEach((ready, s) => {
    if (ready < 0) return;
    const end = outBy[s] as number;
    const from = frosts ? frostFrom(s, ready) : ready + (HARDENS.has(crop.slug) ? HARDENS_DAYS : 0);
    bestFrom[s] = Math.min(from, end);
    bestUntil[s] = Math.min(end, Math.max(from, goodUntil(crop, ready)));
  });
  return { bestFrom, bestUntil, outBy };
}

function goodUntil(crop: CropFacts, ready: DayNumber): DayNumber {
  if (BULBS.has(crop.slug)) return ready + BULBS_KEEP_DAYS;
  if (HARDENS.has(crop.slug) || SWEETER_AFTER_FROST.has(crop.slug)) return Infinity;
  return ready + 7 * crop.pickWeeks.low;
}
