/**
 * Question: is there salt enough in what is to ferment? Salt ÷ (produce + water), by weight; below the least of the tables it is refused.
 * Source: the share of salt of the fermenting table; USDA Complete Guide 2015, Guide 6, p. 6-6 to 6-8: salt is not to be cut in a ferment.
 */
import type { IngredientLine } from "./tested-lines.ts";
import type { PreservationTables } from "./types.ts";

/** Row whose words give the share: 2–2.5 % of the weight. */
const SHARE_ROW = "kraut-salt-as-percent-of-cabbage-weight";

/** What is wrong, with the place of the salt's line; nothing where enough is there or a weight is not known. */
export function tooLittleSalt(lines: readonly IngredientLine[], { fermenting }: PreservationTables): { readonly at: number; readonly message: string } | null {
  const least = Number(/^([\d.]+)/.exec(fermenting.find((row) => row.key === SHARE_ROW)?.salt ?? "")?.[1]);
  const at = lines.findIndex(({ text }) => /\bsalt\b/i.test(text));
  const moist = lines.filter(({ crop, text }, i) => i !== at && (crop !== undefined || /\bwater\b/i.test(text)));
  const salt = lines[at]?.grams;
  if (at < 0 || salt === undefined || salt === null || moist.length === 0 || moist.some(({ grams }) => grams === undefined || grams === null) || !(least > 0)) return null;
  const weight = moist.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
  const percent = Math.round((salt / weight) * 1000) / 10;
  if (percent >= least) return null;
  return { at, message: `is ${percent} % of what it salts. At least ${least} % is a matter of safety, not of taste: ${Math.ceil((weight * least) / 100)} g or more.` };
}
