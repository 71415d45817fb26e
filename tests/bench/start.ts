/** How long a newcomer waits: install from a warm cache, first and second start, memory and disk. */
import { spawnSync } from "node:child_process";
import { chmodSync } from "node:fs";
import { remove, residentMb, root, scratchFolder, startApp } from "../support/running-app.ts";

export async function run(): Promise<Record<string, unknown>> {
  const folder = scratchFolder("bench");
  // the database may run as another user, who must be able to get in
  chmodSync(folder, 0o755);
  const project = `${folder}/project`;
  const step = (words: string) => console.error(words);
  try {
    step("A fresh clone …");
    must("git", ["clone", "--quiet", root, project]);
    step("npm ci …");
    const installMs = timed(() => must("npm", ["ci", "--no-audit", "--no-fund", "--prefer-offline"], project));
    step("First start of the demo, pages built …");
    const first = await startApp("demo", {}, project);
    const calendar = await fetch(`${first.url}/api/calendar`);
    if (!calendar.ok) throw new Error(`the calendar answered ${calendar.status}`);
    await calendar.arrayBuffer();
    const rssMb = residentMb(first.pid);
    await first.stop();
    step("Second start, on data that is kept …");
    const env = { STILLROOM_DATA: `${folder}/data` };
    await (await startApp("start", env, project)).stop();
    const warm = await startApp("start", env, project);
    await warm.stop();
    const diskMb = Number(/^\d+/.exec(must("du", ["-sm", project]))?.[0] ?? 0);
    return { installMs, firstStartMs: Math.round(first.startMs), warmStartMs: Math.round(warm.startMs), rssMb, diskMb };
  } finally {
    remove(folder);
  }
}

function must(command: string, args: string[], cwd?: string): string {
  const done = spawnSync(command, args, { cwd, encoding: "utf8" });
  if (done.status !== 0) throw new Error(`${command} ${args.join(" ")}: ${done.stderr}`);
  return done.stdout;
}

function timed(work: () => void): number {
  const begun = performance.now();
  work();
  return Math.round(performance.now() - begun);
}
