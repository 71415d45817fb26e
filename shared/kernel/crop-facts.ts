/** One crop as seed-data/crops.csv holds it: the words that the forecast, the calendar and the kitchen share. */
import type { Band } from "./band.ts";

export type Habit = "one-cut" | "repeat" | "cut-again" | "stands" | "head+shoots";
export type Method = "direct" | "transplant" | "established";
/** Where a days-to-maturity figure starts counting. */
export type CountedFrom = "sowing" | "transplanting" | "planting";

export interface YieldBand {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export interface CropFacts {
  readonly slug: string;
  readonly name: string;
  readonly family: string;
  readonly habit: Habit;
  /** Stands for years: counted from 1 February, never sown. */
  readonly perennial: boolean;
  /** As the table writes it: direct, transplant, established, sets, cloves, tuber, slips. */
  readonly usualMethod: string;
  /** Development base and upper temperature, °C. */
  readonly baseC: number;
  readonly upperC: number;
  /** Null for what stands for years. */
  readonly daysToMaturity: { readonly low: number; readonly high: number; readonly from: CountedFrom } | null;
  /** Mean temperature of the season the days figure was quoted for, °C. */
  readonly quotedMeanC: number | null;
  /** Thermal time to the first pick, °C d, from where the days figure counts (1 February for perennials). */
  readonly thermal: Band;
  /** The likely part of it that is left after emergence, where the crop is sown in place. */
  readonly thermalAfterEmergence: number | null;
  /** Spread of the logarithm of the requirement. */
  readonly sigmaLn: number;
  readonly frostClass: string;
  readonly tender: boolean;
  readonly killC: number | null;
  readonly germinationMinC: number | null;
  readonly emergence: { readonly thetaCd: number; readonly baseC: number } | null;
  readonly flowerToPickDays: { readonly low: number; readonly high: number } | null;
  readonly pickWeeks: { readonly low: number; readonly high: number };
  /** Grams as picked over a season. */
  readonly gramsPerPlant: YieldBand | null;
  readonly gramsPerRowM: YieldBand | null;
  readonly gramsPerM2: YieldBand | null;
  readonly keepDays: number;
  readonly keepAtC: number;
  readonly gramsPerPiece: number | null;
  readonly piece: string | null;
  readonly sources: readonly string[];
}

/**
 * Crops the grower lifts or cuts when he or she chooses: supply on the stem, not a pick that must happen, so never a glut
 * (habit `stands`; squash, onion, shallot and garlic keep for months once lifted).
 */
export function waitsForTheGrower(crop: CropFacts): boolean {
  return crop.habit === "stands" || (crop.habit === "one-cut" && crop.keepDays >= 90);
}
