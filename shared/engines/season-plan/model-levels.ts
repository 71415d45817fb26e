/** The seven levels as costs over a season's programme, least is best. One unit each; never added to one another. */
import { KG, type SeasonColumns } from "./model-columns.ts";
import { onHandAtMost } from "./most-batches.ts";
import type { ProgrammeWriter } from "./programme.ts";
import { LEVELS, type Level, type Method, type Season } from "./types.ts";

/** Level = constant + Σ costs · x, times `unit` for the unit it is shown in. */
export interface LevelCosts {
  readonly level: Level;
  readonly entries: Map<number, number>;
  constant: number;
  /** From the inside to the unit shown: grams for kilograms, −1 for liking. */
  readonly unit: number;
  /** Lock with so much room: looser than the solver's tolerance, tighter than the level's grain. */
  readonly room: number;
}

const SHAPE: Readonly<Record<Level, readonly [unit: number, room: number]>> = {
  wasteGrams: [KG, 0.5 / KG],
  targetShort: [1, 0.001],
  freshShortGrams: [KG, 0.5 / KG],
  changes: [1, 0.01],
  liking: [-1, 0.01],
  minutes: [1, 0.01],
  earliness: [1, 0.01],
};

export function writeLevels(season: Season, columns: SeasonColumns, writer: ProgrammeWriter): LevelCosts[] {
  const levels = LEVELS.map((level): LevelCosts => ({ level, entries: new Map(), constant: 0, unit: SHAPE[level][0], room: SHAPE[level][1] }));
  const [waste, missing, fresh, changes, liking, minutes, early] = levels as [LevelCosts, LevelCosts, LevelCosts, LevelCosts, LevelCosts, LevelCosts, LevelCosts];
  produceLevels(season, columns, waste, fresh);
  askedFor(season, columns, writer, missing);
  changed(season, columns, writer, changes);
  liked(season, columns, writer, liking);
  work(season, columns, minutes, early);
  return levels;
}

function add(costs: LevelCosts, column: number, cost: number): void {
  if (column >= 0 && cost !== 0) costs.entries.set(column, (costs.entries.get(column) ?? 0) + cost);
}

function produceLevels(season: Season, columns: SeasonColumns, waste: LevelCosts, fresh: LevelCosts): void {
  season.scenarios.forEach(({ chance }, s) =>
    season.crops.forEach((crop, c) => {
      for (let t = 0; t < season.weeks; t++) {
        const cell = columns.courses[s]?.produce[c]?.[t];
        if (!cell || onHandAtMost(crop, s, t) <= 0) continue;
        add(waste, cell.lost, chance);
        add(fresh, cell.eaten, -chance);
        fresh.constant += (chance * (crop.freshGrams[t] ?? 0)) / KG;
      }
    }),
  );
}

/** The missing share in percent; what is missing below half has a second column and so counts twice. */
function askedFor(season: Season, columns: SeasonColumns, writer: ProgrammeWriter, missing: LevelCosts): void {
  season.scenarios.forEach(({ chance }, s) => {
    const course = columns.courses[s];
    const short = (portions: number, have: readonly (readonly [number, number])[], constant: number): void => {
      const gap = writer.column(0, portions);
      const below = writer.column(0, portions / 2);
      writer.row(portions - constant, Infinity, [[gap, 1], ...have]);
      writer.row(-portions / 2, Infinity, [[below, 1], [gap, -1]]);
      add(missing, gap, (100 * chance) / portions);
      add(missing, below, (100 * chance) / portions);
    };
    for (const { methods, portions, atWeek } of season.targets) {
      const stores = methods.flatMap((id) => course?.store[indexOf(season, id)]?.[atWeek] ?? []);
      short(portions, stores.map(({ inStore }) => [inStore, 1]), 0);
    }
    for (const { methods, portions, from, until } of season.wishes) short(portions, portionsMade(season, columns, s, methods, from, until), 0);
  });
}

function portionsMade(season: Season, columns: SeasonColumns, s: number, methods: readonly string[], from: number, until: number): (readonly [number, number])[] {
  return methods.flatMap((id) => {
    const m = indexOf(season, id);
    const cells = (columns.courses[s]?.made[m] ?? []).slice(from, until);
    return cells.flatMap((cell) => (cell ? [[cell.n, season.methods[m]?.portions ?? 0] as const] : []));
  });
}

/** Σ |planned − agreed|; one extra column only where the agreed number lies between none and the most. */
function changed(season: Season, columns: SeasonColumns, writer: ProgrammeWriter, changes: LevelCosts): void {
  season.methods.forEach((method, m) => {
    for (let t = 0; t < season.agreedUntil; t++) {
      const agreed = season.agreed.find((line) => line.method === method.id && line.week === t)?.batches ?? 0;
      const cell = columns.booked[m]?.[t];
      if (!cell) changes.constant += agreed;
      else if (agreed === 0) add(changes, cell.n, 1);
      else if (agreed >= cell.most) {
        add(changes, cell.n, -1);
        changes.constant += agreed;
      } else {
        const away = writer.column(0, Math.max(agreed, cell.most));
        writer.row(-agreed, Infinity, [[away, 1], [cell.n, -1]]);
        writer.row(agreed, Infinity, [[away, 1], [cell.n, 1]]);
        add(changes, away, 1);
      }
    }
  });
}

function liked(season: Season, columns: SeasonColumns, writer: ProgrammeWriter, liking: LevelCosts): void {
  season.scenarios.forEach(({ chance }, s) => {
    for (const { methods, everyWeeks, tiers } of season.tastes) {
      for (let from = 0; from < season.weeks; from += everyWeeks) {
        const made = portionsMade(season, columns, s, methods, from, from + everyWeeks);
        if (made.length === 0) continue;
        const filled = tiers.map(({ portions, worth }) => {
          const column = writer.column(0, portions);
          add(liking, column, -chance * worth);
          return [column, -1] as const;
        });
        writer.row(0, Infinity, [...made, ...filled]);
      }
    }
  });
}

/** Minutes and earliness of what is booked, and what recourse is expected to add to them. */
function work(season: Season, columns: SeasonColumns, minutes: LevelCosts, early: LevelCosts): void {
  const count = (method: Method, cells: SeasonColumns["booked"][number] | undefined, share: number): void => {
    (cells ?? []).forEach((cell, t) => {
      if (!cell) return;
      add(minutes, cell.n, share * (method.perBatch["hands-on"] ?? 0));
      add(minutes, cell.y, share * (method.perSession["hands-on"] ?? 0));
      add(early, cell.n, share * t);
    });
  };
  const several = season.scenarios.length > 1;
  season.methods.forEach((method, m) => {
    count(method, columns.booked[m], 1);
    if (several && method.recourse) season.scenarios.forEach(({ chance }, s) => count(method, columns.courses[s]?.made[m], chance));
  });
}

function indexOf(season: Season, id: string): number {
  return season.methods.findIndex((method) => method.id === id);
}
