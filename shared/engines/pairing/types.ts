/** Input and output of the pairing of a week's produce with ways to use it. Grams as picked. */
import type { RecipeUse } from "../../kernel/recipe.ts";
import type { Way } from "../../kernel/way.ts";

/** One crop in one week, middle of the scenarios. */
export interface RipeCrop {
  readonly crop: string;
  /** As the crop table names it. */
  readonly name: string;
  /** The week's own. */
  readonly ripensGrams: number;
  /** There to be used: the week's own and what still keeps, or waits on the stem. */
  readonly availableGrams: number;
  /** Over what is eaten fresh and what is planned; 0 for what waits. */
  readonly surplusGrams: number;
  /** Weeks a pick can be used, the week of picking included. */
  readonly keepWeeks: number;
  readonly waits: boolean;
}

/** A recipe or plain method, with what the keepers of the tested tables say about it. */
export interface Candidate {
  readonly recipe: RecipeUse;
  /** Whether the tested tables hold the recipe's process, for the household's altitude. */
  readonly tested: boolean;
  readonly cautions: readonly string[];
  readonly askedFor: boolean;
}

export interface PairingQuestion {
  /** Over this week, all crops together: the middle of the scenarios' sums. */
  readonly weekSurplusGrams: number;
  readonly ripe: readonly RipeCrop[];
  readonly candidates: readonly Candidate[];
  /** Jars that a canner holds at once: a recipe of a tested process is offered for one load. */
  readonly loadJars: number;
}

export interface Pairing {
  readonly recipeId: string;
  readonly title: string;
  readonly way: Way;
  readonly batches: number;
  /** For all batches together. */
  readonly uses: readonly { readonly crop: string; readonly grams: number }[];
  readonly makes: { readonly amount: number; readonly unit: string };
  readonly handsOnMin: number;
  readonly why: string;
  readonly cautions: readonly string[];
}
