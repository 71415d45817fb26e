/** Question: how much does the recipe make? An amount and a word for it. A range is taken at its lower end, so that nobody is promised more than there is. */
import { wordsOf, type Word } from "./scan.ts";
import type { Doubt, Work } from "./types.ts";

export interface Yield {
  readonly amount: number;
  readonly unit: string;
}

const PORTIONS: ReadonlySet<string> = new Set(["serving", "servings", "people", "person", "persons", "portion", "portions", "serves"]);
const NUMBERS: Readonly<Record<string, number>> = { a: 1, an: 1, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, twelve: 12, dozen: 12 };
const PASSED_OVER: ReadonlySet<string> = new Set(["about", "approximately", "approx", "around", "roughly", "of", "the", "up", "to"]);
const LONGEST_UNIT = 40;
/** No kitchen makes more of anything at once. */
const MOST = 100_000;

/** Null where no amount is named, as in "serves the family". */
export function yieldIn(text: string, work: Work): { readonly makes: Yield; readonly doubts: readonly Doubt[] } | null {
  const words = wordsOf(text.slice(0, 200), work);
  const at = words.findIndex((word) => valueOf(word) !== null);
  if (at < 0) return null;
  let amount = valueOf(words[at] as Word) as number;
  let next = at + 1;
  if (words[next]?.low === "dozen") {
    amount *= 12;
    next++;
  }
  const doubts: Doubt[] = [];
  if ((words[next]?.low === "-" || words[next]?.low === "to" || words[next]?.low === "or") && words[next + 1]?.kind === "number") {
    doubts.push({ path: "makes", text: text.trim().slice(0, 120), why: "A range: the lower end is taken." });
    next += 2;
  }
  if (!(amount > 0) || amount > MOST) return null;
  const serves = words.slice(0, at).some(({ low }) => PORTIONS.has(low) || low === "feeds");
  return { makes: { amount, unit: serves ? "portions" : unitFrom(text, words, next) }, doubts };
}

function valueOf(word: Word): number | null {
  if (word.kind === "number") return word.value;
  return NUMBERS[word.low] ?? null;
}

function unitFrom(text: string, words: readonly Word[], at: number): string {
  let first = at;
  while (PASSED_OVER.has(words[first]?.low ?? "")) first++;
  let last = first;
  while (words[last]?.kind === "word" || (words[last]?.kind === "number" && (last > first || words[last + 1]?.low === "-")) || (words[last]?.low === "-" && last > first)) last++;
  const from = words[first];
  if (!from || last === first) return "portions";
  if (PORTIONS.has(from.low)) return "portions";
  return text.slice(from.start, (words[last - 1] as Word).end).slice(0, LONGEST_UNIT).trim();
}
