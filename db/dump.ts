/** Writes db/schema.sql: the migrated database as text, so that a review shows what a migration changes. The built-in server has no pg_dump. */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import pg from "pg";
import { isCommand } from "./command.ts";
import { readCatalogue, readRoutines, type Table } from "./dump/catalogue.ts";
import { startThrowAway } from "./local.ts";
import { migrate } from "./migrate.ts";

export const SCHEMA_FILE = fileURLToPath(new URL("./schema.sql", import.meta.url));

const HEADER = "-- The tables as the migrations leave them. Written by npm run db:dump; change the schema and generate a migration, not this file.\n";

/** The text of a database's tables, the same on every version of the server. */
export async function schemaText(url: string): Promise<string> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const tables = await readCatalogue(client);
    const routines = await readRoutines(client);
    return [HEADER, ...tables.map(tableText), ...routines.map((routine) => `${routine};\n`)].join("\n");
  } finally {
    await client.end();
  }
}

function tableText(table: Table): string {
  const columns = table.columns.map((column) => `${column.name} ${column.type}${column.default === null ? "" : ` default ${column.default}`}${column.notNull ? " not null" : ""}`);
  const constraints = table.constraints.map(({ name, definition }) => `constraint ${name} ${definition}`);
  const lines = [`create table ${table.name} (\n  ${[...columns, ...constraints].join(",\n  ")}\n);`, ...table.indexes.map(({ definition }) => `${definition};`)];
  if (table.rowSecurity) lines.push(`alter table ${table.name} enable row level security;`);
  if (table.forced) lines.push(`alter table ${table.name} force row level security;`);
  for (const policy of table.policies) {
    const clauses = [policy.using === null ? "" : `\n  using (${policy.using})`, policy.check === null ? "" : `\n  with check (${policy.check})`].join("");
    lines.push(`create policy ${policy.name} on ${table.name} for ${policy.command} to ${policy.roles}${clauses};`);
  }
  lines.push(...table.triggers.map(({ definition }) => `${definition};`));
  for (const { privileges, role } of table.grants) lines.push(`grant ${privileges} on ${table.name} to ${role};`);
  return `${lines.join("\n")}\n`;
}

if (isCommand(import.meta.url)) {
  const scratch = await startThrowAway();
  try {
    await migrate(scratch.url);
    writeFileSync(SCHEMA_FILE, await schemaText(scratch.url));
    console.log("Wrote db/schema.sql");
  } finally {
    await scratch.stop();
  }
}
