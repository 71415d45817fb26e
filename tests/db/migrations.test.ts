import { copyFileSync, cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { schemaText, SCHEMA_FILE } from "#db/dump.ts";
import { disagreement, migrate, migrationFiles, MIGRATIONS_FOLDER } from "#db/migrate.ts";
import { asSuperuser, emptyDb, freshDb, type TestDb } from "../support/test-db.ts";

interface Journal {
  entries: { idx: number; version: string; when: number; tag: string; breakpoints: boolean }[];
}
const journalOf = (folder: string) => JSON.parse(readFileSync(path.join(folder, "meta/_journal.json"), "utf8")) as Journal;

const open: TestDb[] = [];
const folders: string[] = [];
async function opened(make: () => Promise<TestDb>): Promise<TestDb> {
  const made = await make();
  open.push(made);
  return made;
}
/** The migrations of this program in a folder that a test may spoil. */
function ownCopy(): string {
  const folder = mkdtempSync(path.join(tmpdir(), "stillroom-migrations-"));
  cpSync(MIGRATIONS_FOLDER, folder, { recursive: true });
  folders.push(folder);
  return folder;
}
/** A further migration with a stamp of the test's choosing. */
function addMigration(folder: string, tag: string, when: number, statement: string): void {
  writeFileSync(path.join(folder, `${tag}.sql`), statement);
  const journal = journalOf(folder);
  journal.entries.push({ idx: journal.entries.length, version: "7", when, tag, breakpoints: true });
  writeFileSync(path.join(folder, "meta/_journal.json"), JSON.stringify(journal));
}
afterEach(async () => {
  for (const db of open.splice(0)) await db.drop();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

describe("the migrations", () => {
  it("stand in the journal with stamps that rise, one entry for each file", () => {
    const { entries } = journalOf(MIGRATIONS_FOLDER);
    const stamps = entries.map((entry) => entry.when);
    expect(entries.length).toBeGreaterThanOrEqual(2);
    expect(stamps).toEqual([...new Set(stamps)].sort((a, b) => a - b));
    const files = readdirSync(MIGRATIONS_FOLDER).filter((name) => name.endsWith(".sql"));
    expect(files.sort()).toEqual(entries.map((entry) => `${entry.tag}.sql`));
  });

  it("make the tables that db/schema.sql shows", async () => {
    const { url } = await opened(emptyDb);
    await migrate(url);
    expect(await schemaText(url)).toBe(readFileSync(SCHEMA_FILE, "utf8"));
  });

  it("may be run twice", async () => {
    const { url } = await opened(freshDb);
    const before = await schemaText(url);
    await migrate(url);
    expect(await schemaText(url)).toBe(before);
  });

  it("may be run by twenty processes at once", async () => {
    const { url } = await opened(emptyDb);
    await Promise.all(Array.from({ length: 20 }, () => migrate(url)));
    const applied = await asSuperuser(url, (client) => client.query<{ n: number }>("select count(*)::int as n from drizzle.__drizzle_migrations"));
    expect(applied.rows).toEqual([{ n: migrationFiles().length }]);
  });

  it("leave nothing behind when one of them fails", async () => {
    const { url } = await opened(emptyDb);
    const folder = ownCopy();
    addMigration(folder, "9000_broken", Date.UTC(2100, 0, 1), "create table half (id uuid);--> statement-breakpoint\nselect no_such_function();");
    await expect(migrate(url, folder)).rejects.toThrow(/no_such_function/);
    const tables = await asSuperuser(url, (client) => client.query("select from pg_tables where schemaname = 'public'"));
    expect(tables.rowCount).toBe(0);
  });
});

describe("the check after migrating", () => {
  it("names a migration that was skipped because a newer one was applied before it", async () => {
    const { url } = await opened(freshDb);
    const folder = ownCopy();
    const first = journalOf(folder).entries[0]?.when as number;
    addMigration(folder, "9000_merged_late", first - 1, "create table late (id uuid);");
    await expect(migrate(url, folder)).rejects.toThrow(`1 of ${migrationFiles(folder).length} migrations were not applied (stamps ${first - 1})`);
  });

  it("names a file that was edited after it had been applied, and touches nothing", async () => {
    const { url } = await opened(freshDb);
    const folder = ownCopy();
    const [first] = journalOf(folder).entries;
    const file = path.join(folder, `${first?.tag}.sql`);
    writeFileSync(file, `${readFileSync(file, "utf8")}\n-- a later thought`);
    addMigration(folder, "9000_new", Date.UTC(2100, 0, 1), "create table late (id uuid);");
    await expect(migrate(url, folder)).rejects.toThrow(/1 migrations were edited after they had been applied/);
    const late = await asSuperuser(url, (client) => client.query("select from pg_tables where tablename = 'late'"));
    expect(late.rowCount).toBe(0);
  });

  it("refuses a database that a newer program made", async () => {
    const { url } = await opened(emptyDb);
    const folder = ownCopy();
    addMigration(folder, "9000_newer", Date.UTC(2100, 0, 1), "create table newer (id uuid);");
    await migrate(url, folder);
    await expect(migrate(url)).rejects.toThrow(/made by a newer Stillroom/);
  });

  it("finds nothing to say when files and rows agree", () => {
    const files = migrationFiles();
    expect(disagreement(files, files)).toBeNull();
  });

  it("reads the folder it is given", () => {
    const folder = ownCopy();
    copyFileSync(path.join(folder, "0000_tables.sql"), path.join(folder, "0002_again.sql"));
    expect(migrationFiles(folder)).toEqual(migrationFiles());
  });
});
