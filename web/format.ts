/**
 * The only place where dates, amounts and ranges become words on a page; sentences share their spelling with the service's. A forecast
 * is always a span. Sentences use “to”, tables an en rule; a number and its unit never part at a line end.
 */
import { weekEnd, weekStart, type IsoWeek } from "#shared/kernel/iso-week.ts";
import { yearOf, type LocalDate } from "#shared/kernel/local-date.ts";
import { madeWords } from "#shared/kernel/made-words.ts";
import { betweenWords, dayWords, listWords, minutesWords, seasonsWords, sentenceCase, spreadWords } from "#shared/kernel/words.ts";
import { inPounds, measured, tableUnit } from "./units.ts";

export { amount, amountSpan, area, areaOf, degrees, expectedAmount, inOurUnits, measured, metres, tableUnit, typedArea, typedMetres } from "./units.ts";

const NB = "\u00a0";
export const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"] as const;

interface DateSpan {
  readonly low: LocalDate;
  readonly likely: LocalDate;
  readonly high: LocalDate;
}

/** A weight in a table by week, in the unit that stands in the head. */
export function weightCell(grams: number): string {
  return (grams / tableUnit().grams).toFixed(1);
}

export function weightSpanCell(low: number, high: number): string {
  return `${weightCell(low)}–${weightCell(high)}`;
}

/** A weight over a season: whole from 10 on, one decimal below. */
export function seasonCell(low: number, high: number): string {
  const unit = tableUnit().grams;
  const cell = (grams: number): string => (high >= 10 * unit ? whole(grams / unit) : (grams / unit).toFixed(1));
  return cell(low) === cell(high) ? cell(high) : `${cell(low)}–${cell(high)}`;
}

/** Whole number with thousands parted: 1,200. */
export function whole(value: number): string {
  return String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, ",");
}

/** As many decimals as are needed, two at most, without closing noughts: 2.5, 12. */
export function plain(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** 1 jar, 3 jars. */
export function count(n: number, one: string, many: string): string {
  return `${whole(n)}${NB}${n === 1 ? one : many}`;
}

/** What a recipe makes, its unit in one or in many: 6 portions, 1 jar, 2 jars of 500 ml, 1.2 kg. */
export function made({ amount: n, unit }: { readonly amount: number; readonly unit: string }): string {
  if (inPounds() && (unit === "g" || unit === "kg")) return measured(unit === "kg" ? n * 1000 : n);
  return madeWords(n, unit);
}

/** 26 July, 26 July 2026 where the year is not that of `today`. */
export const day = (date: LocalDate, today: LocalDate): string => dayWords(date, yearOf(today));

/** 26 Jul, in tables and pictures. */
export function shortDay(date: LocalDate, today: LocalDate): string {
  return `${dayOfMonth(date)}${NB}${monthOf(date).slice(0, 3)}${yearUnless(date, today)}`;
}

/** Aug 2026. */
export function monthYear(date: LocalDate): string {
  return `${monthOf(date).slice(0, 3)}${NB}${date.slice(0, 4)}`;
}

/** between 3 and 24 October; on 12 October when low and high are one day. */
export function betweenDays(low: LocalDate, high: LocalDate, today: LocalDate): string {
  return low === high ? `on ${day(high, today)}` : `between ${betweenWords(low, high, yearOf(today))}`;
}

/** most likely 12 October, between 3 and 24 October. */
export const expectedDay = (span: DateSpan, today: LocalDate): string => spreadWords(span, yearOf(today));

/** Earliest likely 3 October, most likely 12 October, latest likely 24 October. */
export function threeDays(span: DateSpan, today: LocalDate): string {
  return `Earliest likely ${day(span.low, today)}, most likely ${day(span.likely, today)}, latest likely ${day(span.high, today)}.`;
}

export const weekNumber = (week: IsoWeek): number => Number(week.slice(6));

/** 26 July – 1 August; 16–22 August inside one month. Short months in tables. */
export function weekSpan(week: IsoWeek, form: "long" | "short"): string {
  const [from, to] = [weekStart(week), weekEnd(week)];
  const month = (date: LocalDate): string => (form === "long" ? monthOf(date) : monthOf(date).slice(0, 3));
  if (from.slice(0, 7) === to.slice(0, 7)) return `${dayOfMonth(from)}–${dayOfMonth(to)}${NB}${month(to)}`;
  return `${dayOfMonth(from)}${NB}${month(from)} – ${dayOfMonth(to)}${NB}${month(to)}`;
}

/** Week 30 · 26 July – 1 August. */
export function weekTitle(week: IsoWeek, form: "long" | "short" = "long"): string {
  return `Week${NB}${weekNumber(week)} · ${weekSpan(week, form)}`;
}

/** week 30, in a sentence that gives the dates elsewhere. */
export function weekName(week: IsoWeek): string {
  return `week${NB}${weekNumber(week)}`;
}

/** 35 min; 2 h 40. */
export const length = minutesWords;

/** 14:00, from minutes after midnight; past midnight the clock begins again. */
export function clock(minutesOfDay: number): string {
  const within = ((Math.round(minutesOfDay) % 1440) + 1440) % 1440;
  return `${String(Math.floor(within / 60)).padStart(2, "0")}:${String(within % 60).padStart(2, "0")}`;
}

/** In every season; in 16 seasons of 20: chances are counted, not given in per cent. */
export const seasons = seasonsWords;

/** First letter small, for a name inside a sentence. */
export function lower(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}

export const capital = sentenceCase;

/** a; a and b; a, b and c. */
export const listed = listWords;

const dayOfMonth = (date: LocalDate): number => Number(date.slice(8, 10));
const monthOf = (date: LocalDate): string => MONTHS[Number(date.slice(5, 7)) - 1] as string;
const yearUnless = (date: LocalDate, today: LocalDate): string => (date.slice(0, 4) === today.slice(0, 4) ? "" : `${NB}${date.slice(0, 4)}`);
