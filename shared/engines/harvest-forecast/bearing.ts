/** How much of a full crop a young perennial bears, by the year it stands in (1 = the year it was set). */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import { seasonOf } from "./calendar-days.ts";
import type { Planting } from "./types.ts";

export interface Bearing {
  /** 0–1 of a full crop. */
  readonly share: number;
  readonly pickWeeks: { readonly low: number; readonly high: number };
}

/** Soft fruit: nothing, 30 %, 70 %, then full (common practice); blueberry two years later. */
const SOFT_FRUIT_SHARES = [0, 0.3, 0.7];
const SOFT_FRUIT = new Set("strawberry raspberry raspberry-autumn blackberry blackcurrant redcurrant gooseberry".split(" "));
const BLUEBERRY_SHARES = [0, 0, 0, 0.3, 0.7];
/** A bush tree: nothing for two years, a fifth, two fifths, 70 %, then full (common practice). */
const APPLE_SHARES = [0, 0, 0.2, 0.4, 0.7];
/** Other herbs and perennials: half in their first year (common practice). */
const OTHER_SHARES = [0.5];

/** Weeks of picking in the first years. Asparagus: none, 2–4 weeks in years 2 and 3 (UC ANR); rhubarb: none, 1–2 weeks (Illinois). */
const FEWER_WEEKS: Readonly<Record<string, readonly { low: number; high: number }[]>> = {
  asparagus: [
    { low: 0, high: 0 },
    { low: 2, high: 4 },
    { low: 2, high: 4 },
  ],
  rhubarb: [
    { low: 0, high: 0 },
    { low: 1, high: 2 },
  ],
};

/** The season it was set in: as said, or that of the day it went into its place. Null where neither is known. */
export function setInSeason({ standsSince, plantedOutOn, sownOn }: Planting, southern: boolean): number | null {
  const day = plantedOutOn ?? sownOn;
  return standsSince ?? (day === null ? null : seasonOf(day, southern));
}

/** Full bearing where the year of planting is not known. */
export function bearingOf(crop: CropFacts, standsSince: number | null, season: number): Bearing {
  const full = { share: 1, pickWeeks: crop.pickWeeks };
  if (standsSince === null || !crop.perennial) return full;
  const year = season - standsSince + 1;
  if (year < 1) return { share: 0, pickWeeks: crop.pickWeeks };
  const fewer = FEWER_WEEKS[crop.slug];
  if (fewer) {
    const weeks = fewer[year - 1];
    return weeks ? { share: (weeks.low + weeks.high) / (crop.pickWeeks.low + crop.pickWeeks.high), pickWeeks: weeks } : full;
  }
  if (crop.slug === "apple") return { share: APPLE_SHARES[year - 1] ?? 1, pickWeeks: crop.pickWeeks };
  const shares = crop.slug === "blueberry" ? BLUEBERRY_SHARES : SOFT_FRUIT.has(crop.slug) ? SOFT_FRUIT_SHARES : OTHER_SHARES;
  return { share: shares[year - 1] ?? 1, pickWeeks: crop.pickWeeks };
}
