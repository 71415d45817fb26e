/**
 * A season to plan and a plan of it. Whole grams as picked, minutes, portions, whole batches; weeks count from 0.
 * Lists by week have one entry for each week, lists by scenario one for each scenario, in the order of `scenarios`.
 */
import type { Way } from "../../kernel/way.ts";

export interface Scenario {
  readonly id: string;
  /** Shares add up to 1. */
  readonly chance: number;
}

export interface SeasonCrop {
  readonly crop: string;
  /** Whole weeks in which a pick can be used, the week of picking included. */
  readonly keepWeeks: number;
  /** At most, by week. */
  readonly freshGrams: readonly number[];
  readonly giveGrams: readonly number[];
  /** By scenario, then by week. */
  readonly harvestGrams: readonly (readonly number[])[];
}

/** `weekly`: used in the week. `consumed`: used so far, of what was bought so far. `held`: tied up until eaten. */
export type ResourceKind = "weekly" | "consumed" | "held";

export interface Resource {
  readonly id: string;
  readonly kind: ResourceKind;
  readonly unit: string;
  /** By week. */
  readonly amount: readonly number[];
}

export type KeptIn = "freezer" | "fridge" | "shelf" | "none";
/** `none`: no tested process is known. */
export type Process = "tested" | "not-needed" | "none";

export interface Method {
  readonly id: string;
  readonly title: string;
  readonly way: Way;
  readonly keptIn: KeptIn;
  readonly process: Process;
  readonly needs: readonly string[];
  /** Of one batch. */
  readonly uses: readonly { readonly crop: string; readonly grams: number }[];
  readonly sessionBatches: { readonly min: number; readonly max: number };
  readonly perSession: Readonly<Record<string, number>>;
  readonly perBatch: Readonly<Record<string, number>>;
  readonly portions: number;
  /** Null: beyond the season. */
  readonly keepWeeks: number | null;
  /** From the store at most, by week. */
  readonly eatPortions: readonly number[];
  readonly opening: number;
  readonly recourse: boolean;
}

export interface Target {
  readonly id: string;
  readonly methods: readonly string[];
  readonly portions: number;
  readonly atWeek: number;
}

/** Portions made in weeks `from` … `until` − 1. */
export interface Wish {
  readonly id: string;
  readonly methods: readonly string[];
  readonly portions: number;
  readonly from: number;
  readonly until: number;
}

export interface Taste {
  readonly id: string;
  readonly methods: readonly string[];
  readonly everyWeeks: number;
  readonly tiers: readonly { readonly portions: number; readonly worth: number }[];
}

export interface Batches {
  readonly method: string;
  readonly week: number;
  readonly batches: number;
}

export interface Season {
  readonly firstWeek: string;
  readonly weeks: number;
  readonly scenarios: readonly Scenario[];
  readonly crops: readonly SeasonCrop[];
  readonly resources: readonly Resource[];
  readonly equipment: readonly string[];
  readonly methods: readonly Method[];
  /** From all stores together, by week. */
  readonly eatFromStorePortions: readonly number[];
  readonly targets: readonly Target[];
  readonly wishes: readonly Wish[];
  readonly tastes: readonly Taste[];
  readonly agreed: readonly Batches[];
  readonly agreedUntil: number;
  readonly frozenWeeks: number;
  /** Lines that may not be larger than this; used to ask what a plan would be without one of its batches. */
  readonly atMost?: readonly Batches[];
}

export interface CropGrams {
  readonly crop: string;
  readonly week: number;
  readonly grams: number;
}

export interface Draw {
  readonly method: string;
  readonly week: number;
  readonly portions: number;
}

/** What is done when the season takes one of its courses. */
export interface Course {
  readonly made: readonly Batches[];
  readonly eat: readonly CropGrams[];
  readonly give: readonly CropGrams[];
  readonly draw: readonly Draw[];
}

export interface SeasonPlan {
  readonly planned: readonly Batches[];
  readonly outcomes: Readonly<Record<string, Course>>;
}

/** Best first; `liking` is better when greater, all others when less. */
export const LEVELS = ["wasteGrams", "targetShort", "freshShortGrams", "changes", "liking", "minutes", "earliness"] as const;
export type Level = (typeof LEVELS)[number];
export type Score = Readonly<Record<Level, number>>;
