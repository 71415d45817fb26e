/**
 * Question: how many grams does an ingredient line mean?
 * First what the line itself weighs, else the household weight of the food (USDA SR Legacy, grams of edible food in one measure).
 * No row, no weight: null with the reason, never a guess.
 */
import type { Outcome } from "../../kernel/outcome.ts";
import { asNumber } from "../../kernel/quantity.ts";
import type { Rational } from "../../kernel/quantity.ts";
import { inBase } from "../../kernel/units.ts";
import type { MeasureSystem } from "../../kernel/units.ts";
import { asPicked, weighsWhole, wordsOf } from "./as-picked.ts";
import { sourceOf } from "./citing.ts";
import { findFood } from "./find-food.ts";
import { nameKey } from "./names.ts";
import type { CookedRow, FoodRow, MeasureTables, ReadAmount, ReadLine, WeightRow } from "./types.ts";
import { totalIn } from "./total.ts";
import { unitOf } from "./unit-of.ts";

export interface WeighOptions {
  /** Slug of the crop, where the line is of something grown. */
  readonly crop?: string;
  /** A name to look up instead of the line's own. */
  readonly food?: string;
  /** Whose cups, spoons and pints the line is written in; US where nothing is said. */
  readonly system?: MeasureSystem;
  /** Whose cups and spoons it is printed in; those of the line where nothing is said. */
  readonly printIn?: MeasureSystem;
}

export interface Weighed {
  /** Whole grams as the line has them: as bought for a weight, edible for a measure or a count. The middle of a range. */
  readonly grams: number;
  /** The same before rounding. */
  readonly exactGrams: number;
  /** Whole grams as picked, for a crop; null for anything else. */
  readonly asPickedGrams: number | null;
  readonly restsOn: "the line" | "a household weight" | "a cooking yield";
}

export function weighIngredient(line: ReadLine, tables: MeasureTables, options: WeighOptions = {}): Outcome<Weighed | null> {
  const system = options.system ?? "us";
  const food = findFood(options.food ?? line.food, options.crop ?? null, tables);
  const own = ownGrams(line, system, tables);
  if (own !== null) return finished(own, weighsWhole(line, food?.key ?? "", tables), food, options, "the line", [], [], tables);
  const dry = food ? null : dryGrams(line, options.food ?? line.food, system, tables);
  if (dry) return { value: { grams: Math.round(dry.grams), exactGrams: dry.grams, asPickedGrams: null, restsOn: "a cooking yield" }, basis: [sourceOf(dry.row, tables)], notes: [`${dry.grams < 1000 ? Math.round(dry.grams) : Math.round(dry.grams / 10) * 10} g ${dry.row.of}: a pound gives ${dry.row.gives} ${dry.row.unit}s cooked.`] };
  if (!food) return nothing(`No household weight for ${line.food === "" ? "this line" : line.food}.`);
  const found = rowFor(line, food, tables);
  if (!found) return nothing(`No weight for ${line.unit === null ? "one piece" : `a ${line.unit}`} of ${food.names[0]}.`);
  const grams = measuredGrams(line, found, system, tables);
  if (grams === null) return nothing(line.amount === null ? "The line names no amount." : `A ${line.unit} is no measure of ${food.names[0]}.`);
  return finished(grams, false, food, options, "a household weight", [sourceOf(found, tables)], found.note === null ? [] : [found.note], tables);
}

function finished(
  grams: number,
  whole: boolean,
  food: FoodRow | null,
  options: WeighOptions,
  restsOn: Weighed["restsOn"],
  basis: readonly { id: string; text: string }[],
  notes: readonly string[],
  tables: MeasureTables,
): Outcome<Weighed> {
  const picked = options.crop === undefined ? null : whole ? { value: grams, basis: [], notes: [] } : asPicked(grams, food?.key ?? options.crop, tables);
  return {
    value: { grams: Math.round(grams), exactGrams: grams, asPickedGrams: picked && Math.round(picked.value), restsOn },
    basis: [...basis, ...(picked?.basis ?? [])],
    notes: [...notes, ...(picked?.notes ?? [])],
  };
}

const nothing = (why: string): Outcome<null> => ({ value: null, basis: [], notes: [why] });

/** Grams that the line itself states: 500 g, 2 x 400 g, 1 cup (120 g), 2 birds (about 500 g each). */
export function ownGrams(line: ReadLine, system: MeasureSystem, tables: MeasureTables): number | null {
  const [first] = line.amounts;
  if (!first) return null;
  const total = massOf({ amount: line.amount, max: line.amountMax, unit: line.unit }, system, tables);
  if (total !== null) return total;
  const each = /\beach\b/.test(line.comment);
  for (const amount of line.amounts.slice(1)) {
    const mass = amount.role === "plus" || amount.role === "minus" ? null : massOf(amount, system, tables);
    if (mass === null) continue;
    const pieces = amount.role === "each" || (amount.role === "remark" && each);
    return pieces ? mass * middle(first.amount ?? { n: 1, d: 1 }, first.max) : mass;
  }
  return null;
}

function massOf(amount: Pick<ReadAmount, "amount" | "max" | "unit">, system: MeasureSystem, tables: MeasureTables): number | null {
  const unit = amount.unit === null ? undefined : unitOf(amount.unit, system, tables);
  if (unit?.kind !== "mass" || !amount.amount) return null;
  return middle(inBase(amount.amount, unit), amount.max && inBase(amount.max, unit));
}

/** A range stands for its middle. */
export function middle(amount: Rational, max: Rational | null): number {
  return max === null ? asNumber(amount) : (asNumber(amount) + asNumber(max)) / 2;
}

const POUND_GRAMS = 453.59237;

/** Cups of something cooked, as grams of it dry: 2 cups cooked pinto beans. Null where the line does not say cooked or no yield is known. */
function dryGrams(line: ReadLine, name: string, system: MeasureSystem, tables: MeasureTables): { grams: number; row: CookedRow } | null {
  if (line.unit === null || !line.amount || !wordsOf(line).includes("cooked")) return null;
  const row = tables.cooked.get(nameKey(name.replace(/^cooked /i, "")));
  const asked = unitOf(line.unit, system, tables);
  const given = row && unitOf(row.unit, "us", tables);
  if (!row || asked?.kind !== "volume" || given?.kind !== "volume") return null;
  return { grams: (POUND_GRAMS * middle(line.amount, line.amountMax) * Number(asked.factor)) / Number(given.factor) / row.gives, row };
}

/** What one whole piece may be called in the tables. */
const WHOLE: readonly (string | null)[] = [null, "head", "bulb", "ear"];
/** Three words for one part of the celery. */
const STALKS: readonly string[] = ["stalk", "stick", "rib"];

function rowFor(line: ReadLine, food: FoodRow, tables: MeasureTables): WeightRow | null {
  const rows = tables.weights.get(food.key) ?? [];
  const { unit } = line;
  if (unit === null) return choose(line, WHOLE.map((piece) => rows.filter((row) => row.unit === piece)).find((some) => some.length > 0) ?? [], tables);
  const same = rows.filter((row) => row.unit === unit || (STALKS.includes(unit) && row.unit !== null && STALKS.includes(row.unit)));
  if (same.length > 0) return choose(line, same, tables);
  if (unitOf(unit, "us", tables)?.kind !== "volume") return null;
  // another measure of the same food tells its density; the largest is the least rounded
  const volumes = ["quart", "cup", "fluid ounce", "tablespoon", "teaspoon"].map((volume) => rows.filter((row) => row.unit === volume)).find((some) => some.length > 0);
  return choose(line, volumes ?? [], tables);
}

/** The row of the size and form that the line names; without them the usual one, or the only one. */
function choose(line: ReadLine, rows: readonly WeightRow[], tables: MeasureTables): WeightRow | null {
  const size = sizeOf(line.size);
  const sized = rows.filter((row) => size !== null && row.size === size);
  const left = sized.length > 0 ? sized : rows.filter((row) => row.size === null || row.usual);
  const asked = new Set(wordsOf(line).flatMap((word) => tables.words.get(word)?.form ?? []));
  const formed = left.find((row) => row.forms.some((form) => asked.has(form)));
  return formed ?? left.find((row) => row.usual) ?? (left.length === 1 ? (left[0] as WeightRow) : null);
}

const SIZES: Readonly<Record<string, string>> = { lg: "large", big: "large", sm: "small", md: "medium", med: "medium", xl: "extra large", "medium-size": "medium", "medium-sized": "medium", "extra-large": "extra large", "extra-small": "extra small" };
const sizeOf = (size: string): string | null => (size === "" ? null : (SIZES[size.toLowerCase()] ?? size.toLowerCase()));

/** The row's grams for the line's amount; measures of the tables are US measures. */
function measuredGrams(line: ReadLine, row: WeightRow, system: MeasureSystem, tables: MeasureTables): number | null {
  const total = totalIn(line, system, tables);
  if (!total.amount) return null;
  const amount = middle(total.amount, total.amountMax);
  const asked = line.unit === null ? undefined : unitOf(line.unit, system, tables);
  const listed = row.unit === null ? undefined : unitOf(row.unit, "us", tables);
  if (asked?.kind === "volume" && listed?.kind === "volume") return (amount * Number(asked.factor) * row.grams) / Number(listed.factor);
  return amount * row.grams;
}
