/** Sowing advice in words. */
import type { BedAdvice, SowingAdvice } from "#shared/contracts/advice.ts";
import { cropNoun } from "#shared/kernel/crop-words.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { weekStart } from "#shared/kernel/iso-week.ts";
import { betweenDays, capital, count, day, expectedAmount, expectedDay, metres, seasons, shortDay, weekName } from "../../format.ts";
import { inPounds } from "../../units.ts";

type Advised = SowingAdvice["sowings"][number];
export type StillRipens = BedAdvice["sensible"][number];

/** “Five sowings from 2 April to 20 June keep you in lettuce from week 24 to week 33.” */
export function adviceSentence({ sowings, outOfReach }: SowingAdvice, cropName: string, today: LocalDate): string {
  const { word } = cropNoun(cropName);
  const [first, last] = [sowings[0], sowings[sowings.length - 1]];
  if (!first || !last) return `No sowing from today on brings ${word} in the weeks wanted.`;
  const when = first === last ? `on ${day(first.sowOn, today)}` : `from ${day(first.sowOn, today)} to ${day(last.sowOn, today)}`;
  const short = outOfReach.length === 0 ? "" : ` No sowing from today on reaches ${outOfReach.length === 1 ? "1 week" : `${outOfReach.length} weeks`} of those wanted.`;
  return `${capital(count(sowings.length, "sowing", "sowings"))} ${when} ${sowings.length === 1 ? "brings" : "bring"} ${word} from ${weekName(first.fromWeek)} to ${weekName(last.untilWeek)}.${short}`;
}

/** How much of it: 4 m of row, 27 plants. */
export const sizeWords = ({ rowM, plants }: Advised): string => `${metres(rowM)} of row${plants === null ? "" : `, ${count(plants, "plant", "plants")}`}`;

/** “weeks 24 to 26, from 14 June”. */
export function servesWords({ fromWeek, untilWeek }: Advised, today: LocalDate): string {
  const weeks = fromWeek === untilWeek ? weekName(fromWeek) : `weeks ${Number(fromWeek.slice(6))} to ${Number(untilWeek.slice(6))}`;
  return `${weeks}, from ${shortDay(weekStart(fromWeek), today)}`;
}

export const firstPickWords = ({ firstPick, chanceOfPick }: Advised, today: LocalDate): string =>
  firstPick === null ? "no pick likely" : `${betweenDays(firstPick.low, firstPick.high, today)}${chanceOfPick < 0.975 ? `, ${seasons(chanceOfPick)}` : ""}`;

/** What can be said of a bed at once. */
export function bedAdviceSentence({ sensible, gamble, freeM2 }: BedAdvice): string {
  if (freeM2 <= 0) return "The bed is full; what follows is for when room comes free.";
  if (sensible.length === 0) return gamble.length === 0 ? "Nothing sown now ripens here before the frost." : "Nothing is safe to sow any more; some of it ripens in some seasons.";
  return `${capital(count(sensible.length, "crop", "crops"))} sown or planted here today ${sensible.length === 1 ? "ripens" : "ripen"} in at least 16 seasons of 20.`;
}

/** “ready most likely 3 September, between …, in 19 seasons of 20; 1.2 to 3 kg from 10 ft of row”. */
export function ripensWords({ method, firstPick, chanceOfPick, gramsPerRowM, waits }: StillRipens, today: LocalDate): string {
  const rows = inPounds() ? { times: 3.048, words: "10 ft of row" } : { times: 1, words: "a metre of row" };
  const grams = { low: gramsPerRowM.low * rows.times, likely: gramsPerRowM.likely * rows.times, high: gramsPerRowM.high * rows.times };
  return `${method === "transplant" ? "planted out, " : ""}${waits ? "ready to lift" : "ready"} ${expectedDay(firstPick, today)}, ${seasons(chanceOfPick)}; ${expectedAmount(grams)} from ${rows.words}`;
}
