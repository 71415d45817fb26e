/** Start and stop: the database, its tables, the book, the household, the pages, then the door; and the same way back. */
import { setTimeout as pause } from "node:timers/promises";
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { AddressInfo } from "node:net";
import type { FastifyInstance } from "fastify";
import { openDb, type Db } from "#db/client.ts";
import { startLocal, startThrowAway } from "#db/local.ts";
import { migrate } from "#db/migrate.ts";
import { provisionHousehold } from "#db/provision.ts";
import { seed } from "#db/seed.ts";
import { buildApp } from "./app.ts";
import { buildPages } from "./build-pages.ts";
import { fixedClock, realClock } from "./clock.ts";
import type { Config } from "./config.ts";
import type { LogStyle } from "./http/log-lines.ts";
import { HOUSEHOLD_ID } from "./http/member.ts";
import { withoutServer } from "./without-server.ts";

const PAGES = fileURLToPath(new URL("../web/dist", import.meta.url));
const ROOT = fileURLToPath(new URL("..", import.meta.url));

export type Say = (line: string) => void;

export interface Setting {
  readonly config: Config;
  readonly throwAway: boolean;
  readonly log: LogStyle;
  readonly say: Say;
  /** What is put into the database before anybody is let in. */
  readonly fill?: (db: Db) => Promise<void>;
}

export interface Service {
  readonly url: string;
  readonly app: FastifyInstance;
  /** Stops listening, lets what is under way finish, then closes the database. */
  readonly stop: () => Promise<void>;
}

/** Undoes what was begun, the last first. */
class Steps {
  readonly #undo: (() => Promise<void>)[] = [];
  began(undo: () => Promise<void>): void {
    this.#undo.unshift(undo);
  }
  async undo(): Promise<void> {
    for (const step of this.#undo.splice(0)) await step();
  }
}

export async function serve(setting: Setting): Promise<Service> {
  const steps = new Steps();
  const failed = new AbortController();
  try {
    const { config, say, log, fill } = setting;
    // beside the database, which takes as long to come up
    const building = buildPages({ root: ROOT, say, build: (into) => withVite(into, failed.signal) });
    building.catch(() => undefined);
    const db = await openDatabase(setting, steps);
    await db.inHousehold(HOUSEHOLD_ID, (tx) => provisionHousehold(tx, HOUSEHOLD_ID));
    await fill?.(db);
    await building;
    const clock = config.today === null ? realClock : fixedClock(config.today);
    const app = await buildApp({ db, clock, mode: config.mode, version: await versionOf(), log, pages: PAGES });
    steps.began(() => app.close());
    const url = await listen(app, config, setting.throwAway, say);
    setImmediate(() => void reckonAhead(app).catch(() => undefined));
    return { url, app, stop: () => steps.undo() };
  } catch (error) {
    failed.abort();
    await steps.undo();
    throw error;
  }
}

/** What the first pages ask for, the year first: its forecasts serve the others. */
const FIRST_ASKED = ["/api/calendar", "/api/today", "/api/beds", "/api/sowings"];

const BETWEEN_MS = 3_000;

/** Reckoned while nobody asks yet, so that whoever opens the book first does not wait for it. */
async function reckonAhead(app: FastifyInstance): Promise<void> {
  for (const url of FIRST_ASKED) {
    await app.inject({ method: "GET", url });
    // somebody may be opening the first page just now, and reckoning lets nothing else through
    await pause(BETWEEN_MS, undefined, { ref: false });
  }
}

async function openDatabase(setting: Setting, steps: Steps): Promise<Db> {
  const { config, throwAway, say } = setting;
  const url = await databaseUrl(config, throwAway, say, steps);
  say("Bringing the tables up to date …");
  await migrate(url).catch((error: unknown) => {
    throw ofServer(setting) ? withoutServer(url, error) : error;
  });
  const { crops, recipes, keptCrops } = await seed(url);
  say(`The book holds ${crops} crops and ${recipes} recipes`);
  for (const crop of keptCrops) say(`The book has ${crop} no longer, and a sowing still holds it`);
  const db = openDb(url, ofServer(setting) ? "server" : "embedded", (error) => say(`The database let a connection go: ${error.message}`));
  steps.began(() => db.close());
  return db;
}

const ofServer = ({ config, throwAway }: Setting): boolean => config.databaseUrl !== null && !throwAway;

async function databaseUrl(config: Config, throwAway: boolean, say: Say, steps: Steps): Promise<string> {
  if (!throwAway && config.databaseUrl !== null) {
    say("Using the PostgreSQL server of DATABASE_URL");
    return config.databaseUrl;
  }
  say(throwAway ? "Starting a database that is thrown away afterwards …" : `Starting the built-in database in ${config.dataFolder} …`);
  const local = throwAway ? await startThrowAway(say) : await startLocal({ dataDir: config.dataFolder, durable: true, say });
  steps.began(() => local.stop());
  return local.url;
}

/** In a process of its own: what a build takes of memory is given back with it. */
async function withVite(into: string, signal: AbortSignal): Promise<void> {
  const vite = fileURLToPath(new URL("bin/vite.js", import.meta.resolve("vite/package.json")));
  const child = spawn(process.execPath, [vite, "build", "--config", `${ROOT}/vite.config.ts`, "--outDir", into, "--logLevel", "warn"], { cwd: ROOT, stdio: ["ignore", "pipe", "pipe"], signal });
  let said = "";
  for (const stream of [child.stdout, child.stderr]) stream.on("data", (chunk: Buffer) => (said += chunk.toString()));
  const [code] = (await once(child, "close")) as [number | null];
  if (code !== 0) throw new Error(`The pages could not be built:\n${said.trim()}`);
}

async function versionOf(): Promise<string> {
  const { version } = JSON.parse(await readFile(`${ROOT}/package.json`, "utf8")) as { version: string };
  return version;
}

/** The demo takes another port when its own is taken; the real thing says so and stops. */
async function listen(app: FastifyInstance, { host, port }: Config, mayMove: boolean, say: Say): Promise<string> {
  try {
    await app.listen({ host, port });
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EADDRINUSE")) throw error;
    if (!mayMove) throw new Error(`Port ${port} is taken, perhaps by another Stillroom. Stop that one, or set PORT to another number.`, { cause: error });
    say(`Port ${port} is taken, so the demo takes another`);
    await app.listen({ host, port: 0 });
  }
  const { port: taken } = app.server.address() as AddressInfo;
  return `http://${host.includes(":") ? `[${host}]` : host}:${taken}`;
}
