/** “3”, “3 portions”, “450 g”, “1.2 kg” for what goes in or out of a lot. Pure. */
import { readGrams } from "../../parts/typed-amount.ts";
import { got, wrong, type Typed } from "../../parts/typed.ts";

export type LotAmount = { readonly portions: number } | { readonly grams: number };

const WORKS = "Write portions or a weight: 3 portions, 450 g, 1.2 kg.";

/** A bare number is meant in what the lot is counted in. `zero`: nothing at all may be counted. */
export function readAmount(text: string, countedIn: "grams" | "portions", zero = false): Typed<LotAmount> {
  const typed = text.trim().toLowerCase();
  if (typed === "") return wrong("No amount is written yet.", WORKS);
  const pieces = /^(\d+)\s*(?:portions?|bags?|jars?|box(?:es)?|pieces?|loa(?:f|ves))?$/.exec(typed);
  const bare = /^\d+$/.test(typed);
  if (pieces && !(bare && countedIn === "grams")) return Number(pieces[1]) > 0 || zero ? got({ portions: Number(pieces[1]) }) : wrong("That is nothing.", WORKS);
  if (zero && /^0\s*(?:g|kg)?$/.test(typed)) return got({ grams: 0 });
  const grams = readGrams(typed);
  return grams.ok ? got({ grams: grams.value }) : wrong(grams.wrong, WORKS);
}
