/** The day of the first pick by weather year and quantile of the requirement, before frost has its say. Days are indexes into the weather. */
import type { DayNumber } from "../../kernel/local-date.ts";
import type { Clock } from "./clock.ts";
import { equalSteps, normalProbability, normalQuantile } from "./normal-quantile.ts";
import type { Requirement } from "./requirement.ts";
import { BULBING, bulbingDays, slowedByShortDays } from "./season-limits.ts";
import { degreeDaySums, emergenceSums, firstDayReaching } from "./thermal-time.ts";
import type { CoveredWeather, Sums } from "./thermal-time.ts";
import type { ForecastQuestion } from "./types.ts";
import { coldGate, coldNeedOf, restsInWinter } from "./winter.ts";

export interface FirstPicks {
  /** By year: day on which it stands above ground and can be hurt; −1 where it does not come up. */
  readonly upFrom: Int32Array;
  /** By year · perYear + part of the requirement's distribution, earliest first; −1 where the weather given does not bring it. */
  readonly days: Int32Array;
  /** Share of the scenarios that had been ripe before `notBefore`, dealt anew; mean over the years. */
  readonly ruledOut: number;
  /** Share 0–1 of the warmth that a first pick needs, had by the morning of a day, by year and part. */
  readonly ripenessBy: (y: number, part: number, day: DayNumber) => number;
}

/** Share of the scenarios kept when all of them say it should have been picked by now. */
const KEPT_AT_LEAST = 0.05;
/** A pick may be this late before its absence says something, days. */
export const UNNOTICED_DAYS = 3;

/** `steps` says by year which of the equal steps of chance it takes within each part (see scenario-deal.ts). */
export function firstPicks(q: ForecastQuestion, weather: CoveredWeather, clock: Clock, need: Requirement, perYear: number, steps: Int32Array, notBefore: DayNumber | null): FirstPicks {
  const { crop } = q.planting;
  const latitude = q.latitudeDeg ?? null;
  const began = beganOn(q, clock);
  const warmth = warmthFor(q, weather, clock);
  const cold = clock.restsOn === "flowering" || clock.restsOn === "fruit-set" ? null : coldNeedOf(crop);
  const gates = cold && coldGate(cold, weather, warmth, began - q.weather.firstDay);
  const upFrom = emergenceDays(q, weather, clock);
  const long = bulbingDays(crop, weather, latitude);
  const days = new Int32Array(weather.years.length * perYear).fill(-1);
  const needCd = new Float64Array(days.length).fill(Infinity);
  const even = equalSteps(days.length);
  let ruledOut = 0;
  for (let y = 0; y < weather.years.length; y++) {
    const from = upFrom[y] as number;
    if (from < 0) continue;
    const gained = warmth.values[y * warmth.stride + from] as number;
    const passed = notBefore === null ? 0 : chancePassed(warmth, y, from, notBefore - q.weather.firstDay, need);
    ruledOut += passed / weather.years.length;
    const bulbs = long ? firstLongDay(warmth, y, from, gained, long) : from;
    const gate = gates ? (gates[y] as number) : from;
    if (bulbs < 0 || gate < 0) continue;
    // nearly all of the book's distribution has gone by: this planting is a late one, by the same spread on from the warmth it has had
    const late = passed < 1 - KEPT_AT_LEAST ? null : sumTo(warmth, y, from, (notBefore as DayNumber) - q.weather.firstDay);
    const gone = late === null ? passed : 0.5;
    const zOf = (at: number): number => (gone === 0 ? (even[at] as number) : normalQuantile(gone + (1 - gone) * ((at + 0.5) / even.length)));
    for (let i = 0; i < perYear; i++) {
      const at = i * steps.length + (steps[y] as number);
      const needs = (late ?? need.likelyCd) * Math.exp(need.sigmaLn * zOf(at));
      needCd[y * perYear + i] = needs;
      const day = firstDayReaching(warmth, y, from, gained + needs);
      if (day < 0) continue;
      days[y * perYear + i] = Math.max(day, bulbs, gate, notBefore === null ? from : notBefore - q.weather.firstDay);
    }
  }
  const ripenessBy = (y: number, part: number, day: DayNumber): number => Math.min(1, sumTo(warmth, y, upFrom[y] as number, day - q.weather.firstDay) / (needCd[y * perYear + part] as number));
  return { upFrom, days, ruledOut, ripenessBy };
}

const beganOn = ({ planting }: ForecastQuestion, clock: Clock): DayNumber => planting.sownOn ?? planting.plantedOutOn ?? clock.startDay;

/** The running sums of warmth that count for a planting. */
export function warmthFor(q: ForecastQuestion, weather: CoveredWeather, clock: Clock): Sums {
  const { crop } = q.planting;
  const slowed = slowedByShortDays(crop) || restsInWinter(crop, beganOn(q, clock), q.southern);
  return degreeDaySums(weather, crop.baseC, crop.upperC, slowed ? (q.latitudeDeg ?? null) : null);
}

/** By year, the day from which warmth counts: the start, or emergence by the warmth of the soil; −1 where it does not come up. */
export function emergenceDays(q: ForecastQuestion, weather: CoveredWeather, clock: Clock): Int32Array {
  const start = clock.startDay - q.weather.firstDay;
  const days = new Int32Array(weather.years.length).fill(start >= weather.days ? -1 : Math.max(0, start));
  const { emergence, germinationMinC } = q.planting.crop;
  if (!clock.emerges || !emergence || start >= weather.days) return days;
  const sums = emergenceSums(weather, emergence.baseC, germinationMinC ?? emergence.baseC);
  return days.map((from, y) => firstDayReaching(sums, y, from, (sums.values[y * sums.stride + from] as number) + emergence.thetaCd));
}

/**
 * Chance that the requirement had been reached before `day`. As nobody has picked, that part is ruled out and the rest is dealt anew;
 * at least a twentieth is kept.
 */
function chancePassed(warmth: Sums, y: number, from: number, day: number, need: Requirement): number {
  const sum = sumTo(warmth, y, from, day);
  if (sum <= 0) return 0;
  return Math.min(1 - KEPT_AT_LEAST, normalProbability(Math.log(sum / need.likelyCd) / need.sigmaLn));
}

/** Thermal time from `from` to the morning of `day`, °C d. */
function sumTo(warmth: Sums, y: number, from: number, day: number): number {
  const at = Math.min(Math.max(day, from), warmth.stride - 1);
  return (warmth.values[y * warmth.stride + at] as number) - (warmth.values[y * warmth.stride + from] as number);
}

/** Day on which onion bulbs begin; −1 where the days are not long enough any more. */
function firstLongDay(warmth: Sums, y: number, from: number, gained: number, long: Int32Array): number {
  const warm = firstDayReaching(warmth, y, from, gained + BULBING.warmthCd);
  const day = warm < 0 ? -1 : (long[y * warmth.stride + warm] as number);
  return day >= warmth.stride - 1 ? -1 : day;
}
