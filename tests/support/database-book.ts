/** A small book of invented rows in a folder of its own, for tests of loading; only its shape is that of seed-data. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { SEED_FOLDER } from "#db/seed.ts";

export const SOUP = "0aaaaaaa-0000-4000-8000-000000000001";
export const STOCK = "0aaaaaaa-0000-4000-8000-000000000002";

/** By path below the folder; an object is written as JSON. */
export type BookFiles = Record<string, string | object>;

/** Two crops as the real table has them, one table, and a recipe that another one uses. */
export function smallBook(): BookFiles {
  const [header, ...crops] = readFileSync(path.join(SEED_FOLDER, "crops.csv"), "utf8").split("\n");
  const two = crops.filter((line) => /^(tomato|carrot),/.test(line));
  const steps = [{ id: "simmer", text: "Simmer.", handsOnMin: 5, handsOffMin: 40, needs: { burners: 1 }, after: [] }];
  const recipe = { way: "cook", makes: { amount: 4, unit: "portions" }, keeps: [], steps };
  return {
    "crop-sources.csv": readFileSync(path.join(SEED_FOLDER, "crop-sources.csv"), "utf8"),
    "crops.csv": [header, ...two, ""].join("\n"),
    "eats.csv": "crop,grams_per_person_week,source,note\ntomato,700,CP,\ncarrot,300,CP MEM,half of it grated\n",
    "measures/spoons.json": JSON.stringify(
      { title: "Spoons", licence: "Invented", sources: [{ id: "TEST-1", text: "An invented table" }], rows: [{ key: "heaped", ml: 20, source: "TEST-1" }, { key: "level", ml: 15, source: "TEST-1" }] },
      null,
      1,
    ),
    "recipes/soup.json": { id: SOUP, sources: [{ id: "TEST-1", text: "An invented table; row 1" }], recipe: { ...recipe, title: "Tomato soup", ingredients: [{ text: "1 kg tomatoes", crop: "tomato" }, { text: "1 l stock", madeBy: STOCK }] } },
    "recipes/stock.json": { id: STOCK, sources: ["CP"], recipe: { ...recipe, title: "Stock", ingredients: [{ text: "1 carrot", crop: "carrot" }] } },
  };
}

const folders: string[] = [];

export function writeBookFolder(files: BookFiles): string {
  const folder = mkdtempSync(path.join(tmpdir(), "stillroom-book-"));
  folders.push(folder);
  for (const [file, content] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), typeof content === "string" ? content : JSON.stringify(content, null, 1));
  }
  return folder;
}

export function removeBookFolders(): void {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
}
