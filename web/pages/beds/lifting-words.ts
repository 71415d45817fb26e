/** The lifting window in a sentence. */
import type { Forecast } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { betweenDays, day } from "../../format.ts";

export type Lift = NonNullable<Forecast["lift"]>;

/** “Ready from about 3 August, at its best from 3 August to 28 September, out of the ground by 24 October to be safe.” */
export function liftSentence({ ready, bestFrom, bestUntil, outBy }: Lift, today: LocalDate): string {
  const from = `Ready from about ${day(ready.likely, today)}, ${betweenDays(ready.low, ready.high, today)}.`;
  const best = `At its best from about ${day(bestFrom.likely, today)} to ${day(bestUntil.likely, today)}.`;
  const safe = outBy.low === outBy.likely ? "" : `; to be safe in nine years of ten, by ${day(outBy.low, today)}`;
  return `${from} ${best} Most likely it stands well until ${day(outBy.likely, today)}${safe}.`;
}
