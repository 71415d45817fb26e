/** What a database holds, read from its catalogue in a stable order that does not depend on the server's version or the owner's name. */
import type pg from "pg";

export interface Column {
  readonly name: string;
  readonly type: string;
  readonly notNull: boolean;
  readonly default: string | null;
}

export interface Table {
  readonly name: string;
  readonly columns: readonly Column[];
  /** Name and definition; keys first, then references, then checks. */
  readonly constraints: readonly Named[];
  /** Those that no constraint brings with it. */
  readonly indexes: readonly Named[];
  readonly rowSecurity: boolean;
  readonly forced: boolean;
  readonly policies: readonly Policy[];
  /** Those that no constraint brings with it. */
  readonly triggers: readonly Named[];
  /** "select, insert" to a role other than the owner. */
  readonly grants: readonly { readonly privileges: string; readonly role: string }[];
}

export interface Named {
  readonly name: string;
  readonly definition: string;
}

export interface Policy {
  readonly name: string;
  readonly command: string;
  readonly roles: string;
  readonly using: string | null;
  readonly check: string | null;
}

/** Functions and procedures in `public`, each as a statement that makes it. */
export async function readRoutines(client: pg.ClientBase): Promise<string[]> {
  return (await ask<{ definition: string }>(client, ROUTINES)).map(({ definition }) => definition.trim());
}

/** Everything in `public`; asks one catalogue at a time and puts the answers together by table. */
export async function readCatalogue(client: pg.ClientBase): Promise<Table[]> {
  const tables = await ask<{ name: string; row_security: boolean; forced: boolean }>(client, TABLES);
  const columns = await ask<{ table: string; name: string; type: string; not_null: boolean; default: string | null }>(client, COLUMNS);
  const constraints = await ask<Named & { table: string }>(client, CONSTRAINTS);
  const indexes = await ask<Named & { table: string }>(client, INDEXES);
  const policies = await ask<Policy & { table: string }>(client, POLICIES);
  const triggers = await ask<Named & { table: string }>(client, TRIGGERS);
  const grants = await ask<{ table: string; privileges: string; role: string }>(client, GRANTS);
  return tables.map(({ name, row_security, forced }) => {
    const ofThis = <T extends { table: string }>(rows: readonly T[]) => rows.filter((row) => row.table === name);
    return {
      name,
      columns: ofThis(columns).map((column) => ({ name: column.name, type: column.type, notNull: column.not_null, default: column.default })),
      constraints: ofThis(constraints),
      indexes: ofThis(indexes),
      rowSecurity: row_security,
      forced,
      policies: ofThis(policies),
      triggers: ofThis(triggers),
      grants: ofThis(grants),
    };
  });
}

async function ask<T extends object>(client: pg.ClientBase, query: string): Promise<T[]> {
  return (await client.query<T & pg.QueryResultRow>(query)).rows;
}

const OURS = "c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p')";

const ROUTINES = `
  select pg_get_functiondef(p.oid) as definition from pg_proc p where p.pronamespace = 'public'::regnamespace order by p.proname collate "C"`;

const TABLES = `
  select c.relname as name, c.relrowsecurity as row_security, c.relforcerowsecurity as forced
  from pg_class c where ${OURS} order by c.relname collate "C"`;

const COLUMNS = `
  select c.relname as table, a.attname as name, format_type(a.atttypid, a.atttypmod) as type, a.attnotnull as not_null, pg_get_expr(d.adbin, d.adrelid) as default
  from pg_class c join pg_attribute a on a.attrelid = c.oid left join pg_attrdef d on d.adrelid = c.oid and d.adnum = a.attnum
  where ${OURS} and a.attnum > 0 and not a.attisdropped order by a.attnum`;

// from 18 on "not null" is a constraint as well; the column says it already
const CONSTRAINTS = `
  select c.relname as table, k.conname as name, pg_get_constraintdef(k.oid) as definition
  from pg_constraint k join pg_class c on c.oid = k.conrelid
  where ${OURS} and k.contype in ('p', 'u', 'f', 'c', 'x')
  order by position(k.contype::text in 'pufcx'), k.conname collate "C"`;

const INDEXES = `
  select c.relname as table, i.relname as name, pg_get_indexdef(x.indexrelid) as definition
  from pg_index x join pg_class c on c.oid = x.indrelid join pg_class i on i.oid = x.indexrelid
  where ${OURS} and not exists (select from pg_constraint k where k.conindid = x.indexrelid and k.conrelid = x.indrelid)
  order by i.relname collate "C"`;

const POLICIES = `
  select c.relname as table, p.polname as name,
    case p.polcmd when '*' then 'all' when 'r' then 'select' when 'a' then 'insert' when 'w' then 'update' else 'delete' end as command,
    coalesce((select string_agg(r.rolname, ', ' order by r.rolname) from pg_roles r where r.oid = any (p.polroles)), 'public') as roles,
    pg_get_expr(p.polqual, p.polrelid) as using, pg_get_expr(p.polwithcheck, p.polrelid) as check
  from pg_policy p join pg_class c on c.oid = p.polrelid
  where ${OURS} order by p.polname collate "C"`;

const TRIGGERS = `
  select c.relname as table, t.tgname as name, pg_get_triggerdef(t.oid) as definition
  from pg_trigger t join pg_class c on c.oid = t.tgrelid
  where ${OURS} and not t.tgisinternal order by t.tgname collate "C"`;

const GRANTS = `
  select "table", string_agg(privilege, ', ' order by privilege) as privileges, role from (
    select c.relname as "table", lower(g.privilege_type) as privilege, g.grantee, c.relowner
    from pg_class c cross join lateral aclexplode(c.relacl) g where ${OURS}
    union all
    select c.relname, lower(g.privilege_type) || ' (' || a.attname || ')', g.grantee, c.relowner
    from pg_class c join pg_attribute a on a.attrelid = c.oid cross join lateral aclexplode(a.attacl) g where ${OURS}
  ) one cross join lateral (select coalesce((select rolname from pg_roles where oid = one.grantee), 'public') as role) named
  where grantee <> relowner group by "table", role order by role`;
