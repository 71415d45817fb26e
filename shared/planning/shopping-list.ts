/**
 * What the dishes of a week need, split in larder, garden and shop, and what of jars, lids and bags is short. Whole grams as picked.
 * The garden counts with the low end of its forecast: what is likely but not certain is no reason not to buy.
 */
import type { RecipeUse } from "../kernel/recipe.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { measuredWords, sentenceCase } from "../kernel/words.ts";
import type { LarderFacts } from "./larder-facts.ts";
import { lotsToday } from "./larder-lots.ts";

export interface ShoppingFacts {
  /** Each recipe once, with all its batches of the week. */
  readonly dishes: readonly { readonly recipe: RecipeUse; readonly batches: number; readonly further: readonly string[] }[];
  readonly larder: LarderFacts;
  /** By crop: what the garden gives by the day at the low end, picked already left out. */
  readonly gardenLow: ReadonlyMap<string, number>;
  /** By crop: what of the larder's produce is agreed for weeks before this one. */
  readonly reserved: ReadonlyMap<string, number>;
  /** The day it is needed by, in words. */
  readonly byWords: string;
  readonly supplies: readonly { readonly kind: string; readonly amount: number }[];
  readonly names: ReadonlyMap<string, string>;
}

export interface ShoppingList {
  readonly headline: string;
  readonly crops: readonly { readonly crop: string; readonly name: string; readonly needGrams: number; readonly larderGrams: number; readonly gardenGrams: number; readonly buyGrams: number; readonly text: string }[];
  readonly further: readonly { readonly text: string; readonly title: string; readonly batches: number }[];
  readonly supplies: readonly { readonly kind: "jar" | "lid" | "bag"; readonly need: number; readonly have: number; readonly short: number; readonly text: string }[];
  /** The same in three lists, each to be ticked off by itself. */
  readonly shop: readonly { readonly text: string }[];
  readonly garden: readonly { readonly crop: string; readonly grams: number; readonly text: string }[];
  readonly larder: readonly { readonly crop: string; readonly grams: number; readonly placeName: string | null; readonly text: string }[];
}

export function shoppingList(facts: ShoppingFacts): ShoppingList {
  const inLarder = larderGrams(facts.larder);
  const crops = [...needs(facts)].map(([crop, needGrams]) => {
    const larder = Math.min(needGrams, Math.max(0, (inLarder.get(crop)?.grams ?? 0) - (facts.reserved.get(crop) ?? 0)));
    const garden = Math.min(needGrams - larder, Math.floor(facts.gardenLow.get(crop) ?? 0));
    const split = { needGrams, larderGrams: larder, gardenGrams: garden, buyGrams: needGrams - larder - garden };
    const name = facts.names.get(crop) ?? crop;
    return { crop, name, ...split, text: splitWords(name, split) };
  });
  const supplies = suppliesOf(facts);
  const further = facts.dishes.flatMap(({ recipe, batches, further: lines }) => lines.map((text) => ({ text, title: recipe.title, batches })));
  const inOrder = crops.sort((a, b) => b.buyGrams - a.buyGrams || (a.name < b.name ? -1 : 1));
  const lists = threeLists(facts, inOrder, further, supplies, inLarder);
  return { headline: headlineOf(facts, lists.shop.length), crops: inOrder, further, supplies, ...lists };
}

function threeLists({ byWords }: ShoppingFacts, crops: ShoppingList["crops"], further: ShoppingList["further"], supplies: ShoppingList["supplies"], inLarder: ReadonlyMap<string, InLarder>): Pick<ShoppingList, "shop" | "garden" | "larder"> {
  const of = (name: string, grams: number): string => `${sentenceCase(cropWord(name))}, ${measuredWords(grams)}`;
  return {
    shop: [
      ...crops.filter(({ buyGrams }) => buyGrams > 0).map(({ name, buyGrams }) => ({ text: of(name, buyGrams) })),
      ...supplies.filter(({ short }) => short > 0).map(({ kind, short }) => ({ text: `${short} ${kind}${short === 1 ? "" : "s"}` })),
      ...further.map(({ text, title, batches }) => ({ text: `${text}, for ${batches === 1 ? "" : `${batches} × `}${title}` })),
    ],
    garden: crops.filter(({ gardenGrams }) => gardenGrams > 0).map(({ crop, name, gardenGrams }) => ({ crop, grams: gardenGrams, text: `${of(name, gardenGrams)}, to pick ${byWords}` })),
    larder: crops
      .filter(({ larderGrams: grams }) => grams > 0)
      .map(({ crop, name, larderGrams: grams }) => {
        const placeName = inLarder.get(crop)?.placeName ?? null;
        return { crop, grams, placeName, text: `${of(name, grams)}${placeName === null ? "" : ` from ${placeName}`}` };
      }),
  };
}

interface InLarder {
  readonly grams: number;
  /** Where the oldest of it stands. */
  readonly placeName: string;
}

function needs({ dishes }: ShoppingFacts): Map<string, number> {
  const grams = new Map<string, number>();
  for (const { recipe, batches } of dishes) for (const use of recipe.uses) grams.set(use.crop, (grams.get(use.crop) ?? 0) + use.grams * batches);
  return grams;
}

function larderGrams(larder: LarderFacts): Map<string, InLarder> {
  const there = new Map<string, InLarder>();
  for (const { lot, balance, discard, place } of lotsToday(larder)) {
    if (lot.crop === null || discard || balance.left <= 0) continue;
    const before = there.get(lot.crop);
    there.set(lot.crop, { grams: (before?.grams ?? 0) + balance.left, placeName: before?.placeName ?? place.name });
  }
  return there;
}

/** A jar takes a lid. */
const CONTAINERS = [{ kind: "jar", unit: "jars", words: "jars" }, { kind: "lid", unit: "jars", words: "lids" }, { kind: "bag", unit: "bags", words: "bags" }] as const;

function suppliesOf({ dishes, supplies }: ShoppingFacts): ShoppingList["supplies"] {
  return CONTAINERS.flatMap(({ kind, unit, words }) => {
    const need = dishes.reduce((sum, { recipe, batches }) => sum + (recipe.makes.unit === unit ? Math.ceil(recipe.makes.amount * batches) : 0), 0);
    if (need === 0) return [];
    const have = supplies.reduce((sum, supply) => sum + (supply.kind === kind ? supply.amount : 0), 0);
    const short = Math.max(0, need - have);
    return [{ kind, need, have, short, text: short === 0 ? `${need} ${words} are needed and there.` : `${need} ${words} are needed, ${have} are there: ${short} short.` }];
  });
}

function splitWords(name: string, { needGrams, larderGrams: larder, gardenGrams, buyGrams }: Omit<ShoppingList["crops"][number], "crop" | "name" | "text">): string {
  const parts = [...(larder > 0 ? [`${measuredWords(larder)} from the larder`] : []), ...(gardenGrams > 0 ? [`${measuredWords(gardenGrams)} from the garden`] : []), ...(buyGrams > 0 ? [`buy ${measuredWords(buyGrams)}`] : [])];
  return `${sentenceCase(cropWord(name))}: ${measuredWords(needGrams)} needed; ${parts.join(", ")}.`;
}

function headlineOf({ dishes }: ShoppingFacts, toBuy: number): string {
  if (dishes.length === 0) return "Nothing is planned for this week.";
  if (toBuy === 0) return "The larder and the garden have all that is needed.";
  // what the recipes name besides produce is not looked for among the dry goods
  return `${toBuy} ${toBuy === 1 ? "thing is" : "things are"} on the shop’s list; look first whether dry goods are there.`;
}
