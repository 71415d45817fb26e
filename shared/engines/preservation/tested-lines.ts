/**
 * Question: do these ingredient lines stay inside what a plain process was tested for?
 * Source: USDA Complete Guide to Home Canning 2015, Guide 1, p. 1-10: a process holds for exactly its own food; what is mixed in changes how heat goes through the jar.
 */
import type { CanningRow } from "./types.ts";

export interface IngredientLine {
  readonly text: string;
  readonly crop?: string | undefined;
}

/** Foods that stand in the guide as one plain food, so that a line of that crop is the whole of it; a recipe of the guide is not among them. */
const PLAIN_FOODS: ReadonlySet<string> = new Set([
  // Guide 3, p. 3-5 to 3-11
  "tomato-juice", "tomato-crushed", "tomato-whole-water", "tomato-whole-juice", "tomato-whole-raw",
  // Guide 4, p. 4-6 to 4-19
  "asparagus", "beans-snap", "beets", "carrots", "corn-kernel", "okra", "peas", "peppers", "sweet-potato", "potato", "winter-squash", "greens",
  // Guide 2, p. 2-7 to 2-22
  "applesauce", "apples-sliced", "berries", "rhubarb",
]);

/** What the guide itself puts beside a plain food: liquid, salt, sugar, acid and dry spice (Guides 2 to 4, in each procedure). */
const BESIDE = /\b(?:water|salt|sugar|vinegar|lemon juice|citric acid|cinnamon|cloves?|peppercorns?|bay lea(?:f|ves)|mustard seeds?|allspice|nutmeg)\b/g;
const MEASURING =
  /[\d.,/½¼¾⅓⅔⅛%-]+|\b(?:g|kg|mg|ml|l|cl|dl|litres?|oz|lb|tsp|tbsp|teaspoons?|tablespoons?|cups?|pints?|quarts?|pinch|of|or|a|an|the|acid|to|each|per|jars?|canning|pickling|table|sea|fine|coarse|white|brown|granulated|caster|cider|malt|bottled|boiling|cold|hot|whole|ground|dried|sticks?|taste)\b/g;
/** A second food in the words of a line that names one crop. */
const SECOND_FOOD = /\b(?:with|plus|mince[d]?|meat|beef|pork|chicken|fish|beans?|oil|butter|cream|flour|rice|pasta)\b|[+&]|\band\s+[\d½¼¾]/i;

/** True when the food is plain, at least one line is of its crop, and every other line is liquid, salt, sugar, acid or dry spice. */
export function isPlainAsTested(lines: readonly IngredientLine[], rows: readonly CanningRow[]): boolean {
  const crops = rows.flatMap((row) => row.crops);
  const plain = rows.length > 0 && rows.every((row) => PLAIN_FOODS.has(row.food));
  const ofFood = lines.filter((line) => line.crop !== undefined);
  const beside = lines.filter((line) => line.crop === undefined);
  return plain && ofFood.length > 0 && ofFood.every((line) => crops.includes(line.crop ?? "") && !namesSecond(line.text, rows)) && beside.every((line) => isBeside(line.text));
}

function namesSecond(text: string, rows: readonly CanningRow[]): boolean {
  const words = rows[0]?.food === "beans-snap" ? text.replace(/\bbeans?\b/gi, "") : text;
  return SECOND_FOOD.test(words);
}

function isBeside(text: string): boolean {
  const lower = text.toLowerCase();
  if (lower.match(BESIDE) === null) return false;
  return lower.replace(BESIDE, " ").replace(MEASURING, " ").replace(/[\s,;()]+/g, "") === "";
}
