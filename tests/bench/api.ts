/**
 * Reads of the interface against a bare route: the same Fastify and the same database answering a one-row query inside the same household
 * transaction. Each route takes turns with the bare one, the load coming from a process of its own. With `--households N` the same household is also
 * read in a database that holds N of them, in turns with the one where it is alone.
 */
import { spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import type { AddressInfo } from "node:net";
import { sql } from "drizzle-orm";
import type { FastifyInstance } from "fastify";
import { openDb, type Db } from "#db/client.ts";
import { startThrowAway } from "#db/local.ts";
import { migrate } from "#db/migrate.ts";
import { seed } from "#db/seed.ts";
import { buildApp } from "#server/app.ts";
import { fixedClock } from "#server/clock.ts";
import { HOUSEHOLD_ID } from "#server/http/member.ts";
import { onServer, urlOf } from "../support/database-setup.ts";
import { root } from "../support/running-app.ts";
import { addNeighbours, fiveYears, TODAY } from "./five-years.ts";
import type { Load, LoadAsked } from "./load.ts";
import { optionOf } from "./options.ts";

const CONNECTIONS = 4;
const AFTER_WRITES = 12;

export async function run(args: string[]): Promise<Record<string, unknown>> {
  const seconds = optionOf(args, "seconds", 2);
  const households = optionOf(args, "households", 1);
  const local = await startThrowAway((line) => console.error(line));
  const open: Service[] = [];
  try {
    await migrate(local.url);
    await seed(local.url);
    const first = openDb(local.url, "embedded");
    await fiveYears(first);
    await first.close();
    if (households > 1) {
      const crowded = urlOf(local.url, "crowded");
      await onServer(urlOf(local.url, "postgres"), `create database crowded template ${new URL(local.url).pathname.slice(1)}`);
      console.error(`Settling ${households - 1} more households …`);
      await addNeighbours(crowded, households - 1);
      open.push(await serve(local.url), await serve(crowded));
    } else open.push(await serve(local.url));
    return { ...(await measure(open, seconds)), households };
  } finally {
    for (const { app, db } of open) {
      await app.close();
      await db.close();
    }
    await local.stop();
  }
}

interface Service {
  readonly app: FastifyInstance;
  readonly db: Db;
  readonly base: string;
}

async function serve(url: string): Promise<Service> {
  const db = openDb(url, "embedded");
  const app = await buildApp({ db, clock: fixedClock(TODAY), mode: "test", version: "bench", log: "none", pages: null });
  app.get("/bench/bare", () => db.inHousehold(HOUSEHOLD_ID, async (tx) => (await tx.execute(sql`select 1 as one`)).rows[0]));
  await app.listen({ host: "127.0.0.1", port: 0 });
  return { app, db, base: `http://127.0.0.1:${(app.server.address() as AddressInfo).port}` };
}

/** One-row reads first; then what a page asks for. */
async function routesOf(base: string): Promise<Record<string, string>> {
  const first = async (path: string): Promise<string> => `${path}/${((await (await fetch(base + path)).json()) as { id: string }[])[0]?.id ?? ""}`;
  return {
    household: "/api/household",
    bed: await first("/api/beds"),
    sowing: await first("/api/sowings"),
    pick: await first("/api/picks"),
    recipe: await first("/api/recipes"),
    "cook-day": await first("/api/cook-days"),
    forecast: `${await first("/api/sowings")}/forecast`,
    beds: "/api/beds",
    recipes: "/api/recipes",
    sowings: "/api/sowings",
    today: "/api/today",
    calendar: "/api/calendar?from=2026-W53&weeks=53",
  };
}

const ONE_ROW = new Set(["household", "bed", "sowing", "pick", "recipe", "cook-day"]);

interface RouteFigures {
  readonly requestsPerSecond: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly p99Ms: number;
  readonly bareRequestsPerSecond: number;
  readonly ratioToBare: number;
  readonly errors: number;
  readonly rssMb: number;
  /** The 95th percentile of the same household among all the others, and how it compares. */
  readonly amongManyP95Ms?: number;
  readonly amongManyToAlone?: number;
}

async function measure([alone, among]: readonly Service[], seconds: number): Promise<Record<string, unknown>> {
  const { base } = alone as Service;
  const byRoute: Record<string, RouteFigures> = {};
  for (const [name, path] of Object.entries(await routesOf(base))) {
    byRoute[name] = await figuresOf(base, path, seconds, among?.base);
    console.error(`${name}: ${JSON.stringify(byRoute[name])}`);
  }
  const all = Object.values(byRoute);
  const mean = (key: "requestsPerSecond" | "bareRequestsPerSecond"): number => Math.round(all.reduce((sum, one) => sum + one[key], 0) / all.length);
  const worst = (key: "p50Ms" | "p99Ms" | "rssMb"): number => Math.max(...all.map((one) => one[key]));
  return {
    requestsPerSecond: mean("requestsPerSecond"),
    p50Ms: worst("p50Ms"),
    p99Ms: worst("p99Ms"),
    bareRequestsPerSecond: mean("bareRequestsPerSecond"),
    /** The least of the one-row reads. */
    ratioToBare: Math.min(...Object.entries(byRoute).filter(([name]) => ONE_ROW.has(name)).map(([, one]) => one.ratioToBare)),
    errors: all.reduce((sum, one) => sum + one.errors, 0),
    rssMb: worst("rssMb"),
    afterWriteMs: await afterWrites(base),
    byRoute,
  };
}

async function figuresOf(base: string, path: string, seconds: number, among: string | undefined): Promise<RouteFigures> {
  const [bare, asked, amongMany] = (await load({ urls: [`${base}/bench/bare`, base + path, ...(among === undefined ? [] : [among + path])], connections: CONNECTIONS, seconds })) as [Load, Load, Load?];
  const perSecond = (one: Load): number => one.requests / one.seconds;
  return {
    requestsPerSecond: Math.round(perSecond(asked)),
    p50Ms: asked.p50Ms,
    p95Ms: asked.p95Ms,
    p99Ms: asked.p99Ms,
    bareRequestsPerSecond: Math.round(perSecond(bare)),
    ratioToBare: hundredths(perSecond(asked) / perSecond(bare)),
    errors: asked.errors + bare.errors + (amongMany?.errors ?? 0),
    rssMb: Math.round(process.memoryUsage().rss / 1_048_576),
    ...(amongMany ? { amongManyP95Ms: amongMany.p95Ms, amongManyToAlone: hundredths(amongMany.p95Ms / asked.p95Ms) } : {}),
  };
}

/** What a page waits for just after something was written down, when nothing that was kept holds any more: the middle, and the slowest of a few. */
async function afterWrites(base: string): Promise<Record<string, { p50: number; slowest: number }>> {
  const sowings = (await (await fetch(`${base}/api/sowings`)).json()) as { id: string; crop: string; sownOn?: string }[];
  const picked = sowings.find(({ sownOn }) => sownOn?.startsWith(TODAY.slice(0, 4)))?.id;
  const figures: Record<string, { p50: number; slowest: number }> = {};
  for (const path of ["/api/calendar", "/api/today", "/api/sowings", `/api/sowings/${picked}`]) {
    const took: number[] = [];
    for (let i = 0; i < AFTER_WRITES; i++) {
      const body = JSON.stringify({ sowingId: picked, pickedOn: TODAY, grams: 10 });
      await fetch(`${base}/api/picks/${randomUUID()}`, { method: "PUT", headers: { "content-type": "application/json" }, body });
      const asked = performance.now();
      await (await fetch(base + path)).arrayBuffer();
      took.push(performance.now() - asked);
    }
    took.sort((a, b) => a - b);
    figures[path === `/api/sowings/${picked}` ? "sowing" : path.slice(5)] = { p50: Math.round(took[Math.floor(took.length / 2)] as number), slowest: Math.round(took[took.length - 1] as number) };
  }
  console.error(`after a write: ${JSON.stringify(figures)}`);
  return figures;
}

const hundredths = (value: number): number => Math.round(value * 100) / 100;

function load(asked: LoadAsked): Promise<Load[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--import", "tsx", "tests/bench/load.ts", JSON.stringify(asked)], { cwd: root, stdio: ["ignore", "pipe", "inherit"] });
    let printed = "";
    child.stdout.on("data", (chunk: Buffer) => (printed += chunk.toString()));
    child.on("error", reject);
    child.on("exit", (code) => (code === 0 ? resolve(JSON.parse(printed) as Load[]) : reject(new Error(`the load ended with ${code}`))));
  });
}
