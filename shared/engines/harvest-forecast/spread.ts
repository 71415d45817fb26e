/**
 * What makes a first pick uncertain besides the weather years and the book's own spread of the requirement: the garden is not the station,
 * a cover warms more or less, seed comes up when it comes up, and a day of planting out may be a guess. Each as a spread of the logarithm of the requirement.
 */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import type { Clock } from "./clock.ts";
import { coverShift } from "./cover.ts";
import type { Planting } from "./types.ts";

/** A garden differs from its station by about this much either way, °C (common practice); one degree moves a summer crop by about five days. */
const SITE_SD_C = 1;
/** Of what stands for years, whose warmth is counted from the cold end of winter on (common practice). */
const PERENNIAL_SITE_SD = 0.1;
/** Spread of the warmth to emergence between lots of seed and depths of sowing, of the logarithm (common practice; Harrington & Minges sowed 13 mm deep). */
const EMERGENCE_SD = 0.25;
/** A day of planting out that nobody has given, days (common practice). */
const GUESSED_DAY_SD = 7;

/** From the middle to the 10th or 90th percentile of a normal distribution, in standard deviations. */
const TO_NINETY = 1.2816;

/** The spread of a clock that counts from the book's figure, with what the garden adds to it. */
export function widened(clock: Clock, { crop, cover }: Planting): number {
  return Math.hypot(
    clock.sigmaLn,
    cover === "indoors" ? 0 : siteSd(crop),
    coverSd(crop, cover),
    clock.emerges ? EMERGENCE_SD * emergencePart(crop) : 0,
    clock.guessedDay ? (GUESSED_DAY_SD * warmthADay(crop)) / clock.likelyCd : 0,
  );
}

/** Half a gain either way in eight cases of ten, as warmth a day. */
function coverSd(crop: CropFacts, cover: Planting["cover"]): number {
  const { minHalfWidthC, maxHalfWidthC } = coverShift(cover);
  return (minHalfWidthC + maxHalfWidthC) / 2 / TO_NINETY / warmthADay(crop);
}

const siteSd = (crop: CropFacts): number => (crop.perennial ? PERENNIAL_SITE_SD : SITE_SD_C / warmthADay(crop));

/** Part of the requirement that goes by before it comes up, 0–1. */
function emergencePart({ thermal, thermalAfterEmergence }: CropFacts): number {
  return thermalAfterEmergence === null ? 0 : Math.max(0, 1 - thermalAfterEmergence / thermal.likely);
}

/** °C d in a day of the season that the crop's days were quoted for; ten where no season is known. */
const warmthADay = (crop: CropFacts): number => Math.max(1, crop.quotedMeanC === null ? 10 : crop.quotedMeanC - crop.baseC);

/**
 * Leaves are first cut well before the plant is full grown, which is what days to maturity count: from four to six inches on (Iowa State
 * University Extension 1992), baby leaves after 21–42 days where full growth takes 43–55, so between 0.64 of the figure and the whole of
 * it; the middle of the two, and its spread as of even chances between them (common practice).
 */
const FIRST_LEAVES = { share: 0.82, sigmaLn: 0.13 };

/**
 * Days to maturity count a crop fit for market; what is picked again and again begins with the first fruit of the earliest plant. The plants
 * of one sowing lie within a tenth either way, so the first comes between a tenth early and the middle (common practice).
 */
const FIRST_FRUIT = { share: 0.95, sigmaLn: 0.03 };

/** Share of the book's requirement at which the first pick is taken, with the spread of that choice. */
export function firstCut(crop: CropFacts): { readonly share: number; readonly sigmaLn: number } {
  if (crop.perennial) return { share: 1, sigmaLn: 0 };
  return crop.habit === "cut-again" ? FIRST_LEAVES : crop.habit === "repeat" ? FIRST_FRUIT : { share: 1, sigmaLn: 0 };
}
