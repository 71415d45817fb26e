/** How a crop goes into the freezer: room left in the box, the largest box, and how much new food a freezer takes in a day. Source: each rule's publication. */
import { sourceOf } from "./citing.ts";
import type { Figure } from "./figures.ts";
import { inches } from "./sentences.ts";
import type { PreservationTables, RuleRow } from "./types.ts";

/** 1 lb = 453.59237 g (UCUM [lb_av]) and 1 cubic foot = 28.316846592 l (12 in of 2.54 cm, cubed), both exactly. */
const LB_GRAMS = 453.59237;
const CUBIC_FOOT_LITRES = 28.316846592;
/** A US gallon, 231 cubic inches (UCUM [gal_us]). */
const GALLON_LITRES = 3.785411784;

/** One sentence each; a rule that the tables do not have is left out. */
export function packFigures(tables: PreservationTables): Figure[] {
  const rule = (key: string): RuleRow | undefined => tables.rules.find((row) => row.key === key);
  const figure = (row: RuleRow | undefined, text: string): Figure[] => (row ? [{ text, source: sourceOf(row, tables) }] : []);
  const room = (pack: string, top: string, jar: string): string => inches(rule(`freezer-headspace-${pack}-${top}-${jar}`)?.value ?? NaN);
  const largest = rule("freezer-largest-box");
  return [
    ...figure(
      rule("freezer-headspace-dry-pack-wide-pint"),
      `Leave room for the food to swell: packed dry ${room("dry-pack", "wide", "pint")}; in liquid ${room("liquid-pack", "wide", "pint")} in a wide pint box, ${room("liquid-pack", "wide", "quart")} in a wide quart, ${room("liquid-pack", "narrow", "pint")} and ${room("liquid-pack", "narrow", "quart")} in narrow ones.`,
    ),
    ...figure(largest, `No box larger than ${(Math.floor((largest?.value ?? NaN) * GALLON_LITRES * 10) / 10).toFixed(1)} litres (half a US gallon): a larger one freezes too slowly.`),
    ...loadFigure(rule("freezing-new-food-per-cubic-foot-per-24-h-lower"), rule("freezing-new-food-per-cubic-foot-per-24-h-upper"), tables),
  ];
}

function loadFigure(low: RuleRow | undefined, high: RuleRow | undefined, tables: PreservationTables): Figure[] {
  if (!low || !high || low.value === null || high.value === null) return [];
  const [least, most] = [gramsALitre(low.value), gramsALitre(high.value)];
  const text = `In 24 hours no more than ${low.value} to ${high.value} lb of new food a cubic foot of freezer: ${Math.floor(least)} to ${Math.floor(most)} g a litre, ${Math.floor(least) / 10} to ${Math.floor(most) / 10} kg in a freezer of 100 litres.`;
  return [{ text, source: sourceOf(high, tables) }];
}

const gramsALitre = (lbACubicFoot: number): number => (lbACubicFoot * LB_GRAMS) / CUBIC_FOOT_LITRES;
