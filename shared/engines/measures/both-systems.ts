/**
 * Question: how does one line read by weight and by measure? Amounts only, the food is printed beside them.
 * Weights and liquids in g, kg, ml, l; measures in cups and spoons with real fractions, or as a count.
 */
import { asNumber } from "../../kernel/quantity.ts";
import type { MeasureSystem } from "../../kernel/units.ts";
import { asPicked, weighsWhole } from "./as-picked.ts";
import { findFood } from "./find-food.ts";
import { countWords, errorOf, measureWords, volumeWords, weightWords } from "./kitchen-rounding.ts";
import type { KitchenAmount, Spoons } from "./kitchen-rounding.ts";
import type { FoodRow, MeasureTables, ReadLine, WeightRow } from "./types.ts";
import { totalIn } from "./total.ts";
import { unitOf } from "./unit-of.ts";
import type { WeighOptions } from "./weigh.ts";
import { middle } from "./weigh.ts";

export interface BothSystems {
  readonly byWeight: string | null;
  readonly byMeasure: string | null;
  /** (printed − exact) / exact of each, per cent; null where nothing is printed. */
  readonly weightErrorPercent: number | null;
  readonly measureErrorPercent: number | null;
}

/** `grams` as `weighIngredient` has it; null where no weight is known, and then only a liquid has a metric amount. */
export function bothSystems(line: ReadLine, grams: number | null, tables: MeasureTables, options: WeighOptions = {}): BothSystems {
  const written = options.system ?? "us";
  const systems = { written, printed: options.printIn ?? written };
  const food = findFood(options.food ?? line.food, options.crop ?? null, tables);
  const weight = overRange(line, (share) => weightOf(line, grams, share, food, written, tables));
  const measure = overRange(line, (share) => measureOf(line, grams, share, food, systems, tables));
  return {
    byWeight: weight?.text ?? null,
    byMeasure: measure?.text ?? null,
    weightErrorPercent: weight?.errorPercent ?? null,
    measureErrorPercent: measure?.errorPercent ?? null,
  };
}

/** Whose spoons the line means, and whose lie in the drawer where it is cooked. */
interface Systems {
  readonly written: MeasureSystem;
  readonly printed: MeasureSystem;
}

/** A range is printed at both ends; the error is the larger one. `share` is the end as a share of the middle. */
function overRange(line: ReadLine, at: (share: number) => KitchenAmount | null): KitchenAmount | null {
  if (!line.amount || !line.amountMax) return at(1);
  const mid = middle(line.amount, line.amountMax);
  const low = at(asNumber(line.amount) / mid);
  const high = at(asNumber(line.amountMax) / mid);
  if (!low || !high) return null;
  const worse = Math.abs(low.errorPercent) > Math.abs(high.errorPercent) ? low : high;
  return { text: low.text === high.text ? low.text : `${low.text}–${high.text}`, errorPercent: worse.errorPercent };
}

function weightOf(line: ReadLine, grams: number | null, share: number, food: FoodRow | null, system: MeasureSystem, tables: MeasureTables): KitchenAmount | null {
  const ml = volumeOf(line, system, tables);
  if (ml !== null && isLiquid(line, food, tables)) return volumeWords(ml * share, isMetric(line));
  if (grams !== null && grams > 0) return weightWords(grams * share, isMetric(line));
  return ml !== null && isMetric(line) ? volumeWords(ml * share, true) : null;
}

function measureOf(line: ReadLine, grams: number | null, share: number, food: FoodRow | null, systems: Systems, tables: MeasureTables): KitchenAmount | null {
  const ml = volumeOf(line, systems.written, tables);
  if (ml !== null) return ownMeasure(line, share, systems, tables) ?? measureWords(ml * share, spoonsOf(systems.printed, tables));
  if (line.amount && !isMass(line, systems.written, tables)) return counted(line, middle(line.amount, line.amountMax) * share);
  if (grams === null || !food) return null;
  const rows = tables.weights.get(food.key) ?? [];
  const piece = rows.find((row) => row.usual && (row.unit === null || row.unit === "head" || row.unit === "bulb" || row.unit === "ear"));
  if (piece && piece.grams >= COUNTED_FROM_GRAMS) return pieces(line, grams * share, piece, food, tables);
  return spooned(line, grams * share, rows, food, systems.printed, tables);
}

/** Nobody counts out currants. Common practice, no source. */
const COUNTED_FROM_GRAMS = 30;
const OWN: Readonly<Record<string, string>> = { cup: "cup", tablespoon: "tbsp", teaspoon: "tsp" };

/** A line that is written in cups or spoons keeps them, where they are as large here and their number can be printed as it is. */
function ownMeasure(line: ReadLine, share: number, { written, printed }: Systems, tables: MeasureTables): KitchenAmount | null {
  const unit = line.unit === null ? undefined : OWN[line.unit];
  if (line.unit === null || unitOf(line.unit, written, tables)?.factor !== unitOf(line.unit, printed, tables)?.factor) return null;
  if (!unit || !line.amount || line.amounts.some((amount) => amount.role === "plus" || amount.role === "minus")) return null;
  const count = middle(line.amount, line.amountMax) * share;
  const words = countWords(count);
  return words.errorPercent === 0 ? { text: `${words.text}\u00a0${unit === "cup" && count > 1 ? "cups" : unit}`, errorPercent: 0 } : null;
}

/** A weight as about so many pieces; the table's pieces are edible weight, a line that weighs the whole crop is not. */
function pieces(line: ReadLine, grams: number, each: WeightRow, food: FoodRow, tables: MeasureTables): KitchenAmount | null {
  const pieceGrams = weighsWhole(line, food.key, tables) ? asPicked(each.grams, food.key, tables).value : each.grams;
  const exact = grams / pieceGrams;
  if (exact < 0.2) return null;
  const printed = exact < 3 ? countWords(exact) : { text: String(Math.round(exact)), errorPercent: errorOf(Math.round(exact), exact) };
  return { text: ["about", printed.text, each.size, each.unit === null ? null : plural(each.unit, exact)].filter(Boolean).join(" "), errorPercent: printed.errorPercent };
}

/** A weight in cups and spoons, of what is ready to use; loose leaves have no true cup, and a spoon's weight is not stretched to cups. */
function spooned(line: ReadLine, grams: number, rows: readonly WeightRow[], food: FoodRow, system: MeasureSystem, tables: MeasureTables): KitchenAmount | null {
  const row = volumeRow(rows);
  if (!row || row.note !== null) return null;
  const refuse = weighsWhole(line, food.key, tables) ? (tables.produce.get(food.key)?.refusePercent ?? 0) : 0;
  const spoons = spoonsOf(system, tables);
  const ml = (grams * (1 - refuse / 100) * Number(unitOf(row.unit as string, "us", tables)?.factor)) / row.grams;
  return row.unit !== "cup" && ml > spoons.cupMl ? null : measureWords(ml, spoons);
}

/** As the line counts: 2 cloves, 3 large, 1 bunch, 1 good pinch. */
function counted(line: ReadLine, count: number): KitchenAmount {
  const words = countWords(count);
  const heaps = line.unit === null ? [] : (line.amounts[0]?.unitWords ?? []).slice(0, -1);
  return { text: [words.text, line.size, ...heaps, line.unit === null ? null : plural(line.unit, count)].filter(Boolean).join(" "), errorPercent: words.errorPercent };
}

function plural(unit: string, count: number): string {
  if (count <= 1) return unit;
  if (unit === "leaf" || unit === "loaf") return `${unit.slice(0, -1)}ves`;
  return /(?:ch|sh|x|s)$/.test(unit) ? `${unit}es` : `${unit}s`;
}

/** A measure of the food as it comes: the usual row, or the only one. */
function volumeRow(rows: readonly WeightRow[]): WeightRow | null {
  for (const unit of ["cup", "tablespoon", "teaspoon"]) {
    const some = rows.filter((row) => row.unit === unit);
    const row = some.find((one) => one.usual) ?? (some.length === 1 ? some[0] : undefined);
    if (row) return row;
  }
  return null;
}

function spoonsOf(system: MeasureSystem, tables: MeasureTables): Spoons {
  const ml = (unit: string): number => Number(unitOf(unit, system, tables)?.factor);
  return { cupMl: ml("cup"), tablespoonMl: ml("tablespoon"), teaspoonMl: ml("teaspoon") };
}

function volumeOf(line: ReadLine, system: MeasureSystem, tables: MeasureTables): number | null {
  const unit = line.unit === null ? undefined : unitOf(line.unit, system, tables);
  if (unit?.kind !== "volume") return null;
  const { amount, amountMax } = totalIn(line, system, tables);
  return amount && middle(amount, amountMax) * Number(unit.factor);
}

const isMass = (line: ReadLine, system: MeasureSystem, tables: MeasureTables): boolean => line.unit !== null && unitOf(line.unit, system, tables)?.kind === "mass";
const METRIC: ReadonlySet<string> = new Set(["gram", "kilogram", "millilitre", "litre", "centilitre", "decilitre"]);
const isMetric = (line: ReadLine): boolean => line.unit !== null && METRIC.has(line.unit);

function isLiquid(line: ReadLine, food: FoodRow | null, tables: MeasureTables): boolean {
  if (food) return food.liquid;
  const last = line.food.toLowerCase().split(" ").pop() ?? "";
  return tables.words.get(last)?.roles.has("liquid") ?? false;
}
