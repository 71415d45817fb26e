/**
 * Planning back: when a crop would be picked if it were sown (or planted out) on each day of a stretch, and from that, on which day
 * to sow for a day on which it is wanted. The likely requirement through every scenario year; the middle of the years counts.
 */
import type { DayNumber } from "../../kernel/local-date.ts";
import { seasonYield } from "./amounts.ts";
import { clockOf } from "./clock.ts";
import { firstPicks } from "./first-picks.ts";
import { dayBandOf } from "./frost-dates.ts";
import { knownFacts } from "./known-facts.ts";
import { byPacket } from "./packet-days.ts";
import { requirementOf } from "./requirement.ts";
import { diesUnripe, hurtFrom, killingDays } from "./season-limits.ts";
import { covered } from "./thermal-time.ts";
import type { CoveredWeather } from "./thermal-time.ts";
import type { ForecastQuestion, Planting } from "./types.ts";
import { endsBy, restsInWinter } from "./winter.ts";
import { shapeOf, shareBy } from "./yield-curve.ts";

/** One entry for each day of the stretch. */
export interface SowingDays {
  readonly from: DayNumber;
  /** Middle of the years that come to a pick; −1 where none does. */
  readonly likelyPick: Int32Array;
  /** Share of the years that come to a pick, 0–1. */
  readonly chance: Float64Array;
}

/** Seed that has not come up in so many days has rotted or been eaten (common practice); what goes in for the next year may lie longer. */
const LIES_AT_MOST_DAYS = 45;

/** Of `q.planting` the crop, the method and the cover count; its own days, sightings and picks do not. Both ends included. */
export function picksBySowingDay(asked: ForecastQuestion, from: DayNumber, until: DayNumber): SowingDays {
  const q = byPacket(asked);
  const days = Math.max(0, until - from + 1);
  const likelyPick = new Int32Array(days).fill(-1);
  const chance = new Float64Array(days);
  const air = covered(q.weather, q.planting.cover);
  for (let d = 0; d < days; d++) {
    const picks = picksIfSown(q, air, from + d);
    likelyPick[d] = dayBandOf(picks)?.likely ?? -1;
    chance[d] = picks.length / Math.max(1, air.years.length);
  }
  return { from, likelyPick, chance };
}

/** Sown on a day, the years' first picks before frost and the end of the season; years without one are left out. */
function picksIfSown(q: ForecastQuestion, air: CoveredWeather, day: DayNumber): DayNumber[] {
  const planted = q.planting.method === "transplant";
  const planting = { ...q.planting, sownOn: planted ? null : day, plantedOutOn: planted ? day : null, sightings: [], picks: [] };
  const asked: ForecastQuestion = { ...q, planting };
  const clock = clockOf(asked, knownFacts(asked), air, false);
  if (!clock) return [];
  const need = requirementOf(asked, clock);
  const ready = firstPicks(asked, air, clock, { ...need, sigmaLn: 0 }, 1, new Int32Array(air.years.length), null);
  const kills = diesUnripe(planting.crop) ? killingDays(planting.crop, air) : null;
  const hurt = hurtFrom(planting.crop, day, q.southern) - q.weather.firstDay;
  const lies = restsInWinter(planting.crop, day, q.southern) ? Infinity : LIES_AT_MOST_DAYS;
  const closes = endsBy(planting.crop, day, q.southern) - q.weather.firstDay;
  const picks: DayNumber[] = [];
  ready.days.forEach((at, y) => {
    const up = ready.upFrom[y] as number;
    if (up - (clock.startDay - q.weather.firstDay) > lies) return;
    const killed = kills && up >= 0 ? (kills[y * (air.days + 1) + Math.min(air.days, Math.max(up, hurt))] as number) : air.days;
    if (at >= 0 && at < Math.min(killed, closes)) picks.push(q.weather.firstDay + at);
  });
  return picks;
}

/** Sowings that come to a pick in fewer years than this are no advice (common practice). */
const LEAST_CHANCE = 0.7;

/**
 * The day whose likely first pick lies nearest to the one wanted, and that pick; of equal days the latest, which stands in the bed for
 * the shortest time. Null where no day of the stretch ripens in seven years of ten.
 */
export function sowingDayFor(days: SowingDays, wanted: DayNumber): { readonly sowOn: DayNumber; readonly likelyPick: DayNumber } | null {
  let best: { sowOn: DayNumber; likelyPick: DayNumber } | null = null;
  days.likelyPick.forEach((likelyPick, d) => {
    if (likelyPick < 0 || (days.chance[d] as number) < LEAST_CHANCE) return;
    if (!best || Math.abs(likelyPick - wanted) <= Math.abs(best.likelyPick - wanted)) best = { sowOn: days.from + d, likelyPick };
  });
  return best;
}

/** Part of a sowing's season that brings most of it: what comes after the other 15 % is not worth waiting for (common practice). */
const MOST = 0.85;

/** Weeks that one sowing serves: of the usual picking, those that bring most of it; at least one. And the likely grams of a metre of row in them all. */
export function sowingServes(planting: Planting): { readonly weeks: number; readonly gramsPerRowM: number } {
  const { crop } = planting;
  const shape = shapeOf(crop);
  const usual = (crop.pickWeeks.low + crop.pickWeeks.high) / 2;
  let weeks = Math.max(1, Math.round(usual));
  while (weeks > 1 && shareBy(shape, weeks - 1, usual) >= MOST) weeks--;
  return { weeks, gramsPerRowM: seasonYield({ ...planting, rowM: 1, plants: null, areaM2: null }, 1).likelyGrams };
}
