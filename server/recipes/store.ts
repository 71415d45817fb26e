import { and, asc, eq, inArray, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { bookRecipes, cookDayDishes, households, lots, planLines, recipeParts, recipes, stockTargets, wishes } from "#db/schema/index.ts";
import type { NewRecipe } from "#shared/contracts/recipes.ts";
import { columnsOf, partsOf } from "../facts/stored-recipe.ts";
import type { RecipeRow } from "../facts/stored-recipe.ts";

export async function findRecipe(tx: Tx, householdId: string, id: string): Promise<RecipeRow | undefined> {
  const [row] = await tx.select().from(recipes).where(at(householdId, id));
  return row;
}

export async function lockRecipe(tx: Tx, householdId: string, id: string): Promise<RecipeRow | undefined> {
  const [row] = await tx.select().from(recipes).where(at(householdId, id)).for("update");
  return row;
}

/** The recipe of this id as the book has it, whatever the household made of its copy. */
export async function bookRecipe(tx: Tx, id: string): Promise<NewRecipe | undefined> {
  const [row] = await tx.select({ recipe: bookRecipes.recipe }).from(bookRecipes).where(eq(bookRecipes.id, id));
  return row?.recipe as NewRecipe | undefined;
}

export interface RecipesWanted {
  readonly crop: string | undefined;
  readonly way: string | undefined;
}

export function listRecipes(tx: Tx, householdId: string, { crop, way }: RecipesWanted): Promise<RecipeRow[]> {
  const wanted = [
    eq(recipes.householdId, householdId),
    way === undefined ? undefined : eq(recipes.way, way),
    crop === undefined ? undefined : sql`${recipes.body} -> 'ingredients' @> ${JSON.stringify([{ crop }])}::jsonb`,
  ];
  return tx.select().from(recipes).where(and(...wanted)).orderBy(asc(recipes.title), asc(recipes.id));
}

/** Held while parts are looked at and linked, so that two recipes saved at once cannot come to make each other. */
export async function holdParts(tx: Tx, householdId: string): Promise<void> {
  await tx.select({ id: households.householdId }).from(households).where(eq(households.householdId, householdId)).for("no key update");
}

/** Which of these recipes are there; their rows are held. */
export async function recipesThere(tx: Tx, householdId: string, ids: readonly string[]): Promise<Set<string>> {
  if (ids.length === 0) return new Set();
  const rows = await tx.select({ id: recipes.id }).from(recipes).where(and(eq(recipes.householdId, householdId), inArray(recipes.id, [...ids]))).for("key share");
  return new Set(rows.map((row) => row.id));
}

/** Whether making `id` takes `part`, through any number of recipes between. */
export async function needsInTurn(tx: Tx, householdId: string, id: string, part: string): Promise<boolean> {
  const { rows } = await tx.execute<{ found: boolean }>(sql`
    with recursive needed (part_id) as (
      select part_id from ${recipeParts} where household_id = ${householdId}::uuid and recipe_id = ${id}::uuid
      union
      select deeper.part_id from ${recipeParts} deeper join needed on deeper.recipe_id = needed.part_id and deeper.household_id = ${householdId}::uuid)
    select exists (select 1 from needed where part_id = ${part}::uuid) as found`);
  return rows[0]?.found ?? false;
}

export async function insertRecipe(tx: Tx, householdId: string, id: string, recipe: NewRecipe): Promise<RecipeRow | undefined> {
  const [row] = await tx.insert(recipes).values({ householdId, id, ...columnsOf(recipe) }).onConflictDoNothing().returning();
  if (row) await linkParts(tx, householdId, id, recipe);
  return row;
}

/** A recipe from the book that somebody has changed is the household's own from then on. */
export async function updateRecipe(tx: Tx, stored: RecipeRow, recipe: NewRecipe): Promise<RecipeRow> {
  const { householdId, id } = stored;
  const [row] = await tx
    .update(recipes)
    .set({ ...columnsOf(recipe), origin: "own", version: sql`${recipes.version} + 1` })
    .where(at(householdId, id))
    .returning();
  await tx.delete(recipeParts).where(and(eq(recipeParts.householdId, householdId), eq(recipeParts.recipeId, id)));
  await linkParts(tx, householdId, id, recipe);
  return row as RecipeRow;
}

async function linkParts(tx: Tx, householdId: string, recipeId: string, recipe: NewRecipe): Promise<void> {
  const parts = partsOf(recipe);
  if (parts.length > 0) await tx.insert(recipeParts).values(parts.map((partId) => ({ householdId, recipeId, partId })));
}

export interface Uses {
  readonly lines: number;
  readonly cookDays: number;
  readonly recipes: number;
  readonly lots: number;
  readonly wishes: number;
}

/** Where a recipe is still needed. */
export async function usesOf(tx: Tx, { householdId, id }: RecipeRow): Promise<Uses> {
  return {
    lines: await tx.$count(planLines, and(eq(planLines.householdId, householdId), eq(planLines.recipeId, id))),
    cookDays: await tx.$count(cookDayDishes, and(eq(cookDayDishes.householdId, householdId), eq(cookDayDishes.recipeId, id))),
    recipes: await tx.$count(recipeParts, and(eq(recipeParts.householdId, householdId), eq(recipeParts.partId, id))),
    lots: await tx.$count(lots, and(eq(lots.householdId, householdId), eq(lots.recipeId, id))),
    wishes:
      (await tx.$count(wishes, and(eq(wishes.householdId, householdId), eq(wishes.recipeId, id)))) + (await tx.$count(stockTargets, and(eq(stockTargets.householdId, householdId), eq(stockTargets.recipeId, id)))),
  };
}

export async function deleteRecipe(tx: Tx, { householdId, id }: RecipeRow): Promise<void> {
  await tx.delete(recipes).where(at(householdId, id));
}

const at = (householdId: string, id: string) => and(eq(recipes.householdId, householdId), eq(recipes.id, id));
