/** Where things stand on the phone's strip of the year. Pixels; pure. */
import type { Calendar } from "#shared/contracts/calendar.ts";
import { weekStart } from "#shared/kernel/iso-week.ts";
import { daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import type { Ground } from "../../parts/hills.ts";
import type { YearFigures } from "./year.ts";

const HEIGHT_REM = 6.5;
/** Words in the picture stop growing where the phone is too narrow for larger ones. */
const REMS_ACROSS = 16;

export interface StripPlate {
  readonly width: number;
  readonly rem: number;
  readonly base: number;
  readonly ground: Ground;
  readonly months: readonly { readonly month: number; readonly x: number }[];
  readonly frosts: readonly number[];
  readonly today: number | null;
}

export function layOutStrip(figures: YearFigures, frost: Calendar["frost"], room: { readonly width: number; readonly rem: number }): StripPlate {
  const rem = Math.min(room.rem, room.width / REMS_ACROSS);
  const base = HEIGHT_REM * rem;
  const weeks = Math.max(1, figures.weeks.length);
  const tallest = Math.max(500, ...figures.total.high, ...figures.total.picked, ...figures.total.eats) * 1.05;
  const firstDay = figures.weeks[0]?.starts ?? weekStart("1970-W01");
  const x = (week: number): number => (week * room.width) / weeks;
  const xOfDay = (date: LocalDate): number => x(daysBetween(firstDay, date) / 7);
  const within = (px: number): boolean => px >= 0 && px <= room.width;
  const year = figures.weeks[Math.floor(weeks / 2)]?.starts.slice(0, 4) ?? "1970";
  const today = xOfDay(figures.today);
  return {
    width: room.width,
    rem,
    base,
    ground: { x, y: (grams) => base - (grams * (base - rem)) / tallest, base, weeks, now: figures.now },
    months: Array.from({ length: 12 }, (_, month) => ({ month, x: Math.max(0, xOfDay(`${year}-${String(month + 1).padStart(2, "0")}-01`)) })),
    frosts: [frost.lastSpring, frost.firstAutumn].flatMap((band) => (band && within(xOfDay(band.likely)) ? [xOfDay(band.likely)] : [])),
    today: within(today) ? today : null,
  };
}
