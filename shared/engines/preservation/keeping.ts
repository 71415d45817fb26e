/**
 * Question: how long does a crop or a cooked dish keep in this place? Days, and whether they end quality or safety.
 * Source: seed-data/preservation/keeping.json; nothing is computed from temperature.
 */
import type { Outcome } from "../../kernel/outcome.ts";
import { sourceOf } from "./citing.ts";
import type { KeepingPlace, KeepingRow, PreservationTables } from "./types.ts";

/** Where a household's place has no row, the next best described one, never one that promises a warmer place more. */
const STANDS_IN: Readonly<Record<KeepingPlace, readonly KeepingPlace[]>> = {
  fridge: [],
  freezer: [],
  counter: [],
  shelf: ["counter"],
  cellar: ["cold-store"],
  clamp: ["cellar", "cold-store"],
  "cold-store": [],
};

/** The row for a crop as picked, or null with the reason. Where several tables speak, the one that promises least. */
export function keepsHow(crop: string, place: KeepingPlace, tables: PreservationTables): Outcome<KeepingRow | null> {
  for (const described of [place, ...STANDS_IN[place]]) {
    const row = shortest(tables.keeping.filter((k) => k.crop === crop && k.place === described));
    if (row?.days === null) return { value: null, basis: [sourceOf(row, tables)], notes: [`The table advises against the ${place} for ${crop}.`] };
    if (row) return { value: row, basis: [sourceOf(row, tables)], notes: notesOn(row, place) };
  }
  const any = tables.keeping.find((k) => k.crop === "*" && k.place === place);
  if (any && tables.blanching.some((row) => row.crop === crop)) {
    return { value: any, basis: [sourceOf(any, tables)], notes: ["The general figure for fruit and vegetables; there is none for this crop."] };
  }
  return { value: null, basis: [], notes: [`No figure for ${crop} in the ${place}.`] };
}

/** The row for a cooked dish by its name in the tables, or null with the reason. */
export function dishKeeps(dish: string, place: KeepingPlace, tables: PreservationTables): Outcome<KeepingRow | null> {
  const row = tables.keeping.find((k) => k.food === dish && k.place === place);
  if (!row) return { value: null, basis: [], notes: [`No figure for ${dish} in the ${place}.`] };
  return { value: row, basis: [sourceOf(row, tables)], notes: row.note === null ? [] : [row.note] };
}

export interface CoolingStage {
  readonly fromC: number;
  readonly toC: number;
  /** From the start of cooling. */
  readonly withinMin: number;
}

/** The two stages in which hot food must be cold (FDA Food Code 3-501.14 (A)): from, to, and minutes since cooling began. */
export function coolingStages(tables: PreservationTables): readonly CoolingStage[] {
  const figure = (key: string): number => {
    const value = tables.rules.find((rule) => rule.key === key)?.value;
    if (value === null || value === undefined) throw new RangeError(`preservation/rules: no row ${key}`);
    return value;
  };
  const celsius = (key: string): number => Math.round(((figure(key) - 32) * 50) / 9) / 10;
  return [
    { fromC: celsius("cool1-start"), toC: celsius("cool1-to"), withinMin: figure("cool1-h") * 60 },
    { fromC: celsius("cool1-to"), toC: celsius("cool2-to"), withinMin: figure("cool-total") * 60 },
  ];
}

function shortest(rows: readonly KeepingRow[]): KeepingRow | undefined {
  const whole = rows.filter((row) => row.state === null);
  return [...(whole.length > 0 ? whole : rows)].sort((a, b) => (a.days?.[1] ?? 0) - (b.days?.[1] ?? 0))[0];
}

function notesOn(row: KeepingRow, place: KeepingPlace): string[] {
  return [
    ...(row.state === null ? [] : [`The figure is for ${row.state}.`]),
    ...(row.place === "cold-store" && place !== "cold-store" ? [`Only at the best conditions: ${row.conditions}. Warmer or drier keeps less.`] : []),
    ...(row.note === null ? [] : [row.note]),
  ];
}
