/** Where a crop's grams went, as one bar: parts in a fixed order that add up to what was picked. Pure. */
import type { CropAccount } from "#shared/contracts/gram-account.ts";

export const PARTS = [
  { key: "eatenGrams", words: "eaten fresh", mark: "k-picked" },
  { key: "batchGrams", words: "into batches", mark: "k-hill" },
  { key: "givenGrams", words: "given away", mark: "k-edge" },
  { key: "onHandGrams", words: "on hand", mark: "k-pan" },
  { key: "trimmedGrams", words: "trimmed off", mark: "k-trim" },
  { key: "compostedGrams", words: "composted or spoiled", mark: "k-lost" },
  { key: "unaccountedGrams", words: "unaccounted", mark: "k-unknown" },
] as const;

export type PartKey = (typeof PARTS)[number]["key"];

export interface BarPart {
  readonly key: PartKey;
  readonly mark: string;
  readonly x: number;
  readonly width: number;
}

/** Grams below nothing, where more was put away than picked, have no length; the table says them. */
export function barOf(crop: CropAccount, mostGrams: number, width: number): BarPart[] {
  let x = 0;
  return PARTS.flatMap(({ key, mark }) => {
    const grams = Math.max(0, crop[key]);
    if (grams === 0) return [];
    const part = { key, mark, x, width: (grams / mostGrams) * width };
    x += part.width;
    return [part];
  });
}

/** The longest bar: what was picked, or what is told of where that is more. */
export const longestOf = (crops: readonly CropAccount[]): number => Math.max(1, ...crops.map((crop) => Math.max(crop.pickedGrams, PARTS.reduce((sum, { key }) => sum + Math.max(0, crop[key]), 0))));
