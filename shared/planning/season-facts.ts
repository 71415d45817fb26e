/** What the season's plan rests on: garden, kitchen and larder, and what the household has said of its time, its tastes and its wants. */
import type { LocalDate } from "../kernel/local-date.ts";
import type { IsoWeek } from "../kernel/iso-week.ts";
import type { RecipeUse } from "../kernel/recipe.ts";
import type { GardenFacts, KitchenFacts } from "./facts.ts";
import type { LarderFacts } from "./larder-facts.ts";

/** A recipe with what one batch takes besides produce and hands. */
export interface SeasonRecipe extends RecipeUse {
  /** An oven is kept so long, hands on it or not; 0 where none is needed. */
  readonly ovenMin: number;
  readonly allergens: readonly string[];
  /** By the kind of supply that the larder counts. */
  readonly supplies: Readonly<Partial<Record<"sugar" | "vinegar", number>>>;
}

export type Liking = "loved" | "fine" | "tired" | "never";

export interface StockTargetFacts {
  readonly id: string;
  readonly recipeId: string;
  readonly portions: number;
  readonly by: LocalDate;
}

export interface WishFacts {
  readonly id: string;
  readonly recipeId: string;
  readonly portions: number;
  /** Wanted from and by; null where nobody said a day. */
  readonly from: LocalDate | null;
  readonly by: LocalDate | null;
}

export interface SupplyFacts {
  readonly kind: string;
  readonly amount: number;
  readonly bestUntil: LocalDate | null;
}

export interface SeasonSettings {
  /** Null: nobody has said. */
  readonly kitchenMinPerWeek: number | null;
  readonly ovens: number;
  /** Both days included. */
  readonly away: readonly { readonly firstDay: LocalDate; readonly lastDay: LocalDate }[];
  readonly avoids: { readonly crops: readonly string[]; readonly allergens: readonly string[] };
}

export interface SeasonFacts {
  readonly garden: GardenFacts;
  readonly kitchen: KitchenFacts;
  readonly larder: LarderFacts;
  readonly supplies: readonly SupplyFacts[];
  readonly recipes: readonly SeasonRecipe[];
  readonly targets: readonly StockTargetFacts[];
  readonly wishes: readonly WishFacts[];
  /** By recipe. */
  readonly tastes: ReadonlyMap<string, Liking>;
  readonly settings: SeasonSettings;
}

export interface SeasonAsk {
  readonly from: IsoWeek;
  readonly weeks: number;
  readonly allowance: number;
}

/** Lines of the plan before this one, which is changed no more than is worth it. */
export interface EarlierLine {
  readonly week: IsoWeek;
  readonly recipeId: string;
  readonly batches: number;
}
