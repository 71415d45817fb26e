/** Which recipes may be offered, and what must be said beside them: planning's questions to the keeper of the tested tables. */
import { cautionsFor, mayKeep, processesFor, type CautionTopic, type PreservationTables } from "../engines/preservation/index.ts";
import { needsTestedProcess, type Candidate } from "../engines/pairing/index.ts";
import type { RecipeUse } from "../kernel/recipe.ts";
import { listWords } from "../kernel/words.ts";
import type { KitchenFacts } from "./facts.ts";

/** Recipes as the pairing takes them, once for all weeks. What may not be kept as it says is left out. */
export function candidatesOf(kitchen: KitchenFacts): Candidate[] {
  const askedFor = new Set(kitchen.askedFor);
  return kitchen.recipes.flatMap((recipe): Candidate[] => {
    const crops = recipe.uses.map((use) => use.crop);
    if (!mayKeep({ way: recipe.way, keeps: recipe.keeps, process: recipe.process, crops }, kitchen.preservation).ok) return [];
    return [
      {
        recipe,
        tested: isTestedHere(recipe, kitchen.altitudeM, kitchen.preservation),
        cautions: shortCautions(recipe, kitchen.preservation),
        askedFor: askedFor.has(recipe.id),
      },
    ];
  });
}

/** Jars that a canner usually holds at once, by the smaller jar (USDA, Complete Guide to Home Canning, 2015, Guide 1, p. 1-17; row load-pints of the rules). */
export function loadJarsOf({ rules }: PreservationTables): number {
  const jars = rules.find((rule) => rule.key === "load-pints")?.value;
  if (typeof jars !== "number") throw new RangeError("preservation/rules: no row load-pints");
  return jars;
}

/** One sentence on recipes that are not offered, because nothing tested lets them stand unchilled at this altitude; none when all may. */
export function heldBackNotes(candidates: readonly Candidate[]): string[] {
  const titles = candidates.filter((one) => !one.tested && needsTestedProcess(one.recipe)).map((one) => one.recipe.title);
  if (titles.length === 0) return [];
  const named = titles.length > NAMED ? [...titles.slice(0, NAMED), `${titles.length - NAMED} more`] : titles;
  return [`Not offered, because no tested process covers them at this height above the sea: ${listWords(named)}.`];
}

const NAMED = 3;

/** A tested process with a figure at this altitude; above the last band of the tables there is none. */
function isTestedHere(recipe: RecipeUse, altitudeM: number, tables: PreservationTables): boolean {
  return recipe.process !== null && processesFor(recipe.process, altitudeM, tables).value.lines.length > 0;
}

/**
 * Beside a way in the calendar: for what is eaten or cooked only what its food asks for and, where it is kept, how it must cool; all of it for
 * what is preserved. The recipe itself says the whole.
 */
function shortCautions(recipe: RecipeUse, tables: PreservationTables): readonly string[] {
  if (recipe.way !== "eat" && recipe.way !== "cook") return cautionsOf(recipe, tables);
  const cold = recipe.keeps.some((keep) => keep.place === "fridge" || keep.place === "freezer");
  const all = cautionsFor({ crops: recipe.uses.map((use) => use.crop), process: recipe.process, topics: recipe.way === "cook" && cold ? ["cooling"] : [] }, tables);
  return withoutOil(all, tables);
}

/** Cautions of one recipe, in the order of the table. */
export function cautionsOf(recipe: RecipeUse, tables: PreservationTables, texts: readonly string[] = [], topics: readonly CautionTopic[] = []): readonly string[] {
  const foods = foodsIn(texts);
  const all = cautionsFor({ way: recipe.way, crops: recipe.uses.map((use) => use.crop), process: recipe.process, foods, topics }, tables);
  return foods.includes("oil") ? all : withoutOil(all, tables);
}

/** Garlic alone is not yet garlic in oil. */
function withoutOil(cautions: readonly string[], tables: PreservationTables): readonly string[] {
  const ofOil = cautionsFor({ foods: ["oil"] }, tables);
  return cautions.filter((caution) => !ofOil.includes(caution));
}

/** Foods with a caution of their own, found in the words of the ingredients. */
function foodsIn(texts: readonly string[]): string[] {
  const inOil = texts.some((text) => STEEPS.test(text)) && texts.some((text) => /\boil\b/i.test(text) && !SPOONS.test(text));
  return [...(texts.some((text) => /kidney beans?/i.test(text)) ? ["kidney-bean"] : []), ...(inOil ? ["oil"] : [])];
}

/** What brings the danger into oil (University of Idaho 2013: garlic, herbs, chillies, vegetables). */
const STEEPS = /\b(?:garlic|herbs?|basil|parsley|coriander|dill|chives|mint|thyme|sage|oregano|rosemary|lovage|chill(?:i|ies)|(?:dried|roast(?:ed)?) (?:tomatoes|peppers))\b/i;
/** Oil by the spoon is for frying or dressing; any other amount, or none given, may be what the food lies in. */
const SPOONS = /\b(?:tbsp|tsp|tablespoons?|teaspoons?)\b/i;
