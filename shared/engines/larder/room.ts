/** Question: how much room is left in a place, and how much that is warm may go into a freezer in a day? Litres and whole grams. */

/**
 * Litres of box or bag for a kilogram in it. Stews and soups in boxes take 1.1 to 1.3 l for each litre (common practice, no source); garden produce
 * packed for the freezer 0.7 to 1.4 l a kilogram. Where a lot says what room a portion takes, that counts.
 */
const LITRES_PER_KG = 1.2;
/** 28.3168 l: one cubic foot (NIST Handbook 44, appendix C). */
const LITRES_PER_CUBIC_FOOT = 28.3168;
/** International avoirdupois pound, exact (NIST Handbook 44, appendix C). */
const GRAMS_PER_POUND = 453.592_37;
/** From this share on a place is nearly full. Common practice, no source. */
const NEARLY_FULL = 0.9;

export interface LotSize {
  readonly grams: number | null;
  readonly portions: number | null;
  readonly portionMl: number | null;
}

/** Room that so much of a lot takes; null where neither its weight nor the room of a portion is known. */
export function litresOf({ grams, portions, portionMl }: LotSize): number | null {
  if (portions !== null && portionMl !== null) return (portions * portionMl) / 1000;
  return grams === null ? null : (grams * LITRES_PER_KG) / 1000;
}

export function roomState(usedLitres: number, litres: number): "has room" | "nearly full" | "full" {
  if (usedLitres >= litres) return "full";
  return usedLitres >= NEARLY_FULL * litres ? "nearly full" : "has room";
}

/** What a freezer takes of food that is not frozen yet in 24 hours; `poundsPerCubicFoot` from the tables of keeping. */
export function freezingLoad(litres: number, poundsPerCubicFoot: { readonly low: number; readonly high: number }): { low: number; high: number } {
  const grams = (pounds: number): number => Math.round((litres / LITRES_PER_CUBIC_FOOT) * pounds * GRAMS_PER_POUND);
  return { low: grams(poundsPerCubicFoot.low), high: grams(poundsPerCubicFoot.high) };
}

/** Splits what is to be frozen over as few days as the upper load allows, as evenly as whole grams do. */
export function overDays(grams: number, perDay: number): number[] {
  const days = Math.max(1, Math.ceil(grams / Math.max(1, perDay)));
  return Array.from({ length: days }, (_, day) => Math.floor(((day + 1) * grams) / days) - Math.floor((day * grams) / days));
}
