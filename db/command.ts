/** What the commands of this folder share: whether a file was started by itself, and which database is meant. */
import { realpathSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { startLocal } from "./local.ts";

export function isCommand(moduleUrl: string): boolean {
  const started = process.argv[1];
  return started !== undefined && realpathSync(started) === fileURLToPath(moduleUrl);
}

/** DATABASE_URL, or the household's own data under STILLROOM_DATA, as the service itself would choose. A fault ends the command in one sentence. */
export async function withDatabase(work: (url: string) => Promise<void>): Promise<void> {
  try {
    const given = process.env["DATABASE_URL"];
    if (given) return await work(given);
    const local = await startLocal({ dataDir: process.env["STILLROOM_DATA"] || "./data", durable: true, say: console.log });
    try {
      await work(local.url);
    } finally {
      await local.stop();
    }
  } catch (error) {
    console.error((error as Error).message);
    process.exitCode = 1;
  }
}
