/** What seed-data holds, as the files say it; parsed by the contracts in the tests themselves. */
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { NewRecipe, type NewRecipe as Recipe, type Step } from "#shared/contracts/recipes.ts";

export interface BookEntry {
  readonly file: string;
  readonly id: string;
  readonly sources: readonly { readonly id: string; readonly text: string }[];
  readonly recipe: Recipe;
}

const seed = (path: string) => new URL(`../../seed-data/${path}`, import.meta.url);

export function readJson<T>(path: string): T {
  return JSON.parse(readFileSync(seed(path), "utf8")) as T;
}

export function readText(path: string): string {
  return readFileSync(seed(path), "utf8");
}

export const bookFiles = (): string[] => readdirSync(seed("recipes/")).filter((name) => name.endsWith(".json"));

/** Every recipe of the book; throws with the file's name where one does not fit the contract. */
export function readRecipes(): BookEntry[] {
  return bookFiles().map((file) => {
    const { id, sources, recipe } = readJson<{ id: string; sources: BookEntry["sources"]; recipe: unknown }>(`recipes/${file}`);
    const read = NewRecipe.safeParse(recipe);
    if (!read.success) throw new Error(`${file}: ${read.error.message}`);
    return { file, id, sources, recipe: read.data };
  });
}

export function cropSlugs(): Set<string> {
  const rows = parse(readFileSync(seed("crops.csv"), "utf8"), { columns: true }) as unknown as { slug: string }[];
  return new Set(rows.map((row) => row.slug));
}

/** Large published tables lie beside the project on some machines; null where they do not. */
export function readReference(path: string): string | null {
  const file = new URL(`../../../shared/reference/${path}`, import.meta.url);
  return existsSync(file) ? readFileSync(file, "utf8") : null;
}

export function cropsOf(recipe: Recipe): string[] {
  return recipe.ingredients.flatMap(({ crop }) => (crop === undefined ? [] : [crop]));
}

export const longestMin = ({ handsOnMin, handsOffMin }: Step): number => handsOnMin + (typeof handsOffMin === "number" ? handsOffMin : handsOffMin.high);
