/** Past spans as bars round their likely day, with what came as a mark: one row for each sowing, days earlier to the left. Pixels; pure. */
import { daysBetween } from "#shared/kernel/local-date.ts";
import { roundSteps } from "../../parts/round-steps.ts";
import type { TrackRow } from "./record-words.ts";

export interface SpansPlate {
  readonly width: number;
  readonly height: number;
  readonly head: number;
  readonly zero: number;
  readonly rowTall: number;
  readonly rows: readonly { readonly row: TrackRow; readonly y: number; readonly from: number; readonly to: number; readonly came: number; readonly inside: boolean }[];
  /** Days marked on the axis, the likely day at nought. */
  readonly scale: readonly { readonly days: number; readonly x: number }[];
}

/** The latest so many are drawn, in order of their coming; the list has them all. */
export const MOST_DRAWN = 40;
const NAME_REM = 9;
const HEAD_REM = 2.2;
const ROW_REM = 1.25;
/** A mark further off stands at the edge, days. */
const FURTHEST_DAYS = 90;

export function drawn(rows: readonly TrackRow[]): TrackRow[] {
  return rows.filter((row) => !row.chosen && row.atSowing.firstPick !== null).slice(0, MOST_DRAWN).reverse();
}

export function layOutSpans(rows: readonly TrackRow[], { width, rem }: { readonly width: number; readonly rem: number }): SpansPlate {
  const spans = rows.flatMap((row) => {
    const band = row.atSowing.firstPick;
    return band === null ? [] : [{ row, low: daysBetween(band.likely, band.low), high: daysBetween(band.likely, band.high), came: row.atSowing.daysLater ?? 0 }];
  });
  const furthest = Math.min(FURTHEST_DAYS, Math.max(14, ...spans.flatMap(({ low, high, came }) => [-low, high, Math.abs(came)])) + 2);
  const left = Math.min(NAME_REM * rem, width * 0.34);
  const x = (days: number): number => left + ((Math.max(-furthest, Math.min(furthest, days)) + furthest) / (2 * furthest)) * (width - left - 6);
  const head = HEAD_REM * rem;
  const rowTall = ROW_REM * rem;
  const steps = roundSteps(furthest, 2);
  return {
    width,
    height: head + spans.length * rowTall + 0.4 * rem,
    head,
    zero: x(0),
    rowTall,
    rows: spans.map(({ row, low, high, came }, i) => ({ row, y: head + (i + 0.5) * rowTall, from: x(low), to: x(high), came: x(came), inside: row.atSowing.inside })),
    scale: [...steps.map((days) => -days).reverse(), 0, ...steps].map((days) => ({ days, x: x(days) })),
  };
}
