/** What a finished planting of the household teaches: the warmth it really took to its first pick, against the book. */
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import { clockOf } from "./clock.ts";
import { knownFacts } from "./known-facts.ts";
import { byPacket } from "./packet-days.ts";
import { slowedByShortDays } from "./season-limits.ts";
import { covered, degreeDaySums, emergenceSums, firstDayReaching } from "./thermal-time.ts";
import type { FinishedSowing, ForecastQuestion } from "./types.ts";
import { coldNeedOf, restsInWinter } from "./winter.ts";

/**
 * ln(warmth from the start to the first pick / book requirement), read from the observed weather, which must reach from the start to
 * the first pick (`weather.asOf` on or after it). Null where the first pick is not known, or was the grower's choice rather than ripeness.
 */
export function finishedSowingOf(asked: ForecastQuestion, sameVariety: boolean): FinishedSowing | null {
  const q = byPacket(asked);
  const { crop, cover } = q.planting;
  const facts = knownFacts(q);
  const air = covered(q.weather, cover);
  const clock = clockOf(q, facts, air, false);
  const chosen = waitsForTheGrower(crop) || crop.habit === "cut-again" || coldNeedOf(crop) !== null;
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
  return took > 0 ? { lnRequirementRatio: Math.log(took / clock.likelyCd), sameVariety } : null;
}
