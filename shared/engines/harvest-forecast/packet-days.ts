/**
 * A variety's own days to maturity in place of the crop's range over varieties: thermal time = days × (mean temperature of the season the
 * crop's figures were quoted for − base), as the crop table's own rule has it. The spread between varieties falls away.
 */
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import type { CropFacts } from "../../kernel/crop-facts.ts";
import type { ForecastQuestion } from "./types.ts";

/** Spread of the logarithm of one variety between seasons (bean, Oregon Vegetable Digest 1969; cauliflower, Wurr et al. 1988). */
const SEASON_SD = 0.12;
/** Spread of what counts as ready: less where the crop says so, more where the grower chooses the day (common practice). */
const READY_SD = 0.08;
const CHOSEN_SD = 0.15;
/** From the 10th to the 90th percentile of a normal distribution, in standard deviations. */
const TEN_TO_NINETY = 2.563;

/** Cress is cut after some fifteen days, garlic lifted after some nine months; figures outside are not days to maturity. */
const SHORTEST_DAYS = 15;
const LONGEST_DAYS = 300;

/** The same question with the crop's figures those of its variety. */
export function byPacket(q: ForecastQuestion): ForecastQuestion {
  const { crop, varietyDays } = q.planting;
  if (!varietyDays || !crop.daysToMaturity || crop.quotedMeanC === null) return q;
  return { ...q, planting: { ...q.planting, crop: ofVariety(crop, varietyDays, crop.quotedMeanC - crop.baseC) } };
}

function ofVariety(crop: CropFacts, { low, high }: { readonly low: number; readonly high: number }, warmthADay: number): CropFacts {
  const likely = ((low + high) / 2) * warmthADay;
  const chosen = waitsForTheGrower(crop) || crop.habit === "cut-again";
  return {
    ...crop,
    daysToMaturity: crop.daysToMaturity && { ...crop.daysToMaturity, low, high },
    thermal: { low: low * warmthADay, likely, high: high * warmthADay },
    // emergence takes what it takes, whatever the variety
    thermalAfterEmergence: crop.thermalAfterEmergence === null ? null : Math.max(0, likely - (crop.thermal.likely - crop.thermalAfterEmergence)),
    sigmaLn: Math.hypot(Math.log(high / low) / TEN_TO_NINETY, SEASON_SD, chosen ? CHOSEN_SD : READY_SD),
  };
}

/** "57 days", "60–65 d" written with a variety's name, as packets have it. Null where none are, or where no crop takes so few or so many. */
export function daysInName(variety: string | null): { readonly low: number; readonly high: number } | null {
  const found = /\b(\d{2,3})(?:\s*(?:-|–|to)\s*(\d{2,3}))?\s*(?:d|days?)\b/i.exec(variety ?? "");
  if (!found) return null;
  const low = Number(found[1]);
  const high = Number(found[2] ?? found[1]);
  return low >= SHORTEST_DAYS && high >= low && high <= LONGEST_DAYS ? { low, high } : null;
}
