/** Starts the product as a person would, in a process of its own, and waits until it answers. */
import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";

export const root = new URL("../..", import.meta.url).pathname;

export interface RunningApp {
  readonly url: string;
  readonly pid: number;
  /** From the command to the first healthy answer. */
  readonly startMs: number;
  output(): string;
  stop(): Promise<void>;
}

export async function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => (typeof address === "object" && address ? resolve(address.port) : reject(new Error("no port"))));
    });
    server.on("error", reject);
  });
}

/** A folder for this run only; readable by the user that the database runs as. */
export function scratchFolder(name: string): string {
  return mkdtempSync(path.join(tmpdir(), `stillroom-${name}-`));
}

/**
 * `npm run demo` or `npm start` without npm's own process between. `cwd` is the project to run, this one unless said.
 * Rejects with everything that was printed when it ends before it answers.
 */
export async function startApp(script: "demo" | "start", env: Record<string, string> = {}, cwd: string = root): Promise<RunningApp> {
  const { scripts } = JSON.parse(readFileSync(path.join(cwd, "package.json"), "utf8")) as { scripts: Record<"demo" | "start", string> };
  const port = await freePort();
  const begun = performance.now();
  const child = spawn(process.execPath, scripts[script].split(" ").slice(1), {
    cwd,
    env: { ...process.env, DATABASE_URL: "", STILLROOM_TODAY: "", STILLROOM_MODE: "", ...env, PORT: String(port) },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let printed = "";
  child.stdout.on("data", (chunk: Buffer) => (printed += chunk.toString()));
  child.stderr.on("data", (chunk: Buffer) => (printed += chunk.toString()));
  const url = `http://127.0.0.1:${port}`;
  await untilHealthy(url, child, () => printed);
  return { url, pid: child.pid as number, startMs: performance.now() - begun, output: () => printed, stop: () => stopped(child) };
}

async function untilHealthy(url: string, child: ChildProcess, printed: () => string): Promise<void> {
  for (;;) {
    if (child.exitCode !== null) throw new Error(`ended with ${child.exitCode}:\n${printed()}`);
    const answer = await fetch(`${url}/api/health`).catch(() => null);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

async function stopped(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  child.kill("SIGTERM");
  await gone;
}

/** Ids of a process and all it started (Linux: read from /proc). */
export function processTree(pid: number): number[] {
  const parents = new Map<number, number>();
  for (const name of readdirSync("/proc")) {
    if (!/^\d+$/.test(name)) continue;
    try {
      const stat = readFileSync(`/proc/${name}/stat`, "utf8");
      parents.set(Number(name), Number(stat.slice(stat.lastIndexOf(")") + 2).split(" ")[1]));
    } catch {
      // ended while we were reading
    }
  }
  const tree = [pid];
  for (let i = 0; i < tree.length; i++) for (const [child, parent] of parents) if (parent === tree[i] && !tree.includes(child)) tree.push(child);
  return tree;
}

/** Resident memory of a process tree in MiB, pages shared between its processes counted once (proportional set size). */
export function residentMb(pid: number): number {
  let kb = 0;
  for (const each of processTree(pid)) {
    try {
      kb += Number(/^Pss:\s+(\d+) kB/m.exec(readFileSync(`/proc/${each}/smaps_rollup`, "utf8"))?.[1] ?? 0);
    } catch {
      // ended while we were reading
    }
  }
  return Math.round((kb / 1024) * 10) / 10;
}

export function remove(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}
