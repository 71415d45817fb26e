/** Crops by the word a gardener uses, each apart from the others on the page. Pure. */
import { cropWord } from "#shared/kernel/crop-words.ts";
import { capital } from "../format.ts";

/** A crop's name as a label and inside a sentence. */
export interface CropName {
  /** “Tomatoes”; the table's own “French bean, bush” where two rows would read the same. */
  readonly label: string;
  /** “tomatoes”, “French beans”. */
  readonly word: string;
}
export type CropNames = ReadonlyMap<string, CropName>;

export function rowNames(rows: readonly { readonly crop: string; readonly name: string }[]): CropNames {
  const uses = new Map<string, number>();
  for (const { name } of rows) uses.set(cropWord(name), (uses.get(cropWord(name)) ?? 0) + 1);
  return new Map(rows.map(({ crop, name }) => [crop, { label: uses.get(cropWord(name)) === 1 ? capital(cropWord(name)) : name, word: cropWord(name) }]));
}
