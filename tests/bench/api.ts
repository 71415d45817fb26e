/**
 * Reads of the interface against a bare route: the same Fastify and the same database answering a one-row query inside the same
 * household transaction. Each route is measured in turn with the bare one, load from a process of its own; ratios are of that turn.
 */
import { spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import type { AddressInfo } from "node:net";
import { sql } from "drizzle-orm";
import { openDb, type Db } from "#db/client.ts";
import { startThrowAway } from "#db/local.ts";
import { migrate } from "#db/migrate.ts";
import { provisionHousehold } from "#db/provision.ts";
import { seed } from "#db/seed.ts";
import { buildApp } from "#server/app.ts";
import { fixedClock } from "#server/clock.ts";
import { fillWithDemo } from "#server/demo-household.ts";
import { HOUSEHOLD_ID } from "#server/http/member.ts";
import { root } from "../support/running-app.ts";
import type { Load } from "./load.ts";
import { optionOf } from "./options.ts";

const TODAY = "2027-07-26";
const CONNECTIONS = 4;

export async function run(args: string[]): Promise<Record<string, unknown>> {
  const seconds = optionOf(args, "seconds", 2);
  const households = optionOf(args, "households", 1);
  const local = await startThrowAway((line) => console.error(line));
  await migrate(local.url);
  await seed(local.url);
  const db = openDb(local.url, "embedded");
  const app = await buildApp({ db, clock: fixedClock(TODAY), mode: "test", version: "bench", log: "none", pages: null, memberOf: (request) => ({ householdId: String(request.headers["x-bench-household"] ?? HOUSEHOLD_ID) }) });
  try {
    const ids = await fill(db, households);
    app.get("/bench/bare", () => db.inHousehold(HOUSEHOLD_ID, async (tx) => (await tx.execute(sql`select 1 as one`)).rows[0]));
    await app.listen({ host: "127.0.0.1", port: 0 });
    const base = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`;
    return await measureAll(base, await routesOf(base), seconds, ids);
  } finally {
    await app.close();
    await db.close();
    await local.stop();
  }
}

/** The demo household with four more years of the same behind it, and so many small households beside it. */
async function fill(db: Db, households: number): Promise<string[]> {
  await db.inHousehold(HOUSEHOLD_ID, (tx) => provisionHousehold(tx, HOUSEHOLD_ID));
  await fillWithDemo(db, TODAY, (line) => console.error(line));
  await db.inHousehold(HOUSEHOLD_ID, async (tx) => {
    for (let back = 1; back <= 4; back++) {
      const moved = (id: string) => sql`md5(${sql.raw(id)}::text || ${String(back)})::uuid`;
      const years = sql.raw(`interval '${back} years'`);
      await tx.execute(sql`insert into sowings (household_id, id, bed_id, crop, variety, method, sown_on, planted_out_on, row_m, plants, area_m2)
        select household_id, ${moved("id")}, bed_id, crop, variety, method, (sown_on - ${years})::date, (planted_out_on - ${years})::date, row_m, plants, area_m2
        from sowings where method <> 'established' and coalesce(sown_on, planted_out_on) >= '2026-08-01'`);
      await tx.execute(sql`insert into picks (household_id, id, sowing_id, picked_on, grams)
        select p.household_id, ${moved("p.id")}, ${moved("p.sowing_id")}, (p.picked_on - ${years})::date, p.grams
        from picks p join sowings s using (household_id) where s.id = p.sowing_id and s.method <> 'established' and p.picked_on >= '2027-01-01'`);
    }
  });
  const others = Array.from({ length: households - 1 }, () => randomUUID());
  for (const id of others) await db.inHousehold(id, (tx) => provisionHousehold(tx, id));
  return [HOUSEHOLD_ID, ...others];
}

/** One-row reads first; then what a page asks for. */
async function routesOf(base: string): Promise<Record<string, string>> {
  const first = async (path: string): Promise<string> => ((await (await fetch(base + path)).json()) as { id: string }[])[0]?.id ?? "";
  return {
    household: "/api/household",
    bed: `/api/beds/${await first("/api/beds")}`,
    pick: `/api/picks/${await first("/api/picks")}`,
    "cook-day": `/api/cook-days/${await first("/api/cook-days")}`,
    recipes: "/api/recipes",
    sowings: "/api/sowings",
    today: "/api/today",
    calendar: "/api/calendar?from=2026-W53&weeks=53",
  };
}

async function measureAll(base: string, routes: Record<string, string>, seconds: number, households: readonly string[]): Promise<Record<string, unknown>> {
  const byRoute: Record<string, unknown> = {};
  const ratios: number[] = [];
  const totals = { requests: 0, seconds: 0, errors: 0, bare: 0, p50: [] as number[], p99: [] as number[] };
  for (const [name, path] of Object.entries(routes)) {
    const bare = await load(`${base}/bench/bare`, seconds);
    const asked = await load(base + path, seconds, households[totals.requests % households.length]);
    const perSecond = { asked: asked.requests / asked.seconds, bare: bare.requests / bare.seconds };
    const figures = { requestsPerSecond: Math.round(perSecond.asked), p50Ms: asked.p50Ms, p95Ms: asked.p95Ms, p99Ms: asked.p99Ms, bareRequestsPerSecond: Math.round(perSecond.bare), ratioToBare: Math.round((perSecond.asked / perSecond.bare) * 100) / 100, errors: asked.errors };
    console.error(`${name}: ${JSON.stringify(figures)}`);
    byRoute[name] = figures;
    if (ONE_ROW.has(name)) ratios.push(figures.ratioToBare);
    totals.requests += asked.requests;
    totals.seconds += asked.seconds;
    totals.errors += asked.errors + bare.errors;
    totals.bare += perSecond.bare;
    totals.p50.push(asked.p50Ms);
    totals.p99.push(asked.p99Ms);
  }
  return {
    requestsPerSecond: Math.round(totals.requests / totals.seconds),
    p50Ms: Math.max(...totals.p50),
    p99Ms: Math.max(...totals.p99),
    bareRequestsPerSecond: Math.round(totals.bare / Object.keys(routes).length),
    /** The least of the one-row reads. */
    ratioToBare: Math.min(...ratios),
    errors: totals.errors,
    rssMb: Math.round(process.memoryUsage().rss / 1_048_576),
    households: households.length,
    byRoute,
  };
}

const ONE_ROW = new Set(["household", "bed", "pick"]);

function load(url: string, seconds: number, household = ""): Promise<Load> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--import", "tsx", "tests/bench/load.ts", url, String(CONNECTIONS), String(seconds), household], { cwd: root, stdio: ["ignore", "pipe", "inherit"] });
    let printed = "";
    child.stdout.on("data", (chunk: Buffer) => (printed += chunk.toString()));
    child.on("error", reject);
    child.on("exit", (code) => (code === 0 ? resolve(JSON.parse(printed) as Load) : reject(new Error(`the load ended with ${code}`))));
  });
}
