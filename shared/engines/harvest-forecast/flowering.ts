/** From an open flower or the first fruit to the first pick, as thermal time. */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import type { Stage } from "../../kernel/way.ts";

/** What is left of the wait, and the spread of its logarithm: a sighting takes the variety's earliness out of it (common practice). */
export interface Wait {
  readonly likelyCd: number;
  readonly sigmaLn: number;
}

const SIGMA = { flowering: 0.15, "fruit-set": 0.12 } as const;
/** Blueberry varieties differ in the wait itself: 45–90 days (from memory). */
const SIGMA_BLUEBERRY = 0.2;
/** First fruit visible comes so many days after the open flower (common practice). */
const FLOWER_TO_FRUIT_DAYS = 5;

/**
 * Warmth of the season that a perennial's flower-to-pick days stand for, °C: mean of De Bilt (KNMI 260) 1981–2010 over those days before the
 * crop's usual first pick there.
 */
const PERENNIAL_MEAN_C: Readonly<Record<string, number>> = {
  strawberry: 14.1,
  raspberry: 15.0,
  "raspberry-autumn": 18.0,
  blackberry: 16.7,
  blueberry: 15.0,
  blackcurrant: 14.3,
  redcurrant: 13.8,
  gooseberry: 13.3,
  apple: 15.7,
};

/** °C d from the sighting to the first pick: middle of the crop's days × (mean temperature they were quoted for − base). Null where no figure is known. */
export function waitFrom(stage: "flowering" | "fruit-set", crop: CropFacts): Wait | null {
  const days = crop.flowerToPickDays;
  const meanC = crop.quotedMeanC ?? PERENNIAL_MEAN_C[crop.slug];
  if (!days || meanC === undefined) return null;
  const left = (days.low + days.high) / 2 - (stage === "fruit-set" ? FLOWER_TO_FRUIT_DAYS : 0);
  const sigmaLn = crop.slug === "blueberry" && stage === "flowering" ? SIGMA_BLUEBERRY : SIGMA[stage];
  return { likelyCd: Math.max(0, left) * (meanC - crop.baseC), sigmaLn };
}

/** What has run to seed is used within two weeks: it is still good, and does not keep (common practice, no source). */
export const RUN_TO_SEED_DAYS = 14;

/** Day on which flowers were seen on a crop grown for leaf, root, head or bulb; null where flowers are what comes before the fruit. */
export function ranToSeedOn(crop: CropFacts, seen: ReadonlyMap<Stage, DayNumber>): DayNumber | null {
  if (crop.perennial || crop.flowerToPickDays) return null;
  const days = (["flowering", "fruit-set"] as const).flatMap((stage) => seen.get(stage) ?? []);
  return days.length === 0 ? null : Math.min(...days);
}
