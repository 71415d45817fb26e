/** The rule of a place's litres: what is in it, what is free. Pixels; pure. */
import type { Place } from "#shared/contracts/places.ts";
import { amountSpan, measured, plain } from "../../format.ts";

export interface RoomRule {
  readonly used: number;
  readonly all: number;
  readonly words: { readonly left: string; readonly right: string };
  /** More is in it than it holds. */
  readonly over: boolean;
}

/** Null for a place whose litres nobody has said. All places share litres per pixel, so that a chest looks like a chest. */
export function roomOf(place: Place, mostLitres: number, width: number): RoomRule | null {
  if (place.litres === undefined) return null;
  const x = (litres: number): number => (litres / mostLitres) * (width - 2);
  const over = place.usedLitres > place.litres;
  return {
    used: x(Math.min(place.usedLitres, place.litres)),
    all: x(place.litres),
    words: { left: `${litresWords(place.usedLitres)} in it`, right: over ? `${litresWords(place.usedLitres - place.litres)} over, of ${litresWords(place.litres)}` : `${litresWords(place.litres - place.usedLitres)} free of ${litresWords(place.litres)}` },
    over,
  };
}

/** “10 l of 45 l, has room; 1 without a known size”. */
export function roomWords(place: Pick<Place, "litres" | "usedLitres" | "state" | "unmeasuredLots">): string {
  const room = place.litres === undefined ? "" : [`${litresWords(place.usedLitres)} of ${litresWords(place.litres)}`, place.state ?? ""].filter(Boolean).join(", ");
  const unmeasured = place.unmeasuredLots > 0 ? `${place.unmeasuredLots} without a known size` : "";
  return [room, unmeasured].filter(Boolean).join("; ");
}

/** “Freezes 1.9 to 2.9 kg in a day”; empty for what is no freezer, or of unknown size. */
export function loadWords({ loadGrams, inTodayGrams }: Pick<Place, "loadGrams" | "inTodayGrams">): string {
  if (loadGrams === null) return "";
  return `Freezes ${amountSpan(loadGrams.low, loadGrams.high)} in a day${inTodayGrams > 0 ? `; ${measured(inTodayGrams)} went in today` : ""}`;
}

/** 44 l, 5.5 l. */
export const litresWords = (litres: number): string => `${plain(litres >= 10 ? Math.round(litres) : Math.round(litres * 10) / 10)}\u00a0l`;
