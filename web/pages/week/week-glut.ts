/** The week's own sentence and its four-week picture: what is over, of what, and where the bars stand. Pure. */
import type { CalendarWeek } from "#shared/contracts/calendar.ts";
import { amount, capital, count, listed, weekName } from "../../format.ts";
import type { CropNames } from "../../parts/crop-names.ts";

export interface GlutSentence {
  readonly before: string;
  /** Set in the surplus colour; empty in a calm week. */
  readonly over: string;
  readonly after: string;
}

const LEAST_G = 50;
const MOST_NAMED = 3;

/** “This week 9.8 kg is over, most of it courgettes and tomatoes.” `thisWeek`: it is the week of today. */
export function glutSentence(week: CalendarWeek, names: CropNames, thisWeek: boolean): GlutSentence {
  const when = thisWeek ? "this week" : `in ${weekName(week.week)}`;
  if (week.surplusGrams < LEAST_G) {
    const planned = week.planned.length > 0 ? "; what was over has its place in the plan" : "";
    return { before: `Nothing is over ${when}${planned}.`, over: "", after: "" };
  }
  return { before: `${capital(when)} `, over: `${amount(week.surplusGrams)} is over`, after: `${overWords(week, names)}.` };
}

/** “, most of it courgettes and tomatoes” only where they are more than half; else the crops are named and the rest counted. */
function overWords(week: CalendarWeek, names: CropNames): string {
  const over = week.crops.filter(({ surplusGrams, waits }) => !waits && surplusGrams >= LEAST_G).sort((a, b) => b.surplusGrams - a.surplusGrams);
  if (over.length === 0) return "";
  const all = over.reduce((sum, { surplusGrams }) => sum + surplusGrams, 0);
  const word = ({ crop, name }: CalendarWeek["crops"][number]): string => names.get(crop)?.word ?? name;
  const first = over.slice(0, MOST_NAMED);
  let grams = 0;
  const most = first.findIndex(({ surplusGrams }) => (grams += surplusGrams) * 2 > all);
  if (over.length <= MOST_NAMED && most === over.length - 1) return `: ${listed(over.map(word))}`;
  if (most >= 0) return `, most of it ${listed(first.slice(0, most + 1).map(word))}`;
  return `: ${first.map(word).join(", ")} and ${count(over.length - first.length, "other crop", "other crops")}`;
}

export interface WeekBar {
  readonly eaten: number;
  readonly over: number;
  readonly high: number;
}

/** Widths on one scale for all weeks: what is eaten or planned, what is over, and how far the high end reaches. */
export function weekBars(weeks: readonly CalendarWeek[], width: number): WeekBar[] {
  const most = Math.max(1000, ...weeks.map(({ grams }) => grams.high));
  const x = (grams: number): number => (grams / most) * width;
  return weeks.map(({ grams, surplusGrams }) => {
    const over = Math.min(surplusGrams, grams.likely);
    return { eaten: x(grams.likely - over), over: x(over), high: x(grams.high) };
  });
}
