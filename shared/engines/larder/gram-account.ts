/**
 * Question: where did every gram of a crop go in a season? Whole grams.
 * Picked = trimmed + eaten + into batches + given + composted or spoiled + on hand + unaccounted (product design, item 10).
 * What is unaccounted is reckoned by itself, from three parts, and not as what is left over: so the sum can be checked.
 */
import { yearOf, type LocalDate } from "../../kernel/local-date.ts";
import { balanceOf } from "./balance.ts";
import type { LotEntry, LotHistory } from "./types.ts";

export interface PickedGrams {
  readonly crop: string;
  readonly on: LocalDate;
  readonly grams: number;
}

/** Produce as picked, counted in grams. */
export interface CropLot extends LotHistory {
  readonly crop: string;
  /** The season of its produce, also of what is taken from it the year after. */
  readonly madeOn: LocalDate;
}

export interface CropSeason {
  readonly crop: string;
  readonly season: number;
  readonly picked: number;
  readonly trimmed: number;
  readonly eaten: number;
  readonly batches: number;
  readonly given: number;
  readonly composted: number;
  readonly onHand: number;
  /** notPutAway + missingAtRecounts − owed. */
  readonly unaccounted: number;
  readonly notPutAway: number;
  readonly missingAtRecounts: number;
  /** Taken though the book had none of it. */
  readonly owed: number;
}

/** The calendar year; south of the equator July to June, named by the year it ends in. */
export function seasonOfDay(day: LocalDate, southern: boolean): number {
  return yearOf(day) + (southern && day.slice(5, 7) >= "07" ? 1 : 0);
}

/** One row for each crop and season that anything is known of, by season and crop. */
export function gramAccount(picks: readonly PickedGrams[], lots: readonly CropLot[], southern: boolean): CropSeason[] {
  const rows = new Map<string, Sums>();
  const row = (crop: string, day: LocalDate): Sums => {
    const season = seasonOfDay(day, southern);
    const key = `${season} ${crop}`;
    const sums = rows.get(key) ?? { crop, season, picked: 0, put: 0, trimmed: 0, eaten: 0, batches: 0, given: 0, composted: 0, onHand: 0, missing: 0, owed: 0 };
    rows.set(key, sums);
    return sums;
  };
  for (const { crop, on, grams } of picks) row(crop, on).picked += grams;
  for (const lot of lots) {
    const sums = row(lot.crop, lot.madeOn);
    for (const entry of lot.entries) enter(sums, entry);
    const { left, missingAtRecounts, owed } = balanceOf(lot);
    sums.onHand += left;
    sums.missing += missingAtRecounts;
    sums.owed += owed;
  }
  return [...rows.values()].map(toSeason).sort((a, b) => a.season - b.season || (a.crop < b.crop ? -1 : 1));
}

/** Whether the account closes to the gram. */
export function closes(row: CropSeason): boolean {
  return row.picked === row.trimmed + row.eaten + row.batches + row.given + row.composted + row.onHand + row.unaccounted;
}

/** The lines in which two reckonings of one account differ, by crop, season and line; none when they agree. */
export function differencesOf(one: readonly CropSeason[], other: readonly CropSeason[]): string[] {
  const lines = (rows: readonly CropSeason[]): string[] => rows.flatMap((row) => Object.entries(row).map(([line, value]) => `${row.crop} ${row.season} ${line} ${value}`));
  const [first, second] = [new Set(lines(one)), new Set(lines(other))];
  return [...lines(one).filter((line) => !second.has(line)), ...lines(other).filter((line) => !first.has(line))];
}

interface Sums {
  readonly crop: string;
  readonly season: number;
  picked: number;
  put: number;
  trimmed: number;
  eaten: number;
  batches: number;
  given: number;
  composted: number;
  onHand: number;
  missing: number;
  owed: number;
}

function enter(sums: Sums, { kind, takenFor, amount }: LotEntry): void {
  if (kind === "put") sums.put += amount;
  else if (kind === "give") sums.given += amount;
  else if (kind === "compost") sums.composted += amount;
  else if (kind === "take" && takenFor === "trim") sums.trimmed += amount;
  else if (kind === "take" && takenFor === "batch") sums.batches += amount;
  else if (kind === "take") sums.eaten += amount;
}

function toSeason({ put, missing, ...sums }: Sums): CropSeason {
  const notPutAway = sums.picked - put;
  return { ...sums, notPutAway, missingAtRecounts: missing, unaccounted: notPutAway + missing - sums.owed };
}
