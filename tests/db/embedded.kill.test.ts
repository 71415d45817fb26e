import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { picks } from "#db/schema/index.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { openFolder } from "../support/database-folder.ts";
import { killAll, startProcess, untilGone, untilRemoved } from "../support/database-process.ts";
import { fillHousehold, newIds } from "../support/database-rows.ts";
import { makeHousehold } from "../support/test-db.ts";

const KILLS = 20;
const LATEST_KILL_MS = 500;
const household = "22222222-2222-4222-8222-222222222222";
const rows = newIds();

let dataDir: string;
beforeAll(async () => {
  dataDir = mkdtempSync(path.join(tmpdir(), "stillroom-kill-"));
  chmodSync(dataDir, 0o755);
  const { db, stop } = await openFolder(dataDir);
  await makeHousehold(db, household);
  await db.inHousehold(household, (tx) => fillHousehold(tx, household, rows));
  await stop();
});
afterEach(killAll);
afterAll(() => rmSync(dataDir, { recursive: true }));

describe("kill -9 of the process that uses the data", () => {
  it(
    "loses no pick that was confirmed, in twenty kills at moments of chance, every other one of them of the server as well",
    async () => {
      const random = seededRandom(20270726);
      const confirmed: string[] = [];
      let roundsWithPicks = 0;
      for (let round = 0; round < KILLS; round += 1) {
        const writer = await startProcess([dataDir, "writer", household, rows.sowingId]);
        expect(writer.said.refused).toBeUndefined();
        await pause(random.next() * LATEST_KILL_MS);
        // the server's own death leaves a lock file and a log to recover from
        if (round % 2 === 1) process.kill(writer.said.pid as number, "SIGKILL");
        await writer.kill();
        // a writer whose server dies first may still say so before it is killed itself: that confirms nothing
        const ids = writer.lines().filter((line) => !line.startsWith("{"));
        confirmed.push(...ids);
        if (ids.length > 0) roundsWithPicks += 1;
      }
      const { db, stop } = await openFolder(dataDir);
      const kept = await db.inHousehold(household, (tx) => tx.select({ id: picks.id }).from(picks));
      await stop();
      const held = new Set(kept.map(({ id }) => id));
      expect(confirmed.filter((id) => !held.has(id))).toEqual([]);
      expect(new Set(confirmed).size).toBe(confirmed.length);
      expect(roundsWithPicks).toBeGreaterThanOrEqual(KILLS / 2);
      expect(confirmed.length).toBeGreaterThanOrEqual(200);
    },
    600_000,
  );

  it("leaves no server behind: the watchdog stops it in good order", async () => {
    const holder = await startProcess([dataDir, "holder"]);
    expect(holder.said.refused).toBeUndefined();
    const lock = path.join(dataDir, "server/cluster/postmaster.pid");
    expect(existsSync(lock)).toBe(true);
    await holder.kill();
    await untilGone(holder.said.pid as number);
    expect(existsSync(lock)).toBe(false);
    expect(readFileSync(path.join(dataDir, "server/postgres.log"), "utf8").trimEnd()).toMatch(/database system is shut down$/);
  });

  it("leaves nothing of a throw-away database", async () => {
    const demo = await startProcess(["", "throw-away"]);
    const folder = demo.said.dataDir as string;
    expect(existsSync(folder)).toBe(true);
    await demo.kill();
    await untilGone(demo.said.pid as number);
    await untilRemoved(folder);
  });
});
