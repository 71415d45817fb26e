/** A sowing and its forecast in sentences. */
import type { Crop } from "#shared/contracts/crops.ts";
import type { Forecast, Sowing } from "#shared/contracts/sowings.ts";
import { cropNoun } from "#shared/kernel/crop-words.ts";
import type { Method } from "#shared/kernel/crop-facts.ts";
import { daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import { betweenDays, capital, count, day, expectedAmount, expectedDay, inOurUnits, measured, seasons, threeDays } from "../../format.ts";
import { amountWords, type SlipReading } from "./slip.ts";

/** The page's sentence: what is still to be written, or when the sowing will be ready. */
export function slipSentence(read: SlipReading, typedCrop: string, forecast: Forecast | null, today: LocalDate): string {
  if (!read.crop.ok) return typedCrop.trim() === "" ? "Name the crop to see when it is ready." : `${read.crop.wrong} ${read.crop.works}`;
  const { word, many } = cropNoun(read.crop.value.name);
  if (!read.when.ok) return `Write the day to see when ${word} ${many ? "are" : "is"} ready.`;
  if (!read.much.ok) return `Write how much to see what ${word} ${many ? "give" : "gives"}.`;
  const sown = capital(`${word} ${startedWords(read.method, read.when.value.date, read.when.value.about, today)}`.trim());
  if (forecast === null) return `${sown}: working out when.`;
  if (restsOnNothing(forecast)) return `${sown}: no dates yet, because no weather is on record.`;
  if (forecast.firstPick === null) return `${sown} ${many ? "are" : "is"} not likely to come to a pick.`;
  if (forecast.chanceOfPick < 0.5) return `${sown} ${many ? "come" : "comes"} to a pick only ${seasons(forecast.chanceOfPick)}, then ${expectedDay(forecast.firstPick, today)}.`;
  const ready = forecast.waits ? "ready to lift" : "ready";
  return `${sown} ${many ? "are" : "is"} most likely ${ready} on ${day(forecast.firstPick.likely, today)}, ${betweenDays(forecast.firstPick.low, forecast.firstPick.high, today)}.`;
}

/** Without weather there are neither weeks nor frost dates. */
export function restsOnNothing({ firstPick, weeks, frost }: Forecast): boolean {
  return firstPick === null && weeks.length === 0 && frost.lastSpring === null && frost.firstAutumn === null;
}

function startedWords(method: Method, date: LocalDate, about: boolean, today: LocalDate): string {
  if (method === "established") return "";
  const on = date === today ? "today" : `${about ? "about " : ""}${day(date, today)}`;
  return `${method === "transplant" ? "planted out" : "sown"} ${on}`;
}

/** Under the twenty seasons: the three dates, what a dot is, and how much comes. */
export function dotsWords(forecast: Forecast, today: LocalDate): string {
  if (restsOnNothing(forecast)) return "Twelve monthly means, typed in under Household, are enough for a first answer.";
  if (forecast.firstPick === null) return inOurUnits(forecast.notes.join(" "));
  const sentences = [threeDays(forecast.firstPick, today), "Each dot is one season in 20."];
  if (forecast.chanceOfPick < 0.975) sentences.push(`It comes to a pick ${seasons(forecast.chanceOfPick)}.`);
  sentences.push(amountSentence(forecast));
  return sentences.join(" ");
}

function amountSentence(forecast: Forecast): string {
  const { firstPick, lastPick, totalGrams } = forecast;
  const weeks = firstPick && lastPick ? Math.round(daysBetween(firstPick.likely, lastPick.likely) / 7) : 0;
  return weeks > 1 ? `Over ${weeks} weeks it gives ${expectedAmount(totalGrams)}.` : `It gives ${expectedAmount(totalGrams)}.`;
}

/** “Carrots, Early Oval” in the list. */
export function sowingName(sowing: Sowing, crops: ReadonlyMap<string, Crop>): string {
  const name = capital(cropNoun(crops.get(sowing.crop)?.name ?? sowing.crop).word);
  return sowing.variety ? `${name}, ${sowing.variety}` : name;
}

/** “sown 31 March”, “planted out 5 May”, “standing since 2021”. */
export function startWords(sowing: Sowing, today: LocalDate): string {
  if (sowing.method === "established") return sowing.standsSince === undefined ? "standing" : `standing since ${sowing.standsSince}`;
  const out = sowing.plantedOutOn;
  const date = out ?? sowing.sownOn;
  if (date === undefined) return "";
  const past = date <= today;
  return `${past ? "" : "to be "}${out === undefined ? "sown" : "planted out"} ${day(date, today)}`;
}

/** “picking 12 July to 10 October”, “one lift about 12 August”, “no pick likely”. */
export function pickingWords(forecast: Forecast, today: LocalDate): string {
  const { firstPick, lastPick, waits } = forecast;
  if (firstPick === null) return restsOnNothing(forecast) ? "no dates yet" : "no pick likely";
  if (lastPick === null || daysBetween(firstPick.likely, lastPick.likely) < 8) return `${waits ? "one lift" : "one pick"} about ${day(firstPick.likely, today)}`;
  return `picking about ${day(firstPick.likely, today)} to ${day(lastPick.likely, today)}`;
}

/** The sentence of a sowing's own page: being picked, to come, over, or not likely. */
export function sowingAnswer(sowing: Sowing, crop: Crop | undefined, today: LocalDate): string {
  const { forecast } = sowing;
  const { word, many } = cropNoun(crop?.name ?? sowing.crop);
  const name = capital(sowing.variety ? `${word}, ${sowing.variety},` : word);
  const [are, give, have] = many ? ["are", "give", "have"] : ["is", "gives", "has"];
  if (restsOnNothing(forecast)) return `${name} ${have} no dates yet, because no weather is on record.`;
  if (forecast.firstPick === null) return `${name} ${are} not likely to come to a pick.`;
  const over = forecast.lastPick !== null && forecast.lastPick.high <= today;
  if (over) return sowing.pickedGrams > 0 ? `${name} gave ${measured(sowing.pickedGrams)}, and the picking is over.` : `${name} ${are} over, and nothing was written down as picked.`;
  const all = expectedAmount(forecast.totalGrams);
  if (sowing.pickedGrams > 0 || sowing.sightings.some(({ stage }) => stage === "first-pick")) {
    const until = forecast.lastPick ? `, until about ${day(forecast.lastPick.likely, today)}` : "";
    const so = sowing.pickedGrams > 0 ? `${measured(sowing.pickedGrams)} so far; ` : "";
    return `${name} ${have} been picked since ${day(forecast.firstPick.likely, today)}: ${so}in all ${all}${until}.`;
  }
  return `${name} ${are} most likely ready ${forecast.waits ? "to lift " : ""}on ${day(forecast.firstPick.likely, today)}, ${betweenDays(forecast.firstPick.low, forecast.firstPick.high, today)}, and ${give} ${all}.`;
}

/** “10 plants, sown 10 March, planted out 8 May”: how a sowing began. */
export function beganWords(sowing: Sowing, today: LocalDate): string {
  const { sownOn, plantedOutOn } = sowing;
  const raised = sownOn !== undefined && plantedOutOn !== undefined ? `sown ${day(sownOn, today)}` : "";
  return [amountWords(sowing), raised, startWords(sowing, today)].filter(Boolean).join(", ");
}

/** Below the picture of a season: the dates of the first and the last pick. */
export function seasonWords(sowing: Sowing, today: LocalDate): string {
  const { firstPick, lastPick, chanceOfPick } = sowing.forecast;
  if (firstPick === null) return inOurUnits(sowing.forecast.notes.join(" "));
  const begun = sowing.pickedGrams > 0 || sowing.sightings.some(({ stage }) => stage === "first-pick");
  const first = begun ? `First pick ${day(firstPick.likely, today)}.` : `First pick ${expectedDay(firstPick, today)}.`;
  const last = lastPick ? `Last pick ${expectedDay(lastPick, today)}.` : "";
  const often = chanceOfPick < 0.975 && !begun ? `It comes to a pick ${seasons(chanceOfPick)}.` : "";
  return [first, last, often].filter(Boolean).join(" ");
}

/** “3 picks, 1,200 g”. */
export function picksSummary(picks: readonly { readonly grams: number }[]): string {
  if (picks.length === 0) return "Nothing is picked yet.";
  return `${count(picks.length, "pick", "picks")}, ${measured(picks.reduce((sum, pick) => sum + pick.grams, 0))} in all.`;
}
