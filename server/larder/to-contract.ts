import type { Larder, OldestFirst } from "#shared/contracts/larder.ts";
import { isThere } from "#shared/planning/larder-lots.ts";
import type { LarderOverview, OldestDraws } from "#shared/planning/larder-overview.ts";
import { lotWords, placeWords } from "../facts/larder-words.ts";

export function toContract({ today, headline, places, lots, useFirst, discard, forgotten, toRecount }: LarderOverview, all: boolean): Larder {
  const copies = <Line extends object>(lines: readonly Line[]): Line[] => lines.map((line) => ({ ...line }));
  return {
    today,
    headline,
    places: places.map(placeWords),
    lots: lots.filter((one) => all || isThere(one)).map(lotWords),
    useFirst: copies(useFirst),
    discard: copies(discard),
    forgotten: copies(forgotten),
    toRecount: copies(toRecount),
  };
}

export function toOldestFirst({ takes, missing, text }: OldestDraws, inPortions: boolean): OldestFirst {
  return {
    takes: takes.map(({ one, place, amount, usesUp }) => ({ lotId: one.lot.id, title: one.lot.title, madeOn: one.lot.madeOn, placeId: place.id, placeName: place.name, ...amount, usesUp })),
    missing: { grams: inPortions ? null : missing, portions: inPortions ? missing : null },
    text,
  };
}
