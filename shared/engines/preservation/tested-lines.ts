/**
 * Question: do these ingredient lines stay inside what a plain process was tested for?
 * Source: USDA Complete Guide to Home Canning 2015, Guide 1, p. 1-10: a process holds for exactly its own food; what is mixed in changes how heat goes through the jar.
 */
import type { CanningRow, PreservationTables } from "./types.ts";

export interface IngredientLine {
  readonly text: string;
  readonly crop?: string | undefined;
  /** Null or left out where no weight is known. */
  readonly grams?: number | null | undefined;
}

/** Numbers, units and small words that may stand around what goes beside. */
const MEASURING =
  /[\d.,/½¼¾⅓⅔⅛%-]+|\b(?:g|kg|mg|ml|l|cl|dl|litres?|oz|lb|tsp|tbsp|teaspoons?|tablespoons?|cups?|pints?|quarts?|pinch|of|or|a|an|the|acid|to|each|per|jars?|canning|pickling|table|sea|fine|coarse|white|brown|granulated|caster|cider|malt|bottled|boiling|cold|hot|whole|ground|dried|sticks?|taste)\b/g;
/** A second food in the words of a line that names one crop. */
const SECOND_FOOD = /\b(?:with|plus|mince[d]?|meat|beef|pork|chicken|fish|beans?|oil|butter|cream|flour|rice|pasta)\b|[+&]|\band\s+[\d½¼¾]/i;

/** True when the food is plain, at least one line is of its crop, and every other line is liquid, salt, sugar, acid or dry spice. */
export function isPlainAsTested(lines: readonly IngredientLine[], rows: readonly CanningRow[], { plainFoods, beside: allowed }: PreservationTables): boolean {
  const crops = rows.flatMap((row) => row.crops);
  const plain = rows.length > 0 && rows.every((row) => plainFoods.has(row.food));
  const ofFood = lines.filter((line) => line.crop !== undefined);
  const beside = lines.filter((line) => line.crop === undefined);
  return plain && ofFood.length > 0 && ofFood.every((line) => crops.includes(line.crop ?? "") && !namesSecond(line.text, rows)) && beside.every((line) => isBeside(line.text, allowed));
}

function namesSecond(text: string, rows: readonly CanningRow[]): boolean {
  const words = rows[0]?.food === "beans-snap" ? text.replace(/\bbeans?\b/gi, "") : text;
  return SECOND_FOOD.test(words);
}

/** What the guide itself puts beside a plain food: liquid, salt, sugar, acid and dry spice. */
function isBeside(text: string, allowed: RegExp): boolean {
  const lower = text.toLowerCase();
  if (lower.match(allowed) === null) return false;
  return lower.replace(allowed, " ").replace(MEASURING, " ").replace(/[\s,;()]+/g, "") === "";
}
