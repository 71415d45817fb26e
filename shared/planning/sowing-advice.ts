/**
 * Planning back from the table: the weeks in which a crop is wanted → on which days to sow it and how much, spaced by warmth and not by
 * the calendar. Spans of dates, metres, plants and square metres; grams as picked.
 */
import { forecastPlanting, picksBySowingDay, raisingDays, sowingDayFor, sowingServes, summarise, type ForecastQuestion, type SowingDays } from "../engines/harvest-forecast/index.ts";
import type { Method } from "../kernel/crop-facts.ts";
import { addWeeks, weekEnd, weekStart, type IsoWeek } from "../kernel/iso-week.ts";
import { dateOf, dayNumber, type DayNumber, type LocalDate } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import type { Cover } from "../kernel/way.ts";
import { asKnown } from "./as-known.ts";
import { toDatesOrNull } from "./day-bands.ts";
import type { GardenFacts, GardenPlanting } from "./facts.ts";
import { asker, weatherBetween } from "./garden-forecasts.ts";
import type { DateBand } from "./outlook-types.ts";
import { thoughtOfPlanting, usualMethodOf } from "./thought-of-planting.ts";

export interface WantedPicks {
  /** Slug of an annual crop of the facts. */
  readonly crop: string;
  readonly variety?: string | null;
  /** Left out = as the crop is usually grown. */
  readonly method?: Method;
  readonly cover: Cover;
  /** First week in which it is wanted, and how many weeks in a row. */
  readonly from: IsoWeek;
  readonly weeks: number;
  readonly gramsPerWeek: number;
}

export interface AdvisedSowing {
  /** In place, or in trays where `plantOutOn` is given. */
  readonly sowOn: LocalDate;
  readonly plantOutOn: LocalDate | null;
  /** The weeks that it is for, first and last. */
  readonly fromWeek: IsoWeek;
  readonly untilWeek: IsoWeek;
  /** The same size in three measures; plants and square metres are null where the crop's spacing is not known. */
  readonly rowM: number;
  readonly plants: number | null;
  readonly areaM2: number | null;
  readonly firstPick: DateBand | null;
  readonly chanceOfPick: number;
}

export interface SowingAdvice {
  /** In the order of sowing. */
  readonly sowings: readonly AdvisedSowing[];
  /** Wanted weeks that no sowing from the day of the facts on can serve. */
  readonly outOfReach: readonly IsoWeek[];
  readonly basis: readonly SourceRef[];
  readonly notes: readonly string[];
}

/** A likely first pick further than this from the week wanted does not serve it, days (common practice). */
const NEAR_ENOUGH_DAYS = 10;
/** From the sowing to the first pick at the most; garlic planted in autumn stands for 270 days. */
const LONGEST_WAIT_DAYS = 330;
const BEFORE_SOWING_DAYS = 31;
const SEASON_DAYS = 400;

/**
 * Sowings for the weeks wanted, none before the day of the facts. Each sowing serves as many weeks as bring most of its season; the
 * next is timed by its own warmth to follow it. Throws RangeError for a crop that is not in the facts.
 */
export function sowingAdviceForWeeks(facts: GardenFacts, wanted: WantedPicks): SowingAdvice {
  const garden = asKnown(facts);
  const crop = garden.crops.get(wanted.crop);
  if (!crop) throw new RangeError(`no crop ${wanted.crop}`);
  const weeks = Array.from({ length: wanted.weeks }, (_, w) => addWeeks(wanted.from, w));
  if (crop.perennial) return { sowings: [], outOfReach: weeks, basis: [], notes: ["This crop stands for years and is not sown for a week."] };
  const planting = thoughtOfPlanting(crop, wanted.method ?? usualMethodOf(crop), wanted.cover, wanted.variety ?? null);
  const asOf = dayNumber(garden.asOf);
  const end = dayNumber(weekEnd(weeks[weeks.length - 1] ?? wanted.from));
  const first = Math.max(asOf, dayNumber(weekStart(wanted.from)) - LONGEST_WAIT_DAYS);
  const weather = weatherBetween(garden, Math.min(asOf, first) - BEFORE_SOWING_DAYS, end + SEASON_DAYS);
  const ask = asker(garden, weather.value);
  const days = picksBySowingDay(ask(planting), first, Math.max(first, end));
  const { turns, outOfReach } = inTurn(weeks, sowingServes(planting).weeks, (week) => nearest(days, week));
  const sowings = turns.map(({ on, served }) => advised(ask, planting, on, served, wanted.gramsPerWeek));
  return { sowings, outOfReach, basis: [...weather.basis, ...forecastPlanting(ask(planting)).basis], notes: notesOn(weather.notes, outOfReach, weeks) };
}

interface Turn {
  readonly on: DayNumber;
  readonly served: readonly IsoWeek[];
}

/** The weeks wanted in runs that one sowing each can serve; a week that none reaches is left out, and the next may begin a run. */
function inTurn(weeks: readonly IsoWeek[], each: number, sowFor: (week: IsoWeek) => DayNumber | null): { turns: Turn[]; outOfReach: IsoWeek[] } {
  const turns: Turn[] = [];
  const outOfReach: IsoWeek[] = [];
  for (let w = 0; w < weeks.length; ) {
    const week = weeks[w] as IsoWeek;
    const on = sowFor(week);
    if (on === null) outOfReach.push(week);
    else turns.push({ on, served: weeks.slice(w, w + each) });
    w += on === null ? 1 : each;
  }
  return { turns, outOfReach };
}

function nearest(days: SowingDays, week: IsoWeek): DayNumber | null {
  const monday = dayNumber(weekStart(week));
  const found = sowingDayFor(days, monday);
  return found && Math.abs(found.likelyPick - monday) <= NEAR_ENOUGH_DAYS ? found.sowOn : null;
}

function advised(ask: (planting: GardenPlanting) => ForecastQuestion, planting: GardenPlanting, on: DayNumber, served: readonly IsoWeek[], gramsPerWeek: number): AdvisedSowing {
  const { crop } = planting;
  const out = planting.method === "transplant";
  const { gramsPerRowM } = sowingServes(planting);
  const rowM = gramsPerRowM > 0 ? round((gramsPerWeek * served.length) / gramsPerRowM, 1) : 0;
  const found = summarise(forecastPlanting(ask({ ...planting, sownOn: out ? null : on, plantedOutOn: out ? on : null, rowM })).value);
  return {
    sowOn: dateOf(out ? on - raisingDays(crop) : on),
    plantOutOn: out ? dateOf(on) : null,
    fromWeek: served[0] as IsoWeek,
    untilWeek: served[served.length - 1] as IsoWeek,
    rowM,
    plants: crop.spacingCm ? Math.ceil((100 * rowM) / crop.spacingCm.plant) : null,
    areaM2: crop.spacingCm ? round((rowM * crop.spacingCm.row) / 100, 1) : null,
    firstPick: toDatesOrNull(found.firstPick),
    chanceOfPick: found.chanceOfPick,
  };
}

/** Rounded up, so that it is never too little. */
const round = (value: number, digits: number): number => Math.ceil(value * 10 ** digits - 1e-9) / 10 ** digits;

function notesOn(weather: readonly string[], outOfReach: readonly IsoWeek[], weeks: readonly IsoWeek[]): string[] {
  if (outOfReach.length === 0) return [...weather];
  const all = outOfReach.length === weeks.length;
  return [...weather, all ? "No sowing from today on ripens in the weeks wanted." : `${outOfReach.length} of the ${weeks.length} weeks wanted cannot be served by a sowing from today on.`];
}
