/**
 * Question: may food made this way stand in this place for so many days? `tested`: by a process that was tested for exactly this food.
 * Source: the rows of seed-data/preservation/place-limits.json; without a row it may not.
 */
import type { Keeping } from "../../kernel/recipe.ts";
import type { PlaceKind, Way } from "../../kernel/way.ts";
import type { IngredientLine } from "./tested-lines.ts";
import type { PreservationTables } from "./types.ts";

interface Kept {
  readonly way: Way;
  readonly lines?: readonly IngredientLine[];
}

const IN: Readonly<Record<PlaceKind, string>> = { fridge: "in a fridge", freezer: "in a freezer", shelf: "on a shelf", cellar: "in a cellar", clamp: "in a clamp" };

/** What is wrong, one sentence, or nothing. The freezer's months are about quality and are not bounded here. */
export function wrongPlace(recipe: Kept, { place, days }: Keeping, tested: boolean, { placeLimits }: PreservationTables): string | undefined {
  if (place === "freezer") return undefined;
  const most = mayStand(recipe, place, tested) ? (placeLimits.find((row) => row.way === recipe.way && row.place === place)?.days ?? 0) : 0;
  if (most === 0) return WHY_NOT[recipe.way](IN[place]);
  return days > most ? `At most ${most} days ${IN[place]}.` : undefined;
}

const jar = (place: string): string => `A jar without a tested process may not stand ${place}.`;
const moist = (place: string): string => `Moist food may not stand ${place} without a tested process.`;
const WHY_NOT: Readonly<Record<Way, (place: string) => string>> = {
  eat: moist, cook: moist, give: moist, freeze: moist, bottle: jar, pickle: jar, ferment: moist,
  dry: (place) => `Dried food in oil may not stand ${place}.`,
  store: (place) => `Only a whole crop with nothing added may stand ${place}.`,
};

/** Where no chill protects, a jar needs its test, and what is dry or whole nothing moist beside it. */
function mayStand({ way, lines }: Kept, place: PlaceKind, tested: boolean): boolean {
  if (place === "fridge") return true;
  if (way === "bottle" || way === "pickle" || way === "ferment") return tested;
  const oil = (text: string): boolean => /\boil\b/i.test(text);
  if (way === "dry") return !(lines?.some(({ text }) => oil(text)) ?? false);
  if (way === "store") return lines === undefined || (lines.length > 0 && lines.every(({ text, crop }) => crop !== undefined && !oil(text)));
  return true;
}
