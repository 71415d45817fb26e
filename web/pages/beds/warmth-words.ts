/** A sowing's warmth so far in sentences. */
import type { Forecast } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { count, day, degrees, whole } from "../../format.ts";
import { inPounds } from "../../units.ts";

export type Warmth = NonNullable<Forecast["warmth"]>;

const SINCE: Record<Warmth["from"], string> = {
  book: "",
  "coming-up": ", when it should have come up,",
  "planted-out": ", when it was planted out,",
  emerged: ", when it came up,",
  flowering: ", when it flowered,",
  "fruit-set": ", when its fruit set,",
};

/** Degree-days as the household counts its degrees. */
export const degreeDays = (celsiusDays: number): number => Math.round(celsiusDays * (inPounds() ? 1.8 : 1));

/** “Six days ahead of usual”: the heading of the picture. */
export function aheadWords({ daysAhead }: Warmth): string {
  if (daysAhead === 0) return "As warm as usual by now";
  return `${count(Math.abs(daysAhead), "day", "days")} ${daysAhead > 0 ? "ahead of" : "behind"} usual`;
}

export function warmthSentence(warmth: Warmth, today: LocalDate): string {
  const { since, from, baseC, gainedCd, usualCd, needsCd } = warmth;
  const [had, low, likely, high, needs] = [gainedCd, usualCd.low, usualCd.likely, usualCd.high, needsCd].map((cd) => whole(degreeDays(cd)));
  const usual = low === high ? `${likely} are usual` : `${likely} are usual, in eight years of ten ${low} to ${high}`;
  const still = gainedCd < needsCd ? `The first pick needs about ${needs}.` : `The first pick needs about ${needs}, so it should be near.`;
  return `Since ${day(since, today)}${SINCE[from]} it has had ${had} degree-days above ${degrees(baseC)}; by today ${usual}. ${still}`;
}

/** What the household's own record changed in the book's figures; null where it has none of this crop. */
export function ownRecordSentence(own: Forecast["own"]): string | null {
  if (!own || (own.warmth === null && own.amount === null)) return null;
  const of = (n: number, one: string, many: string, same: boolean): string => `${count(n, one, many)} of your own${same ? "" : ", of other varieties,"}`;
  const than = (percent: number): string => (percent === 0 ? "as the book has it" : `${Math.abs(percent)}\u00a0% ${percent < 0 ? "less" : "more"} than the book`);
  const warmth = own.warmth && `${of(own.warmth.count, "finished sowing", "finished sowings", own.warmth.sameVariety)} ${own.warmth.count === 1 ? "counts" : "count"} here: the warmth it needs is taken ${than(own.warmth.percent)}.`;
  const amount = own.amount && `By ${of(own.amount.count, "finished season", "finished seasons", own.amount.sameVariety)} the amount is taken ${than(own.amount.percent)}.`;
  return [warmth, amount].filter(Boolean).join(" ");
}
