/**
 * Question: what in an ingredient line cannot be meant? One sentence that says what is wrong and what would work; null where nothing is.
 * Which unit fits which food follows from the household weights (USDA SR Legacy); the largest amount of a kitchen is common practice, no source.
 */
import { asNumber } from "../../kernel/quantity.ts";
import { findFood } from "./find-food.ts";
import type { FoodRow, MeasureTables, ReadLine } from "./types.ts";
import { unitOf } from "./unit-of.ts";

/** More of anything than a household kitchen takes in one batch; a slip of the finger more often than a recipe. */
const MOST_OF_ANYTHING = 100_000;
/** Anything can be sold, cut or served in these. */
const FOR_ANY_FOOD: ReadonlySet<string> = new Set([
  "can", "tin", "jar", "bottle", "packet", "package", "pack", "bag", "box", "carton", "tub", "pot", "tube", "punnet", "sachet", "envelope", "container", "recipe", "portion", "serving", "batch", "quantity", "count", "part", "glass", "mug", "shot", "ladle", "scoop",
  "piece", "block", "slab", "cube", "chunk", "slice", "strip", "wedge", "round", "ball", "trug", "basket",
]);

export function lineDoubt(line: ReadLine, tables: MeasureTables, named: { readonly crop?: string; readonly food?: string } = {}): string | null {
  if (line.food === "") return "No food was found in this line.";
  if (line.amount === null) return line.amounts.length === 0 && !/\d/.test(line.text) ? null : "No amount was read.";
  const amount = asNumber(line.amount);
  if (amount <= 0) return "The amount is nothing. Give one above 0, or leave the line out.";
  if (amount > MOST_OF_ANYTHING) return "More than a kitchen holds: check the amount.";
  const food = findFood(named.food ?? line.food, named.crop ?? null, tables);
  return food && !fits(line.unit, food, tables) ? wrongUnit(line, food, tables) : null;
}

/** Only garlic has cloves and only maize has ears. */
const OF_ONE_FOOD: ReadonlySet<string> = new Set(["clove", "ear"]);

/** A weight always fits; any other unit where a weight is known for it, or where any food comes in it. */
function fits(unit: string | null, food: FoodRow, tables: MeasureTables): boolean {
  const rows = tables.weights.get(food.key) ?? [];
  if (rows.length === 0) return true;
  if (unit === null) return rows.some((row) => row.unit === null || !isVolume(row.unit, tables)) || !food.liquid;
  const kind = unitOf(unit, "us", tables)?.kind;
  if (kind === "mass" || FOR_ANY_FOOD.has(unit) || isVague(unit, tables)) return true;
  if (kind === "length") return food.crops.length > 0 || rows.some((row) => row.unit === null || !isVolume(row.unit, tables));
  if (kind === "volume") return true;
  if (OF_ONE_FOOD.has(unit)) return rows.some((row) => row.unit === unit);
  return rows.some((row) => row.unit === unit || (row.unit !== null && !isVolume(row.unit, tables))) || rows.some((row) => row.unit === null) || !onlySpooned(food, tables);
}

const isVolume = (unit: string, tables: MeasureTables): boolean => unitOf(unit, "us", tables)?.kind === "volume";
const isVague = (unit: string, tables: MeasureTables): boolean => tables.words.get(unit)?.unitKind === "vague";

/** Flour, sugar, oil: known by cup and spoon alone, and grown on no bed. */
const onlySpooned = (food: FoodRow, tables: MeasureTables): boolean => food.crops.length === 0 && (tables.weights.get(food.key) ?? []).every((row) => row.unit !== null && isVolume(row.unit, tables));

function wrongUnit(line: ReadLine, food: FoodRow, tables: MeasureTables): string {
  const known = [...new Set((tables.weights.get(food.key) ?? []).map((row) => row.unit ?? "piece"))].slice(0, 3);
  const name = food.names[0] ?? line.food;
  return `${line.unit === null ? "A bare number" : `A ${line.unit}`} does not fit ${name}: give its weight, or its measure by the ${known.join(", ")}.`;
}
