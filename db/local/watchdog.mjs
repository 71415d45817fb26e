/**
 * Runs PostgreSQL for as long as the process that started it lives. Plain JavaScript, because it runs without a loader.
 * Its standard input is a pipe from that process: the pipe ends however that process ends, kill -9 included, and then the server is stopped.
 * Argument: JSON {postgres, args, pgCtl, data, env, uid?, gid?, remove?}; prints the server's process id; ends with the server's exit code.
 */
import { spawn, spawnSync } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import path from "node:path";

const FAST_STOP_MS = 60_000;

const job = JSON.parse(process.argv[2]);
const account = job.uid === undefined ? {} : { uid: job.uid, gid: job.gid };

// a Ctrl-C or a service manager's stop is for the process that started us: it finishes its requests first, then ends the pipe
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, () => undefined);
// nobody may be left to read
process.stdout.on("error", () => undefined);

const LOG = 2;
const server = spawn(job.postgres, job.args, { ...account, env: job.env, cwd: job.data, stdio: ["ignore", LOG, LOG] });
server.on("error", (error) => {
  process.stderr.write(`FATAL: ${error.message}\n`);
  finish(1);
});
server.on("exit", (code) => finish(code ?? 1));
if (server.pid !== undefined) process.stdout.write(`${server.pid}\n`);

process.stdin.on("error", stop);
process.stdin.on("end", stop);
process.stdin.resume();

/** Fast: sessions are ended and everything is written; if that hangs, immediate: the next start recovers. */
function stop() {
  if (process.platform === "win32") return stopOnWindows();
  server.kill("SIGINT");
  setTimeout(() => server.kill("SIGQUIT"), FAST_STOP_MS).unref();
}

/** There are no such signals there. The process id is compared first, for the folder may be in another server's hands. */
function stopOnWindows() {
  const [holder] = readFileSync(path.join(job.data, "postmaster.pid"), "utf8").split("\n");
  if (Number(holder) === server.pid) spawnSync(job.pgCtl, ["stop", "-D", job.data, "-m", "fast", "-w"], { env: job.env, stdio: "ignore" });
  else server.kill();
}

function finish(code) {
  if (job.remove !== undefined) rmSync(job.remove, { recursive: true, force: true });
  process.exit(code);
}
