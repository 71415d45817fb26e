/** What winter does to a planting: the cold that some crops must have had, and which of them come through it to be picked in the year after. */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import { monthStart, seasonOf } from "./calendar-days.ts";
import { countingSums, firstDayReaching } from "./thermal-time.ts";
import type { CoveredWeather, Sums } from "./thermal-time.ts";

/** An annual that is not ready a year after it went in will not be. */
const A_YEAR_DAYS = 365;
/** Sown in autumn, these stand the winter and crop in the year after (common practice, no source). */
const STANDS_THE_WINTER = new Set("broad-bean pea garlic onion shallot spring-onion cabbage sprouting-broccoli lettuce lettuce-head chicory spinach parsley kale".split(" "));

/**
 * First day on which the planting no longer counts. What is picked leaf, root or head and went in by the end of August, or later without
 * being of the kinds that stand the winter, runs to seed in the spring after: it ends with April (common practice; October in the south).
 */
export function endsBy(crop: CropFacts, beganOn: DayNumber, southern: boolean): DayNumber {
  const season = seasonOf(beganOn, southern);
  const aYearOn = beganOn + A_YEAR_DAYS;
  // what needs a winter first is picked in the spring after it, however early it went in
  if (crop.habit === "repeat") return COLD_NEEDS[crop.slug] ? Math.max(aYearOn, monthStart(season + 1, 7, southern)) : aYearOn;
  const forNextYear = isAutumnSown(beganOn, southern) && STANDS_THE_WINTER.has(crop.slug);
  return forNextYear ? aYearOn : monthStart(season + 1, 5, southern);
}

/** In the last four months of its season. */
export function isAutumnSown(beganOn: DayNumber, southern: boolean): boolean {
  return beganOn >= monthStart(seasonOf(beganOn, southern), 9, southern);
}

/** Seeds of these, sown in autumn, make hardly any growth in the short days: autumn-sown broad beans take 200–230 days (a UK grower's page, CD). */
const RESTS_IN_SHORT_DAYS = new Set(["broad-bean", "pea"]);

export function restsInWinter(crop: CropFacts, beganOn: DayNumber, southern: boolean): boolean {
  return RESTS_IN_SHORT_DAYS.has(crop.slug) && isAutumnSown(beganOn, southern);
}

/** Days with a mean of at most so many °C that must have gone by, and the warmth after them to the first pick, °C d. */
export interface ColdNeed {
  readonly days: number;
  readonly atMostC: number;
  readonly thenCd: number;
  /** Cold counts only when the plant is no longer young, days after it went in. */
  readonly youngDays: number;
}

/**
 * Six weeks below 10 °C before the buds of sprouting broccoli form, which open with the first warmth after it; garlic that has had none
 * makes a round instead of cloves (common practice, no source).
 */
const COLD_NEEDS: Readonly<Record<string, ColdNeed>> = {
  "sprouting-broccoli": { days: 42, atMostC: 10, thenCd: 120, youngDays: 60 },
  garlic: { days: 40, atMostC: 10, thenCd: 0, youngDays: 0 },
};

export const coldNeedOf = (crop: CropFacts): ColdNeed | null => COLD_NEEDS[crop.slug] ?? null;

/** By year, for what went in on day `began` (both indexes into the weather), the first day on which the cold and the warmth after it allow a pick; −1 where they do not. */
export function coldGate(need: ColdNeed, weather: CoveredWeather, warmth: Sums, began: number): Int32Array {
  const start = Math.min(Math.max(0, began + need.youngDays), weather.days);
  const cold = countingSums(weather, `cold ${need.atMostC}`, ({ tmaxC, tminC }, d) => ((tmaxC[d] as number) + (tminC[d] as number)) / 2 <= need.atMostC);
  return Int32Array.from(weather.years, (_, y) => {
    const had = firstDayReaching(cold, y, start, (cold.values[y * cold.stride + start] as number) + need.days);
    return had < 0 ? -1 : firstDayReaching(warmth, y, had, (warmth.values[y * warmth.stride + had] as number) + need.thenCd);
  });
}
