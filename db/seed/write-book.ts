/** Makes the reference tables equal to the book: rows are added, changed where they differ, and taken away where the book has them no longer. */
import type pg from "pg";
import type { Book } from "./book.ts";

/** Runs in the caller's transaction. Answers the crops that the book has dropped and a sowing still holds: they stay. */
export async function writeBook(client: pg.ClientBase, book: Book): Promise<string[]> {
  await makeEqual(client, { table: "sources", key: ["id"], columns: { id: "text", text: "text", licence: "text" } }, book.sources);
  await makeEqual(
    client,
    { table: "reference_rows", key: ["kind", "key"], columns: { kind: "text", key: "text", facts: "jsonb", source: "text" } },
    book.rows,
  );
  await makeEqual(client, { table: "book_recipes", key: ["id"], columns: { id: "uuid", recipe: "jsonb", sources: "jsonb" } }, book.recipes);
  const crops = { table: "crops", key: ["slug"], columns: { slug: "text", facts: "jsonb" } };
  const rows = book.crops.map((facts) => ({ slug: facts.slug, facts }));
  await put(client, crops, rows);
  return dropCrops(client, rows.map((row) => row.slug));
}

interface Table {
  readonly table: string;
  readonly key: readonly string[];
  /** Name to type. */
  readonly columns: Readonly<Record<string, string>>;
}

async function makeEqual(client: pg.ClientBase, table: Table, rows: readonly object[]): Promise<void> {
  await put(client, table, rows);
  const same = table.key.map((name) => `book.${name} = ${table.table}.${name}`).join(" and ");
  await client.query(`delete from ${table.table} where not exists (select from ${recordset(table)} where ${same})`, [JSON.stringify(rows)]);
}

/** An equal row is left untouched, so that seeding again writes nothing. */
async function put(client: pg.ClientBase, table: Table, rows: readonly object[]): Promise<void> {
  const names = Object.keys(table.columns);
  const others = names.filter((name) => !table.key.includes(name));
  const row = (of: string) => `(${others.map((name) => `${of}.${name}`).join(", ")})`;
  await client.query(
    `insert into ${table.table} (${names.join(", ")}) select ${names.join(", ")} from ${recordset(table)}
     on conflict (${table.key.join(", ")}) do update set ${others.map((name) => `${name} = excluded.${name}`).join(", ")}
     where ${row(table.table)} is distinct from ${row("excluded")}`,
    [JSON.stringify(rows)],
  );
}

const recordset = (table: Table) =>
  `jsonb_to_recordset($1::jsonb) as book(${Object.entries(table.columns)
    .map(([name, type]) => `${name} ${type}`)
    .join(", ")})`;

/** One by one: a crop that stands in somebody's bed must not vanish from the book under it. */
async function dropCrops(client: pg.ClientBase, slugs: readonly string[]): Promise<string[]> {
  const { rows } = await client.query<{ slug: string }>("select slug from crops where slug <> all($1) order by slug", [slugs]);
  const kept: string[] = [];
  for (const { slug } of rows) {
    await client.query("savepoint one_crop");
    try {
      await client.query("delete from crops where slug = $1", [slug]);
    } catch (error) {
      if ((error as { code?: string }).code !== FOREIGN_KEY_VIOLATION) throw error;
      await client.query("rollback to savepoint one_crop");
      kept.push(slug);
    }
  }
  return kept;
}

/** PostgreSQL manual, appendix "PostgreSQL Error Codes". */
const FOREIGN_KEY_VIOLATION = "23503";
