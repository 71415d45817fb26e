/**
 * Recipes as the season's plan takes them: what one batch makes, takes and keeps. What may not be made, or is never eaten here, has no method and is
 * told with its reason. Only the main crops decide a batch; what goes in beside them comes from the store or the shop.
 */
import type { Method } from "../engines/season-plan/index.ts";
import { litresOf } from "../engines/larder/index.ts";
import { needsTestedProcess } from "../engines/pairing/index.ts";
import { mayKeep, processesFor } from "../engines/preservation/index.ts";
import { cropWord } from "../kernel/crop-words.ts";
import type { Keeping } from "../kernel/recipe.ts";
import type { PlaceKind } from "../kernel/way.ts";
import type { Liking, SeasonFacts, SeasonRecipe } from "./season-facts.ts";

/** Main is what makes up at least this share of the garden produce in a batch; common practice, no source. */
const MAIN_SHARE = 0.25;
/** Litres of box for a portion of a cooked dish, and portions of a litre; common practice, no source. */
const PORTION_LITRES = 0.4;
const PORTIONS_A_LITRE = 4;
const BOX_PER_LITRE = 1.2;
/** Batches of one recipe in a week; a tested recipe is made once or twice and not stretched. Common practice, no source. */
const MOST_BATCHES = 4;
const MOST_TESTED = 2;

export interface RefusedRecipe {
  readonly recipe: SeasonRecipe;
  readonly why: string;
}

export interface SeasonMethods {
  readonly methods: readonly Method[];
  readonly refused: readonly RefusedRecipe[];
}

export interface MethodsQuestion {
  /** Slugs of what ripens or is on hand in the weeks asked for. */
  readonly ripe: ReadonlySet<string>;
  /** Portions in store by recipe. */
  readonly inStore: ReadonlyMap<string, number>;
  /** Portions that may be eaten of one dish in a week. */
  readonly eatPortions: readonly number[];
  readonly weeks: number;
}

/** Name of the method that stands for what is in store of a recipe already. */
export const storeOf = (recipeId: string): string => `store ${recipeId}`;

/** Main crops of one batch, grams as picked. */
export function mainUses(recipe: Pick<SeasonRecipe, "uses">): { crop: string; grams: number }[] {
  const whole = recipe.uses.reduce((sum, use) => sum + use.grams, 0);
  return recipe.uses.filter(({ grams }) => grams > 0 && grams >= MAIN_SHARE * whole).map(({ crop, grams }) => ({ crop, grams }));
}

/** Eating fresh and giving are no methods: they are what each week may take of a crop. What is in store already is a method that makes nothing more. */
export function seasonMethods(facts: SeasonFacts, question: MethodsQuestion): SeasonMethods {
  const methods: Method[] = [];
  const refused: RefusedRecipe[] = [];
  for (const recipe of facts.recipes) {
    const uses = mainUses(recipe);
    const inSeason = recipe.way !== "eat" && recipe.way !== "give" && uses.length > 0 && uses.every(({ crop }) => question.ripe.has(crop));
    const why = inSeason ? whyNot(recipe, facts) : null;
    if (why !== null) refused.push({ recipe, why });
    if (inSeason && why === null) methods.push(methodOf(recipe, uses, facts, question));
    const portions = question.inStore.get(recipe.id) ?? 0;
    if (portions > 0) methods.push({ ...methodOf(recipe, [], facts, question), id: storeOf(recipe.id), sessionBatches: { min: 0, max: 0 }, keepWeeks: null, opening: portions });
  }
  return { methods: methods.sort((a, b) => (a.id < b.id ? -1 : 1)), refused };
}

/** Why a recipe is never planned here; null when it may be. */
export function whyNot(recipe: SeasonRecipe, facts: SeasonFacts): string | null {
  const { kitchen, settings, tastes, garden } = facts;
  const { avoids } = settings;
  const crop = recipe.uses.find((use) => avoids.crops.includes(use.crop));
  if (crop) return `Nobody here eats ${cropWord(garden.crops.get(crop.crop)?.name ?? crop.crop)}.`;
  const allergen = recipe.allergens.find((one) => avoids.allergens.some((avoided) => avoided.toLowerCase() === one.toLowerCase()));
  if (allergen !== undefined) return `It states ${allergen}, which is never eaten here.`;
  if (tastes.get(recipe.id) === "never") return "Somebody has said: never.";
  const keeping = mayKeep({ way: recipe.way, keeps: recipe.keeps, process: recipe.process, crops: recipe.uses.map((use) => use.crop) }, kitchen.preservation);
  if (!keeping.ok) return keeping.problem.fields?.[0]?.message ?? keeping.problem.detail;
  const tested = recipe.process !== null && processesFor(recipe.process, kitchen.altitudeM, kitchen.preservation).value.lines.length > 0;
  if (needsTestedProcess(recipe) && !tested) return "No tested process covers it at this height above the sea.";
  if (recipe.ovenMin > 0 && settings.ovens === 0) return "It needs an oven, and there is none.";
  if (recipe.way !== "cook" && placeOf(recipe, facts) === null) return `It is kept in a ${recipe.keeps[0]?.place ?? "place of its own"}, and there is none.`;
  return null;
}

function methodOf(recipe: SeasonRecipe, uses: Method["uses"], facts: SeasonFacts, question: MethodsQuestion): Method {
  const kept = placeOf(recipe, facts);
  const portions = portionsOf(recipe.makes);
  const keptIn = keptInOf(kept);
  const next = recipe.handsOnNextMin ?? recipe.handsOnMin;
  return {
    id: recipe.id,
    title: recipe.title,
    way: recipe.way,
    keptIn,
    process: recipe.process === null ? "not-needed" : "tested",
    needs: [],
    uses,
    sessionBatches: { min: 1, max: recipe.process === null ? MOST_BATCHES : MOST_TESTED },
    perSession: { "hands-on": Math.max(0, recipe.handsOnMin - next) },
    perBatch: { "hands-on": next, ...(recipe.ovenMin > 0 ? { oven: recipe.ovenMin } : {}), ...takes(recipe, kept, keptIn, portions) },
    portions,
    keepWeeks: kept === null ? 1 : weeksKept(kept.days, question.weeks),
    eatPortions: question.eatPortions,
    opening: 0,
    recourse: false,
  };
}

/** What one batch ties up or uses besides time: room, jars, bags, sugar, vinegar, a meal of this week. */
function takes(recipe: SeasonRecipe, kept: Keeping | null, keptIn: Method["keptIn"], portions: number): Record<string, number> {
  const into: Record<string, number> = { ...recipe.supplies };
  if (kept === null) into["meals"] = portions;
  if (kept?.place === "freezer") {
    into["freezer"] = roomOf(recipe);
    into["freezing"] = Math.round(recipe.uses.reduce((sum, use) => sum + use.grams, 0));
  }
  if (keptIn === "fridge") into["fridge"] = roomOf(recipe);
  if (kept?.place === "cellar") into["cellar"] = roomOf(recipe);
  if (/^jars?\b/i.test(recipe.makes.unit)) {
    into["jar"] = Math.ceil(recipe.makes.amount);
    if (recipe.process !== null) into["lid"] = Math.ceil(recipe.makes.amount);
  }
  if (/^bags?\b/i.test(recipe.makes.unit)) into["bag"] = Math.ceil(recipe.makes.amount);
  return into;
}

/** Litres of box, bag or jar for one batch. */
export function roomOf(recipe: Pick<SeasonRecipe, "makes" | "uses">): number {
  const { amount, unit } = recipe.makes;
  if (/^(?:l|litres?)$/i.test(unit)) return tenths(amount * BOX_PER_LITRE);
  if (/^portions?\b/i.test(unit)) return tenths(amount * PORTION_LITRES);
  return tenths(litresOf({ grams: recipe.uses.reduce((sum, use) => sum + use.grams, 0), portions: null, portionMl: null }) ?? 0);
}

/** What is counted in the store: portions, jars, bags, loaves as they are; of a litre four portions. */
export function portionsOf({ amount, unit }: SeasonRecipe["makes"]): number {
  if (/^(?:l|litres?)$/i.test(unit)) return Math.max(1, Math.round(amount * PORTIONS_A_LITRE));
  return Math.max(1, Math.round(amount));
}

/** Where it keeps longest of the places there are; null for what is eaten within the week. A household that has named no place has all of them. */
function placeOf(recipe: SeasonRecipe, { larder }: SeasonFacts): Keeping | null {
  const there = (kind: PlaceKind): boolean => larder.places.length === 0 || kind === "shelf" || larder.places.some((place) => place.kind === kind);
  const lasting = recipe.keeps.filter(({ place, days }) => days >= 7 && there(place));
  return lasting.sort((a, b) => b.days - a.days)[0] ?? null;
}

function keptInOf(kept: Keeping | null): Method["keptIn"] {
  if (kept === null) return "none";
  return kept.place === "freezer" || kept.place === "fridge" ? kept.place : "shelf";
}

function weeksKept(days: number, weeks: number): number | null {
  const whole = Math.max(1, Math.floor(days / 7));
  return whole >= weeks ? null : whole;
}

/** Points for the first portions of a month, and for the next; common practice, no source. What one is tired of brings none. */
export const WORTH: Readonly<Record<Exclude<Liking, "never">, readonly [first: number, next: number]>> = { loved: [5, 2], fine: [3, 1], tired: [0, 0] };

const tenths = (litres: number): number => Math.round(litres * 10) / 10;
