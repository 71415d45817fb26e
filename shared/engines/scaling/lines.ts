/**
 * Question: does this line grow in proportion? What does not is said beside it, never silently multiplied.
 * Sources: weighed ingredients in proportion (Armed Forces Recipe Service, card A no. 1(2)); whole eggs, half an egg is 2 tablespoons beaten (University of
 * Nebraska-Lincoln Extension), 50 g without the shell (USDA SR Legacy 171287); holding back spice above twice the amount, and frying fat by the pan: common practice, no source.
 */
import type { LineToScale, Scales, Unscaled } from "./types.ts";

export interface LineRule {
  readonly scales: Scales;
  readonly of: Unscaled | null;
  readonly note: string | null;
  /** Pieces to take instead of the exact number; null where it is printed as it comes out. */
  readonly wholePieces: number | null;
}

const LEAVENING = /\b(?:baking powder|baking soda|bicarbonate|bicarb|yeast|cream of tartar|sourdough starter)\b/i;
const SALT = /\bsalt\b/i;
const SPICE = /\b(?:chill?i(?:es)?|cayenne|paprika|cloves?(?= ground)|ground cloves|allspice|nutmeg|cinnamon|cumin|turmeric|curry powder|garam masala|pepper(?:corns)?|dried (?:oregano|thyme|sage|rosemary|herbs|mint))\b/i;
const SWEET_PEPPER = /\b(?:sweet|bell|red|green|yellow) peppers?\b/i;
const THICKENER = /\b(?:cornflour|cornstarch|arrowroot|gelatine?|agar|pectin|tapioca)\b/i;
const BY_PAN = /\b(?:for|to) (?:deep[- ]|shallow[- ])?(?:fry(?:ing)?|greas(?:e|ing)|oil(?:ing)?)\b/i;
const EGG = /\beggs?\b(?! (?:noodles?|plant))/i;
const EGG_GRAMS = 50;
/** Above so many batches spice is held back. */
const HOLD_BACK_ABOVE = 2;

export function ruleFor(line: LineToScale, factor: number): LineRule {
  const rule = (scales: Scales, of: Unscaled | null, note: string | null, wholePieces: number | null = null): LineRule => ({ scales, of, note, wholePieces });
  if (BY_PAN.test(`${line.food} ${line.said}`)) return rule("by-pan", "pans", "By the pan, not by the amount: as much as covers its bottom.");
  if (line.amount === null) return rule("not", null, null);
  if (factor === 1) return rule("in-proportion", null, null);
  const exact = (line.amount.n / line.amount.d) * factor;
  if (line.pieces && EGG.test(line.food)) return eggs(exact);
  if (LEAVENING.test(line.food)) return rule("in-proportion", "leavening", null);
  if (SALT.test(line.food)) return rule("to-taste", "salt", factor > 1 ? "Start with less and taste." : "Taste before adding more.");
  if (SPICE.test(line.food) && !SWEET_PEPPER.test(line.food)) return rule("to-taste", "spice", factor > HOLD_BACK_ABOVE ? "Hold back a third and taste at the end." : null);
  if (THICKENER.test(line.food)) return rule("in-proportion", "thickener", null);
  return rule("in-proportion", null, null);
}

function eggs(exact: number): LineRule {
  const whole = Math.max(1, Math.round(exact));
  if (Math.abs(exact - whole) < 1e-9) return { scales: "in-proportion", of: null, note: null, wholePieces: null };
  const note = `Exactly ${Math.round(exact * 100) / 100}: take ${whole} and make up or leave out a little liquid, or beat them and weigh ${Math.round(exact * EGG_GRAMS)} g (50 g a large egg; half an egg is 2 tbsp).`;
  return { scales: "rounded", of: "eggs", note, wholePieces: whole };
}
