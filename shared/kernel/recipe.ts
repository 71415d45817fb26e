/** A recipe's steps in the words that the cook-day scheduler, the reader and the pages share. Minutes are whole numbers. */
import type { Way, PlaceKind } from "./way.ts";

export interface MinuteRange {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export interface OvenNeed {
  readonly c: number;
  readonly trays: number;
  /** What it comes out well at too; another dish may share the oven at a heat that suits both. Left out = `c` and no other. */
  readonly fromC?: number | undefined;
  readonly toC?: number | undefined;
}

export interface StepNeeds {
  readonly oven?: OvenNeed;
  readonly burners?: number;
  /** Large pots held during this step only; a pot kept across steps stands in the recipe's `holds`. */
  readonly pots?: number;
  readonly sinks?: number;
  /** By name (slow pot, steamer, canner), one of it, held during this step. */
  readonly appliance?: string | undefined;
}

export interface RecipeStep {
  readonly id: string;
  readonly text: string;
  readonly handsOnMin: number;
  /** Follows the hands-on part at once. */
  readonly handsOffMin: number | MinuteRange;
  readonly needs: StepNeeds;
  /** Steps that must have ended. */
  readonly after: readonly string[];
  /** Longest wait after the end of the step before; by predecessor where there are several. */
  readonly maxWaitMin?: number | Readonly<Record<string, number>>;
  /** ⌈of / holds⌉ copies; `of` is for one batch. */
  readonly loads?: { readonly holds: number; readonly of: number };
  readonly startAtMin?: number;
  readonly notBeforeMin?: number;
  readonly endByMin?: number;
}

/** Kept from the start of `from` to the end of `to`, pauses included. */
export interface Hold {
  readonly what: "pots" | "burners" | "sinks";
  readonly from: string;
  readonly to: string;
}

/** Longest time from the end of `from` to the start of `to`. */
export interface Limit {
  readonly from: string;
  readonly to: string;
  readonly maxMin: number;
  readonly why?: string;
}

export interface Keeping {
  readonly place: PlaceKind;
  readonly days: number;
}

/** What pairing needs of a recipe: how many grams as picked one batch takes, and what comes of it. */
export interface RecipeUse {
  readonly id: string;
  readonly title: string;
  readonly way: Way;
  readonly makes: { readonly amount: number; readonly unit: string };
  readonly uses: readonly { readonly crop: string; readonly grams: number }[];
  /** Of the first batch. */
  readonly handsOnMin: number;
  /** Of each further batch; left out = the same as the first. */
  readonly handsOnNextMin?: number;
  readonly keeps: readonly Keeping[];
  /** Key of the tested process, for bottle and shelf pickles. */
  readonly process: string | null;
}

interface HandsOn {
  readonly handsOnMin: number;
  readonly loads?: { readonly holds: number; readonly of: number } | undefined;
}

/** Hands-on minutes of so many batches: a step that comes in loads is done once for each load, any other step once for all. */
export function handsOnMinOf(steps: readonly HandsOn[], batches: number): number {
  return steps.reduce((sum, step) => sum + step.handsOnMin * (step.loads ? Math.ceil((step.loads.of * batches) / step.loads.holds) : 1), 0);
}
