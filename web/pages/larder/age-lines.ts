/** Lots from the day they were put in to the day they are best until, on one axis of dates. Pixels; pure. */
import type { LarderLot } from "#shared/contracts/lots.ts";
import { addDays, daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";
import { urgencyOf, type Urgency } from "./lot-words.ts";

export interface AgeLine {
  readonly id: string;
  readonly from: number;
  readonly until: number;
  readonly urgency: Urgency;
}

export interface AgePlate {
  readonly lines: readonly AgeLine[];
  readonly today: number;
  readonly months: readonly { readonly first: LocalDate; readonly x: number; readonly labelled: boolean }[];
}

/** At least so many days to each side, so that a single fresh lot has an axis. */
const LEAST_DAYS = 60;

export function layOutAges(lots: readonly LarderLot[], today: LocalDate, left: number, right: number, labelPx: number): AgePlate {
  const dated = lots.filter(({ bestUntil }) => bestUntil !== null);
  const first = [addDays(today, -LEAST_DAYS), ...dated.map(({ madeOn }) => madeOn)].reduce((a, b) => (a < b ? a : b));
  const last = [addDays(today, LEAST_DAYS), ...dated.map(({ bestUntil }) => bestUntil ?? today)].reduce((a, b) => (a > b ? a : b));
  const days = daysBetween(first, last);
  const x = (date: LocalDate): number => left + (daysBetween(first, date) / days) * (right - left);
  const lines = dated.map((lot) => ({ id: lot.id, from: x(lot.madeOn), until: x(lot.bestUntil ?? today), urgency: urgencyOf(lot, today) }));
  return { lines, today: x(today), months: monthsOn(first, last, x, x(today), labelPx) };
}

function monthsOn(first: LocalDate, last: LocalDate, x: (date: LocalDate) => number, todayX: number, labelPx: number): AgePlate["months"] {
  const months: { first: LocalDate; x: number; labelled: boolean }[] = [];
  let month = `${first.slice(0, 7)}-01`;
  let labelled = -Infinity;
  while (month <= last) {
    if (month >= first) {
      const at = x(month);
      const room = at - labelled >= labelPx && Math.abs(at - todayX) >= labelPx;
      if (room) labelled = at;
      if (room || months.length === 0) months.push({ first: month, x: at, labelled: room });
    }
    month = `${addDays(month, 32).slice(0, 7)}-01`;
  }
  return months;
}
