/**
 * One sowing's season on a line of days: what was done and seen above it, twenty seasons of the first pick, the spread of the last pick
 * below it, and the amounts by week on the same days. Pixels; pure.
 */
import type { Forecast } from "#shared/contracts/sowings.ts";
import { addWeeks, weekOf, weekStart, type IsoWeek } from "#shared/kernel/iso-week.ts";
import { addDays, daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import { monthsOn, stack } from "../../parts/date-dots.ts";
import type { Ground } from "../../parts/hills.ts";
import { roundSteps } from "../../parts/round-steps.ts";

/** Something that happened, or is to be done, on one day. */
export interface DayMark {
  readonly on: LocalDate;
  readonly words: string;
  /** Sown or planted out: an open circle. */
  readonly begins: boolean;
}

export interface SeasonFacts {
  readonly marks: readonly DayMark[];
  readonly picks: readonly { readonly pickedOn: LocalDate; readonly grams: number }[];
  readonly forecast: Forecast;
  readonly today: LocalDate;
  /** Amounts by week are drawn; what is taken in one go has none. */
  readonly weekly: boolean;
}

export interface PlacedMark {
  readonly mark: DayMark;
  readonly x: number;
  readonly labelX: number;
  readonly labelY: number;
  readonly end: boolean;
}

export interface WeekLane {
  readonly ground: Ground;
  /** Grams by week from the first on the plate. */
  readonly picked: readonly number[];
  readonly low: readonly number[];
  readonly likely: readonly number[];
  readonly high: readonly number[];
  /** Amounts marked beside the lane, grams. */
  readonly scale: readonly number[];
}

export interface SeasonPlate {
  readonly width: number;
  readonly rem: number;
  readonly height: number;
  readonly x: (date: LocalDate) => number;
  /** The line of days. */
  readonly line: number;
  /** Where the days' axis with the months stands. */
  readonly axis: number;
  readonly marks: readonly PlacedMark[];
  readonly dots: readonly { readonly cx: number; readonly cy: number }[];
  readonly radius: number;
  readonly months: readonly { readonly first: LocalDate; readonly x: number; readonly labelled: boolean }[];
  readonly lane: WeekLane | null;
}

const EDGE = 8;
const AFTER_DAYS = 14;
const SHORTEST_DAYS = 100;
const HEAD_REM = 2.4;
const LABEL_REM = 1.25;
/** Rem a letter of the labels takes, at most. */
const LETTER_REM = 0.46;
const LANE_REM = 7.5;
/** A first radish does not fill the page. */
const LEAST_TALL_G = 400;

export function layOutSeason(facts: SeasonFacts, room: { readonly width: number; readonly rem: number }, unitGrams = 1000): SeasonPlate {
  const { width, rem } = room;
  const { forecast, today } = facts;
  const span = daysShown(facts);
  const x = (date: LocalDate): number => EDGE + (daysBetween(span.from, date) / span.days) * (width - 2 * EDGE);
  const ahead = forecast.firstPick !== null && forecast.firstPick.high > today ? forecast.dots : [];
  const radius = Math.min(0.36 * rem, width / 100);
  const levels = levelsOf(facts.marks, x, { width, rem, dotsFrom: ahead.length > 0 ? x([...ahead].sort()[0] as LocalDate) : null });
  const coins = stack([...ahead].sort().map(x), radius, 0);
  const tallest = Math.max(0, ...coins.map(({ cy }) => radius - cy));
  const most = Math.max(-1, ...levels.map(({ level }) => level));
  const line = (HEAD_REM + 0.6) * rem + Math.max((most + 1) * LABEL_REM * rem, tallest, 1.5 * rem);
  const lane = facts.weekly ? laneOf(facts, { x, span, base: line + (2.4 + LANE_REM) * rem, tall: LANE_REM * rem, unitGrams }) : null;
  const axis = lane ? lane.ground.base : line + 2 * rem;
  return {
    width,
    rem,
    height: axis + 1.7 * rem,
    x,
    line,
    axis,
    marks: levels.map(({ mark, level, labelX, end }) => ({ mark, x: x(mark.on), labelX, labelY: line - 0.7 * rem - level * LABEL_REM * rem, end })),
    dots: coins.map(({ cx, cy }) => ({ cx, cy: line + cy })),
    radius,
    months: monthsOn(span.from, span.days, x, width - 3 * rem, 2.6 * rem),
    lane,
  };
}

interface Span {
  readonly from: LocalDate;
  readonly days: number;
}

/** From the sowing, or some weeks before a standing plant's first pick, until a little after the last pick in all but the latest seasons. */
function daysShown({ marks, picks, forecast, today }: SeasonFacts): Span {
  const begun = marks.some(({ begins }) => begins);
  const seen = [...marks.map(({ on }) => on), ...picks.map(({ pickedOn }) => pickedOn), ...(forecast.firstPick ? [forecast.firstPick.low] : [])];
  const begin = begun ? earliest(marks.map(({ on }) => on)) : addDays(earliest([...seen, today]), -40);
  const from = addDays(begin, -7);
  const ends = [today, ...seen, ...(forecast.firstPick ? [forecast.firstPick.high] : []), ...(forecast.lastPick ? [forecast.lastPick.high] : [])];
  const last = ends.reduce((late, date) => (date > late ? date : late));
  return { from, days: Math.max(SHORTEST_DAYS, daysBetween(from, last) + AFTER_DAYS) };
}

const earliest = (dates: readonly LocalDate[]): LocalDate => dates.reduce((early, date) => (date < early ? date : early));

interface Levelled {
  readonly mark: DayMark;
  readonly level: number;
  readonly labelX: number;
  readonly end: boolean;
}

/** Each label on the lowest level where it covers neither another label nor the dots; where the right edge or the dots are near it ends at its day. */
function levelsOf(marks: readonly DayMark[], x: (date: LocalDate) => number, { width, rem, dotsFrom }: { readonly width: number; readonly rem: number; readonly dotsFrom: number | null }): Levelled[] {
  const taken: { from: number; to: number }[][] = [];
  return [...marks]
    .sort((a, b) => a.on.localeCompare(b.on))
    .map((mark) => {
      const at = x(mark.on);
      const wide = mark.words.length * LETTER_REM * rem;
      const limit = dotsFrom !== null && at < dotsFrom ? dotsFrom - 0.5 * rem : width;
      const end = at + wide > limit && at - wide > 0;
      const [from, to] = end ? [at - wide, at + 0.3 * rem] : [at - 0.3 * rem, at + wide];
      const free = taken.findIndex((level) => level.every((other) => to < other.from || from > other.to));
      const level = free < 0 ? taken.length : free;
      (taken[level] ??= []).push({ from, to });
      return { mark, level, labelX: end ? at + 0.25 * rem : at - 0.25 * rem, end };
    });
}

interface LaneRoom {
  readonly x: (date: LocalDate) => number;
  readonly span: Span;
  readonly base: number;
  readonly tall: number;
  readonly unitGrams: number;
}

function laneOf({ forecast, picks, today }: SeasonFacts, { x, span, base, tall, unitGrams }: LaneRoom): WeekLane {
  const first = weekOf(span.from);
  const count = Math.ceil((span.days + 7) / 7);
  const weeks = Array.from({ length: count }, (_, n): IsoWeek => addWeeks(first, n));
  const by = new Map(forecast.weeks.map((week) => [week.week, week.grams]));
  const coming = (end: "low" | "likely" | "high"): number[] => weeks.map((week) => (week < weekOf(today) ? 0 : (by.get(week)?.[end] ?? 0)));
  const pickedIn = new Map<IsoWeek, number>();
  for (const { pickedOn, grams } of picks) pickedIn.set(weekOf(pickedOn), (pickedIn.get(weekOf(pickedOn)) ?? 0) + grams);
  const picked = weeks.map((week) => pickedIn.get(week) ?? 0);
  const [low, likely, high] = [coming("low"), coming("likely"), coming("high")];
  const tallest = Math.max(LEAST_TALL_G, ...high, ...picked) * 1.05;
  const [start, week] = [x(weekStart(first)), x(addDays(weekStart(first), 7)) - x(weekStart(first))];
  const now = weeks.indexOf(weekOf(today));
  const ground: Ground = { x: (n) => start + n * week, y: (grams) => base - (grams / tallest) * tall, base, weeks: count, now: now < 0 ? 0 : now };
  const scale = roundSteps(tallest / unitGrams, 3).map((n) => n * unitGrams);
  return { ground, picked, low, likely, high, scale };
}
