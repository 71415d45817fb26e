/**
 * A variety's own days to maturity in place of the crop's range over varieties: thermal time = days × (mean temperature of the season the
 * crop's figures were quoted for − base), as the crop table's own rule has it. The spread between varieties falls away.
 */
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import { VARIETY_DAYS } from "../../kernel/crop-facts.ts";
import type { CropFacts, VarietyDays } from "../../kernel/crop-facts.ts";
import { SOWN_BEHIND_DAYS, PLANT_AHEAD_DAYS } from "./clock.ts";
import type { ForecastQuestion } from "./types.ts";

/** Spread of the logarithm of one variety between seasons (bean, Oregon Vegetable Digest 1969; cauliflower, Wurr et al. 1988). */
const SEASON_SD = 0.12;
/** Spread of what counts as ready: less where the crop says so, more where the grower chooses the day (common practice). */
const READY_SD = 0.08;
const CHOSEN_SD = 0.15;
/** From the 10th to the 90th percentile of a normal distribution, in standard deviations. */
const TEN_TO_NINETY = 2.563;

/** The same question with the crop's figures those of its variety. */
export function byPacket(q: ForecastQuestion): ForecastQuestion {
  const { crop, varietyDays } = q.planting;
  if (!varietyDays || !crop.daysToMaturity || crop.quotedMeanC === null) return q;
  return { ...q, planting: { ...q.planting, crop: ofVariety(crop, asTheCropCounts(crop, varietyDays, crop.quotedMeanC), crop.quotedMeanC - crop.baseC) } };
}

/** A plant is set out at no age at which it would be ripe within this (common practice). */
const LEAST_LEFT_DAYS = 10;

/**
 * Packets count from sowing or from planting out, whichever suits the seller. By the same bridges as the book's own figures: a plant set out is two weeks ahead
 * of a seed sown that day, and a seed of what is counted from planting out needs its days of coming up and 25 more.
 */
function asTheCropCounts(crop: CropFacts, { low, high, from }: VarietyDays, quotedMeanC: number): { low: number; high: number } {
  const counted = crop.daysToMaturity?.from;
  const more = from === "transplanting" && counted === "sowing" ? PLANT_AHEAD_DAYS : from === "sowing" && counted === "transplanting" ? -SOWN_BEHIND_DAYS - daysToComeUp(crop, quotedMeanC) : 0;
  return { low: Math.max(LEAST_LEFT_DAYS, low + more), high: Math.max(LEAST_LEFT_DAYS, high + more) };
}

const daysToComeUp = ({ emergence }: CropFacts, soilC: number): number => (emergence ? emergence.thetaCd / (soilC - emergence.baseC) : 0);

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
  return low >= VARIETY_DAYS.fewest && high >= low && high <= VARIETY_DAYS.most ? { low, high } : null;
}
