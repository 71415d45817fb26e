/** Question: may food made this way stand in this place for so many days? Days; `tested` is a process that was tested for exactly this food. */
import type { Keeping } from "../../kernel/recipe.ts";
import type { PlaceKind, Way } from "../../kernel/way.ts";
import type { IngredientLine } from "./tested-lines.ts";

interface Kept {
  readonly way: Way;
  readonly lines?: readonly IngredientLine[];
}

const IN: Readonly<Record<PlaceKind, string>> = { fridge: "in a fridge", freezer: "in a freezer", shelf: "on a shelf", cellar: "in a cellar", clamp: "in a clamp" };

/** Bread and cake on the shelf. Common practice, no source. */
const BAKED_DAYS = 7;
/** USDA Complete Guide to Home Canning 2015, Guide 1, p. 1-12: no more than is used within a year; the same is taken for dried and stored crops. */
const YEAR_DAYS = 365;
/** Most days in the fridge. Cooked dishes keep 3 to 4 days (University of Illinois, Leftovers); a week is the outer bound. Vinegar and brine longer: common practice, no source. */
const FRIDGE_DAYS: Readonly<Record<Way, number>> = { eat: 7, cook: 7, give: 7, freeze: 7, bottle: 30, pickle: 30, ferment: 180, dry: YEAR_DAYS, store: YEAR_DAYS };

/** What is wrong, one sentence, or nothing. The freezer's months are about quality and are not bounded here. */
export function wrongPlace(recipe: Kept, { place, days }: Keeping, tested: boolean): string | undefined {
  if (place === "freezer") return undefined;
  const most = place === "fridge" ? FRIDGE_DAYS[recipe.way] : warmDays(recipe, place, tested);
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

function warmDays({ way, lines }: Kept, place: PlaceKind, tested: boolean): number {
  switch (way) {
    case "bottle":
    case "pickle":
    case "ferment":
      return tested ? YEAR_DAYS : 0;
    case "eat":
    case "cook":
      return place === "shelf" ? BAKED_DAYS : 0;
    case "dry":
      return lines?.some(({ text }) => /\boil\b/i.test(text)) ? 0 : YEAR_DAYS;
    case "store":
      return lines === undefined || (lines.length > 0 && lines.every(({ text, crop }) => crop !== undefined && !/\boil\b/i.test(text))) ? YEAR_DAYS : 0;
    default:
      return 0;
  }
}
