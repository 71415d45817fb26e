/** What somebody means by the food they typed: a crop of the book, a food of the tested tables, or neither. */
import { nameKey } from "#shared/engines/measures/index.ts";
import type { Way } from "#shared/kernel/way.ts";
import type { Reference } from "../facts/reference.ts";

export interface FoodMeant {
  readonly name: string;
  readonly crop: string | null;
  readonly process: string | null;
}

/** A tested food stands for its own process where it is kept that way, else for its crop. */
export function foodMeant(typed: string, way: Way, book: Reference): FoodMeant {
  const slug = typed.toLowerCase();
  const crop = book.crops.get(slug);
  if (crop) return { name: crop.name, crop: crop.slug, process: null };
  const rows = book.preservation.canning.filter((row) => row.food === slug || row.key === slug);
  const [first] = rows;
  if (first) return first.way === way ? { name: first.title, crop: null, process: slug } : { name: first.title, crop: first.crops[0] ?? null, process: null };
  const key = nameKey(typed);
  const named = [...book.crops.values()].find((one) => nameKey(one.name) === key);
  const weighed = book.measures.foodByName.get(key)?.crops[0];
  const slugOf = named?.slug ?? (weighed !== undefined && book.crops.has(weighed) ? weighed : null);
  return { name: slugOf === null ? typed : (book.crops.get(slugOf)?.name ?? typed), crop: slugOf, process: null };
}
