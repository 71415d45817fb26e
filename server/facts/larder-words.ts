/** Lots and places of the larder in the words of the wire, which several slices answer with. */
import type { LarderLot } from "#shared/contracts/lots.ts";
import type { Place } from "#shared/contracts/places.ts";
import type { LotToday } from "#shared/planning/larder-facts.ts";
import type { PlaceToday } from "#shared/planning/larder-rooms.ts";

export function lotWords(one: LotToday): LarderLot {
  const { lot, place, amount, short, state, useFirst, discard, forgotten, lastMovedOn } = one;
  return {
    id: lot.id,
    title: lot.title,
    ...(lot.crop === null ? {} : { crop: lot.crop }),
    ...(lot.recipe === null ? {} : { recipeId: lot.recipe.id }),
    madeOn: lot.madeOn,
    placeId: place.id,
    placeName: place.name,
    ...amount,
    countedIn: lot.countedIn,
    stands: one.stands.map((stand) => ({ placeId: stand.place.id, placeName: stand.place.name, kind: stand.place.kind, ...stand.amount })),
    bestUntil: one.bestUntil,
    ...(one.safeUntil === null ? {} : { safeUntil: one.safeUntil }),
    useFirst,
    discard,
    state,
    short,
    forgotten,
    lastMovedOn,
    ...(lot.recipe?.reheat ? { reheat: lot.recipe.reheat } : {}),
    keepsWhy: [...one.why],
    sources: one.basis.map((source) => ({ ...source })),
  };
}

export function placeWords({ place, ...today }: PlaceToday): Place {
  const { litres, ...named } = place;
  return { ...named, ...(litres === null ? {} : { litres }), ...today, notes: [...today.notes] };
}
