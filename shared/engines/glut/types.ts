/** Input and output of the glut reckoning, plain readonly data. Grams as picked, by ISO week. */
import type { IsoWeek } from "../../kernel/iso-week.ts";
import type { CropSupply } from "../../kernel/supply.ts";

export interface GlutCrop {
  /** What the garden gives, scenario by scenario; for weeks past what was picked, the same in every scenario. */
  readonly supply: CropSupply;
  /** Weeks a pick can be used, the week of picking included; at least 1. */
  readonly keepWeeks: number;
  /** Supply on the stem: nothing of it is over, and only what is wanted is taken. */
  readonly waits: boolean;
  /** Eaten fresh at most in a week. */
  readonly eatsGrams: number;
  /** Of a crop that waits: what stands or lies there before the first week, one figure for each scenario; left out = nothing. */
  readonly openingGrams?: ArrayLike<number>;
  /** What chosen ways take, one figure for each week of the supply. */
  readonly plannedGrams: ArrayLike<number>;
}

export interface GlutQuestion {
  readonly weeks: readonly IsoWeek[];
  /** All with these weeks and the same number of scenarios. */
  readonly crops: readonly GlutCrop[];
  /** From this much over in a week it is a glut. */
  readonly glutGrams: number;
}

/**
 * One entry for each scenario and week, kept only for the weeks in which there is anything of the crop:
 * entry s × weeks + w is week `from` + w of the question. Grams.
 */
export interface Ledger {
  readonly crop: string;
  readonly scenarios: number;
  readonly from: number;
  readonly weeks: number;
  /** There to be used: the week's own and what still keeps. */
  readonly available: Float64Array;
  readonly eaten: Float64Array;
  readonly used: Float64Array;
  /** Left when what is eaten and what is planned is taken off; what keeps counts again next week. Empty for a crop that waits. */
  readonly surplus: Float64Array;
  /** Newly over, each gram once, in the week it was picked: neither eaten nor used while it keeps. Empty for a crop that waits. */
  readonly over: Float64Array;
  /** Still within its time, or waiting, after the last week; one entry for each scenario. */
  readonly onHand: Float64Array;
  /** Left on the stem when the season of a crop that waits was over; no glut, since nobody had to pick it. One entry for each scenario. */
  readonly leftStanding: Float64Array;
}

/** The middle of the scenarios, one figure for each week. */
export interface CropBalance {
  readonly crop: string;
  readonly waits: boolean;
  readonly availableGrams: Float64Array;
  readonly freshGrams: Float64Array;
  readonly surplusGrams: Float64Array;
  readonly ledger: Ledger;
}

/** All crops that do not wait, together; sums are taken in each scenario before the middle. */
export interface WeekBalance {
  readonly week: IsoWeek;
  readonly freshGrams: number;
  readonly usedGrams: number;
  readonly surplusGrams: number;
  readonly glut: boolean;
}

export interface GlutAnswer {
  readonly crops: readonly CropBalance[];
  readonly weeks: readonly WeekBalance[];
}
