/** What is wanted by a day and what somebody asked for, as one list with its words. Pure. */
import type { StockTarget } from "#shared/contracts/stock-targets.ts";
import type { Wish } from "#shared/contracts/wishes.ts";
import { isLocalDate, type LocalDate } from "#shared/kernel/local-date.ts";
import { count, day } from "../../format.ts";

export type Wanted = (StockTarget & { readonly kind: "target" }) | (Wish & { readonly kind: "wish" });

/** Targets by their day, then wishes. */
export function wantedOf(targets: readonly StockTarget[], wishes: readonly Wish[]): Wanted[] {
  const byDay = [...targets].sort((a, b) => (a.by < b.by ? -1 : a.by > b.by ? 1 : 0));
  return [...byDay.map((target) => ({ ...target, kind: "target" as const })), ...wishes.map((wish) => ({ ...wish, kind: "wish" as const }))];
}

/** “40 portions wanted by 1 November; 3 are in the larder”. */
export function targetWords({ portions, by, inLarderPortions, past }: StockTarget, today: LocalDate): string {
  const wanted = `${count(portions, "portion", "portions")} wanted by ${day(by, today)}${past ? ", which is past" : ""}`;
  return inLarderPortions === 0 ? `${wanted}; none is in the larder` : `${wanted}; ${inLarderPortions} ${inLarderPortions === 1 ? "is" : "are"} in the larder`;
}

/** Who asked: the contract keeps a name where a day is not one. */
export const askedBy = ({ by, from }: Pick<Wish, "by" | "from">): string | null => [by, from].find((one) => one !== undefined && !isLocalDate(one)) ?? null;

/** “8 portions asked for by the children, wanted from 14 August”. */
export function wishWords(wish: Wish, today: LocalDate): string {
  const who = askedBy(wish);
  const until = wish.by !== undefined && isLocalDate(wish.by) ? `, wanted by ${day(wish.by, today)}` : "";
  const since = wish.from !== undefined && isLocalDate(wish.from) ? `, wanted from ${day(wish.from, today)}` : "";
  return `${count(wish.portions, "portion", "portions")} asked for${who === null ? "" : ` by ${who}`}${since}${until}`;
}
