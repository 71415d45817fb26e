import type { Forecast, Sowing } from "#shared/contracts/sowings.ts";
import { mapBand } from "#shared/kernel/band.ts";
import { dateOf } from "#shared/kernel/local-date.ts";
import type { SowingForecast, SowingOutlook } from "#shared/planning/sowing-forecast.ts";
import type { KnownPlanting } from "../facts/garden.ts";
import type { SowingRow } from "./store.ts";

/** `known` is the sowing as it was known on the day of the answer: later sightings and picks are not in it. */
export function toContract(row: SowingRow, known: KnownPlanting, outlook: SowingOutlook): Sowing {
  const { id, bedId, crop, variety, varietyDays, method, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince, note } = row;
  const said = { variety, varietyDays, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince, note };
  return {
    id,
    bedId,
    crop,
    method: method as Sowing["method"],
    ...Object.fromEntries(Object.entries(said).filter(([, value]) => value !== null)),
    sightings: known.sightings.map(({ id: sightingId, stage, day }) => ({ id: sightingId, stage, seenOn: dateOf(day) })),
    pickedGrams: known.picks.reduce((sum, pick) => sum + pick.grams, 0),
    fits: [...outlook.fits],
    forecast: toForecast(outlook.forecast),
  };
}

/** Chances have four decimals on the wire. */
export function toForecast(forecast: SowingForecast): Forecast {
  const { firstPick, lastPick, totalGrams, weeks, dots, chanceOfPick, frost, waits, lift, own, warmth, basis, notes } = forecast;
  return {
    firstPick,
    lastPick,
    totalGrams,
    weeks: weeks.map(({ week, grams, chanceInHarvest }) => ({ week, grams, chanceInHarvest: share(chanceInHarvest) })),
    dots: [...dots],
    chanceOfPick: share(chanceOfPick),
    frost: { ...frost },
    waits,
    lift,
    own: { warmth: learnedOf(own.requirement), amount: learnedOf(own.amount) },
    ...(warmth === undefined ? {} : { warmth: warmth && warmthOf(warmth) }),
    basis: basis.map(({ id, text }) => ({ id, text })),
    notes: [...notes],
  };
}

type Learned = SowingForecast["own"]["amount"];

const learnedOf = (learned: Learned): NonNullable<Forecast["own"]>["amount"] =>
  learned && { count: learned.count, percent: Math.round(100 * Math.expm1(learned.shiftLn)), sameVariety: learned.sameVariety };

function warmthOf({ since, gainedCd, usualCd, needsCd, points, ...warmth }: NonNullable<SowingForecast["warmth"]>): NonNullable<Forecast["warmth"]> {
  const whole = (cd: number): number => Math.round(cd);
  return {
    ...warmth,
    since: dateOf(since),
    gainedCd: whole(gainedCd),
    usualCd: mapBand(usualCd, whole),
    needsCd: whole(needsCd),
    points: points.map((point) => ({ on: dateOf(point.day), gainedCd: point.gainedCd === null ? null : whole(point.gainedCd), usualCd: mapBand(point.usualCd, whole) })),
  };
}

const share = (chance: number): number => Math.round(chance * 10_000) / 10_000;
