/** Short connections to the built-in server, to see whether it is there and to make the database. */
import pg from "pg";
import { type Cluster, SUPERUSER } from "./cluster.ts";

const HOST = "127.0.0.1";

export type Answer = "ready" | "busy" | "silent" | "stranger";

/** `busy`: starting or stopping; `silent`: nobody listens; `stranger`: whoever listens is not this cluster. */
export async function ask(cluster: Cluster, port: number): Promise<Answer> {
  try {
    return await withClient(cluster, port, "postgres", async (client) => {
      const { rows } = await client.query<{ data_directory: string }>("show data_directory");
      return rows[0]?.data_directory === cluster.data ? "ready" : "stranger";
    });
  } catch (error) {
    const { code } = error as { code?: string };
    if (code === "57P03" || code === "57P01" || code === "53300") return "busy";
    if (code === "ECONNREFUSED" || code === "ECONNRESET") return "silent";
    // a connection that ends in mid-greeting: a server on its way up or down
    return code === undefined ? "busy" : "stranger";
  }
}

/** Makes the database if it is missing; answers its connection string. */
export async function createDatabase(cluster: Cluster, port: number, name: string): Promise<string> {
  await withClient(cluster, port, "postgres", async (client) => {
    const { rowCount } = await client.query("select from pg_database where datname = $1", [name]);
    if (rowCount === 0) await client.query(`create database "${name}"`);
  });
  return urlOf(cluster, port, name);
}

const urlOf = (cluster: Cluster, port: number, database: string) => `postgres://${SUPERUSER}:${cluster.password}@${HOST}:${port}/${database}`;

async function withClient<T>(cluster: Cluster, port: number, database: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: urlOf(cluster, port, database), connectionTimeoutMillis: 5_000 });
  client.on("error", () => undefined);
  try {
    await client.connect();
    return await work(client);
  } finally {
    await client.end();
  }
}
