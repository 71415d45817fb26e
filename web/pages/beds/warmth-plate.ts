/** Warmth against the usual on an axis of days. Pixels; pure. */
import { daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import { monthsOn, type DotsPlate } from "../../parts/date-dots.ts";
import type { Point } from "../../parts/hills.ts";
import { roundSteps } from "../../parts/round-steps.ts";
import { degreeDays, type Warmth } from "./warmth-words.ts";

export interface WarmthPlate {
  readonly width: number;
  readonly height: number;
  readonly base: number;
  readonly x: (date: LocalDate) => number;
  readonly y: (cd: number) => number;
  readonly low: readonly Point[];
  readonly likely: readonly Point[];
  readonly high: readonly Point[];
  /** This season, up to today. */
  readonly own: readonly Point[];
  /** Degree-days marked beside the picture, and what they are called. */
  readonly scale: readonly { readonly cd: number; readonly words: string }[];
  readonly months: DotsPlate["months"];
}

const TALL_REM = 9;
const EDGE = 8;
/** Room for the word at the end of the line of what is needed. */
const WORD_REM = 4.5;

export function layOutWarmth({ points, needsCd }: Warmth, { width, rem }: { readonly width: number; readonly rem: number }): WarmthPlate {
  const [first, last] = [points[0]?.on as LocalDate, points[points.length - 1]?.on as LocalDate];
  const days = Math.max(1, daysBetween(first, last));
  const most = 1.06 * Math.max(needsCd, ...points.map((point) => Math.max(point.usualCd.high, point.gainedCd ?? 0)));
  const base = (TALL_REM + 1) * rem;
  const x = (date: LocalDate): number => EDGE + (daysBetween(first, date) / days) * (width - 2 * EDGE - WORD_REM * rem);
  const y = (cd: number): number => base - (cd / most) * TALL_REM * rem;
  const line = (of: (point: Warmth["points"][number]) => number): Point[] => points.map((point) => [x(point.on), y(of(point))]);
  const perDegree = degreeDays(1000) / 1000;
  return {
    width,
    height: base + 1.7 * rem,
    base,
    x,
    y,
    low: line((point) => point.usualCd.low),
    likely: line((point) => point.usualCd.likely),
    high: line((point) => point.usualCd.high),
    own: points.flatMap((point): Point[] => (point.gainedCd === null ? [] : [[x(point.on), y(point.gainedCd)]])),
    scale: roundSteps(most * perDegree, 3).map((n) => ({ cd: n / perDegree, words: String(n) })),
    months: monthsOn(first, days, x, width - 3 * rem, 2.6 * rem),
  };
}
