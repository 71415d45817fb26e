/** Which bed is free when: a year of weeks, each bed with as many lanes as it has sowings standing beside each other. Pixels; pure. */
import type { Bed } from "#shared/contracts/beds.ts";
import type { Forecast } from "#shared/contracts/sowings.ts";
import { daysBetween, type LocalDate } from "#shared/kernel/local-date.ts";

/** One sowing on the strip; `from` null where it stands from before, `pickFrom` null where no pick is likely. */
export interface Stand {
  readonly id: string;
  readonly bedId: string;
  readonly name: string;
  readonly from: LocalDate | null;
  readonly pickFrom: LocalDate | null;
  readonly pickUntil: LocalDate | null;
  /** The sowing that is being written. */
  readonly planned: boolean;
}

export interface LaneBar {
  readonly stand: Stand;
  /** Ground line of its lane. */
  readonly y: number;
  readonly from: number;
  /** Where the picking bar begins and ends. */
  readonly pick: { readonly from: number; readonly to: number } | null;
  readonly to: number;
  /** Its first day lies on the plate. */
  readonly begins: boolean;
}

export interface LanesPlate {
  readonly width: number;
  readonly rem: number;
  readonly left: number;
  readonly end: number;
  readonly height: number;
  readonly x: (date: LocalDate) => number;
  readonly months: readonly { readonly first: LocalDate; readonly from: number; readonly to: number }[];
  readonly beds: readonly { readonly bed: Bed; readonly top: number; readonly bottom: number; readonly bars: readonly LaneBar[] }[];
}

const LEFT_REM = 9.5;
const RIGHT_REM = 7;
const HEAD_REM = 1.9;
const LANE_REM = 1.65;
const DAYS = 365;
/** Rem a letter takes in the labels, at most. */
const LETTER_REM = 0.52;

export function layOutLanes(beds: readonly Bed[], stands: readonly Stand[], today: LocalDate, room: { readonly width: number; readonly rem: number }): LanesPlate {
  const { width, rem } = room;
  const [left, end] = [LEFT_REM * rem, width - RIGHT_REM * rem];
  const start = firstOfMonth(today, -6);
  const x = (date: LocalDate): number => left + ((end - left) * daysBetween(start, date)) / DAYS;
  let y = HEAD_REM * rem;
  const rows = beds.map((bed) => {
    const top = y;
    const bars = inLanes(stands.filter((stand) => stand.bedId === bed.id), { x, left, end, rem, top });
    y += Math.max(1, new Set(bars.map((bar) => bar.y)).size) * LANE_REM * rem + 0.7 * rem;
    return { bed, top, bottom: y, bars };
  });
  const months = Array.from({ length: 12 }, (_, n) => firstOfMonth(start, n)).map((first, n) => ({ first, from: Math.max(left, x(first)), to: Math.min(end, x(firstOfMonth(start, n + 1))) }));
  return { width, rem, left, end, height: y + 4, x, months, beds: rows };
}

interface LaneRoom {
  readonly x: (date: LocalDate) => number;
  readonly left: number;
  readonly end: number;
  readonly rem: number;
  readonly top: number;
}

/** The first lane that is free again, counting the room that the name takes. */
function inLanes(stands: readonly Stand[], { x, left, end, rem, top }: LaneRoom): LaneBar[] {
  const within = (px: number): number => Math.max(left, Math.min(end, px));
  const freeFrom: number[] = [];
  const sorted = [...stands].sort((a, b) => (a.from ?? "").localeCompare(b.from ?? ""));
  return sorted.flatMap((stand): LaneBar[] => {
    const from = stand.from === null ? left : x(stand.from);
    const to = stand.pickUntil === null ? end : x(stand.pickUntil);
    if (to < left || from > end) return [];
    const free = freeFrom.findIndex((px) => px <= within(from) - 0.5 * rem);
    const lane = free < 0 ? freeFrom.length : free;
    freeFrom[lane] = Math.max(within(to), within(from) + (stand.name.length * LETTER_REM + 1) * rem);
    const pick = stand.pickFrom === null || x(stand.pickFrom) > end ? null : { from: within(x(stand.pickFrom)), to: within(to) };
    return [{ stand, y: top + lane * LANE_REM * rem + 1.55 * rem, from: within(from), pick, to: within(to), begins: from >= left && stand.from !== null }];
  });
}

export function standOf(sowing: { readonly id: string; readonly bedId: string; readonly plantedOutOn?: string | undefined; readonly sownOn?: string | undefined }, name: string, forecast: Forecast, planned = false): Stand {
  return {
    id: sowing.id,
    bedId: sowing.bedId,
    name,
    from: sowing.plantedOutOn ?? sowing.sownOn ?? null,
    pickFrom: forecast.firstPick?.likely ?? null,
    pickUntil: forecast.lastPick?.likely ?? forecast.firstPick?.likely ?? null,
    planned,
  };
}

/** First day of the month that lies `months` after that of the date. */
function firstOfMonth(date: LocalDate, months: number): LocalDate {
  const count = Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7)) - 1 + months;
  return `${Math.floor(count / 12)}-${String((count % 12) + 1).padStart(2, "0")}-01`;
}

export const onPlate = (plate: LanesPlate, date: LocalDate): boolean => plate.x(date) >= plate.left && plate.x(date) <= plate.end;
