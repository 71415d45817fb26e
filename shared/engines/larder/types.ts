/** A lot's history as plain data. Amounts are whole grams or whole portions, one of the two for a lot; days are calendar days. */
import type { LocalDate } from "../../kernel/local-date.ts";

export type MovementKind = "put" | "take" | "give" | "compost" | "recount" | "move";
export type TakenFor = "eat" | "trim" | "batch";
export type CountedIn = "grams" | "portions";

/** A movement that stands. */
export interface LotEntry {
  readonly id: string;
  readonly kind: MovementKind;
  readonly on: LocalDate;
  /** Microseconds since 1970 at which it was written down, by the device where it said so, else by the book. Tells entries of one day apart. */
  readonly writtenAt: number;
  /** Microseconds since 1970 at which it arrived. */
  readonly arrivedAt: number;
  readonly amount: number;
  /** For a recount: what is left of the whole lot with it. */
  readonly whole: number | null;
  /** For a take. */
  readonly takenFor: TakenFor | null;
  readonly placeId: string | null;
  /** For a move. */
  readonly toPlaceId: string | null;
}

export interface LotHistory {
  /** Where what is put in goes, and what is drawn from first, unless an entry says otherwise. */
  readonly homePlaceId: string;
  /** In any order. */
  readonly entries: readonly LotEntry[];
}

export interface Stand {
  readonly placeId: string;
  readonly amount: number;
}

export interface LotBalance {
  /** What is left; never below nothing. */
  readonly left: number;
  /** Where it stands; places with nothing left out, the lot's own place first. */
  readonly stands: readonly Stand[];
  /** Taken beyond what the book has, not made good by what was put in since. */
  readonly owed: number;
  /** The most that was ever missing since the last recount: above nothing, the lot is to be counted again. */
  readonly short: number;
  /** Book less count, over all recounts; below nothing when more was found. */
  readonly missingAtRecounts: number;
  /** Entries dated before a recount that arrived after it. The count already holds what they did. */
  readonly late: readonly string[];
}
