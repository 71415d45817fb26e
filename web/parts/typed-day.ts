/** Reads a day as people type it: “today”, “mid April”, “12 May”, “May 12”, “12.5.”, “12/05/2027”, “2027-05-12”. Day before month. */
import { addDays, daysBetween, isLocalDate, type LocalDate } from "#shared/kernel/local-date.ts";
import { day as dayWords, MONTHS } from "../format.ts";
import { got, wrong, type Typed } from "./typed.ts";

export interface TypedDay {
  readonly date: LocalDate;
  /** Written as “mid April”: kept as the middle of it, give or take five days. */
  readonly about: boolean;
}

/** Thirds of a month: 5, 15 and 25 stand for early, mid and late. */
const THIRDS: Readonly<Record<string, number>> = { early: 5, mid: 15, middle: 15, late: 25 };
const RELATIVE: Readonly<Record<string, number>> = { today: 0, now: 0, yesterday: -1, tomorrow: 1 };

/** Without a year the nearest such day to `today` is meant; with `latest` one that is not after it. */
export function readDay(text: string, today: LocalDate, latest?: "today"): Typed<TypedDay> {
  const typed = text.trim().toLowerCase().replace(/(\d)(?:st|nd|rd|th)\b/g, "$1").replace(/[\s\u00a0]+/g, " ");
  if (typed === "") return wrong("No day is written yet.", "Write 12 April, today, mid April or 2027-04-12.");
  const shift = RELATIVE[typed];
  if (shift !== undefined) return checked({ date: addDays(today, shift), about: false }, today, latest);
  const parts = partsOf(typed);
  if (!parts) return wrong("That is not a date we can read.", "Write 12 April, today, mid April or 2027-04-12.");
  const { month, dayOfMonth, about } = parts;
  const years = parts.year === null ? nearYears(today) : [parts.year];
  const dates = years.map((year) => iso(year, month, dayOfMonth)).filter(isLocalDate);
  if (dates.length === 0) return noSuchDay(month, dayOfMonth, parts.year ?? Number(today.slice(0, 4)));
  const allowed = latest === "today" ? dates.filter((date) => date <= today) : dates;
  const nearest = (allowed.length > 0 ? allowed : dates).reduce((best, date) => (distance(date, today) < distance(best, today) ? date : best));
  return checked({ date: nearest, about }, today, latest);
}

function checked(read: TypedDay, today: LocalDate, latest?: "today"): Typed<TypedDay> {
  if (latest === "today" && read.date > today) return wrong("That day is still to come.", "Write today or a day before it.");
  const words = dayWords(read.date, today);
  if (read.about) return got(read, `Kept as about ${words}, give or take five days.`);
  return got(read, read.date === today ? undefined : `Read as ${words}.`);
}

interface DayParts {
  readonly year: number | null;
  readonly month: number;
  readonly dayOfMonth: number;
  readonly about: boolean;
}

function partsOf(typed: string): DayParts | null {
  const isoLike = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(typed);
  if (isoLike) return exact(Number(isoLike[1]), Number(isoLike[2]), Number(isoLike[3]));
  const figures = /^(\d{1,2})[./-] ?(\d{1,2})(?:[./-] ?(\d{4}|\d{2})?)?$/.exec(typed);
  if (figures) return exact(yearOf(figures[3]), Number(figures[2]), Number(figures[1]));
  const named = /^(\d{1,2}|early|mid|middle|late)[ -]?(?:of )?\.? ?([a-z]{3,})\.?,?(?: (\d{4}))?$/.exec(typed);
  const monthFirst = /^([a-z]{3,})\.? (\d{1,2}),?(?: (\d{4}))?$/.exec(typed);
  const month = monthNumber(named?.[2] ?? monthFirst?.[1]);
  if (month === null) return null;
  const dayText = named?.[1] ?? monthFirst?.[2] ?? "";
  const third = THIRDS[dayText];
  const year = yearOf(named?.[3] ?? monthFirst?.[3]);
  return third === undefined ? exact(year, month, Number(dayText)) : { year, month, dayOfMonth: third, about: true };
}

function exact(year: number | null, month: number, dayOfMonth: number): DayParts | null {
  return month >= 1 && month <= 12 && dayOfMonth >= 1 ? { year, month, dayOfMonth, about: false } : null;
}

const yearOf = (text: string | undefined): number | null => (text === undefined ? null : text.length === 2 ? 2000 + Number(text) : Number(text));

function monthNumber(text: string | undefined): number | null {
  if (text === undefined) return null;
  const at = MONTHS.findIndex((name) => name.toLowerCase().startsWith(text) || text === "sept");
  return text === "sept" ? 9 : at < 0 ? null : at + 1;
}

function noSuchDay(month: number, dayOfMonth: number, year: number): Typed<never> {
  const name = MONTHS[month - 1] as string;
  const last = [31, 30, 29, 28].find((n) => isLocalDate(iso(year, month, n))) ?? 28;
  const next = MONTHS[month % 12] as string;
  const works = dayOfMonth > 31 ? `Write a day from 1 to ${last} ${name}.` : `Write ${last} ${name} or 1 ${next}.`;
  return wrong(`${name} has no ${ordinal(dayOfMonth)}.`, works);
}

function ordinal(n: number): string {
  const teen = n % 100 >= 11 && n % 100 <= 13;
  return `${n}${teen ? "th" : (["th", "st", "nd", "rd"][n % 10] ?? "th")}`;
}

const nearYears = (today: LocalDate): number[] => [-1, 0, 1].map((step) => Number(today.slice(0, 4)) + step);
const distance = (date: LocalDate, today: LocalDate): number => Math.abs(daysBetween(today, date));
const iso = (year: number, month: number, dayOfMonth: number): string =>
  `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(dayOfMonth).padStart(2, "0")}`;
