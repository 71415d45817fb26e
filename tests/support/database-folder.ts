/** The built-in database on a folder, as the service opens it: brought up to date, with the book in it. */
import { type Db, openDb } from "#db/client.ts";
import { startLocal } from "#db/local.ts";
import { migrate } from "#db/migrate.ts";
import { seed } from "#db/seed.ts";

export async function openFolder(dataDir: string): Promise<{ db: Db; stop: () => Promise<void> }> {
  const server = await startLocal({ dataDir, durable: true });
  await migrate(server.url);
  await seed(server.url);
  const db = openDb(server.url, "embedded");
  const stop = async () => {
    await db.close();
    await server.stop();
  };
  return { db, stop };
}
