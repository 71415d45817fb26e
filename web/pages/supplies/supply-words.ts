/** What the page says of jars, lids, bags and dry goods. Pure. */
import type { Shopping } from "#shared/contracts/shopping.ts";
import type { Supply } from "#shared/contracts/supplies.ts";
import { daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import { capital, count, day, listed, lower, measured, whole } from "../../format.ts";

export type SupplyKind = Supply["kind"];

/** One and many, in the order in which they stand on the page. */
export const KIND_WORDS: Readonly<Record<SupplyKind, string>> = {
  jar: "Jars",
  lid: "Lids",
  bag: "Bags",
  box: "Boxes",
  vinegar: "Vinegar",
  sugar: "Sugar",
  salt: "Salt",
  yeast: "Yeast",
  spice: "Spices",
  other: "Other things",
};

/** Counted by the piece; the rest is weighed, and vinegar measured. */
export const isCounted = (kind: SupplyKind): boolean => kind === "jar" || kind === "lid" || kind === "bag" || kind === "box";

const NB = "\u00a0";

/** “500 ml”, “1.5 l”. */
export const millilitres = (ml: number): string => (ml < 1000 ? `${whole(ml)}${NB}ml` : `${String(Math.round(ml / 10) / 100)}${NB}l`);

/** “12”, “1,200 g”, “1.5 l”. */
export function supplyAmount({ amount, unit }: Pick<Supply, "amount" | "unit">): string {
  if (unit === "pieces") return whole(amount);
  return unit === "ml" ? millilitres(amount) : amount === 0 ? `0${NB}g` : measured(amount);
}

/** A date nearer than this is told with its days. */
const SOON_DAYS = 60;

/** “best until 1 May 2028”, “past its date since 30 June”; empty where nobody has said a date. */
export function dateWords({ bestUntil, past }: Pick<Supply, "bestUntil" | "past">, today: LocalDate): string {
  if (bestUntil === undefined) return "";
  if (past) return `past its date since ${day(bestUntil, today)}`;
  const left = daysBetween(today, bestUntil);
  return left <= SOON_DAYS ? `best within ${count(left, "day", "days")}` : `best until ${day(bestUntil, today)}`;
}

/** “Dried yeast is past its date.” Empty where nothing is. */
export function pastWords(held: readonly Supply[]): string {
  const past = held.filter((supply) => supply.past).map(({ name }) => lower(name));
  return past.length === 0 ? "" : `${capital(listed(past))} ${past.length === 1 ? "is past its" : "are past their"} date.`;
}

const CONTAINERS = { jar: ["jar", "jars"], lid: ["lid", "lids"], bag: ["bag", "bags"] } as const;

/** “8 jars needed, 5 there: 3 short”. */
export function shortWords({ kind, need, have, short }: Shopping["supplies"][number]): string {
  const needed = `${count(need, CONTAINERS[kind][0], CONTAINERS[kind][1])} needed, ${have} there`;
  return short > 0 ? `${needed}: ${short} short` : needed;
}
