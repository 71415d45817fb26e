/** What a finished planting of the household teaches: the warmth it really took to its first pick, and what it brought, against the book. */
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import { seasonYield } from "./amounts.ts";
import { bearingOf, setInSeason } from "./bearing.ts";
import { clockOf } from "./clock.ts";
import { ranToSeedOn } from "./flowering.ts";
import { knownFacts } from "./known-facts.ts";
import type { KnownFacts } from "./known-facts.ts";
import { byPacket } from "./packet-days.ts";
import { slowedByShortDays } from "./season-limits.ts";
import { firstCut } from "./spread.ts";
import { covered, degreeDaySums, emergenceSums, firstDayReaching } from "./thermal-time.ts";
import type { FinishedSowing, ForecastQuestion } from "./types.ts";
import { coldNeedOf, endsBy, restsInWinter } from "./winter.ts";

/** Less than this part of the book's yield is a failure, or a crop that something else has eaten: it says nothing of the next (common practice). */
const FAILED_BELOW = 0.05;

/**
 * Read from the observed weather, which must reach from the start to the first pick (`weather.asOf` on or after it). Null where the first
 * pick is not known, or neither the day nor the amount says anything.
 */
export function finishedSowingOf(asked: ForecastQuestion, sameVariety: boolean): FinishedSowing | null {
  const q = byPacket(asked);
  const facts = knownFacts(q);
  const lnRequirementRatio = warmthTaken(q, facts);
  const lnYieldRatio = yieldBrought(q, facts);
  return lnRequirementRatio === null && lnYieldRatio === null ? null : { lnRequirementRatio, lnYieldRatio, sameVariety };
}

/** ln(warmth from the start to the first pick / book requirement); null where the pick was the grower's choice rather than ripeness. */
function warmthTaken(q: ForecastQuestion, facts: KnownFacts): number | null {
  const { crop, cover } = q.planting;
  const air = covered(q.weather, cover);
  const clock = clockOf(q, facts, air, false);
  const chosen = waitsForTheGrower(crop) || crop.habit === "cut-again" || coldNeedOf(crop) !== null || ranToSeedOn(crop, facts.seen) !== null;
  if (!clock || chosen || facts.firstPick === null || facts.firstPick > q.weather.asOf || clock.startDay < q.weather.firstDay) return null;
  const start = clock.startDay - q.weather.firstDay;
  const picked = facts.firstPick - q.weather.firstDay;
  let from = start;
  if (clock.emerges && crop.emergence) {
    const soil = emergenceSums(air, crop.emergence.baseC, crop.germinationMinC ?? crop.emergence.baseC);
    from = firstDayReaching(soil, 0, start, (soil.values[start] as number) + crop.emergence.thetaCd);
  }
  if (from < 0 || from >= picked || picked >= air.days) return null;
  const slowed = slowedByShortDays(crop) || restsInWinter(crop, q.planting.sownOn ?? clock.startDay, q.southern);
  const warmth = degreeDaySums(air, crop.baseC, crop.upperC, slowed ? (q.latitudeDeg ?? null) : null);
  const took = (warmth.values[picked] as number) - (warmth.values[from] as number);
  return took > 0 ? Math.log(took / (clock.likelyCd * firstCut(crop).share)) : null;
}

/** ln(grams picked / book yield of its size and age) of a season that is over; null where it is not, or where it failed. */
function yieldBrought({ planting, asOf, southern }: ForecastQuestion, facts: KnownFacts): number | null {
  const began = planting.plantedOutOn ?? planting.sownOn;
  const ended = facts.season ? facts.season.until <= asOf : began !== null && endsBy(planting.crop, began, southern) <= asOf;
  if (facts.finishedOn === null && !ended) return null;
  const bearing = bearingOf(planting.crop, setInSeason(planting, southern), facts.season?.name ?? 0);
  const book = seasonYield(planting, bearing.share).likelyGrams;
  const share = book > 0 ? facts.pickedGrams / book : 0;
  return share < FAILED_BELOW ? null : Math.log(share);
}
