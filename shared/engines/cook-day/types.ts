/** Input and output of the cook-day scheduler. Minutes are whole numbers from the start of the day. */
import type { Hold, Limit, RecipeStep } from "../../kernel/recipe.ts";

export interface Oven {
  readonly trays: number;
  /** Before its first use on the day. */
  readonly preheatMin: number;
  /** Between the end of a step at one temperature and the start of a step at another. */
  readonly changeMin: number;
}

export interface DayKitchen {
  readonly cooks: number;
  readonly ovens: readonly Oven[];
  readonly burners: number;
  readonly pots: number;
  readonly sinks: number;
  /** By name, as steps ask for it (slow pot, skillet, steamer, canner); what is not named here is not there. */
  readonly appliances?: readonly { readonly name: string; readonly count: number }[] | undefined;
}

export interface DayDish {
  readonly id: string;
  readonly title: string;
  /** Multiplies loads.of, not minutes. */
  readonly batches: number;
  readonly steps: readonly RecipeStep[];
  readonly holds: readonly Hold[];
  readonly limits: readonly Limit[];
}

export interface Absence {
  readonly what: "cook";
  readonly fromMin: number;
  readonly toMin: number;
  readonly why?: string;
}

export interface CookDayInput {
  readonly kitchen: DayKitchen;
  readonly dishes: readonly DayDish[];
  /** All done by; null = no deadline. */
  readonly endByMin: number | null;
  readonly unavailable: readonly Absence[];
  /** Minutes after midnight at which the day begins; only the words need it. */
  readonly startsAtMin?: number;
}

/** One schedule or one conflict of the search costs one. */
export interface Budget {
  readonly schedules: number;
  readonly seed: number;
}

export interface PlannedStep {
  readonly dish: string;
  readonly step: string;
  /** From 1 where the step comes in loads, else null. */
  readonly load: number | null;
  readonly text: string;
  readonly startMin: number;
  readonly handsOnMin: number;
  readonly handsOffMin: number;
  readonly cook: number | null;
  readonly oven: number | null;
  readonly ovenC: number | null;
  readonly burner: number | null;
  /** How late it may start without breaking a longest wait or a limit, the rest as planned; null = none. */
  readonly mustStartByMin: number | null;
}

export interface Clash {
  /** In the household's words: what cannot all be had. */
  readonly text: string;
  /** Each a change that was tried and makes a plan possible. */
  readonly ways: readonly string[];
}

export interface CookDayPlan {
  /** `optimal` only when the end meets the lower bound. */
  readonly status: "optimal" | "feasible" | "infeasible";
  readonly endMin: number | null;
  readonly lowerBoundMin: number | null;
  readonly endSpread: { readonly low: number; readonly likely: number; readonly high: number } | null;
  readonly longestStandMin: number | null;
  readonly handsOnMin: number;
  readonly oneAfterAnotherMin: number;
  readonly steps: readonly PlannedStep[];
  readonly conflicts: readonly Clash[];
  readonly schedulesUsed: number;
  readonly notes: readonly string[];
}
