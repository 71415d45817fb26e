/**
 * Amounts as a kitchen can measure them, and how far that is from the exact amount.
 * Steps by weight: below 10 g half a gram, to 100 g one, to 1 kg five, above ten (common practice, no source).
 * Measures: the cups and spoons that sets are sold with, ⅔ and ¾ cup as sums, at most two measures, the larger first (common practice);
 * a single measure is taken when it is within 3 %, as the sum is no truer to the hand.
 */
export interface KitchenAmount {
  readonly text: string;
  /** (printed − exact) / exact, in per cent, one decimal. */
  readonly errorPercent: number;
}

const FRACTIONS: readonly (readonly [number, string])[] = [[0, ""], [1 / 4, "¼"], [1 / 3, "⅓"], [1 / 2, "½"], [2 / 3, "⅔"], [3 / 4, "¾"]];
const NBSP = "\u00a0";

/** 5 g, 250 g, 1.25 kg; `exactly` keeps a weight that a line states in grams. */
export function weightWords(grams: number, exactly = false): KitchenAmount {
  const rounded = exactly ? grams : stepped(grams);
  return rounded >= 1000 ? spoken(rounded, 1000, "kg", grams) : spoken(rounded, 1, "g", grams);
}

/** 15 ml, 235 ml, 1.2 l: to 15 ml by one, to a litre by five, above by ten. */
export function volumeWords(ml: number, exactly = false): KitchenAmount {
  const step = ml <= 15 ? 1 : ml <= 1000 ? 5 : 10;
  const rounded = exactly ? ml : Math.max(1, Math.round(ml / step) * step);
  return rounded >= 1000 ? spoken(rounded, 1000, "l", ml) : spoken(rounded, 1, "ml", ml);
}

function stepped(grams: number): number {
  const step = grams < 10 ? 0.5 : grams <= 100 ? 1 : grams <= 1000 ? 5 : 10;
  return Math.max(0.5, Math.round(grams / step) * step);
}

function spoken(rounded: number, per: number, unit: string, exact: number): KitchenAmount {
  return { text: `${Math.round((rounded / per) * 100) / 100}${NBSP}${unit}`, errorPercent: errorOf(rounded, exact) };
}

export interface Spoons {
  readonly cupMl: number;
  readonly tablespoonMl: number;
  readonly teaspoonMl: number;
}

/** Within this share of the exact amount a simpler print is preferred (common practice, no source). */
const NEAR_PERCENT = 3;

/** 1½ cups, 1 cup + 2 tbsp, ¼ tsp; below an eighth of a teaspoon "a pinch". */
export function measureWords(ml: number, spoons: Spoons): KitchenAmount {
  const { cupMl, tablespoonMl, teaspoonMl } = spoons;
  if (ml < teaspoonMl / 8) return { text: "a pinch", errorPercent: 0 };
  const teaspoons = parts(ml, teaspoonMl, "tsp", 0.25).filter((part) => part.ml < tablespoonMl - 1e-6);
  const tablespoons = parts(ml, tablespoonMl, "tbsp", 1).filter((part) => part.ml <= 4 * tablespoonMl && /^\d+½?\s/.test(part.text));
  const single = [{ ml: teaspoonMl / 8, text: `⅛${NBSP}tsp` }, ...teaspoons, ...tablespoons, ...parts(ml, cupMl, "cup", 0.25)];
  const cupsBelow = parts(ml, cupMl, "cup", 0.25, true);
  const spoonsBelow = parts(ml, tablespoonMl, "tbsp", 1, true).filter((part) => part.ml <= 4 * tablespoonMl && /^\d+\s/.test(part.text));
  const tablespoonsOf = (rest: number, print: RegExp): Part[] => parts(rest, tablespoonMl, "tbsp", 1).filter((part) => part.ml < 4 * tablespoonMl && print.test(part.text));
  const wholeSpoons = (rest: number): Part[] => tablespoonsOf(rest, /^\d+\s/);
  const halfSpoons = (rest: number): Part[] => tablespoonsOf(rest, /^\d+½?\s/);
  const smallSpoons = (rest: number): Part[] => parts(rest, teaspoonMl, "tsp", 0.25).filter((part) => part.ml < tablespoonMl - 1e-6);
  // from the simplest print to the finest; the first that is near enough is taken
  const prints = [single, sums(cupsBelow, wholeSpoons, ml), sums(spoonsBelow, smallSpoons, ml), sums(cupsBelow, smallSpoons, ml), sums(cupsBelow, halfSpoons, ml)];
  for (const some of prints) {
    const close = nearest(some, ml);
    if (close && Math.abs(close.errorPercent) <= NEAR_PERCENT) return close;
  }
  return nearest(prints.flat(), ml) as KitchenAmount;
}

function sums(larger: readonly Part[], smaller: (restMl: number) => Part[], ml: number): Part[] {
  return larger.flatMap((first) => smaller(ml - first.ml).map((rest) => ({ ml: first.ml + rest.ml, text: `${first.text} + ${rest.text}` })));
}

interface Part {
  readonly ml: number;
  readonly text: string;
}

/** The printable multiples around an amount; only those below it when another measure is to be added. */
function parts(ml: number, unitMl: number, unit: string, least: number, below = false): Part[] {
  const whole = Math.floor(ml / unitMl);
  const found: Part[] = [];
  for (let n = Math.max(0, whole - 1); n <= whole + 1; n++) {
    for (const [share, sign] of FRACTIONS) {
      const count = n + share;
      if (count < least || (unit === "tsp" && (sign === "⅓" || sign === "⅔")) || (below && count * unitMl > ml)) continue;
      found.push({ ml: count * unitMl, text: `${n === 0 ? "" : n}${sign}${NBSP}${unit === "cup" && count > 1 ? "cups" : unit}` });
    }
  }
  return found;
}

function nearest(candidates: readonly Part[], ml: number): KitchenAmount | null {
  let best: Part | null = null;
  // of equals the first, so that one measure wins over a sum
  for (const part of candidates) if (!best || Math.abs(part.ml - ml) < Math.abs(best.ml - ml) - 1e-9) best = part;
  return best && { text: best.text, errorPercent: errorOf(best.ml, ml) };
}

export function errorOf(printed: number, exact: number): number {
  return exact === 0 ? 0 : Math.round(((printed - exact) / exact) * 1000) / 10;
}

/** 3, 2½, ⅓: a count, to the nearest printable fraction. */
export function countWords(count: number): KitchenAmount {
  const whole = Math.floor(count + 1e-9);
  let best: readonly [number, string] = [whole + 1, String(whole + 1)];
  for (const [share, sign] of FRACTIONS) {
    if (whole + share === 0) continue;
    if (Math.abs(whole + share - count) < Math.abs(best[0] - count)) best = [whole + share, `${whole === 0 ? "" : whole}${sign}`];
  }
  return { text: best[1], errorPercent: errorOf(best[0], count) };
}
