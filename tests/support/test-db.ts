/** A database of its own for a test file, cloned from the migrated and seeded template in a few milliseconds. */
import { randomBytes, randomUUID } from "node:crypto";
import pg from "pg";
import { inject } from "vitest";
import { type Db, openDb } from "#db/client.ts";
import { provisionHousehold } from "#db/provision.ts";
import { onServer, urlOf } from "./database-setup.ts";

export interface TestDb {
  /** A superuser's connection string: for what only an owner may do, and for looking behind the wall. */
  readonly url: string;
  readonly db: Db;
  /** Closes the pool and drops the database, whoever is still connected. */
  readonly drop: () => Promise<void>;
}

export async function freshDb(): Promise<TestDb> {
  return openClone(inject("databaseTemplate"));
}

/** Without tables, for tests of migrating and of what a bad schema looks like. */
export async function emptyDb(): Promise<TestDb> {
  return openClone("template1");
}

async function openClone(template: string): Promise<TestDb> {
  const server = inject("databaseUrl");
  const name = `stillroom_test_${randomBytes(8).toString("hex")}`;
  await cloneWhenFree(server, name, template);
  const url = urlOf(server, name);
  const db = openDb(url, inject("databaseKind"));
  const drop = async () => {
    await db.close();
    await onServer(server, `drop database ${name} with (force)`);
  };
  return { url, db, drop };
}

/** template1 is in use for a moment while another clone of it is made. */
async function cloneWhenFree(server: string, name: string, template: string): Promise<void> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await onServer(server, `create database ${name} template ${template}`);
    } catch (error) {
      if ((error as { code?: string }).code !== OBJECT_IN_USE || tries === 50) throw error;
    }
  }
}

/** PostgreSQL manual, appendix "PostgreSQL Error Codes". */
const OBJECT_IN_USE = "55006";

/** A household set up as the service does it; answers its id. */
export async function makeHousehold(db: Db, householdId: string = randomUUID()): Promise<string> {
  await db.inHousehold(householdId, (tx) => provisionHousehold(tx, householdId));
  return householdId;
}

/** Statements as the superuser, who passes every wall. */
export async function asSuperuser<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  client.on("error", () => undefined);
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
