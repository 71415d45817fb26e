/** Starts tests/support/database-child.ts, listens to what it prints, and kills it. */
import { type ChildProcess, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

const PROJECT = fileURLToPath(new URL("../..", import.meta.url));

export interface DatabaseProcess {
  /** Its first line. */
  readonly said: { readonly pid?: number; readonly dataDir?: string; readonly refused?: string };
  /** The lines after the first, until now. */
  lines(): string[];
  /** Kill -9; comes back when it is gone and everything it had printed is read. */
  kill(): Promise<void>;
}

export interface ProcessOptions {
  /** The project to run, this one unless said. */
  readonly cwd?: string;
  readonly uid?: number;
}

const running = new Set<DatabaseProcess>();

/** After a test that failed half-way. */
export async function killAll(): Promise<void> {
  for (const one of running) await one.kill();
}

export async function startProcess(args: readonly string[], { cwd = PROJECT, uid }: ProcessOptions = {}): Promise<DatabaseProcess> {
  const child = spawn(process.execPath, ["--import", "tsx", "tests/support/database-child.ts", ...args], {
    cwd,
    stdio: ["ignore", "pipe", "pipe"],
    ...(uid === undefined ? {} : { uid, gid: uid }),
  });
  let out = "";
  let err = "";
  child.stdout.on("data", (chunk: Buffer) => (out += chunk.toString()));
  child.stderr.on("data", (chunk: Buffer) => (err += chunk.toString()));
  const closed = new Promise<void>((resolve) => child.once("close", () => resolve()));
  await Promise.race([firstLine(child, () => out), closed]);
  // a line without its end was not yet printed whole
  const whole = () => out.split("\n").slice(0, -1);
  const [first] = whole();
  if (first === undefined) throw new Error(`the process ended without a word: ${err}`);
  const kill = async () => {
    child.kill("SIGKILL");
    await closed;
    running.delete(started);
  };
  const started: DatabaseProcess = { said: JSON.parse(first) as DatabaseProcess["said"], lines: () => whole().slice(1), kill };
  running.add(started);
  return started;
}

function firstLine(child: ChildProcess, printed: () => string): Promise<void> {
  return new Promise((resolve) => child.stdout?.on("data", () => printed().includes("\n") && resolve()));
}

export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

/** Waits for a process to end; how long it may take is the test's own limit. */
export async function untilGone(pid: number): Promise<void> {
  while (isRunning(pid)) await new Promise((resolve) => setTimeout(resolve, 20));
}

export async function untilRemoved(folder: string): Promise<void> {
  while (existsSync(folder)) await new Promise((resolve) => setTimeout(resolve, 20));
}
