/** What a recipe makes, its unit in one or in many: "6 portions", "1 jar", "2 jars of 500 ml", "1.2 kg". */

const NBSP = "\u00a0";
const MEASURES: ReadonlySet<string> = new Set(["g", "kg", "ml", "l", "L"]);

/** Whether the unit weighs or measures instead of counting. */
export const isMeasure = (unit: string): boolean => MEASURES.has(unit.split(" ", 1)[0] as string);

export function madeWords(amount: number, unit: string): string {
  const figure = String(Math.round(amount * 100) / 100);
  if (isMeasure(unit)) return `${figure}${NBSP}${unit}`;
  const [, noun = "", rest = ""] = /^(\S+)(.*)$/.exec(unit) ?? [];
  const one = singular(noun);
  return `${figure}${NBSP}${amount === 1 ? one : plural(one)}${rest}`;
}

/** Nouns whose plural no rule gives, as kitchens count by them. */
const ODD: readonly (readonly [one: string, many: string])[] = [["loaf", "loaves"], ["half", "halves"], ["shelf", "shelves"]];

function plural(one: string): string {
  const odd = ODD.find(([word]) => word === one);
  if (odd) return odd[1];
  if (/(?:ch|sh|ss|x|z)$/.test(one)) return `${one}es`;
  return /[^aeiou]y$/.test(one) ? `${one.slice(0, -1)}ies` : `${one}s`;
}

function singular(noun: string): string {
  const odd = ODD.find(([, words]) => words === noun);
  if (odd) return odd[0];
  if (/(?:ch|sh|ss|x|z)es$/.test(noun)) return noun.slice(0, -2);
  if (/[^aeiou]ies$/.test(noun)) return `${noun.slice(0, -3)}y`;
  return /[^s]s$/.test(noun) ? noun.slice(0, -1) : noun;
}
