/** The folder in which the built-in PostgreSQL keeps its data: made whole or not at all, and opened only by the version that made it. */
import { spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { chownSync, existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { type Account, closedFolder, serverEnvironment, spawnAs } from "./account.ts";
import type { Binaries } from "./binaries.ts";
import { plainWords } from "./words.ts";

export const SUPERUSER = "app";

export interface Cluster {
  /** Holds `cluster`, `password`, `owner` and `postgres.log`. */
  readonly folder: string;
  readonly data: string;
  readonly password: string;
}

/** Makes the folder where it is missing; throws one plain sentence when the server's account cannot get there. */
export function prepareFolder(dataDir: string, account: Account): void {
  // the folder itself must let the server's account through; what is inside is closed to everybody else
  mkdirSync(dataDir, { recursive: true, mode: account === null ? 0o700 : 0o755 });
  const closed = closedFolder(dataDir, account);
  if (closed !== null)
    throw new Error(
      `The database cannot run as root, and the account it runs as instead (nobody) may not enter ${closed}. Set STILLROOM_DATA to a folder outside it, for example /var/lib/stillroom, or start Stillroom as an ordinary user.`,
    );
}

export function openCluster(dataDir: string, binaries: Binaries, account: Account, durable: boolean, say: (line: string) => void): Cluster {
  const folder = path.join(dataDir, "server");
  if (!existsSync(folder)) {
    say(`Making a new database in ${dataDir}`);
    initialise(folder, binaries, account, durable);
  }
  const data = path.join(folder, "cluster");
  refuseOtherVersion(dataDir, data, binaries);
  return { folder, data, password: readFileSync(path.join(folder, "password"), "utf8") };
}

function refuseOtherVersion(dataDir: string, data: string, binaries: Binaries): void {
  const file = path.join(data, "PG_VERSION");
  if (!existsSync(file)) throw new Error(`The folder ${path.dirname(data)} is not a Stillroom database (there is no ${file}). Set STILLROOM_DATA to another folder.`);
  const version = readFileSync(file, "utf8").trim();
  if (version !== String(binaries.major))
    throw new Error(
      `The data in ${dataDir} was written by PostgreSQL ${version}, and this Stillroom brings PostgreSQL ${binaries.major}, which cannot open it. Start the Stillroom that wrote it, copy the data out there, and read the copy into a new folder here.`,
    );
}

/** Cluster and password appear together by one rename: an interrupted start leaves nothing that looks finished. */
function initialise(folder: string, binaries: Binaries, account: Account, durable: boolean): void {
  removeUnfinished(folder);
  const unfinished = `${folder}.tmp-${process.pid}`;
  mkdirSync(unfinished, { mode: 0o700 });
  const passwordFile = path.join(unfinished, "password");
  writeFileSync(passwordFile, randomBytes(32).toString("hex"), { mode: 0o600 });
  if (account !== null) for (const one of [unfinished, passwordFile]) chownSync(one, account.uid, account.gid);
  try {
    runInitdb(path.join(unfinished, "cluster"), passwordFile, binaries, account, durable);
    renameSync(unfinished, folder);
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    // another process was quicker: its database is as good, and the server decides which of us may use it
    if (!existsSync(folder)) throw error;
  }
}

function runInitdb(data: string, passwordFile: string, binaries: Binaries, account: Account, durable: boolean): void {
  const run = spawnSync(
    binaries.initdb,
    [
      ["-D", data, "-U", SUPERUSER, "--auth=scram-sha-256", `--pwfile=${passwordFile}`, "--data-checksums", "--encoding=UTF8"],
      // the server's own C.UTF-8 orders and folds letters the same on every system
      ["--locale=C", "--locale-provider=builtin", "--builtin-locale=C.UTF-8"],
      durable ? [] : ["--no-sync"],
    ].flat(),
    { ...spawnAs(account), cwd: path.dirname(data), env: serverEnvironment(), encoding: "utf8" },
  );
  if (run.status !== 0) throw new Error(plainWords(run.error?.message ?? run.stderr, path.dirname(path.dirname(data))));
}

/** What an earlier start left when it was killed half-way. */
function removeUnfinished(folder: string): void {
  const prefix = `${path.basename(folder)}.tmp-`;
  for (const name of readdirSync(path.dirname(folder))) {
    if (name.startsWith(prefix) && !isAlive(Number(name.slice(prefix.length)))) rmSync(path.join(path.dirname(folder), name), { recursive: true, force: true });
  }
}

export function isAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
