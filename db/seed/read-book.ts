/** seed-data as a Book. The shape of each file stands in seed-data/README.md. */
import { NewRecipe } from "#shared/contracts/recipes.ts";
import { cropFactsOf, type CropFacts } from "#shared/kernel/crop-facts.ts";
import { type Book, type BookRecipe, Faults, type Place, type ReferenceRow, Register, type Source } from "./book.ts";
import { csvRows, isRecord, jsonFiles, type JsonFile, placeOf, top } from "./files.ts";

const TABLE_FOLDERS = ["preservation", "measures"];

/** Throws an Error that names file and line of every fault. */
export function readBook(folder: string): Book {
  const faults = new Faults();
  const register = new Register();
  for (const { cells, place } of csvRows(folder, "crop-sources.csv", faults)) register.add({ id: cells["code"] ?? "", text: cells["text"] ?? "", licence: null }, place, faults);
  const tables = TABLE_FOLDERS.flatMap((under) => jsonFiles(folder, under, faults));
  for (const table of tables) for (const { source, place } of sourcesOf(table)) register.add(source, place, faults);
  const recipeFiles = jsonFiles(folder, "recipes", faults);
  for (const file of recipeFiles) for (const { source, place } of sourcesOf(file)) register.cite(source, place, faults);

  const crops = readCrops(folder, register, faults);
  const slugs = new Set(crops.map((crop) => crop.slug));
  const rows = [...readEats(folder, slugs, register, faults), ...tables.flatMap((table) => readTable(table, register, faults))];
  const recipes = readRecipes(recipeFiles, slugs, register, faults);
  faults.throwIfAny();
  return { sources: register.all(), crops, rows, recipes };
}

/** The entries {id, text} under `sources` of a JSON file, which bring a publication; the licence is the file's. */
function sourcesOf(file: JsonFile): { source: Source; place: Place }[] {
  const { sources, licence } = file.content;
  return listOf(sources).filter(isRecord).map(({ id, text }) => {
    return { source: { id: wordsOf(id), text: wordsOf(text), licence: typeof licence === "string" ? licence : null }, place: placeOf(file, "id", id) };
  });
}

function readCrops(folder: string, register: Register, faults: Faults): CropFacts[] {
  const seen = new Set<string>();
  return csvRows(folder, "crops.csv", faults).flatMap(({ cells, place }) => {
    once(cells["slug"] ?? "", seen, place, faults);
    register.named(cells["sources"], place, faults);
    try {
      return [cropFactsOf(cells)];
    } catch (error) {
      faults.add(place, (error as Error).message);
      return [];
    }
  });
}

function readEats(folder: string, slugs: ReadonlySet<string>, register: Register, faults: Faults): ReferenceRow[] {
  const seen = new Set<string>();
  return csvRows(folder, "eats.csv", faults).map(({ cells, place }) => {
    const crop = cells["crop"] ?? "";
    once(crop, seen, place, faults);
    if (!slugs.has(crop)) faults.add(place, `there is no crop ${crop}`);
    const grams = Number(cells["grams_per_person_week"] || Number.NaN);
    if (!(grams >= 0)) faults.add(place, "grams_per_person_week must be a number, 0 or more");
    const source = register.named(cells["source"], place, faults).join(" ");
    const note = cells["note"] ? { note: cells["note"] } : {};
    return { kind: "eats", key: crop, facts: { crop, gramsPerPersonWeek: grams, source, ...note }, source };
  });
}

function readTable(table: JsonFile, register: Register, faults: Faults): ReferenceRow[] {
  const kind = table.file.replace(/\.json$/, "");
  const { title, licence, rows } = table.content;
  if (typeof title !== "string" || typeof licence !== "string") faults.add(top(table.file), "needs a title and a licence");
  if (!Array.isArray(rows)) {
    faults.add(top(table.file), "needs rows");
    return [];
  }
  const seen = new Set<string>();
  return (rows as unknown[]).flatMap((row, i) => {
    if (!isRecord(row) || typeof row["key"] !== "string" || row["key"] === "") {
      faults.add(top(table.file), `rows.${i} needs a key`);
      return [];
    }
    const key = row["key"];
    const place = placeOf(table, "key", key);
    once(key, seen, place, faults);
    return [{ kind, key, facts: row, source: register.named(row["source"], place, faults).join(" ") }];
  });
}

function readRecipes(files: readonly JsonFile[], slugs: ReadonlySet<string>, register: Register, faults: Faults): BookRecipe[] {
  const seen = new Set<string>();
  const recipes = files.flatMap((file) => readRecipe(file, slugs, register, faults));
  const ids = new Set(recipes.map(({ recipe }) => recipe.id));
  for (const { recipe, parts, place } of recipes) {
    once(recipe.id, seen, place, faults);
    for (const part of parts) if (!ids.has(part)) faults.add(place, `uses ${part}, which no recipe of the book makes`);
  }
  return recipes.map(({ recipe }) => recipe);
}

function readRecipe(file: JsonFile, slugs: ReadonlySet<string>, register: Register, faults: Faults): { recipe: BookRecipe; parts: string[]; place: Place }[] {
  const place = top(file.file);
  const { id } = file.content;
  const read = NewRecipe.safeParse(file.content["recipe"]);
  if (typeof id !== "string" || !/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(id)) faults.add(place, "needs an id that is a UUID in lower case");
  if (!read.success) {
    for (const issue of read.error.issues) faults.add(place, `recipe.${issue.path.join(".")} ${issue.message}`);
    return [];
  }
  const { ingredients } = read.data;
  for (const { crop } of ingredients) if (crop !== undefined && !slugs.has(crop)) faults.add(placeOf(file, "crop", crop), `there is no crop ${crop}`);
  const parts = ingredients.flatMap(({ madeBy }) => (madeBy === undefined ? [] : [madeBy]));
  return [{ recipe: { id: String(id), recipe: read.data, sources: citationsOf(file, register, faults) }, parts, place }];
}

/** What a recipe rests on: ids of the register, or entries {id, text} that name the passage as well. */
function citationsOf(file: JsonFile, register: Register, faults: Faults): { id: string; text: string }[] {
  const sources = listOf(file.content["sources"]);
  if (sources.length === 0) faults.add(top(file.file), "a recipe needs a source");
  return sources.flatMap((entry) => {
    const cell = isRecord(entry) ? entry["id"] : entry;
    return register.named(cell, placeOf(file, null, cell), faults).map((id) => ({ id, text: isRecord(entry) ? wordsOf(entry["text"]) : register.textOf(id) }));
  });
}

/** Empty for what is no text: the register then says what it misses. */
const wordsOf = (value: unknown): string => (typeof value === "string" ? value : "");

const listOf = (value: unknown): unknown[] => (Array.isArray(value) ? (value as unknown[]) : []);

function once(key: string, seen: Set<string>, place: Place, faults: Faults): void {
  if (key === "") faults.add(place, "needs a name that other rows can point at");
  else if (seen.has(key)) faults.add(place, `${key} stands here a second time`);
  seen.add(key);
}
