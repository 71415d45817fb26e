/** What the service loads of a larder and planning reads. Movements that were undone are no movements; those dated after `today` are left out. */
import type { Keeping } from "../kernel/recipe.ts";
import type { LocalDate } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import type { PlaceKind, Way } from "../kernel/way.ts";
import type { CountedIn, LotBalance, LotEntry } from "../engines/larder/index.ts";
import type { PreservationTables } from "../engines/preservation/index.ts";

export interface PlaceFacts {
  readonly id: string;
  readonly name: string;
  readonly kind: PlaceKind;
  readonly litres: number | null;
}

export interface LotFacts {
  readonly id: string;
  readonly title: string;
  /** Slug, for produce as picked. */
  readonly crop: string | null;
  /** For what was made by a recipe. */
  readonly recipe: { readonly id: string; readonly way: Way; readonly keeps: readonly Keeping[]; readonly reheat: string | null } | null;
  readonly homePlaceId: string;
  readonly madeOn: LocalDate;
  readonly portionGrams: number | null;
  readonly portionMl: number | null;
  /** The household's own date. */
  readonly bestUntil: LocalDate | null;
  /** Null until something was put in. */
  readonly countedIn: CountedIn | null;
  readonly entries: readonly LotEntry[];
}

export interface LarderFacts {
  readonly today: LocalDate;
  readonly places: readonly PlaceFacts[];
  readonly lots: readonly LotFacts[];
  readonly preservation: PreservationTables;
}

/** The same amount in both; null where nobody has weighed a portion. */
export interface BothAmounts {
  readonly grams: number | null;
  readonly portions: number | null;
}

export type LotState = "not put in yet" | "in store" | "part used" | "used up" | "to recount";

/** A lot as it is today. */
export interface LotToday {
  readonly lot: LotFacts;
  readonly balance: LotBalance;
  readonly amount: BothAmounts;
  readonly short: BothAmounts | null;
  /** Where most of it stands; its own place where nothing is left. */
  readonly place: PlaceFacts;
  readonly stands: readonly { readonly place: PlaceFacts; readonly amount: BothAmounts }[];
  readonly bestUntil: LocalDate | null;
  readonly safeUntil: LocalDate | null;
  readonly useFirst: boolean;
  readonly discard: boolean;
  readonly forgotten: boolean;
  readonly state: LotState;
  readonly lastMovedOn: LocalDate | null;
  readonly why: readonly string[];
  readonly basis: readonly SourceRef[];
}

/** Amount of a lot in grams and in portions, whichever it is counted in. A part of a portion is no portion. */
export function bothAmounts({ countedIn, portionGrams }: Pick<LotFacts, "countedIn" | "portionGrams">, amount: number): BothAmounts {
  if (countedIn === null) return { grams: amount, portions: amount };
  if (countedIn === "grams") return { grams: amount, portions: portionGrams === null ? null : Math.floor(amount / portionGrams) };
  return { grams: portionGrams === null ? null : amount * portionGrams, portions: amount };
}
