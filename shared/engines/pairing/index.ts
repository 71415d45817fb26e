/**
 * Question: what can be done with a week's produce, how many whole batches, in which order, and why? Grams as picked, minutes hands-on.
 * Each pairing is reckoned against the week's surplus alone: they are alternatives, not a plan. Rule, limits and proof: README.md.
 */
import type { RecipeUse } from "../../kernel/recipe.ts";
import type { PlaceKind, Way } from "../../kernel/way.ts";
import { allowedBatches, handsOnMinFor } from "./batches.ts";
import { ranked, type Ranked } from "./rank.ts";
import { reason } from "./reason.ts";
import type { Pairing, PairingQuestion } from "./types.ts";

export type { Candidate, Pairing, PairingQuestion, RipeCrop } from "./types.ts";

/** What goes into a jar stands unchilled only by a tested process (USDA, Complete Guide to Home Canning, 2015, Guide 1, p. 1-31: none for one's own recipe). */
const JARRED: ReadonlySet<Way> = new Set(["bottle", "pickle"]);
const MOIST: ReadonlySet<Way> = new Set(["eat", "cook", "freeze", "ferment"]);
const UNCHILLED: ReadonlySet<PlaceKind> = new Set(["shelf", "cellar", "clamp"]);
/** Bread and cake stand a few days without a jar; common practice, no source. */
const BREAD_DAYS = 7;

/** True where a recipe would stand unchilled and so needs a tested process behind it. */
export function needsTestedProcess(recipe: RecipeUse): boolean {
  return recipe.keeps.some((keep) => UNCHILLED.has(keep.place) && (JARRED.has(recipe.way) || (MOIST.has(recipe.way) && keep.days > BREAD_DAYS)));
}

/** Ways for one week, best first, each with the fact that puts it there. */
export function pairWeek(question: PairingQuestion): Pairing[] {
  const ripe = new Map(question.ripe.map((crop) => [crop.crop, crop]));
  const ways = question.candidates.flatMap((candidate): Ranked[] => {
    if (needsTestedProcess(candidate.recipe) && !candidate.tested) return [];
    const allowed = allowedBatches(candidate.recipe, ripe, question.loadJars);
    return allowed ? [{ candidate, allowed, ripe, weekSurplusGrams: question.weekSurplusGrams }] : [];
  });
  const inOrder = ranked(ways);
  return inOrder.map((way, i) => pairingOf(way, reason(way, inOrder[i + 1])));
}

function pairingOf({ candidate: { recipe, cautions }, allowed: { batches } }: Ranked, why: string): Pairing {
  return {
    recipeId: recipe.id,
    title: recipe.title,
    way: recipe.way,
    batches,
    uses: recipe.uses.map((use) => ({ crop: use.crop, grams: Math.round(use.grams * batches) })),
    makes: { amount: Math.round(recipe.makes.amount * batches * 100) / 100, unit: recipe.makes.unit },
    handsOnMin: handsOnMinFor(recipe, batches),
    why,
    cautions,
  };
}
