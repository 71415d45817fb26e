/** Loads what the season's plan rests on. Nothing is computed here but what a recipe takes, read off its lines and steps. */
import { asc, eq } from "drizzle-orm";
import { recipes, stockTargets, supplies, tastes, wishes } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { NewRecipe } from "#shared/contracts/recipes.ts";
import { isLocalDate, type LocalDate } from "#shared/kernel/local-date.ts";
import type { Liking, SeasonFacts, SeasonRecipe, StockTargetFacts, SupplyFacts, WishFacts } from "#shared/planning/season-facts.ts";
import { loadHomestead } from "./homestead.ts";
import { systemOf, type House } from "./house.ts";
import type { Ingredient } from "./ingredients.ts";
import { loadLarder } from "./larder.ts";
import { readIngredients, useOf } from "./recipe-use.ts";
import type { Reference } from "./reference.ts";
import { recipeOf } from "./stored-recipe.ts";

/** An oven where nobody has counted: common practice, no source. */
const USUAL_OVENS = 1;

export async function loadSeason(tx: Tx, house: House, book: Reference, day: LocalDate): Promise<SeasonFacts> {
  const { garden, kitchen } = await loadHomestead(tx, house, book, day);
  const rows = await tx.select().from(recipes).where(eq(recipes.householdId, house.householdId)).orderBy(asc(recipes.title), asc(recipes.id));
  const thoughts = await tx.select({ recipeId: tastes.recipeId, liking: tastes.liking }).from(tastes);
  return {
    garden,
    kitchen,
    larder: await loadLarder(tx, book, day),
    supplies: await countedSupplies(tx),
    recipes: rows.map((row) => seasonRecipe(row.id, recipeOf(row), book, house)),
    targets: await targetsOf(tx),
    wishes: await wishesOf(tx),
    tastes: new Map(thoughts.map(({ recipeId, liking }) => [recipeId, liking as Liking])),
    settings: { kitchenMinPerWeek: house.kitchenMinPerWeek, ovens: house.kitchen?.ovens.length ?? USUAL_OVENS, away: house.away, avoids: house.avoids },
  };
}

export function seasonRecipe(id: string, recipe: NewRecipe, book: Reference, house: House): SeasonRecipe {
  const lines = readIngredients(recipe, book, systemOf(house));
  const [sugar, vinegar] = [gramsOf(lines, /\bsugar\b/i), gramsOf(lines, /\bvinegar\b/i)];
  return {
    ...useOf(id, recipe, book, systemOf(house)),
    ovenMin: ovenMinOf(recipe),
    allergens: recipe.allergens ?? [],
    // a gram of vinegar is taken for a millilitre: common practice, no source
    supplies: { ...(sugar > 0 ? { sugar } : {}), ...(vinegar > 0 ? { vinegar } : {}) },
  };
}

const gramsOf = (lines: readonly Ingredient[], food: RegExp): number => lines.reduce((sum, line) => sum + (line.crop === undefined && line.madeBy === undefined && line.grams !== null && food.test(line.read?.food ?? line.text) ? line.grams : 0), 0);

function ovenMinOf({ steps }: NewRecipe): number {
  return steps.reduce((sum, { needs, handsOnMin, handsOffMin, loads }) => {
    if (needs.oven === undefined) return sum;
    const minutes = handsOnMin + (typeof handsOffMin === "number" ? handsOffMin : handsOffMin.likely);
    return sum + minutes * (loads ? Math.ceil(loads.of / loads.holds) : 1);
  }, 0);
}

const countedSupplies = (tx: Tx): Promise<SupplyFacts[]> => tx.select({ kind: supplies.kind, amount: supplies.amount, bestUntil: supplies.bestUntil }).from(supplies);

const targetsOf = (tx: Tx): Promise<StockTargetFacts[]> =>
  tx.select({ id: stockTargets.id, recipeId: stockTargets.recipeId, portions: stockTargets.portions, by: stockTargets.by }).from(stockTargets).orderBy(asc(stockTargets.by), asc(stockTargets.id));

/** `by` and `from` hold a day or the name of who asked. */
async function wishesOf(tx: Tx): Promise<WishFacts[]> {
  const rows = await tx.select({ id: wishes.id, recipeId: wishes.recipeId, portions: wishes.portions, by: wishes.by, from: wishes.from }).from(wishes).orderBy(asc(wishes.recordedAt), asc(wishes.id));
  const day = (words: string | null): LocalDate | null => (words !== null && isLocalDate(words) ? words : null);
  return rows.map(({ by, from, ...wish }) => ({ ...wish, by: day(by), from: day(from) }));
}
