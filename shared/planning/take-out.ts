/** What comes out of the freezer tonight: the oldest lot of each recipe that a dish of tomorrow takes something from. */
import type { BothAmounts, LarderFacts, LotToday } from "./larder-facts.ts";
import { lotsToday } from "./larder-lots.ts";
import { bothWords } from "./larder-words.ts";

export interface TakeOutLine {
  readonly one: LotToday;
  readonly place: { readonly id: string; readonly name: string };
  readonly amount: BothAmounts;
  readonly dish: string;
  readonly text: string;
}

/** `parts`: what each dish of tomorrow takes from other recipes. A part of which some stands thawed in a fridge needs nothing taken out. */
export function takeOutTonight(larder: LarderFacts, parts: readonly { readonly dish: string; readonly recipeId: string }[]): TakeOutLine[] {
  const lots = lotsToday(larder).filter(({ balance, discard }) => balance.left > 0 && !discard);
  return parts.flatMap(({ dish, recipeId }): TakeOutLine[] => {
    const kin = lots.filter(({ lot }) => lot.recipe?.id === recipeId);
    if (kin.some(({ stands }) => stands.some(({ place }) => place.kind === "fridge"))) return [];
    const [oldest] = kin.filter(({ stands }) => stands.some(({ place }) => place.kind === "freezer"));
    const stand = oldest?.stands.find(({ place }) => place.kind === "freezer");
    if (!oldest || !stand) return [];
    return [{ one: oldest, place: stand.place, amount: stand.amount, dish, text: `${oldest.lot.title} from ${stand.place.name}, where ${bothWords(stand.amount, oldest.lot.countedIn)} stand: into the fridge tonight, for ${dish}.` }];
  });
}
