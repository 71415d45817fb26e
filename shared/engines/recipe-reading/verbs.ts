/**
 * Which work goes on by itself and which holds the cook's hands. Common practice of recipe writing, no source; the household's own times replace it.
 */
import type { Word } from "./scan.ts";

const list = (words: string): ReadonlySet<string> => new Set(words.split(" "));

/** Runs by itself once begun. */
const OFF = list(
  "bake roast simmer boil poach braise stew steam cook rise prove proof rest stand sit leave chill refrigerate freeze cool soak marinate marinade infuse steep set drain dry ferment process microwave bubble reduce warm heat preheat brew blanch cure macerate let sweat soften parboil pressure smoke",
);
/** The same while it goes on: "continue baking for 10 minutes". */
const OFF_GOING = list("baking roasting simmering boiling poaching braising cooking rising proving proofing resting standing chilling soaking steaming cooling rises doubled");
const ON = list("knead beat whisk whip stir fry sauté saute sear brown toast grill broil toss mix cream rub fold chop peel slice roll shape blend pulse mash grind pound massage shell trim cut pod flip melt crush grate work wash rinse");
const ALL_THE_TIME = list("constantly continuously continually often frequently regularly vigorously");
const OVEN = list("bake baking roast roasting oven");
const HOB = list("simmer simmering boil boiling poach braise stew steam fry sauté saute sear sweat soften blanch parboil reduce bubble saucepan pan skillet wok hob stovetop burner pot stockpot casserole melt");
const VESSEL = list("pan pot stockpot saucepan casserole kettle canner");
const LARGE = list("large big huge preserving heavy deep stock");

export type Hands = "on" | "off" | "unknown";

/** What the cook's hands do for a time named at this place: by the nearest verb before it, else the first behind it, and only by words of its own clause. */
export function handsFor(words: readonly Word[], at: number): Hands {
  const [from, to] = clauseAround(words, at);
  const clause = words.slice(from, to);
  if (clause.some((word, i) => ALL_THE_TIME.has(word.low) || (word.low === "all" && clause[i + 1]?.low === "the" && clause[i + 2]?.low === "time"))) return "on";
  for (let i = at - 1; i >= from; i--) {
    const hands = handsOf(words[i] as Word);
    if (hands !== null) return hands;
  }
  const behind = words.slice(at, to).map(handsOf).find((hands) => hands !== null);
  // "fry the onions, then 5 minutes more": what went before goes on
  const before = words.slice(0, from).map(handsOf).findLast((hands) => hands !== null);
  return behind ?? before ?? "unknown";
}

function clauseAround(words: readonly Word[], at: number): readonly [number, number] {
  let from = at;
  while (from > 0 && !endsClause(words[from - 1] as Word)) from--;
  let to = at;
  while (to < words.length && !endsClause(words[to] as Word)) to++;
  return [from, to];
}

const endsClause = ({ low }: Word): boolean => low === "then" || low === ";" || low === ".";

function handsOf({ low }: Word): Hands | null {
  if (OFF.has(low) || OFF_GOING.has(low)) return "off";
  return ON.has(low) ? "on" : null;
}

export const runsByItself = (words: readonly Word[]): boolean => words.some(({ low }) => OFF.has(low) || OFF_GOING.has(low));
export const isOvenWork = (words: readonly Word[]): boolean => words.some(({ low }) => OVEN.has(low)) && !isPreheat(words);
export const isHobWork = (words: readonly Word[]): boolean => words.some(({ low }) => HOB.has(low));
/** Heating the oven is the kitchen's own time, no step holds the oven for it. */
export const isPreheat = (words: readonly Word[]): boolean => words.some(({ low }) => low === "preheat" || low === "preheated") || (words.some(({ low }) => low === "heat" || low === "turn" || low === "set") && words.some(({ low }) => low === "oven") && !words.some(({ low }) => low === "bake" || low === "roast"));

/** A large pot is counted in a kitchen, a frying pan is not. */
export function takesLargePot(words: readonly Word[]): boolean {
  return words.some(({ low }, i) => low === "stockpot" || low === "canner" || (VESSEL.has(low) && [1, 2, 3].some((back) => LARGE.has(words[i - back]?.low ?? ""))));
}

/** Baking on two trays at a time. */
export function traysIn(words: readonly Word[]): number {
  const at = words.findIndex(({ low }) => low === "trays" || low === "sheets" || low === "tins" || low === "tin" || low === "tray");
  if (at < 0) return 1;
  const count = words.slice(Math.max(0, at - 4), at).find(({ low }) => low === "two" || low === "2" || low === "both" || low === "three" || low === "3");
  if (!count) return 1;
  return count.low === "three" || count.low === "3" ? 3 : 2;
}

const AT_ONCE: readonly (readonly string[])[] = [
  ["immediately"], ["at", "once"], ["straight", "away"], ["straightaway"], ["right", "away"], ["without", "delay"], ["as", "soon", "as"],
  ["while", "still"], ["while", "hot"], ["while", "warm"], ["while", "it", "is", "still"], ["while", "they", "are", "still"], ["straight", "into"],
];

/** Where it says that this must follow at once; null where it does not. */
export function atOnceAt(words: readonly Word[]): { readonly from: number; readonly to: number } | null {
  for (let at = 0; at < words.length; at++) {
    const phrase = AT_ONCE.find((one) => one.every((word, k) => words[at + k]?.low === word));
    if (phrase) return { from: at, to: at + phrase.length };
  }
  return null;
}
