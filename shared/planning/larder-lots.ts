/** A stored lot → the lot as it is today: what is left and where, how long it keeps, whether it is to be eaten first. */
import { balanceOf, type LotBalance, type LotInStore } from "../engines/larder/index.ts";
import { daysBetween, type LocalDate } from "../kernel/local-date.ts";
import type { PlaceKind } from "../kernel/way.ts";
import { bothAmounts, type LarderFacts, type LotFacts, type LotState, type LotToday, type PlaceFacts } from "./larder-facts.ts";
import { keepingOf } from "./lot-keeping.ts";

/** Not touched for so long, a lot is listed as forgotten. Common practice, no source. */
const FORGOTTEN_DAYS = 180;

/** Oldest first. Lots of a later day, and what was moved on a later day, are not known yet. */
export function lotsToday({ today, places, lots, preservation }: LarderFacts): LotToday[] {
  const byId = new Map(places.map((place) => [place.id, place]));
  // the foreign keys say that every place a lot names is there
  const placeOf = (id: string): PlaceFacts => byId.get(id) as PlaceFacts;
  const kinds = new Map(places.map(({ id, kind }): [string, PlaceKind] => [id, kind]));
  return lots
    .filter((lot) => lot.madeOn <= today)
    .map((stored): LotToday => {
      const lot = { ...stored, entries: stored.entries.filter((entry) => entry.on <= today) };
      const balance = balanceOf({ homePlaceId: lot.homePlaceId, entries: lot.entries });
      const stands = balance.stands.map(({ placeId, amount }) => ({ place: placeOf(placeId), amount: bothAmounts(lot, amount), counted: amount }));
      const fullest = [...stands].sort((a, b) => b.counted - a.counted)[0]?.place ?? placeOf(lot.homePlaceId);
      const keeping = keepingOf(lot, stands.length > 0 ? stands.map(({ place }) => place) : [fullest], kinds, preservation);
      const discard = balance.left > 0 && keeping.safeUntil !== null && keeping.safeUntil < today;
      const lastMovedOn = lot.entries.map(({ on }) => on).sort().at(-1) ?? null;
      return {
        lot,
        balance,
        amount: bothAmounts(lot, balance.left),
        short: balance.short > 0 ? bothAmounts(lot, balance.short) : null,
        place: fullest,
        stands: stands.map(({ place, amount }) => ({ place, amount })),
        bestUntil: keeping.bestUntil,
        safeUntil: keeping.safeUntil,
        useFirst: balance.left > 0 && !discard && keeping.useFrom !== null && keeping.useFrom <= today,
        discard,
        forgotten: balance.left > 0 && lastMovedOn !== null && daysBetween(lastMovedOn, today) >= FORGOTTEN_DAYS,
        state: stateOf(lot, balance),
        lastMovedOn,
        why: keeping.why,
        basis: keeping.basis,
      };
    })
    .sort((a, b) => (a.lot.madeOn === b.lot.madeOn ? (a.lot.id < b.lot.id ? -1 : 1) : a.lot.madeOn < b.lot.madeOn ? -1 : 1));
}

/** In the words of the engine that draws the oldest first. */
export function inStore({ lot, balance, safeUntil }: LotToday): LotInStore {
  return { id: lot.id, madeOn: lot.madeOn, safeUntil, stands: balance.stands };
}

/** Something is left of it, or there is something to be settled about it. */
export const isThere = ({ state }: LotToday): boolean => state !== "used up";

/** Days until what comes first ends; by this what is to be used first is put in order. */
export const endsOn = ({ bestUntil, safeUntil }: LotToday): LocalDate => [bestUntil, safeUntil].filter((day) => day !== null).sort()[0] ?? "9999-12-31";

/** Portions in store by recipe, of what may still be eaten. */
export function portionsInStore(facts: LarderFacts): Map<string, number> {
  const store = new Map<string, number>();
  for (const { lot, amount, discard } of lotsToday(facts)) if (lot.recipe !== null && !discard) store.set(lot.recipe.id, (store.get(lot.recipe.id) ?? 0) + (amount.portions ?? 0));
  return store;
}

function stateOf({ entries }: LotFacts, { left, short }: LotBalance): LotState {
  if (entries.length === 0) return "not put in yet";
  if (short > 0) return "to recount";
  if (left === 0) return "used up";
  return entries.some(({ kind }) => kind === "take" || kind === "give" || kind === "compost" || kind === "recount") ? "part used" : "in store";
}
