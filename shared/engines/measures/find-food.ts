import { nameKey } from "./names.ts";
import type { FoodRow, MeasureTables } from "./types.ts";

/**
 * The food a name stands for in the weight tables, British or American. Words that do not change what it weighs are passed over
 * (fresh, ripe, good-quality); a name with any other word more than the tables know is another food, and the answer is null.
 */
export function findFood(name: string, crop: string | null, tables: MeasureTables): FoodRow | null {
  const named = byName(nameKey(name), tables);
  if (crop === null) return named;
  if (named?.crops.includes(crop)) return named;
  const grown = [...tables.foods.values()].filter((food) => food.crops.includes(crop));
  // two foods of one crop weigh differently: acorn and hubbard squash
  return grown.length === 1 ? (grown[0] as FoodRow) : (grown.find((food) => food.key === crop) ?? null);
}

function byName(key: string, tables: MeasureTables): FoodRow | null {
  let words = key.split(" ");
  while (words.length > 0) {
    const food = tables.foodByName.get(words.join(" "));
    if (food) return food;
    if (!tables.words.get(words[0] as string)?.roles.has("adjective")) return null;
    words = words.slice(1);
  }
  return null;
}
