/** Question: from which lots is so much taken, so that the oldest goes first? Whole grams or portions, as the lots are counted. */
import type { LocalDate } from "../../kernel/local-date.ts";
import type { Stand } from "./types.ts";

export interface LotInStore {
  readonly id: string;
  readonly madeOn: LocalDate;
  /** The day after which it is not eaten any more; null where there is none. */
  readonly safeUntil: LocalDate | null;
  readonly stands: readonly Stand[];
}

export interface Draw {
  readonly lotId: string;
  readonly placeId: string;
  readonly amount: number;
  /** Nothing of the lot is left after it. */
  readonly usesUp: boolean;
}

/** Draws in the order of the days made, place by place within a lot, and what is missing. A lot past its safe day is left alone. */
export function oldestFirst(lots: readonly LotInStore[], amount: number, today: LocalDate): { readonly draws: Draw[]; readonly missing: number } {
  const ordered = lots.filter(({ safeUntil }) => safeUntil === null || safeUntil >= today).sort((a, b) => (a.madeOn === b.madeOn ? (a.id < b.id ? -1 : 1) : a.madeOn < b.madeOn ? -1 : 1));
  const draws: Draw[] = [];
  let open = amount;
  for (const { id, stands } of ordered) {
    let left = stands.reduce((sum, stand) => sum + stand.amount, 0);
    for (const stand of stands) {
      const drawn = Math.min(open, stand.amount);
      if (drawn === 0) continue;
      open -= drawn;
      left -= drawn;
      draws.push({ lotId: id, placeId: stand.placeId, amount: drawn, usesUp: left === 0 });
    }
  }
  return { draws, missing: open };
}
