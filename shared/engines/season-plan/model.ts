/** A season as an integer programme with seven levels of costs, and the way from its columns to a plan and back. README, "The programme". */
import { KG, writeColumns, type SeasonColumns } from "./model-columns.ts";
import { writeLevels, type LevelCosts } from "./model-levels.ts";
import { writeRows } from "./model-rows.ts";
import { ProgrammeWriter, type Programme } from "./programme.ts";
import type { Batches, Course, Season, SeasonPlan } from "./types.ts";

export interface SeasonModel {
  readonly season: Season;
  readonly programme: Programme;
  readonly columns: SeasonColumns;
  readonly levels: readonly LevelCosts[];
}

export function buildModel(season: Season): SeasonModel {
  const writer = new ProgrammeWriter();
  const columns = writeColumns(season, writer);
  writeRows(season, columns, writer);
  const levels = writeLevels(season, columns, writer);
  return { season, programme: writer.written(), columns, levels };
}

export function costsOf(model: SeasonModel, weights: readonly number[]): Float64Array {
  const costs = new Float64Array(model.programme.lower.length);
  model.levels.forEach(({ entries }, i) => {
    for (const [column, cost] of entries) costs[column] = (costs[column] ?? 0) + cost * (weights[i] ?? 0);
  });
  return costs;
}

/** Grams to a thousandth, as the programme's kilograms carry them. */
export function planOf({ season, columns }: SeasonModel, values: Float64Array): SeasonPlan {
  const batches = (grid: SeasonColumns["booked"]): Batches[] =>
    season.methods.flatMap(({ id }, m) =>
      (grid[m] ?? []).flatMap((cell, week) => {
        const made = cell ? Math.round(values[cell.n] ?? 0) : 0;
        return made > 0 ? [{ method: id, week, batches: made }] : [];
      }),
    );
  const outcomes = season.scenarios.map(({ id }, s): [string, Course] => {
    const course = columns.courses[s];
    const grams = (pick: "eaten" | "given"): Course["eat"] =>
      season.crops.flatMap(({ crop }, c) =>
        (course?.produce[c] ?? []).flatMap((cell, week) => {
          const amount = cell ? Math.round((values[cell[pick]] ?? 0) * KG * 1000) / 1000 : 0;
          return amount > 0 ? [{ crop, week, grams: amount }] : [];
        }),
      );
    const draw = season.methods.flatMap((method, m) =>
      (course?.store[m] ?? []).flatMap(({ drawn }, week) => {
        const portions = Math.round((values[drawn] ?? 0) * 1e4) / 1e4;
        return portions > 0 ? [{ method: method.id, week, portions }] : [];
      }),
    );
    return [id, { made: batches(course?.made ?? []), eat: grams("eaten"), give: grams("given"), draw }];
  });
  return { planned: batches(columns.booked), outcomes: Object.fromEntries(outcomes) };
}

/** The whole-number columns as a plan sets them (others 0), to fix or to start from; null where the plan has something that has no column. */
export function wholesOf({ season, programme, columns }: SeasonModel, plan: SeasonPlan): Float64Array | null {
  const values = new Float64Array(programme.lower.length);
  let missing = false;
  const put = (grid: SeasonColumns["booked"], list: readonly Batches[]): void => {
    for (const { method, week, batches } of list) {
      const cell = grid[season.methods.findIndex(({ id }) => id === method)]?.[week];
      if (batches === 0) continue;
      if (!cell) missing = true;
      else {
        values[cell.n] = batches;
        if (cell.y >= 0) values[cell.y] = 1;
      }
    }
  };
  put(columns.booked, plan.planned);
  if (season.scenarios.length > 1) season.scenarios.forEach(({ id }, s) => put(columns.courses[s]?.made ?? [], plan.outcomes[id]?.made ?? []));
  return missing ? null : values;
}
