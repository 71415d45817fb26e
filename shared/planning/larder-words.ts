/** Lots in sentences. */
import { yearOf, type LocalDate } from "../kernel/local-date.ts";
import { dayWords, measuredWords } from "../kernel/words.ts";
import type { BothAmounts, LotToday } from "./larder-facts.ts";

export interface LotLine {
  readonly lotId: string;
  readonly title: string;
  readonly text: string;
}

/** "4 portions", "900 g". */
export function bothWords({ grams, portions }: BothAmounts, countedIn: "grams" | "portions" | null): string {
  if (countedIn === "portions" || grams === null) return `${portions ?? 0} ${portions === 1 ? "portion" : "portions"}`;
  return measuredWords(grams);
}

/** What is left, where it stands and until when it is good. */
export function lotLine(one: LotToday, today: LocalDate): LotLine {
  const year = yearOf(today);
  const where = one.stands.map(({ place }) => place.name).join(", ") || one.place.name;
  return { lotId: one.lot.id, title: one.lot.title, text: `${bothWords(one.amount, one.lot.countedIn)}, ${where}. ${untilWords(one, today, year)}`.trim() };
}

export function shortLine(one: LotToday): LotLine {
  const { lot, short } = one;
  return { lotId: lot.id, title: lot.title, text: short === null ? "" : `${bothWords(short, lot.countedIn)} more went out than the book had. Count what is in ${one.place.name}.` };
}

export function forgottenLine(one: LotToday, today: LocalDate): LotLine {
  const { lot, lastMovedOn } = one;
  const since = lastMovedOn === null ? "" : ` Not touched since ${dayWords(lastMovedOn, yearOf(today))}.`;
  return { lotId: lot.id, title: lot.title, text: `${bothWords(one.amount, lot.countedIn)}, ${one.place.name}.${since}` };
}

function untilWords({ bestUntil, safeUntil, discard }: LotToday, today: LocalDate, year: number): string {
  if (discard && safeUntil !== null) return `Was to be eaten by ${dayWords(safeUntil, year)}: throw it away.`;
  if (safeUntil !== null) return safeUntil === today ? "Eat it today." : `Eat it by ${dayWords(safeUntil, year)}.`;
  if (bestUntil === null) return "";
  return bestUntil < today ? `Past its best since ${dayWords(bestUntil, year)}.` : `Best until ${dayWords(bestUntil, year)}.`;
}
