/**
 * How amounts, days and crops are written in a sentence. One spelling for the service's sentences and the pages.
 * Number and unit never part at a line end: a no-break space stands between them.
 */
import { addDays, dayNumber, yearOf, type LocalDate } from "./local-date.ts";
import { weekEnd, weekStart, type IsoWeek } from "./iso-week.ts";

const NBSP = "\u00a0";
const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"] as const;

/** A likely amount in grams: below 950 g rounded to 50 g, below 20 kg with one decimal, above in whole kilograms. */
export function amountWords(grams: number): string {
  if (isSmall(grams)) return `${toFifty(grams)}${NBSP}g`;
  return `${kilograms(grams)}${NBSP}kg`;
}

/** "1.7 to 4.8 kg, most likely 3.1 kg"; a fact or a span that rounds to one figure is said once. */
export function amountSpanWords(band: { readonly low: number; readonly likely: number; readonly high: number }): string {
  const most = amountWords(band.likely);
  if (amountWords(band.low) === most && amountWords(band.high) === most) return most;
  return `${lowToHighWords(band.low, band.high)}, most likely ${most}`;
}

/** "250 to 600 g", "1.7 to 4.8 kg", "up to 1.4 kg" from nothing; one figure where both ends round to it. Grams. */
export function lowToHighWords(low: number, high: number): string {
  if (amountWords(low) === amountWords(high)) return amountWords(high);
  if (toFifty(low) === 0) return `up to ${amountWords(high)}`;
  if (isSmall(high)) return `${toFifty(low)} to ${toFifty(high)}${NBSP}g`;
  return `${kilograms(low)} to ${kilograms(high)}${NBSP}kg`;
}

/** A weighed sum in running text: whole grams below a kilogram, else kilograms as for what is likely. */
export function weighedWords(grams: number): string {
  return grams < 1000 ? measuredWords(grams) : amountWords(grams);
}

/** A measured amount as entered: "1,200 g". */
export function measuredWords(grams: number): string {
  return `${thousands(Math.round(grams))}${NBSP}g`;
}

/** "26 July"; with the year when it is not `thisYear`. */
export function dayWords(date: LocalDate, thisYear: number): string {
  const words = `${Number(date.slice(8))}${NBSP}${monthOf(date)}`;
  return yearOf(date) === thisYear ? words : `${words} ${date.slice(0, 4)}`;
}

/** "3 and 24 October", "28 September and 24 October": the two ends of a spread, for after "between". */
export function betweenWords(low: LocalDate, high: LocalDate, thisYear: number): string {
  if (low.slice(0, 7) === high.slice(0, 7)) return `${Number(low.slice(8))} and ${dayWords(high, thisYear)}`;
  return `${dayWords(low, thisYear)} and ${dayWords(high, thisYear)}`;
}

/** "most likely 12 October, between 3 and 24 October". */
export function spreadWords(days: { readonly low: LocalDate; readonly likely: LocalDate; readonly high: LocalDate }, thisYear: number): string {
  if (days.low === days.high) return dayWords(days.likely, thisYear);
  return `most likely ${dayWords(days.likely, thisYear)}, between ${betweenWords(days.low, days.high, thisYear)}`;
}

/** "week 30, 26 July – 1 August"; inside one month "week 33, 16–22 August". */
export function weekWords(week: IsoWeek, thisYear: number): string {
  const from = weekStart(week);
  const to = weekEnd(week);
  const span = from.slice(0, 7) === to.slice(0, 7) ? `${Number(from.slice(8))}–${dayWords(to, thisYear)}` : `${dayWords(from, thisYear)} – ${dayWords(to, thisYear)}`;
  return `week ${weekNumber(week)}, ${span}`;
}

/** "week 24", "weeks 24–31". */
export function weekSpanWords(first: IsoWeek, last: IsoWeek): string {
  return first === last ? `week ${weekNumber(first)}` : `weeks ${weekNumber(first)}–${weekNumber(last)}`;
}

/** "today", "tomorrow", "on Friday" within a week, else the date. */
export function nearDayWords(date: LocalDate, today: LocalDate): string {
  const days = dayNumber(date) - dayNumber(today);
  if (days === 0) return "today";
  if (days === 1) return "tomorrow";
  if (days > 1 && days < 7) return `on ${weekdayOf(date)}`;
  return `on ${dayWords(date, yearOf(today))}`;
}

/** "2 h 40", "35 min". */
export function minutesWords(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest}${NBSP}min`;
  return rest === 0 ? `${hours}${NBSP}h` : `${hours}${NBSP}h${NBSP}${rest}`;
}

/** A chance of 0–1 as seasons: "in every season", "in 1 season of 20", "in 16 seasons of 20". */
export function seasonsWords(chance: number): string {
  const of20 = Math.round(chance * 20);
  if (of20 >= 20) return "in every season";
  if (of20 <= 0) return "in less than 1 season of 20";
  return `in ${of20} season${of20 === 1 ? "" : "s"} of 20`;
}

/** "a", "a and b", "a, b and c". */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? "";
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1] as string}`;
}

/** First letter in upper case, the rest as it is. */
export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The six days after a Monday included: the Sunday as words, for "from now to 3 October". */
export function weekEndWords(week: IsoWeek, thisYear: number): string {
  return dayWords(addDays(weekStart(week), 6), thisYear);
}

const isSmall = (grams: number): boolean => grams < 950;
const toFifty = (grams: number): number => Math.round(grams / 50) * 50;
const kilograms = (grams: number): string => (grams >= 19_950 ? String(Math.round(grams / 1000)) : (Math.round(grams / 100) / 10).toFixed(1));
const monthOf = (date: LocalDate): string => MONTHS[Number(date.slice(5, 7)) - 1] as string;
const weekNumber = (week: IsoWeek): number => Number(week.slice(6));
const thousands = (whole: number): string => String(whole).replace(/\B(?=(\d{3})+$)/g, ",");
const WEEKDAYS = ["Thursday", "Friday", "Saturday", "Sunday", "Monday", "Tuesday", "Wednesday"] as const;
/** Day 0, 1 January 1970, was a Thursday. */
const weekdayOf = (date: LocalDate): string => WEEKDAYS[((dayNumber(date) % 7) + 7) % 7] as string;
