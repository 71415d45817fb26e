/** The pool, and the two ways to ask: inside one household, or the reference tables that belong to none. */
import { sql } from "drizzle-orm";
import { drizzle, type NodePgDatabase } from "drizzle-orm/node-postgres";
import pg from "pg";
import * as schema from "./schema/index.ts";

export type Tx = Parameters<Parameters<NodePgDatabase<typeof schema>["transaction"]>[0]>[0];

/** The role that every request runs as: it owns nothing and bypasses nothing. Made by db/migrate.ts. */
export const APP_ROLE = "stillroom_app";

export interface Db {
  readonly kind: "embedded" | "server";
  /** One transaction as the app role that sees the rows of one household. */
  inHousehold<T>(householdId: string, work: (tx: Tx) => Promise<T>): Promise<T>;
  /** One transaction as the app role outside every household: reference tables only. */
  outside<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

export function openDb(url: string, kind: Db["kind"], onError: (error: Error) => void = () => undefined): Db {
  const pool = new pg.Pool({ connectionString: url, max: 10, connectionTimeoutMillis: 5_000 });
  // without a listener a server that stops takes the process with it
  pool.on("error", onError);
  const orm = drizzle(pool, { schema });
  const as = <T>(household: string, work: (tx: Tx) => Promise<T>): Promise<T> =>
    orm.transaction(async (tx) => {
      // both settings end with the transaction; an empty household matches no row
      await tx.execute(sql`select set_config('role', ${APP_ROLE}, true), set_config('app.household', ${household}, true)`);
      return work(tx);
    });
  return {
    kind,
    inHousehold: as,
    outside: (work) => as("", work),
    close: () => pool.end(),
  };
}
