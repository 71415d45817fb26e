/** Takes a recipe out of the household's book, unless something still needs it. */
import { provisionHousehold } from "#db/provision.ts";
import type { Tx } from "#db/client.ts";
import { ok, refuse, type Result } from "#shared/kernel/outcome.ts";
import type { Reference } from "../facts/reference.ts";
import { tagOf } from "../http/etag.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { deleteRecipe, holdParts, lockRecipe, usesOf } from "./store.ts";

export async function takeRecipeOut(tx: Tx, householdId: string, id: string, ifMatch: string | undefined, book: Reference): Promise<Result<void>> {
  await holdParts(tx, householdId);
  const recipe = await lockRecipe(tx, householdId, id);
  if (!recipe) return refuse("not-found", "There is no such recipe.");
  refuseStaleDelete(ifMatch, tagOf(recipe));
  if (recipe.origin === "book") return refuse("conflict", "This recipe belongs to the book that comes with Stillroom and stays in it. Change it to make it your own.");
  const { lines, cookDays, recipes, lots, wishes } = await usesOf(tx, recipe);
  const needed = [count(lines, "week's plan", "weeks' plans"), count(cookDays, "cook day", "cook days"), count(recipes, "other recipe", "other recipes"), count(lots, "lot in the larder", "lots in the larder"), count(wishes, "wish", "wishes")].filter((one) => one !== null);
  if (needed.length > 0) return refuse("conflict", `This recipe is needed by ${needed.join(" and ")}. Take it out there first.`);
  await deleteRecipe(tx, recipe);
  // what was the book's before somebody changed it is the book's again
  if (book.recipeSources.has(id)) await provisionHousehold(tx, householdId);
  return ok(undefined);
}

const count = (n: number, one: string, many: string): string | null => (n === 0 ? null : `${n} ${n === 1 ? one : many}`);
