/** What scaling is told of a recipe, in plain figures: grams whole or exact, minutes, litres; a line as it was read. */
import type { Rational } from "../../kernel/quantity.ts";
import type { RecipeStep } from "../../kernel/recipe.ts";
import type { Way } from "../../kernel/way.ts";

export interface LineToScale {
  readonly text: string;
  /** The food in the line's own words. */
  readonly food: string;
  /** Preparation and remarks. */
  readonly said: string;
  readonly amount: Rational | null;
  /** Counted in pieces, not weighed or measured. */
  readonly pieces: boolean;
  /** Grams as the line has them; null where no weight is known. */
  readonly grams: number | null;
}

export interface RecipeToScale {
  readonly title: string;
  readonly way: Way;
  readonly makes: { readonly amount: number; readonly unit: string };
  /** Key of the tested process; such a recipe is made in whole batches, each by itself. */
  readonly process: string | null;
  readonly lines: readonly LineToScale[];
  readonly steps: readonly RecipeStep[];
  readonly holdsPot: boolean;
  /** Grams as picked, by crop. */
  readonly uses: readonly { readonly crop: string; readonly grams: number }[];
}

/** Inside measures in centimetres. */
export type TinShape =
  | { readonly shape: "round"; readonly acrossCm: number }
  | { readonly shape: "square"; readonly sideCm: number }
  | { readonly shape: "rectangle"; readonly longCm: number; readonly wideCm: number };
export type Tin = TinShape & { readonly deepCm?: number | undefined; readonly tins?: number | undefined };

export interface Asked {
  readonly batches?: number | undefined;
  readonly yield?: number | undefined;
  readonly dish?: { readonly from: Tin; readonly to: Tin } | undefined;
  readonly atHand?: { readonly crop: string; readonly grams: number } | undefined;
}

export interface Factor {
  readonly factor: Rational;
  /** Made one after the other, never in one pot. */
  readonly apart: boolean;
  readonly leftGrams: number | null;
}

export type Scales = "in-proportion" | "rounded" | "to-taste" | "by-pan" | "not";
export type Unscaled = "times" | "tins" | "pans" | "leavening" | "salt" | "spice" | "thickener" | "eggs" | "evaporation" | "cooling";
