/** What a forecast rests on, in two sentences: the weather years, and the warmth needed with where its figure comes from. */
import type { DayNumber } from "../../kernel/local-date.ts";
import { dateOf, yearOf } from "../../kernel/local-date.ts";
import { dayWords } from "../../kernel/words.ts";
import type { Clock } from "./clock.ts";
import type { KnownFacts } from "./known-facts.ts";
import type { Requirement } from "./requirement.ts";
import type { ForecastQuestion } from "./types.ts";

/** Without a clock the second sentence is left out; what is missing is said elsewhere. */
export function explanation(q: ForecastQuestion, facts: KnownFacts, clock: Clock | null, need: Requirement | null): string {
  const sentences = [weatherSentence(q)];
  if (facts.firstPick !== null) sentences.push("The first pick is known, so no warmth has to be reckoned any more.");
  else if (clock && need) sentences.push(needSentence(q, clock, need));
  return sentences.join(" ");
}

function weatherSentence({ weather, asOf }: ForecastQuestion): string {
  const [first, last] = [weather.years[0]?.label, weather.years[weather.years.length - 1]?.label];
  const years = weather.years.length;
  const seen = asOf >= weather.firstDay ? `, after the days as they were up to ${dayWords(dateOf(asOf), yearOf(dateOf(asOf)))}` : "";
  if (weather.restsOn === "nothing") return "Rests on no weather.";
  return weather.restsOn === "record" ? `Rests on ${years} past seasons of weather, ${first}–${last}${seen}.` : `Rests on ${years} seasons made from monthly means${seen}.`;
}

function needSentence(q: ForecastQuestion, clock: Clock, need: Requirement): string {
  const { crop, varietyDays } = q.planting;
  const cd = (value: number): string => `${Math.round(value)}\u00a0°C d`;
  const days = crop.daysToMaturity;
  const printed = clock.restsOn === "flowering" || clock.restsOn === "fruit-set" ? crop.flowerToPickDays : days;
  const packet = varietyDays && printed === days ? varietyDays : null;
  const range = packet ? ` (${spanWords(packet)} days from ${packet.from ?? days?.from})` : printed ? ` (${spanWords(printed)} days${printed === days ? ` from ${days.from}` : " from flower to pick"})` : "";
  const figure = packet ? "the variety's own figure" : "the book's figure for a variety not known";
  const own = need.own === null ? "" : `, ${ownWords(need.own)}`;
  return `The first pick needs about ${cd(need.likelyCd)} above ${crop.baseC}\u00a0°C ${sinceWords(q, clock)}: ${figure}${range}${own}.`;
}

const spanWords = ({ low, high }: { readonly low: number; readonly high: number }): string => (low === high ? String(low) : `${low}–${high}`);

function sinceWords(q: ForecastQuestion, { restsOn, startDay, emerges }: Clock): string {
  const on = (day: DayNumber): string => dayWords(dateOf(day), yearOf(dateOf(q.asOf)));
  const since = {
    book: emerges ? `from coming up after the sowing of ${on(startDay)}` : `from ${on(startDay)}`,
    "planted-out": `from ${on(startDay)}, when it was seen planted out`,
    emerged: `from ${on(startDay)}, when it was seen to come up`,
    flowering: `from ${on(startDay)}, when its first flowers were seen`,
    "fruit-set": `from ${on(startDay)}, when its first fruit was seen`,
  };
  return since[restsOn];
}

function ownWords({ count, shiftLn, sameVariety }: NonNullable<Requirement["own"]>): string {
  const percent = Math.round(100 * Math.abs(Math.expm1(shiftLn)));
  const of = `${count === 1 ? "1 sowing" : `${count} sowings`} of your own${sameVariety ? "" : " of other varieties"}`;
  return percent === 0 ? `borne out by ${of}` : `made ${percent} % ${shiftLn < 0 ? "smaller" : "greater"} by ${of}`;
}
