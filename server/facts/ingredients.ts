/** The lines of a recipe as read and weighed by the tables of measures. */
import type { NewRecipe, Recipe } from "#shared/contracts/recipes.ts";
import { bothSystems, lineDoubt, readIngredient, weighIngredient, type MeasureTables } from "#shared/engines/measures/index.ts";
import { asNumber } from "#shared/kernel/quantity.ts";
import type { MeasureSystem } from "#shared/kernel/units.ts";

export type Ingredient = Recipe["ingredients"][number];
type Written = NewRecipe["ingredients"][number];

/** Reads a line as the recipe's cups and spoons go, and prints it in the household's. */
export type ReadLine = (line: Written, system: MeasureSystem, written?: MeasureSystem) => Ingredient;

/** Lines held, so that a calendar of two hundred recipes does not read the same thousand lines each time. */
const MOST_HELD = 20_000;

export function lineReader(tables: MeasureTables): ReadLine {
  const held = new Map<string, Ingredient>();
  return (line, system, written = system) => {
    const key = JSON.stringify([system, written, line.text, line.crop, line.food, line.madeBy]);
    const known = held.get(key);
    if (known) return known;
    if (held.size >= MOST_HELD) held.clear();
    const read = readLine(line, { system: written, printIn: system }, tables);
    held.set(key, read);
    return read;
  };
}

/** What is left of "4 cloves of garlic" says nothing beside its food. */
const JOINS = /^(?:an?|(?:an? )?of)$/i;

function readLine({ text, crop, food, madeBy }: Written, systems: { readonly system: MeasureSystem; readonly printIn: MeasureSystem }, tables: MeasureTables): Ingredient {
  const options = { ...systems, ...(crop === undefined ? {} : { crop }), ...(food === undefined ? {} : { food }) };
  const line = readIngredient(text, tables);
  const weighed = weighIngredient(line, tables, options).value;
  const { byWeight, byMeasure } = bothSystems(line, weighed?.exactGrams ?? null, tables, options);
  // a part that another recipe makes is counted as that recipe counts it
  const doubt = madeBy === undefined ? lineDoubt(line, tables, options) : null;
  return {
    text,
    ...(crop === undefined ? {} : { crop }),
    ...(food === undefined ? {} : { food }),
    ...(madeBy === undefined ? {} : { madeBy }),
    grams: weighed === null ? null : (weighed.asPickedGrams ?? weighed.grams),
    read: {
      amount: line.amount && asNumber(line.amount),
      amountMax: line.amountMax && asNumber(line.amountMax),
      unit: line.unit,
      food: line.food,
      comment: [line.preparation, line.comment].filter((words) => words !== "" && !JOINS.test(words)).join(", "),
    },
    byWeight,
    byMeasure,
    ...(doubt === null ? {} : { doubt }),
  };
}
