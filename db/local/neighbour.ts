/** The data folder is held by a server that is not ours: whose is it, and may it be stopped? */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { serverEnvironment, spawnAs } from "./account.ts";
import { isAlive } from "./cluster.ts";
import { ask } from "./connect.ts";
import type { ServerJob } from "./run-server.ts";
import { heldByStranger, inUse } from "./words.ts";

const POLL_MS = 50;
/** How often a server that neither answers nor says that it is stopping is asked again. */
const PATIENCE_POLLS = 100;

/**
 * Comes back when the folder is free. Throws in plain words when a living Stillroom uses it, or when it cannot be told who holds it:
 * the lock file is never removed, for only the server knows whether it is stale.
 */
export async function stopOrphan(job: ServerJob): Promise<void> {
  for (let poll = 0; poll < PATIENCE_POLLS; ) {
    const holder = readLock(job);
    if (holder === null || !isAlive(holder.pid)) return;
    const answer = await ask(job.cluster, holder.port);
    const owner = readOwner(job);
    if (answer === "ready" && owner !== null && isAlive(owner)) throw new Error(inUse(job.dataDir, owner));
    // starting, or writing for the last time: on a slow disk that takes as long as it takes
    if (answer !== "busy") poll += 1;
    await pause(POLL_MS);
  }
  const holder = readLock(job);
  if (holder === null) return;
  // the password and the folder prove that the server is this one and its process id no other program's
  if ((await ask(job.cluster, holder.port)) !== "ready") throw new Error(heldByStranger(job.dataDir, holder.pid, lockFile(job)));
  const run = spawnSync(job.binaries.pgCtl, ["stop", "-D", job.cluster.data, "-m", "fast", "-w"], {
    ...spawnAs(job.account),
    cwd: job.cluster.data,
    env: serverEnvironment(),
    encoding: "utf8",
  });
  if (run.status !== 0) throw new Error(inUse(job.dataDir, null));
}

const lockFile = (job: ServerJob) => path.join(job.cluster.data, "postmaster.pid");

/** Process id in the first line, port in the fourth; null when there is no lock, or it is being written. */
function readLock(job: ServerJob): { pid: number; port: number } | null {
  if (!existsSync(lockFile(job))) return null;
  const lines = read(lockFile(job)).split("\n");
  const holder = { pid: Number(lines[0]), port: Number(lines[3]) };
  return Number.isInteger(holder.pid) && Number.isInteger(holder.port) ? holder : null;
}

function readOwner(job: ServerJob): number | null {
  const owner = Number(read(path.join(job.cluster.folder, "owner")));
  return Number.isInteger(owner) && owner > 0 ? owner : null;
}

/** Empty when it went away between two looks. */
function read(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return "";
  }
}
