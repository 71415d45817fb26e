/**
 * A process of its own with the built-in database, for tests that kill it. Arguments: data folder, job, household, sowing.
 * Prints one JSON line {pid} when the server answers, or {refused} in plain words; as `writer` then the id of each pick that was confirmed.
 */
import { randomUUID } from "node:crypto";
import { openDb } from "#db/client.ts";
import { startLocal, startThrowAway } from "#db/local.ts";
import { picks } from "#db/schema/index.ts";

const [dataDir = "", job = "holder", householdId = "", sowingId = ""] = process.argv.slice(2);

try {
  const server = job === "throw-away" ? await startThrowAway() : await startLocal({ dataDir, durable: job === "writer" });
  console.log(JSON.stringify({ pid: server.pid, dataDir: server.dataDir }));
  // three at a time, as three pages of one household might
  if (job === "writer") await Promise.all([write(server.url), write(server.url), write(server.url)]);
  else setInterval(() => undefined, 1_000);
} catch (error) {
  console.log(JSON.stringify({ refused: (error as Error).message }));
  process.exitCode = 3;
}

async function write(url: string): Promise<never> {
  const db = openDb(url, "embedded");
  for (;;) {
    const id = randomUUID();
    await db.inHousehold(householdId, (tx) => tx.insert(picks).values({ householdId, id, sowingId, pickedOn: "2027-07-20", grams: 100 }));
    console.log(id);
  }
}
