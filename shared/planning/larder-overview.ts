/** Facts of the larder → what stands where, and what to do about it: eat first, throw away, look after, count again. */
import { oldestFirst } from "../engines/larder/index.ts";
import { listWords } from "../kernel/words.ts";
import { bothAmounts, type BothAmounts, type LarderFacts, type LotToday, type PlaceFacts } from "./larder-facts.ts";
import { endsOn, inStore, isThere, lotsToday } from "./larder-lots.ts";
import { placesToday, type PlaceToday } from "./larder-rooms.ts";
import { bothWords, forgottenLine, lotLine, shortLine, type LotLine } from "./larder-words.ts";

export interface LarderOverview {
  readonly today: string;
  readonly headline: string;
  readonly places: readonly PlaceToday[];
  /** Oldest first; used up ones too. */
  readonly lots: readonly LotToday[];
  readonly useFirst: readonly LotLine[];
  readonly discard: readonly LotLine[];
  readonly forgotten: readonly LotLine[];
  readonly toRecount: readonly LotLine[];
}

export function larderOverview(facts: LarderFacts): LarderOverview {
  const lots = lotsToday(facts);
  const { today } = facts;
  const soonest = (some: LotToday[]): LotToday[] => some.sort((a, b) => (endsOn(a) < endsOn(b) ? -1 : endsOn(a) > endsOn(b) ? 1 : 0));
  const useFirst = soonest(lots.filter((one) => one.useFirst)).map((one) => lotLine(one, today));
  const discard = soonest(lots.filter((one) => one.discard)).map((one) => lotLine(one, today));
  const toRecount = lots.filter(({ state }) => state === "to recount").map(shortLine);
  const forgotten = lots
    .filter((one) => one.forgotten)
    .sort((a, b) => (a.place.name < b.place.name ? -1 : a.place.name > b.place.name ? 1 : 0))
    .map((one) => forgottenLine(one, today));
  return { today, headline: headlineOf(lots, useFirst, discard, toRecount), places: placesToday(facts, lots), lots, useFirst, discard, forgotten, toRecount };
}

/** For the list of the day: what to throw away, then what to eat first. */
export function useFirstToday(facts: LarderFacts): LotLine[] {
  const { discard, useFirst, toRecount } = larderOverview(facts);
  return [...discard, ...useFirst, ...toRecount];
}

/** By recipe: what there is of it that may be eaten, oldest first: "3 portions in Bottom drawer". */
export function storeWords(facts: LarderFacts): Map<string, string> {
  const words = new Map<string, string[]>();
  for (const { lot, balance, discard, stands } of lotsToday(facts)) {
    if (lot.recipe === null || balance.left === 0 || discard) continue;
    const lines = stands.map(({ place, amount }) => `${bothWords(amount, lot.countedIn)} in ${place.name}`);
    words.set(lot.recipe.id, [...(words.get(lot.recipe.id) ?? []), ...lines]);
  }
  return new Map([...words].map(([id, lines]) => [id, listWords(lines)]));
}

export interface Asked {
  readonly crop: string | null;
  readonly recipeId: string | null;
  readonly amount: BothAmounts;
}

export interface OldestDraws {
  readonly takes: readonly { readonly one: LotToday; readonly place: PlaceFacts; readonly amount: BothAmounts; readonly usesUp: boolean }[];
  readonly missing: number;
  readonly text: string;
}

/** From which lots of a crop or a recipe so much is taken. Lots that are not counted in what was asked for, and cannot be turned into it, are left out. */
export function drawOldest(facts: LarderFacts, { crop, recipeId, amount }: Asked): OldestDraws {
  const unit = amount.portions === null ? "grams" : "portions";
  const asked = amount.portions ?? amount.grams ?? 0;
  const kin = lotsToday(facts).filter(({ lot, balance }) => balance.left > 0 && lot.countedIn === unit && (crop === null ? lot.recipe?.id === recipeId : lot.crop === crop));
  const { draws, missing } = oldestFirst(kin.map(inStore), asked, facts.today);
  const takes = draws.map(({ lotId, placeId, amount: drawn, usesUp }) => {
    const one = kin.find(({ lot }) => lot.id === lotId) as LotToday;
    return { one, place: facts.places.find(({ id }) => id === placeId) as PlaceFacts, amount: bothAmounts(one.lot, drawn), usesUp };
  });
  const words = takes.map(({ one, place, amount: drawn, usesUp }) => `${bothWords(drawn, unit)} of ${one.lot.title} from ${place.name}${usesUp ? ", which uses it up" : ""}`);
  const short = missing > 0 ? ` ${bothWords({ grams: missing, portions: missing }, unit)} ${missing === 1 && unit === "portions" ? "is" : "are"} missing.` : "";
  return { takes, missing, text: `${words.length === 0 ? "There is none in the larder." : `Take ${words.join("; ")}.`}${short}` };
}

function headlineOf(lots: readonly LotToday[], useFirst: readonly LotLine[], discard: readonly LotLine[], toRecount: readonly LotLine[]): string {
  const there = lots.filter((one) => isThere(one) && one.balance.left > 0).length;
  if (there === 0 && toRecount.length === 0) return "Nothing is in the larder yet.";
  const parts = [
    ...(discard[0] ? [`Throw away ${discard[0].title}${more(discard)}.`] : []),
    ...(useFirst[0] ? [`Use ${useFirst[0].title} first${more(useFirst)}.`] : []),
    ...(toRecount.length > 0 ? [`${toRecount.length} ${toRecount.length === 1 ? "lot is" : "lots are"} to be counted again.`] : []),
  ];
  return parts.length > 0 ? parts.join(" ") : `${there} ${there === 1 ? "lot is" : "lots are"} in store, and nothing presses.`;
}

const more = (lines: readonly LotLine[]): string => (lines.length > 1 ? `, and ${lines.length - 1} more` : "");
