/** Starts the PostgreSQL that comes with the packages: the database of a household that has no server of its own. */
import { chmodSync, chownSync, existsSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { serverAccount } from "./local/account.ts";
import { usableBinaries } from "./local/binaries.ts";
import { openCluster, prepareFolder } from "./local/cluster.ts";
import { createDatabase } from "./local/connect.ts";
import { stopOrphan } from "./local/neighbour.ts";
import { type RunningServer, type ServerJob, runServer } from "./local/run-server.ts";

const DATABASE = "stillroom";
const MEMORY = "/dev/shm";
/** A container often has no more than 64 MiB there, which a new database alone would fill. */
const ROOM_BYTES = 1024 ** 3;

export interface LocalOptions {
  /** The data folder (STILLROOM_DATA); made when missing. */
  readonly dataDir: string;
  /** False only for data that nobody will miss: writes are not forced to the disk. */
  readonly durable: boolean;
  /** Told in a sentence what is going on. */
  readonly say?: (line: string) => void;
}

export interface LocalServer {
  /** Connection string of the superuser; requests become the app role inside their transaction. */
  readonly url: string;
  /** Process id of the server. */
  readonly pid: number;
  readonly port: number;
  readonly dataDir: string;
  /** Ends the sessions that are left, writes everything, and comes back when the server has gone. */
  readonly stop: () => Promise<void>;
}

/** Throws an Error with one plain sentence when the folder is in use, closed, or of another version, or the machine cannot run it. */
export async function startLocal(options: LocalOptions): Promise<LocalServer> {
  return start(path.resolve(options.dataDir), options, false);
}

/** A database in a folder of its own, in memory where the system has such a place; folder and all go when it stops, by kill -9 too. */
export async function startThrowAway(say?: (line: string) => void): Promise<LocalServer> {
  const dataDir = mkdtempSync(path.join(hasRoom(MEMORY) ? MEMORY : tmpdir(), "stillroom-"));
  const account = serverAccount();
  if (account !== null) chownSync(dataDir, account.uid, account.gid);
  chmodSync(dataDir, 0o700);
  try {
    return await start(dataDir, { dataDir, durable: false, ...(say ? { say } : {}) }, true);
  } catch (error) {
    rmSync(dataDir, { recursive: true, force: true });
    throw error;
  }
}

function hasRoom(folder: string): boolean {
  if (!existsSync(folder)) return false;
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize >= ROOM_BYTES;
}

async function start(dataDir: string, { durable, say = () => undefined }: LocalOptions, throwAway: boolean): Promise<LocalServer> {
  const account = serverAccount();
  prepareFolder(dataDir, account);
  const binaries = usableBinaries(dataDir, account);
  const cluster = openCluster(dataDir, binaries, account, durable, say);
  const job: ServerJob = { dataDir, cluster, binaries, account, durable, remove: throwAway };
  const server = await startOnce(job, say);
  try {
    // a later process that finds the folder in use names us by this
    writeFileSync(path.join(cluster.folder, "owner"), String(process.pid), { mode: 0o600 });
    const url = await createDatabase(cluster, server.port, DATABASE);
    return { url, pid: server.pid, port: server.port, dataDir, stop: server.stop };
  } catch (error) {
    await server.stop();
    throw error;
  }
}

/** A server whose Stillroom died together with the watchdog is stopped first, then ours is started. */
async function startOnce(job: ServerJob, say: (line: string) => void): Promise<RunningServer> {
  const first = await runServer(job);
  if (first !== "folder in use") return first;
  say("The folder's database is still running; waiting for it to end");
  await stopOrphan(job);
  const second = await runServer(job);
  if (second !== "folder in use") return second;
  throw new Error(`The database in ${job.dataDir} was started by another process at the same moment. Use that one, or set STILLROOM_DATA to another folder.`);
}
