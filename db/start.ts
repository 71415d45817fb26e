/** From settings to a database that is ready for requests: started or reached, brought up to date, with the book in it. */
import { type Db, openDb } from "./client.ts";
import { type LocalServer, startLocal, startThrowAway } from "./local.ts";
import { migrate } from "./migrate.ts";
import { seed } from "./seed.ts";

export interface StartOptions {
  /** A server's address, or null for the built-in database. */
  readonly databaseUrl: string | null;
  /** Where the built-in database keeps its data; null = a throw-away folder that goes when it stops. */
  readonly dataDir: string | null;
  readonly say?: (line: string) => void;
  /** Told of a connection that broke while nobody used it. */
  readonly onError?: (error: Error) => void;
}

export interface StartedDatabase {
  readonly db: Db;
  readonly url: string;
  /** Ends the pool first, then the server. */
  stop(): Promise<void>;
}

/** Throws an Error in plain words; what was started until then is stopped. */
export async function startDatabase(options: StartOptions): Promise<StartedDatabase> {
  const { databaseUrl, say = () => undefined } = options;
  const local = databaseUrl === null ? await startBuiltIn(options.dataDir, say) : null;
  const url = databaseUrl ?? (local as LocalServer).url;
  try {
    await migrate(url);
    const { crops, rows, recipes, keptCrops } = await seed(url);
    say(`The book is in: ${crops} crops, ${rows} reference rows, ${recipes} recipes`);
    if (keptCrops.length > 0) say(`Kept from an earlier book, for a sowing still holds them: ${keptCrops.join(", ")}`);
    const db = openDb(url, local === null ? "server" : "embedded", options.onError);
    const stop = async () => {
      await db.close();
      await local?.stop();
    };
    return { db, url, stop };
  } catch (error) {
    await local?.stop();
    throw error;
  }
}

const startBuiltIn = (dataDir: string | null, say: (line: string) => void): Promise<LocalServer> =>
  dataDir === null ? startThrowAway(say) : startLocal({ dataDir, durable: true, say });
