/**
 * Question: whose cups and spoons does a recipe mean, if it says so? From its own words: "Australian 20 ml tablespoon", "metric cup (250 ml)", "US cups".
 * Sizes: New South Wales Health (cup 250 ml, tablespoon 20 ml), UCUM 2.1 (US cup 236.6 ml, label cup 240 ml). Fahrenheit alone with cups is taken for American,
 * common practice, no source.
 */
import type { MeasureSystem } from "../../kernel/units.ts";
import type { Doubt } from "./types.ts";

interface Said {
  readonly measures: MeasureSystem;
  readonly doubt: Doubt;
}

const SAID: readonly (readonly [RegExp, MeasureSystem])[] = [
  [/\baustralian (?:standard |metric )?(?:cups?|(?:table)?spoons?|measures?|measurements?)\b/i, "australian"],
  [/\b(?:20 ?ml (?:table)?spoons?|(?:tablespoons?|tbsp) ?(?:[=(]|is|are|of) ?20 ?ml)\b/i, "australian"],
  [/\b(?:us|u\.s\.|american) (?:standard |customary )?(?:cups?|(?:table)?spoons?|measures?|measurements?|pints?)\b/i, "us"],
  [/\bimperial (?:pints?|measures?|measurements?)\b/i, "imperial"],
  [/\b(?:metric (?:cups?|(?:table)?spoons?|measures?|measurements?)|250 ?ml cups?|cups? ?(?:[=(]|is|are|of) ?250 ?ml)\b/i, "metric"],
];
const LONGEST_LINE = 400;
const CUPS = /\b(?:cups?|sticks? (?:of )?(?:unsalted )?butter|pints?|quarts?)\b/i;
const FAHRENHEIT = /\d ?°? ?f\b/i;
const CELSIUS = /\d ?°? ?c\b|\bgas (?:mark )?\d/i;

/** `lines` are everything that was written; null where nothing is said and nothing suggests it. */
export function whoseMeasures(lines: readonly string[], ingredients: readonly string[], steps: readonly string[]): Said | null {
  const short = lines.map((line) => line.slice(0, LONGEST_LINE));
  for (const [words, measures] of SAID) {
    const line = short.find((one) => words.test(one));
    if (line !== undefined) return { measures, doubt: { path: "measures", text: line.slice(0, 120), why: "Cups and spoons are taken as this says." } };
  }
  const cups = ingredients.some((line) => CUPS.test(line.slice(0, LONGEST_LINE)));
  const heat = steps.find((step) => FAHRENHEIT.test(step.slice(0, LONGEST_LINE)));
  if (!cups || heat === undefined || steps.some((step) => CELSIUS.test(step.slice(0, LONGEST_LINE)))) return null;
  return { measures: "us", doubt: { path: "measures", text: "", why: "Cups beside degrees Fahrenheit alone: taken as American cups and spoons." } };
}
