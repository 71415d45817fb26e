/** The wall between households as rules over the catalogue: complaints about a database, none when every table keeps them. */
import type pg from "pg";
import { APP_ROLE } from "#db/client.ts";

export interface WallReport {
  /** Tables with household_id. */
  readonly tables: readonly string[];
  readonly faults: readonly string[];
}

export async function inspectWall(client: pg.ClientBase): Promise<WallReport> {
  const tables = (await client.query<{ table: string }>(TABLES)).rows.map((row) => row.table);
  const faults: string[] = [];
  for (const [rule, query] of RULES) {
    const { rows } = await client.query<{ what: string }>(query, query.includes("$1") ? [APP_ROLE] : []);
    faults.push(...rows.map((row) => `${row.what}: ${rule}`));
  }
  return { tables, faults: faults.sort() };
}

/** Ordinary and partitioned tables outside the server's own schemas, with the mark whether they belong to households. */
const OURS = `
  ours as (
    select c.oid as tab, c.relname as name, c.relowner as owner, c.relrowsecurity as guarded, c.relforcerowsecurity as forced, a.attnum as household
    from pg_class c join pg_namespace n on n.oid = c.relnamespace
      left join pg_attribute a on a.attrelid = c.oid and a.attname = 'household_id' and not a.attisdropped
    where c.relkind in ('r', 'p') and n.nspname not in ('pg_catalog', 'information_schema', 'pg_toast', 'drizzle')
  ),
  walled as (select * from ours where household is not null)`;

const TABLES = `with ${OURS} select name as "table" from walled order by 1`;

/** The policy's expression as the server prints it back. */
const OWN_ROWS = `'(household_id = (NULLIF(current_setting(''app.household''::text, true), ''''::text))::uuid)'`;

const RULES: readonly (readonly [rule: string, query: string])[] = [
  [
    "household_id must be a uuid that is never null",
    `with ${OURS} select name as what from walled join pg_attribute a on a.attrelid = tab and a.attnum = household where a.atttypid <> 'uuid'::regtype or not a.attnotnull`,
  ],
  [
    "needs a primary key that begins with household_id",
    `with ${OURS} select name as what from walled where not exists (select from pg_index x where x.indrelid = tab and x.indisprimary and x.indkey[0] = household)`,
  ],
  [
    "every unique index must begin with household_id",
    `with ${OURS} select name || '.' || i.relname as what from walled join pg_index x on x.indrelid = walled.tab join pg_class i on i.oid = x.indexrelid
     where x.indisunique and x.indkey[0] <> household`,
  ],
  ["row security must be enabled", `with ${OURS} select name as what from walled where not guarded`],
  ["row security must be forced", `with ${OURS} select name as what from walled where not forced`],
  ["needs a policy", `with ${OURS} select name as what from walled where not exists (select from pg_policy p where p.polrelid = tab)`],
  [
    "a policy must hold for every command and everybody, and let through only the rows of app.household, both ways",
    `with ${OURS} select name || '.' || p.polname as what from walled join pg_policy p on p.polrelid = tab
     where p.polcmd <> '*' or p.polroles <> '{0}' or pg_get_expr(p.polqual, tab) is distinct from ${OWN_ROWS} or pg_get_expr(p.polwithcheck, tab) is distinct from ${OWN_ROWS}`,
  ],
  [
    "a reference to a household table must carry household_id first on both sides",
    `with ${OURS} select w.name || '.' || k.conname as what from walled w join pg_constraint k on k.conrelid = w.tab and k.contype = 'f' join walled parent on parent.tab = k.confrelid
     where k.conkey[1] <> w.household or k.confkey[1] <> parent.household`,
  ],
  [
    "must refer to households and go with its household",
    `with ${OURS} select name as what from walled where name <> 'households' and not exists (
       select from pg_constraint k where k.conrelid = tab and k.contype = 'f' and k.confrelid = to_regclass('households') and k.conkey = array[household] and k.confdeltype = 'c')`,
  ],
  [
    "a table of no household must be read-only to the app role",
    `with ${OURS} select name as what from ours where household is null
       and (has_table_privilege($1, tab, 'insert, update, delete, truncate, references, trigger') or has_any_column_privilege($1, tab, 'insert, update, references'))`,
  ],
  [
    "a reference from a table of no household would look through the wall",
    `with ${OURS} select o.name || '.' || k.conname as what from ours o join pg_constraint k on k.conrelid = o.tab and k.contype = 'f' join walled parent on parent.tab = k.confrelid where o.household is null`,
  ],
  ["the app role must not empty a table past its policies", `with ${OURS} select name as what from ours where has_table_privilege($1, tab, 'truncate')`],
  ["the app role must not own a table", `with ${OURS} select name as what from ours where pg_has_role($1, owner, 'usage')`],
  ["the app role must not bypass row security, log in or make roles", `select rolname as what from pg_roles where rolname = $1 and (rolsuper or rolbypassrls or rolcanlogin or rolcreaterole or rolcreatedb or rolreplication)`],
  ["the app role must be there", `select $1::text as what where not exists (select from pg_roles where rolname = $1)`],
  ["the app role must not be a member of another role", `select r.rolname as what from pg_auth_members m join pg_roles r on r.oid = m.roleid where m.member = (select oid from pg_roles where rolname = $1)`],
  [
    "a view reads as its owner unless it is security_invoker",
    `select c.relname as what from pg_class c join pg_namespace n on n.oid = c.relnamespace
     where n.nspname not in ('pg_catalog', 'information_schema') and (c.relkind = 'm' or (c.relkind = 'v' and not coalesce(c.reloptions @> '{security_invoker=true}', false)))`,
  ],
  [
    "a security definer function acts as its owner",
    `select p.proname as what from pg_proc p join pg_namespace n on n.oid = p.pronamespace where n.nspname not in ('pg_catalog', 'information_schema') and p.prosecdef`,
  ],
];
