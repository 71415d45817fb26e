/** Which account the built-in PostgreSQL runs as: it refuses to run as root, and then must reach every folder by itself. */
import { execFileSync } from "node:child_process";
import { statSync } from "node:fs";
import path from "node:path";

/** Null = the account this process has. */
export type Account = { readonly uid: number; readonly gid: number } | null;

/** As root the unprivileged account that every usual system has, so that no account needs to be made. */
export function serverAccount(): Account {
  if (process.getuid?.() !== 0) return null;
  const ask = (flag: string) => Number(execFileSync("id", [flag, "nobody"], { encoding: "utf8" }).trim());
  try {
    return { uid: ask("-u"), gid: ask("-g") };
  } catch {
    throw new Error("The built-in PostgreSQL does not run as root and this system has no account named nobody. Start Stillroom as an ordinary user, or set DATABASE_URL to a PostgreSQL server.");
  }
}

/** The uppermost folder on the way to `target` that the account may not enter; null when it gets there. */
export function closedFolder(target: string, account: Account): string | null {
  if (account === null) return null;
  const steps: string[] = [];
  for (let at = path.resolve(target); ; at = path.dirname(at)) {
    steps.unshift(at);
    if (path.dirname(at) === at) break;
  }
  return steps.find((step) => !mayEnter(step, account)) ?? null;
}

function mayEnter(folder: string, account: { uid: number; gid: number }): boolean {
  const { mode, uid, gid } = statSync(folder);
  if (uid === account.uid) return (mode & 0o100) !== 0;
  if (gid === account.gid) return (mode & 0o010) !== 0;
  return (mode & 0o001) !== 0;
}

export const spawnAs = (account: Account) => (account === null ? {} : { uid: account.uid, gid: account.gid });

/** The server gets no more of our environment than it needs: PG* variables would steer it, and secrets are none of its business. */
export function serverEnvironment(): NodeJS.ProcessEnv {
  const kept = ["PATH", "SystemRoot", "TEMP", "TMP", "TMPDIR"];
  const own = Object.fromEntries(kept.flatMap((name) => (process.env[name] === undefined ? [] : [[name, process.env[name]]])));
  return { ...own, LC_ALL: "C" };
}
