/** The calendar's own reading of the service's answer: which year is shown, and the figures that the plate draws. */
import type { Calendar, CalendarRow, CalendarWeek } from "#shared/contracts/calendar.ts";
import { addWeeks, isIsoWeek, weekOf, type IsoWeek } from "#shared/kernel/iso-week.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";

export interface YearShown {
  readonly year: number;
  readonly from: IsoWeek;
  readonly weeks: number;
}

/** The ISO year that a week belongs to: 52 weeks, or 53 where week 53 exists. */
export function yearAround(week: IsoWeek): YearShown {
  const year = week.slice(0, 4);
  return { year: Number(year), from: `${year}-W01`, weeks: isIsoWeek(`${year}-W53`) ? 53 : 52 };
}

/** The week asked for in the address, or today's. */
export function chosenWeek(asked: string | null, today: LocalDate): IsoWeek {
  return asked !== null && isIsoWeek(asked) ? asked : weekOf(today);
}

/** Grams by week of the year shown. */
export interface ExpectedSeries {
  readonly low: readonly number[];
  readonly likely: readonly number[];
  readonly high: readonly number[];
}

export interface CropSeries extends ExpectedSeries {
  readonly row: CalendarRow;
  /** Facts, before `now`. */
  readonly picked: readonly number[];
  /** Largest of all, for the height of the row. */
  readonly peak: number;
}

export interface YearFigures {
  readonly weeks: readonly CalendarWeek[];
  readonly today: LocalDate;
  /** Index of the week that holds today: facts before it, expectations from it on. The number of weeks in a year gone by, 0 in one to come. */
  readonly now: number;
  readonly total: ExpectedSeries & { readonly picked: readonly number[]; readonly eats: readonly number[]; readonly over: readonly number[] };
  readonly crops: readonly CropSeries[];
}

export function yearFigures(calendar: Calendar): YearFigures {
  const { weeks, today, rows } = calendar;
  const found = weeks.findIndex((week) => week.ends >= today);
  const now = found < 0 ? weeks.length : found;
  const coming = (value: (week: CalendarWeek) => number): number[] => weeks.map((week, i) => (i < now ? 0 : value(week)));
  const gone = (value: (week: CalendarWeek) => number): number[] => weeks.map((week, i) => (i < now ? value(week) : 0));
  return {
    weeks,
    today,
    now,
    total: {
      picked: gone((week) => week.pickedGrams),
      low: coming((week) => week.grams.low),
      likely: coming((week) => week.grams.likely),
      high: coming((week) => week.grams.high),
      eats: weeks.map((week) => week.eatsGrams),
      over: coming((week) => Math.min(week.surplusGrams, week.grams.likely)),
    },
    crops: rows.map((row) => cropSeries(row, weeks, now)),
  };
}

function cropSeries(row: CalendarRow, weeks: readonly CalendarWeek[], now: number): CropSeries {
  const own = weeks.map((week) => week.crops.find((crop) => crop.crop === row.crop));
  const coming = (end: "low" | "likely" | "high"): number[] => own.map((crop, i) => (i < now ? 0 : (crop?.grams[end] ?? 0)));
  const series = { low: coming("low"), likely: coming("likely"), high: coming("high"), picked: own.map((crop, i) => (i < now ? (crop?.pickedGrams ?? 0) : 0)) };
  return { row, ...series, peak: row.lift ? 0 : Math.max(0, ...series.high, ...series.picked) };
}

/** The week before or after, by steps. */
export const stepWeek = (week: IsoWeek, steps: number): IsoWeek => addWeeks(week, steps);
