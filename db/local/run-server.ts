/** Starts the server under its watchdog, on a free port, and waits until it answers. */
import { type ChildProcess, spawn } from "node:child_process";
import { closeSync, openSync, readFileSync, statSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { type Account, serverEnvironment, spawnAs } from "./account.ts";
import type { Binaries } from "./binaries.ts";
import type { Cluster } from "./cluster.ts";
import { ask } from "./connect.ts";
import { plainWords } from "./words.ts";

export interface ServerJob {
  readonly dataDir: string;
  readonly cluster: Cluster;
  readonly binaries: Binaries;
  readonly account: Account;
  readonly durable: boolean;
  /** Remove the data folder when the server has gone. */
  readonly remove: boolean;
}

export interface RunningServer {
  readonly pid: number;
  readonly port: number;
  readonly stop: () => Promise<void>;
}

const WATCHDOG = fileURLToPath(new URL("./watchdog.mjs", import.meta.url));
const PORT_TRIES = 5;
const POLL_MS = 20;
/** Sessions of a server that was killed end by themselves, within a second or so; until then the next server may not start. */
const LINGER_TRIES = 50;
const LINGER_MS = 200;

/** `folder in use`: another server has the data; everything else that goes wrong is thrown in plain words. */
export async function runServer(job: ServerJob, choosePort: () => Promise<number> = freePort): Promise<RunningServer | "folder in use"> {
  for (let tries = 1; ; tries += 1) {
    const outcome = await runOn(await choosePort(), job);
    if (typeof outcome !== "string") return outcome;
    if (/lock file .* already exists/.test(outcome)) return "folder in use";
    // somebody took the port between our looking and the server's
    if (/could not bind|could not create any TCP\/IP sockets/.test(outcome) && tries < PORT_TRIES) continue;
    if (!/pre-existing shared memory block/.test(outcome) || tries === LINGER_TRIES) throw new Error(plainWords(outcome, job.dataDir));
    await pause(LINGER_MS);
  }
}

/** What the server said, when it ended instead of answering. */
async function runOn(port: number, job: ServerJob): Promise<RunningServer | string> {
  const logFile = path.join(job.cluster.folder, "postgres.log");
  const log = openSync(logFile, "a", 0o600);
  const logged = statSync(logFile).size;
  const watchdog = spawn(process.execPath, [WATCHDOG, JSON.stringify(watchdogJob(port, job))], {
    // a group of its own: Ctrl-C in the terminal must not reach the server before the last request is answered
    detached: true,
    stdio: ["pipe", "pipe", log],
    windowsHide: true,
  });
  closeSync(log);
  const ended = new Promise<void>((resolve) => {
    watchdog.once("exit", () => resolve());
    watchdog.once("error", () => resolve());
  });
  let over = false;
  void ended.then(() => (over = true));
  const pid = await firstLine(watchdog, ended);
  // whoever took the port before us may accept the question and never answer it
  const ready = async () => (await Promise.race([ask(job.cluster, port), ended])) === "ready";
  while (!over && !(await ready())) await Promise.race([pause(POLL_MS), ended]);
  if (over) return readFileSync(logFile, "utf8").slice(logged);
  letGo(watchdog);
  const stop = async () => {
    // whoever stops it waits until it has stopped
    watchdog.ref();
    watchdog.stdin?.end();
    await ended;
  };
  return { pid, port, stop };
}

function watchdogJob(port: number, { dataDir, cluster, binaries, account, durable, remove }: ServerJob) {
  const settings = {
    listen_addresses: "127.0.0.1",
    port,
    unix_socket_directories: "",
    timezone: "UTC",
    log_timezone: "UTC",
    log_checkpoints: "off",
    // no statement and no value in the log: they are the household's
    log_min_error_statement: "panic",
    log_error_verbosity: "terse",
    ...(durable ? {} : { fsync: "off", synchronous_commit: "off", full_page_writes: "off", max_connections: 300, max_wal_size: "128MB" }),
  };
  const args = ["-D", cluster.data, ...Object.entries(settings).flatMap(([name, value]) => ["-c", `${name}=${value}`])];
  return { postgres: binaries.postgres, pgCtl: binaries.pgCtl, args, data: cluster.data, env: serverEnvironment(), ...spawnAs(account), ...(remove ? { remove: dataDir } : {}) };
}

/** The server's process id; 0 when it never came to have one. */
function firstLine(watchdog: ChildProcess, ended: Promise<void>): Promise<number> {
  const line = new Promise<number>((resolve) => watchdog.stdout?.once("data", (chunk: Buffer) => resolve(Number.parseInt(chunk.toString(), 10))));
  return Promise.race([line, ended.then(() => 0)]);
}

/** A program that has nothing else to do may end; the watchdog then stops the server. */
function letGo(watchdog: ChildProcess): void {
  watchdog.unref();
  for (const pipe of [watchdog.stdin, watchdog.stdout]) (pipe as unknown as { unref?: () => void } | null)?.unref?.();
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => (typeof address === "object" && address ? resolve(address.port) : reject(new Error("no free port on 127.0.0.1"))));
    });
  });
}
