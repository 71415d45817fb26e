/** Question: which crop of the garden does a line take? Only the fresh thing itself: what is dried, tinned, ground or pressed comes from the shop. */
import { wordsOf } from "./as-picked.ts";
import { findFood } from "./find-food.ts";
import { nameKey } from "./names.ts";
import type { MeasureTables, ReadLine } from "./types.ts";

/** Words for what is no longer the crop as it was picked. Common practice, no source. */
const MADE_OF_IT: ReadonlySet<string> = new Set(["canned", "tinned", "can", "tin", "cans", "tins", "jar", "dried", "powder", "powdered", "ground", "paste", "puree", "purée", "passata", "juice", "sauce", "ketchup", "frozen", "flakes", "seeds", "seed", "granules", "pickled", "crisps", "sun-dried", "salt"]);

/** Slug of the crop, or null where the line is of none that is grown. Of several crops with one weight the one that is named, else the first. */
export function cropOf(line: ReadLine, tables: MeasureTables): string | null {
  if (line.unit === "can" || line.unit === "tin" || line.unit === "packet" || wordsOf(line).some((word) => MADE_OF_IT.has(word))) return null;
  const crops = findFood(line.food, null, tables)?.crops ?? [];
  const named = nameKey(line.food).split(" ").join("-");
  return crops.find((crop) => crop === named) ?? crops[0] ?? null;
}
