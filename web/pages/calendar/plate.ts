/** Where everything stands on the year sheet: one scale of kilograms for all hills, one row for each crop. Pixels; pure. */
import { weekStart } from "#shared/kernel/iso-week.ts";
import { daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import type { Ground } from "../../parts/hills.ts";
import { roundSteps } from "../../parts/round-steps.ts";
import { rowNames } from "../../parts/crop-names.ts";
import { type CropSeries, type YearFigures } from "./year.ts";

/** Rem kept left for names and right for the two columns of figures; calendar.css lays the week rule over the same measure. */
export const LEFT_REM = 11;
export const RIGHT_REM = 9;
const HEAD_REM = 3.4;
const STRIP_REM = 9;
/** No garden is drawn larger than this, so that a first radish does not fill the page. */
const MOST_REM_A_KG = 2.5;
/** Lowest row; lower still where there are many, so that the chosen week stays within reach. */
const ROW_REM = 1.85;
const ROW_REM_OF_MANY = 1.45;
const MANY = 14;
const LINE_REM = 1.15;
/** Letters of the widest common serif that fit the space for names. */
const NAME_LETTERS = 18;

export interface PlateRow {
  readonly series: CropSeries;
  /** The name in one line or two. */
  readonly name: readonly string[];
  readonly base: number;
}

export interface Plate {
  readonly width: number;
  readonly rem: number;
  readonly left: number;
  readonly end: number;
  /** Width of a week. */
  readonly week: number;
  /** Room for long labels. */
  readonly roomy: boolean;
  readonly head: number;
  readonly stripBase: number;
  readonly bottom: number;
  readonly height: number;
  readonly rows: readonly PlateRow[];
  /** Left edge of a week by index. */
  readonly x: (week: number) => number;
  readonly xOfDay: (date: LocalDate) => number;
  /** Ground of the strip or of a row. */
  readonly ground: (base: number) => Ground;
  /** Amounts marked beside the strip, grams: round figures of the unit that the figures are read in. */
  readonly marks: readonly number[];
  readonly weekAt: (px: number) => number;
}

export function layOut(figures: YearFigures, room: { readonly width: number; readonly rem: number }, unitGrams = 1000): Plate {
  const { width, rem } = room;
  const weeks = figures.weeks.length;
  const [left, end] = [LEFT_REM * rem, width - RIGHT_REM * rem];
  const week = (end - left) / Math.max(1, weeks);
  const across = (index: number): number => left + index * week;
  const tallest = tallestGrams(figures);
  const pxPerGram = Math.min((STRIP_REM * rem) / (tallest * 1.08), (MOST_REM_A_KG * rem) / 1000);
  const head = HEAD_REM * rem;
  const stripBase = head + Math.max(tallest * 1.08 * pxPerGram, 4 * rem);
  const names = rowNames(figures.crops.map(({ row }) => row));
  const lowest = (figures.crops.length > MANY ? ROW_REM_OF_MANY : ROW_REM) * rem;
  let bottom = stripBase + 0.5 * rem;
  const rows = figures.crops.map((series): PlateRow => {
    const name = nameLines(names.get(series.row.crop)?.label ?? series.row.name);
    bottom += Math.max(lowest + (name.length - 1) * LINE_REM * rem, series.peak * pxPerGram + 0.75 * rem);
    return { series, name, base: bottom };
  });
  const firstDay = figures.weeks[0]?.starts ?? weekStart("1970-W01");
  return {
    width,
    rem,
    left,
    end,
    week,
    roomy: week > 0.75 * rem,
    head,
    stripBase,
    bottom,
    height: bottom + 2.75 * rem,
    rows,
    x: across,
    xOfDay: (date) => across(daysBetween(firstDay, date) / 7),
    ground: (base) => ({ x: across, y: (grams) => base - grams * pxPerGram, base, weeks, now: figures.now }),
    marks: roundSteps(tallest / unitGrams, 3).map((n) => n * unitGrams),
    weekAt: (px) => Math.max(0, Math.min(weeks - 1, Math.floor((px - left) / week))),
  };
}

/** The sum sets the scale; a crop that waits and is not in the sum may not tower over it by more than half. */
function tallestGrams({ total, crops }: YearFigures): number {
  return Math.max(500, ...total.high, ...total.picked, ...total.eats, ...crops.map(({ peak }) => peak / 1.5));
}

export function nameLines(name: string): string[] {
  if (name.length <= NAME_LETTERS) return [name];
  const words = name.split(" ");
  const lines = [""];
  for (const word of words) {
    const last = lines[lines.length - 1] as string;
    if (last !== "" && lines.length < 2 && last.length + 1 + word.length > NAME_LETTERS) lines.push(word);
    else lines[lines.length - 1] = last === "" ? word : `${last} ${word}`;
  }
  return lines;
}

/** First day of each month of the year shown, with its end, as far as they lie on the plate. */
export function monthSpans(figures: YearFigures, plate: Plate): { readonly month: number; readonly from: number; readonly to: number }[] {
  const year = Number(figures.weeks[Math.floor(figures.weeks.length / 2)]?.starts.slice(0, 4) ?? 1970);
  const first = (month: number): LocalDate => (month > 11 ? `${year + 1}-01-01` : `${year}-${String(month + 1).padStart(2, "0")}-01`);
  const onPlate = (px: number): number => Math.max(plate.left, Math.min(plate.end, px));
  return Array.from({ length: 12 }, (_, month) => ({ month, from: onPlate(plate.xOfDay(first(month))), to: onPlate(plate.xOfDay(first(month + 1))) }));
}
