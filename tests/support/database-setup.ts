/**
 * One database for a run of tests: a throw-away built-in server, or the server at DATABASE_URL. It is migrated and given the book once;
 * each test file then clones that template (tests/support/test-db.ts).
 */
import { randomBytes } from "node:crypto";
import pg from "pg";
import type { TestProject } from "vitest/node";
import { startThrowAway } from "#db/local.ts";
import { migrate } from "#db/migrate.ts";
import { seed } from "#db/seed.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** A superuser's connection to a database that tests leave alone. */
    databaseUrl: string;
    databaseTemplate: string;
    databaseKind: "embedded" | "server";
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const kind = project.config.env["STILLROOM_TEST_DATABASE"] === "server" ? "server" : "embedded";
  const started = kind === "server" ? { url: serverUrl(), stop: () => Promise.resolve() } : await startThrowAway();
  // two runs may use one server at the same time
  const template = `stillroom_template_${randomBytes(6).toString("hex")}`;
  await onServer(started.url, `create database ${template}`);
  const url = urlOf(started.url, template);
  await migrate(url);
  await seed(url);
  // closed to connections, so that no vacuum of the server's own gets between two clones
  await onServer(started.url, `alter database ${template} with allow_connections false`);
  project.provide("databaseUrl", started.url);
  project.provide("databaseTemplate", template);
  project.provide("databaseKind", kind);
  return async () => {
    if (kind === "server") await onServer(started.url, `drop database ${template}`);
    await started.stop();
  };
}

function serverUrl(): string {
  const url = process.env["DATABASE_URL"];
  if (!url) throw new Error("The tests on a PostgreSQL server need DATABASE_URL, with a superuser of that server.");
  return url;
}

export function urlOf(server: string, database: string): string {
  const url = new URL(server);
  url.pathname = `/${database}`;
  return url.href;
}

export async function onServer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
