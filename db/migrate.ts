/**
 * Brings a database up to the migrations of this program, one process at a time, and then checks that it is so: drizzle's migrator
 * takes no lock, skips a file that is older than the newest applied one, and does not see that an applied file was edited.
 */
import { fileURLToPath } from "node:url";
import { drizzle } from "drizzle-orm/node-postgres";
import { readMigrationFiles } from "drizzle-orm/migrator";
import { migrate as applyPending } from "drizzle-orm/node-postgres/migrator";
import pg from "pg";

export const MIGRATIONS_FOLDER = fileURLToPath(new URL("./migrations", import.meta.url));
/** Any number will do, so long as nothing else in this database takes the same lock. */
const MIGRATION_LOCK = 7_204_514_207;

export interface Migration {
  /** SHA-256 of the file. */
  readonly hash: string;
  /** Milliseconds since 1970, from the journal. */
  readonly stamp: number;
}

/** Throws an Error with one plain sentence when the database and the files disagree. */
export async function migrate(url: string, folder: string = MIGRATIONS_FOLDER): Promise<void> {
  const files = migrationFiles(folder);
  const lock = new pg.Client({ connectionString: url });
  // the server may go away while we wait; the query that waits says so, the event must not end the process
  lock.on("error", () => undefined);
  await lock.connect();
  try {
    // a lock of the transaction, because a pooler in between may hand the next statement to another session
    await lock.query("begin");
    await lock.query("select pg_advisory_xact_lock($1)", [MIGRATION_LOCK]);
    const before = await appliedMigrations(lock);
    refuseForeign(files, before);
    if (before.length < files.length) await apply(url, folder);
    const fault = disagreement(files, await appliedMigrations(lock));
    if (fault) throw new Error(fault);
    await lock.query("commit");
  } finally {
    await lock.end();
  }
}

export function migrationFiles(folder: string = MIGRATIONS_FOLDER): Migration[] {
  return readMigrationFiles({ migrationsFolder: folder }).map((file) => ({ hash: file.hash, stamp: file.folderMillis }));
}

/** What is wrong between the files and the applied rows, in one sentence; null when they agree. */
export function disagreement(files: readonly Migration[], applied: readonly Migration[]): string | null {
  const missing = files.filter((file) => !applied.some((row) => row.stamp === file.stamp));
  if (missing.length > 0)
    return `${missing.length} of ${files.length} migrations were not applied (stamps ${missing.map((m) => m.stamp).join(", ")}): a migration must be newer than those already applied; generate it again.`;
  const edited = files.filter((file) => applied.some((row) => row.stamp === file.stamp && row.hash !== file.hash));
  if (edited.length > 0)
    return `${edited.length} migrations were edited after they had been applied (stamps ${edited.map((m) => m.stamp).join(", ")}): put the files back as they were and write the change as a new migration.`;
  if (applied.length > files.length)
    return `The database has ${applied.length} migrations and this program knows ${files.length}: it was made by a newer Stillroom; start that one.`;
  return null;
}

/** A database made by a newer program, or from edited files, is refused before anything in it is touched. */
function refuseForeign(files: readonly Migration[], applied: readonly Migration[]): void {
  const known = files.filter((file) => applied.some((row) => row.stamp === file.stamp));
  const fault = disagreement(known, applied);
  if (fault) throw new Error(fault);
}

async function apply(url: string, folder: string): Promise<void> {
  const pool = new pg.Pool({ connectionString: url, max: 1 });
  pool.on("error", () => undefined);
  try {
    await applyPending(drizzle(pool), { migrationsFolder: folder });
  } finally {
    await pool.end();
  }
}

async function appliedMigrations(client: pg.Client): Promise<Migration[]> {
  // a scan, not to_regclass: inside one transaction that may answer from a cache filled before the table was made
  const { rowCount } = await client.query("select from pg_tables where schemaname = 'drizzle' and tablename = '__drizzle_migrations'");
  if (rowCount === 0) return [];
  const { rows } = await client.query<{ hash: string; created_at: string }>("select hash, created_at from drizzle.__drizzle_migrations order by created_at");
  return rows.map((row) => ({ hash: row.hash, stamp: Number(row.created_at) }));
}
