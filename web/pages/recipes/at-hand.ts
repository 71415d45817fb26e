/** Which crops are at hand: lots of the larder that still hold something, and what this week is as likely as not to bring. Pure. */
import type { Calendar } from "#shared/contracts/calendar.ts";
import type { Larder } from "#shared/contracts/larder.ts";

export interface AtHand {
  readonly crops: ReadonlySet<string>;
}

export function cropsAtHand(larder: Larder, calendar: Calendar): AtHand {
  const held = larder.lots.flatMap(({ crop, grams, portions }) => (crop !== undefined && crop !== null && ((grams ?? 0) > 0 || (portions ?? 0) > 0) ? [crop] : []));
  const ripe = (calendar.weeks[0]?.crops ?? []).flatMap(({ crop, grams }) => (grams.likely > 0 ? [crop] : []));
  return { crops: new Set([...ripe, ...held]) };
}
