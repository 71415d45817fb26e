/** What cannot wait: frost by the chance of the scenario years, gluts far enough ahead to act, and what the forecast still lacks. */
import { coverShift, type WeatherYears } from "../engines/harvest-forecast/index.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { weekStart } from "../kernel/iso-week.ts";
import { yearOf, type DayNumber } from "../kernel/local-date.ts";
import { amountWords, listWords, seasonsWords, sentenceCase, weekWords } from "../kernel/words.ts";
import type { GardenPlanting } from "./facts.ts";
import { beganOn, type SeasonForecast } from "./garden-forecasts.ts";
import type { GardenReckoning } from "./garden-reckoning.ts";
import type { Missing } from "./outlook-types.ts";
import { isFinished } from "./today-picks.ts";
import type { TodayList } from "./today-types.ts";

type Urgent = TodayList["urgent"][number];

/** From one season in ten on, a frost of the coming week is worth a line (common practice, no source). */
const FROST_CHANCE = 0.1;
const NIGHTS = 7;
const NAMED = 3;

/** Tender plants outside that a night of the next seven would kill. The gain of their cover is taken off. */
export function frostNotices(forecasts: readonly SeasonForecast[], weather: WeatherYears, today: DayNumber): Urgent[] {
  const standing = forecasts.filter(({ planting, value }) => planting.crop.tender && stands(planting, today) && value.lastPickDay.some((day) => day >= today));
  const chances = standing.map(({ planting }) => killingChance(planting, weather, today));
  const atRisk = standing.flatMap((one, i) => ((chances[i] as number) >= FROST_CHANCE ? [one.planting] : []));
  if (weather.restsOn === "nothing" || atRisk.length === 0) return [];
  const words = [...new Set(atRisk.map((planting) => cropWord(planting.crop.name)))];
  const named = words.length > NAMED ? [...words.slice(0, NAMED), `${words.length - NAMED} more`] : words;
  const chance = sentenceCase(seasonsWords(Math.max(...chances)));
  return [{ kind: "frost", text: `${chance} a night of the next seven kills ${listWords(named)}. Look at tonight's weather, and have covers ready.`, href: "/beds" }];
}

const stands = (planting: GardenPlanting, today: DayNumber): boolean => (beganOn(planting) ?? today) <= today && !isFinished(planting, today);

function killingChance({ crop, cover }: GardenPlanting, weather: WeatherYears, today: DayNumber): number {
  const limitC = (crop.killC ?? 0) - coverShift(cover).minC;
  const first = today + 1 - weather.firstDay;
  if (cover === "indoors") return 0;
  const kills = weather.years.filter(({ tminC }) => tminC.subarray(first, first + NIGHTS).some((c) => c <= limitC));
  return kills.length / Math.max(1, weather.years.length);
}

/** Two crops that together make more than this part of what is over are said to be most of it. */
const MOST = 0.5;

/** Each run of glut weeks from the running one on, with the crops of its first week that have most over. */
export function glutNotices({ glut, crops, span }: GardenReckoning, today: string): Urgent[] {
  const year = yearOf(today);
  const notices: Urgent[] = [];
  for (let w = Math.max(0, span.current); w < span.weeks.length; w++) {
    if (!glut.weeks[w]?.glut) continue;
    let end = w + 1;
    while (glut.weeks[end]?.glut) end++;
    const week = span.weeks[w] as string;
    const grams = glut.weeks.slice(w, end).map((one) => one.surplusGrams);
    const most = Math.max(...grams);
    const what = mostOf(crops.map((outlook, c) => ({ word: cropWord(outlook.crop.name), grams: outlook.waits ? 0 : (glut.crops[c]?.surplusGrams[w] ?? 0) })), grams[0] as number);
    const when = weekStart(week) <= today ? "This week" : `In ${weekWords(week, year)},`;
    const text = end - w === 1 ? `${when} about ${amountWords(most)} is over${what}.` : `${when} about ${amountWords(grams[0] as number)} is over${what}; it goes on for ${end - w} weeks, up to ${amountWords(most)} a week.`;
    notices.push({ kind: "glut", text, href: `/calendar?week=${week}` });
    w = end;
  }
  return notices;
}

function mostOf(crops: readonly { readonly word: string; readonly grams: number }[], wholeGrams: number): string {
  const byWord = new Map<string, number>();
  for (const { word, grams } of crops) if (grams > 0) byWord.set(word, (byWord.get(word) ?? 0) + grams);
  const lead = [...byWord].sort((a, b) => b[1] - a[1]).slice(0, 2);
  if (lead.length === 0) return "";
  const sum = lead.reduce((grams, one) => grams + one[1], 0);
  return `, ${sum > MOST * wholeGrams ? "most of it" : "above all"} ${listWords(lead.map(([word]) => word))}`;
}

const SET_UP: Record<Missing, Omit<Urgent, "kind">> = {
  place: { text: "Nobody has said where the garden lies.", href: "/household" },
  weather: { text: "There is no weather yet; twelve monthly temperatures are enough to begin.", href: "/household" },
  beds: { text: "There is no bed yet.", href: "/beds" },
  sowings: { text: "Nothing has been sown yet.", href: "/beds" },
};

export function setUpNotices(missing: readonly Missing[]): Urgent[] {
  return missing.map((what) => ({ kind: "setup", ...SET_UP[what] }));
}
