/** Loads seed-data/ into the reference tables. May be run twice, and by two processes at once, without harm. */
import { fileURLToPath } from "node:url";
import pg from "pg";
import { isCommand, withDatabase } from "./command.ts";
import { migrate } from "./migrate.ts";
import { readBook } from "./seed/read-book.ts";
import { writeBook } from "./seed/write-book.ts";

export const SEED_FOLDER = fileURLToPath(new URL("../seed-data", import.meta.url));
const SEED_LOCK = 7_204_514_208;

export interface Seeded {
  readonly sources: number;
  readonly crops: number;
  readonly rows: number;
  readonly recipes: number;
  /** Crops that the book has no longer and a sowing still holds. */
  readonly keptCrops: readonly string[];
}

/** All or nothing. Throws an Error that names file and line of every row that does not fit or has no known source. */
export async function seed(url: string, folder: string = SEED_FOLDER): Promise<Seeded> {
  const book = readBook(folder);
  const client = new pg.Client({ connectionString: url });
  client.on("error", () => undefined);
  await client.connect();
  try {
    await client.query("begin");
    await client.query("select pg_advisory_xact_lock($1)", [SEED_LOCK]);
    const keptCrops = await writeBook(client, book);
    await client.query("commit");
    return { sources: book.sources.length, crops: book.crops.length, rows: book.rows.length, recipes: book.recipes.length, keptCrops };
  } finally {
    await client.end();
  }
}

if (isCommand(import.meta.url)) {
  await withDatabase(async (url) => {
    await migrate(url);
    const seeded = await seed(url);
    console.log(`Loaded ${seeded.crops} crops, ${seeded.rows} reference rows, ${seeded.recipes} recipes and ${seeded.sources} sources`);
    for (const crop of seeded.keptCrops) console.log(`Kept the crop ${crop}: the book has it no longer, and a sowing still holds it`);
  });
}
