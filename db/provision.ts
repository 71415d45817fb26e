/** Sets up a household: its row with neutral settings, and its own copies of the recipes that come with the product. */
import { eq, sql } from "drizzle-orm";
import type { Tx } from "./client.ts";
import { households, householdStamps } from "./schema/index.ts";

/**
 * Makes the household if it is not there and gives it the book's recipes. May be run at every start: a book recipe that the household
 * never edited is brought up to the book (a corrected time or temperature must reach the cook), an edited one is left alone.
 * Runs inside `db.inHousehold(householdId, …)`.
 */
export async function provisionHousehold(tx: Tx, householdId: string): Promise<void> {
  await tx
    .insert(households)
    .values({ householdId, name: "Our household", zone: "Etc/UTC", latitude: 0, longitude: 0, altitudeM: 0, people: 2, weekStart: "monday", units: "metric" })
    .onConflictDoNothing();
  await tx.insert(householdStamps).values({ householdId }).onConflictDoNothing();
  await copyBookRecipes(tx, householdId);
  await linkParts(tx, householdId);
}

/** Deletes everything of the household and sets it up anew. The row goes, and every table follows by its own cascade. */
export async function emptyHousehold(tx: Tx, householdId: string): Promise<void> {
  await tx.delete(households).where(eq(households.householdId, householdId));
  await provisionHousehold(tx, householdId);
}

/** `version = 1` is how a copy shows that nobody has edited it. */
async function copyBookRecipes(tx: Tx, householdId: string): Promise<void> {
  await tx.execute(sql`
    insert into recipes (household_id, id, title, way, makes_amount, makes_unit, process, origin, body)
    select ${householdId}::uuid, id, recipe->>'title', recipe->>'way', (recipe->'makes'->>'amount')::double precision, recipe->'makes'->>'unit',
           recipe->>'process', 'book', recipe - array['title', 'way', 'makes', 'process']
    from book_recipes
    on conflict (household_id, id) do update
    set title = excluded.title, way = excluded.way, makes_amount = excluded.makes_amount, makes_unit = excluded.makes_unit,
        process = excluded.process, body = excluded.body
    where recipes.origin = 'book' and recipes.version = 1
      and (recipes.title, recipes.way, recipes.makes_amount, recipes.makes_unit, recipes.process, recipes.body)
          is distinct from (excluded.title, excluded.way, excluded.makes_amount, excluded.makes_unit, excluded.process, excluded.body)`);
}

async function linkParts(tx: Tx, householdId: string): Promise<void> {
  await tx.execute(sql`
    delete from recipe_parts using recipes
    where recipes.household_id = ${householdId}::uuid and recipes.origin = 'book' and recipes.version = 1
      and recipe_parts.household_id = recipes.household_id and recipe_parts.recipe_id = recipes.id`);
  await tx.execute(sql`
    insert into recipe_parts (household_id, recipe_id, part_id)
    select distinct household_id, id, (ingredient->>'madeBy')::uuid
    from recipes, jsonb_array_elements(body->'ingredients') as ingredient
    where household_id = ${householdId}::uuid and origin = 'book' and version = 1 and ingredient ? 'madeBy'`);
}
