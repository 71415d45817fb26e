/** The rows of a season's programme, one named function for each rule of README.md, "The programme". */
import { KG, type BatchColumns, type CourseColumns, type SeasonColumns } from "./model-columns.ts";
import type { ProgrammeWriter } from "./programme.ts";
import type { Method, Season } from "./types.ts";

type Entry = readonly [number, number];
type Grid = readonly (readonly (BatchColumns | null)[])[];

export function writeRows(season: Season, columns: SeasonColumns, writer: ProgrammeWriter): void {
  const several = season.scenarios.length > 1;
  sessions(season, columns.booked, writer);
  weeklyLimits(season, columns.booked, writer);
  columns.courses.forEach((course, s) => {
    if (several) {
      sessions(season, course.made, writer);
      weeklyLimits(season, course.made, writer);
      noMoreThanBooked(season, columns.booked, course.made, writer);
    }
    produceBalance(season, course, s, writer);
    storeBalance(season, course, writer);
    eatingLimit(season, course, writer);
    consumedLimits(season, course.made, writer);
    heldLimits(season, course, writer);
  });
}

/** min · y ≤ n ≤ most · y. */
function sessions(season: Season, grid: Grid, writer: ProgrammeWriter): void {
  season.methods.forEach((method, m) => {
    for (const cell of grid[m] ?? []) {
      if (!cell || cell.y < 0) continue;
      writer.row(-Infinity, 0, [[cell.n, 1], [cell.y, -cell.most]]);
      writer.row(0, Infinity, [[cell.n, 1], [cell.y, -Math.max(1, method.sessionBatches.min)]]);
    }
  });
}

function noMoreThanBooked(season: Season, booked: Grid, made: Grid, writer: ProgrammeWriter): void {
  season.methods.forEach((method, m) => {
    if (method.recourse) return;
    (made[m] ?? []).forEach((cell, t) => {
      const top = booked[m]?.[t];
      if (!cell) return;
      writer.row(-Infinity, 0, top ? [[cell.n, 1], [top.n, -1]] : [[cell.n, 1]]);
      if (top && cell.y >= 0 && top.y >= 0) writer.row(-Infinity, 0, [[cell.y, 1], [top.y, -1]]);
    });
  });
}

function use(method: Method, resource: string, cell: BatchColumns | null | undefined): Entry[] {
  if (!cell) return [];
  const entries: Entry[] = [[cell.n, method.perBatch[resource] ?? 0]];
  return cell.y < 0 ? entries : [...entries, [cell.y, method.perSession[resource] ?? 0]];
}

function weeklyLimits(season: Season, grid: Grid, writer: ProgrammeWriter): void {
  for (const { id, kind, amount } of season.resources) {
    if (kind !== "weekly") continue;
    amount.forEach((most, t) => writer.row(-Infinity, most, season.methods.flatMap((method, m) => use(method, id, grid[m]?.[t]))));
  }
}

/** Only in the last week before the amount changes: what is used up grows, so the other weeks follow. */
function consumedLimits(season: Season, made: Grid, writer: ProgrammeWriter): void {
  for (const { id, kind, amount } of season.resources) {
    if (kind !== "consumed") continue;
    amount.forEach((most, t) => {
      if (amount[t + 1] === most) return;
      writer.row(-Infinity, most, season.methods.flatMap((method, m) => (made[m] ?? []).slice(0, t + 1).flatMap((cell) => use(method, id, cell))));
    });
  }
}

/** On hand = on hand before + picked − eaten − given − cooked − lost; never more than what was picked within the keeping time (the column's bound). */
function produceBalance(season: Season, course: CourseColumns, s: number, writer: ProgrammeWriter): void {
  season.crops.forEach((crop, c) => {
    for (let t = 0; t < season.weeks; t++) {
      const cell = course.produce[c]?.[t];
      if (!cell) continue;
      const before = t > 0 ? course.produce[c]?.[t - 1] : null;
      const cooked = season.methods.flatMap((method, m): Entry[] => {
        const made = course.made[m]?.[t];
        const grams = method.uses.find((one) => one.crop === crop.crop)?.grams ?? 0;
        return made && grams > 0 ? [[made.n, grams / KG]] : [];
      });
      const picked = (crop.harvestGrams[s]?.[t] ?? 0) / KG;
      writer.row(picked, picked, [[cell.onHand, 1], ...(before ? [[before.onHand, -1] as const] : []), [cell.eaten, 1], [cell.given, 1], [cell.lost, 1], ...cooked]);
    }
  });
}

/** In store = before + made − eaten; no portion is there after its last week. */
function storeBalance(season: Season, course: CourseColumns, writer: ProgrammeWriter): void {
  season.methods.forEach((method, m) => {
    const store = course.store[m];
    if (!store) return;
    const stored = (t: number): Entry[] => {
      const made = course.made[m]?.[t];
      return made && method.keptIn !== "none" ? [[made.n, -method.portions]] : [];
    };
    store.forEach(({ drawn, inStore }, t) => {
      const before = store[t - 1];
      const opening = t === 0 ? method.opening : 0;
      writer.row(opening, opening, [[inStore, 1], [drawn, 1], ...(before ? [[before.inStore, -1] as const] : []), ...stored(t)]);
      if (method.keepWeeks === null || method.keepWeeks - 1 > t) return;
      const young = Array.from({ length: method.keepWeeks - 1 }, (_, back) => stored(t - back)).flat();
      writer.row(-Infinity, method.opening, [[inStore, 1], ...young]);
    });
  });
}

function eatingLimit(season: Season, course: CourseColumns, writer: ProgrammeWriter): void {
  season.eatFromStorePortions.forEach((most, t) => {
    writer.row(-Infinity, most, course.store.flatMap((store): Entry[] => (store?.[t] ? [[store[t].drawn, 1]] : [])));
  });
}

/** What was in store and what is just made, before anything is eaten. */
function heldLimits(season: Season, course: CourseColumns, writer: ProgrammeWriter): void {
  for (const { id, kind, amount } of season.resources) {
    if (kind !== "held") continue;
    amount.forEach((room, t) => {
      let left = room;
      const entries = season.methods.flatMap((method, m): Entry[] => {
        const each = method.portions > 0 ? (method.perBatch[id] ?? 0) / method.portions : 0;
        const made = use(method, id, course.made[m]?.[t]);
        if (each === 0 || (method.keptIn === "none" && method.opening === 0)) return made;
        if (t === 0) left -= each * method.opening;
        const before = course.store[m]?.[t - 1];
        return before ? [...made, [before.inStore, each]] : made;
      });
      writer.row(-Infinity, left, entries);
    });
  }
}
