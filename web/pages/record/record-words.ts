/** A forecast held against what came, in words. */
import type { TrackRecord } from "#shared/contracts/advice.ts";
import type { DateBand } from "#shared/contracts/common.ts";
import { cropNoun } from "#shared/kernel/crop-words.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { capital, count, shortDay } from "../../format.ts";

export type TrackRow = TrackRecord["rows"][number];

/** With fewer, nothing is claimed. */
const FEWEST = 5;

export function rowName({ name, variety }: TrackRow): string {
  const word = capital(cropNoun(name).word);
  return variety === null ? word : `${word}, ${variety}`;
}

/** 3 May – 4 Jun; a dash where no pick was expected. */
export const spanCell = (band: DateBand | null, today: LocalDate): string => (band === null ? "no pick expected" : `${shortDay(band.low, today)} – ${shortDay(band.high, today)}`);

/** “on the day”, “4 days later”, “1 day earlier” than the likely day. */
export function offWords(daysLater: number | null): string {
  if (daysLater === null) return "";
  if (daysLater === 0) return "on the day";
  return `${count(Math.abs(daysLater), "day", "days")} ${daysLater > 0 ? "later" : "earlier"}`;
}

/** The claim in the first sentence, how far off in the rest. */
export function claimOf(text: string): { readonly claim: string; readonly rest: string } {
  const end = text.indexOf(". ");
  return end < 0 ? { claim: text, rest: "" } : { claim: text.slice(0, end + 1), rest: text.slice(end + 2) };
}

/** How good the forecasts were a month before; nothing with fewer than five. */
export function monthBeforeSentence({ monthBefore: { inside, of, meanDaysOut } }: TrackRecord): string {
  if (of < FEWEST) return "";
  return `A month before the pick, ${inside} of ${of} fell inside; the likely day was ${meanDaysOut ?? 0} days out on average.`;
}
