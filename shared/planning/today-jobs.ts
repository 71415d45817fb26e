/** Sowing, planting and small jobs of the next days, each with its day and its reason. Day numbers. */
import { cropNoun, cropWord } from "../kernel/crop-words.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { dateOf, yearOf, type DayNumber, type LocalDate } from "../kernel/local-date.ts";
import { dayWords, nearDayWords, sentenceCase, spreadWords } from "../kernel/words.ts";
import { dateBandOf } from "./day-bands.ts";
import type { GardenPlanting } from "./facts.ts";
import { beganOn, type SeasonForecast } from "./garden-forecasts.ts";
import type { DateBand } from "./outlook-types.ts";
import { isFinished } from "./today-picks.ts";
import type { TodayList } from "./today-types.ts";

type Sow = TodayList["sow"][number];
type Job = TodayList["jobs"][number];

const SOW_AHEAD_DAYS = 14;
/** Start looking ten days before the early date (horticultural reference, what a skilled grower expects to be told). */
const LOOK_AHEAD_DAYS = 10;
/** Plants raised under cover get used to the open over about a week (common practice, no source). */
const HARDEN_DAYS = 7;
const FROST_AHEAD_DAYS = 21;
/** Classes of the crop table whose harvest may stay out in frost. */
const STANDS_FROST: ReadonlySet<string> = new Set(["hardy", "tubers hardy"]);

/** What is put down for the next fortnight, soonest first. */
export function sowingsAhead(forecasts: readonly SeasonForecast[], today: DayNumber): Sow[] {
  return forecasts
    .flatMap(({ planting, value }): Sow[] => {
      const events = [
        [planting.sownOn, "Sow"],
        [planting.plantedOutOn, "Plant out"],
      ] as const;
      const next = events.find(([day]) => day !== null && day >= today && day <= today + SOW_AHEAD_DAYS);
      if (!next || next[0] === null) return [];
      const first = dateBandOf(value.firstPickDay);
      const ready = first ? ` Ready ${spreadWords(first, yearOf(dateOf(today)))}.` : " By the weather of past years it does not ripen.";
      const text = `${planting.bedName}, ${sizeWords(planting)}. ${next[1]} ${nearDayWords(dateOf(next[0]), dateOf(today))}.${ready}`;
      return [{ sowingId: planting.id, crop: planting.crop.slug, name: planting.crop.name, bedName: planting.bedName, on: dateOf(next[0]), text }];
    })
    .sort((a, b) => (a.on === b.on ? (a.sowingId < b.sowingId ? -1 : 1) : a.on < b.on ? -1 : 1));
}

function sizeWords({ rowM, plants, areaM2 }: GardenPlanting): string {
  if (rowM !== null) return `${rowM}\u00a0m of row`;
  return plants !== null ? `${plants}\u00a0${plants === 1 ? "plant" : "plants"}` : `${areaM2 ?? 0}\u00a0m²`;
}

/** By the likely day of each, never one that has passed. */
export function jobsToday(forecasts: readonly SeasonForecast[], frost: { readonly lastSpring: DateBand | null; readonly firstAutumn: DateBand | null }, today: DayNumber): Job[] {
  const jobs = forecasts
    .filter(({ planting }) => !isFinished(planting, today))
    .flatMap((one) => [...hardenOff(one, today), ...keepFromFrost(one, frost.lastSpring, today), ...look(one, today), ...lift(one, frost.firstAutumn, today)]);
  return jobs.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

const job = (planting: GardenPlanting, on: LocalDate, text: string): Job => ({ sowingId: planting.id, on, text });
const notPast = (day: LocalDate, today: DayNumber): LocalDate => (day < dateOf(today) ? dateOf(today) : day);
const yearNow = (today: DayNumber): number => yearOf(dateOf(today));

function hardenOff({ planting }: SeasonForecast, today: DayNumber): Job[] {
  const { sownOn, plantedOutOn, crop } = planting;
  if (sownOn === null || plantedOutOn === null || plantedOutOn <= today || plantedOutOn - today > HARDEN_DAYS) return [];
  return [job(planting, dateOf(plantedOutOn), `Harden off the ${cropWord(crop.name)}: planting out ${nearDayWords(dateOf(plantedOutOn), dateOf(today))}.`)];
}

/** A tender crop that stands, or soon stands, in the open while frost may still come. */
function keepFromFrost({ planting }: SeasonForecast, lastSpring: DateBand | null, today: DayNumber): Job[] {
  const out = planting.plantedOutOn;
  if (!planting.crop.tender || planting.cover !== "open" || out === null || !lastSpring || Math.abs(out - today) > SOW_AHEAD_DAYS) return [];
  if (dateOf(Math.max(out, today)) > lastSpring.high) return [];
  return [job(planting, dateOf(Math.max(out, today)), `Keep a fleece by the ${cropWord(planting.crop.name)}: in one spring of ten frost still comes after ${dayWords(lastSpring.high, yearNow(today))}.`)];
}

function look({ planting, value }: SeasonForecast, today: DayNumber): Job[] {
  const first = dateBandOf(value.firstPickDay);
  const begun = planting.picks.some((pick) => pick.day <= today && pick.day >= today - 365) || planting.sightings.some((seen) => seen.stage === "first-pick" && seen.day <= today);
  if (!first || begun || (beganOn(planting) ?? today) > today) return [];
  if (dateOf(today + LOOK_AHEAD_DAYS) < first.low || dateOf(today) > first.high) return [];
  const { word, many } = cropNoun(planting.crop.name);
  const ready = waitsForTheGrower(planting.crop) ? `${sentenceCase(word)} in ${planting.bedName} ${many ? "are" : "is"} ready` : `Start looking for ${word} in ${planting.bedName}: first picks`;
  return [job(planting, notPast(first.likely, today), `${ready} ${spreadWords(first, yearNow(today))}.`)];
}

/** What frost harms in the ground or in the open, when the first frost of autumn may be three weeks away: due by the day before which it comes in one year of ten. */
function lift({ planting, value }: SeasonForecast, firstAutumn: DateBand | null, today: DayNumber): Job[] {
  const { crop } = planting;
  const harmed = waitsForTheGrower(crop) && !crop.perennial && !STANDS_FROST.has(crop.frostClass) && planting.cover === "open";
  if (!harmed || !firstAutumn || (beganOn(planting) ?? today) > today || dateOf(today + FROST_AHEAD_DAYS) < firstAutumn.low || dateOf(today) > firstAutumn.high) return [];
  if (!value.lastPickDay.some((day) => day >= today)) return [];
  return [job(planting, notPast(firstAutumn.low, today), `${crop.family === "Cucurbitaceae" ? "Bring in" : "Lift"} the ${cropWord(crop.name)} in ${planting.bedName} before hard frost; the first frost comes ${spreadWords(firstAutumn, yearNow(today))}.`)];
}
