/**
 * `npm test`: types, then every test that this machine can run. What needs something the machine lacks is left out with a line that
 * says so and how to get it; in CI nothing is left out, and a lack is a failure.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { chromiumPath } from "./support/chromium.ts";

const CI = process.env["CI"] !== undefined && process.env["CI"] !== "" && process.env["CI"] !== "false";
const root = new URL("..", import.meta.url).pathname;

interface Part {
  readonly project: string;
  readonly lacks: string | null;
}

const parts: readonly Part[] = [
  { project: "pure", lacks: null },
  { project: "embedded", lacks: null },
  {
    project: "server",
    lacks: process.env["DATABASE_URL"] ? null : "the same tests on a PostgreSQL server: set DATABASE_URL to a server's superuser (Debian: apt-get install postgresql)",
  },
  {
    project: "browser",
    lacks: chromiumPath() ? null : "the tests in a browser: install Chromium (Debian: apt-get install chromium), or name one in STILLROOM_CHROMIUM",
  },
];

function run(command: string, args: readonly string[]): number {
  return spawnSync(command, args, { cwd: root, stdio: "inherit", env: process.env }).status ?? 1;
}

function main(): number {
  const left = parts.filter((part) => part.lacks !== null);
  for (const part of left) console.log(`${CI ? "Missing" : "Left out"}: ${part.lacks}`);
  if (CI && left.length > 0) return 1;

  console.log("Types …");
  for (const folder of ["shared", "web", "."]) {
    const status = run(process.execPath, ["node_modules/typescript/bin/tsc", "-p", folder]);
    if (status !== 0) return status;
  }

  const scratch = mkdtempSync(path.join(tmpdir(), "stillroom-tests-"));
  const report = path.join(scratch, "report.json");
  const chosen = parts.filter((part) => part.lacks === null).flatMap((part) => ["--project", part.project]);
  const status = run(process.execPath, ["node_modules/vitest/vitest.mjs", "run", ...chosen, "--reporter=default", "--reporter=json", `--outputFile.json=${report}`]);
  if (!existsSync(report)) return status || 1;
  const counted = JSON.parse(readFileSync(report, "utf8")) as { numPassedTests: number; numFailedTests: number; numPendingTests: number };
  rmSync(scratch, { recursive: true });
  for (const part of left) console.log(`Left out: ${part.lacks}`);
  console.log(`${counted.numPassedTests} passed, ${counted.numFailedTests} failed`);
  if (CI && counted.numPendingTests > 0) {
    console.log(`${counted.numPendingTests} tests were skipped; in CI nothing may be.`);
    return 1;
  }
  return counted.numPassedTests === 0 ? 1 : status;
}

process.exitCode = main();
