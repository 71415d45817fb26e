/** What the larder says of a lot: how much, how long still. Pure. */
import type { LarderLot } from "#shared/contracts/lots.ts";
import { daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import { capital, count, day, measured } from "../../format.ts";

interface Amount {
  readonly grams: number | null;
  readonly portions: number | null;
}

/** “7 portions, 2.8 kg”, “380 g”; “nobody knows how much” where neither is known. */
export function amountOf({ grams, portions }: Amount, countedIn: LarderLot["countedIn"]): string {
  const said = [portions === null ? "" : count(portions, "portion", "portions"), grams === null ? "" : measured(grams)].filter(Boolean);
  if (countedIn === "grams") said.reverse();
  return said.join(", ") || "nobody knows how much";
}

/** Under so many days a lot is to be used now; as the drawing has it. */
export const SOON_DAYS = 30;

export type Urgency = "throw away" | "use now" | "later" | "unknown";

export function urgencyOf(lot: Pick<LarderLot, "discard" | "bestUntil">, today: LocalDate): Urgency {
  if (lot.discard) return "throw away";
  if (lot.bestUntil === null) return "unknown";
  return daysBetween(today, lot.bestUntil) < SOON_DAYS ? "use now" : "later";
}

/** Whether it stands in beet: to be used now, or thrown away. */
export const isUrgent = (lot: Pick<LarderLot, "discard" | "bestUntil">, today: LocalDate): boolean => ["use now", "throw away"].includes(urgencyOf(lot, today));

/** “best within 25 days”, “best until 12 March 2028”, “past its best since 3 July”. */
export function bestWords(lot: Pick<LarderLot, "discard" | "bestUntil" | "safeUntil">, today: LocalDate): string {
  if (lot.discard) return lot.safeUntil === undefined ? "to be thrown away" : `not safe after ${day(lot.safeUntil, today)}: throw it away`;
  if (lot.bestUntil === null) return "nobody knows how long it keeps";
  const left = daysBetween(today, lot.bestUntil);
  if (left < 0) return `past its best since ${day(lot.bestUntil, today)}`;
  if (left === 0) return "best until today";
  return left < 2 * SOON_DAYS ? `best within ${count(left, "day", "days")}` : `best until ${day(lot.bestUntil, today)}`;
}

/** “Freezer, drawer 2: 2 portions. Best within 25 days.” */
export function lotLine(lot: LarderLot, today: LocalDate): string {
  const where = lot.stands.length > 1 ? lot.stands.map((stand) => `${stand.placeName} ${amountOf(stand, lot.countedIn)}`).join("; ") : `${lot.placeName}: ${amountOf(lot, lot.countedIn)}`;
  const moved = lot.forgotten && lot.lastMovedOn !== null ? `; not touched since ${day(lot.lastMovedOn, today)}` : "";
  return `${capital(where)}. ${capital(bestWords(lot, today))}${moved}.`;
}

/** The first name of a lot with its year where that is not this one: “French beans of 2026”. */
export function lotName(lot: Pick<LarderLot, "title" | "madeOn">, today: LocalDate): string {
  const year = lot.madeOn.slice(0, 4);
  return year === today.slice(0, 4) || lot.title.includes(year) ? lot.title : `${lot.title} of ${year}`;
}

/** What stands ready to press when some is taken out or put in: one, two, three, all; by weight a half and all. */
export function readyAmounts(left: Amount, countedIn: LarderLot["countedIn"], all: boolean): { readonly words: string; readonly portions?: number; readonly grams?: number }[] {
  if (countedIn === "grams") {
    const grams = left.grams ?? 0;
    return all && grams > 0 ? [...(grams > 1 ? [{ words: `half, ${measured(Math.round(grams / 2))}`, grams: Math.round(grams / 2) }] : []), { words: `all, ${measured(grams)}`, grams }] : [];
  }
  const portions = left.portions ?? 0;
  const few = [1, 2, 3].filter((n) => !all || n < portions).map((n) => ({ words: String(n), portions: n }));
  return all && portions > 0 ? [...few, { words: `all ${portions}`, portions }] : few;
}

const DONE: Readonly<Record<string, string>> = { take: "taken out", put: "put in", give: "given away", compost: "thrown away", recount: "counted", move: "moved" };

/** “2 portions taken out: French beans.” */
export function doneWords(kind: string, amount: { readonly portions: number } | { readonly grams: number }, name: string): string {
  const much = "portions" in amount ? count(amount.portions, "portion", "portions") : measured(amount.grams);
  return `${much} ${DONE[kind] ?? kind}: ${name}.`;
}
