/** The service on a database of its own, with a fixed day, as one household or as several. */
import { randomUUID } from "node:crypto";
import type { FastifyInstance, InjectOptions, LightMyRequestResponse } from "fastify";
import { buildApp } from "#server/app.ts";
import { fixedClock, type Clock } from "#server/clock.ts";
import { freshDb, makeHousehold, type TestDb } from "#tests/support/test-db.ts";

export const TODAY = "2027-07-26";

export interface TestApp {
  readonly app: FastifyInstance;
  readonly test: TestDb;
  readonly householdId: string;
  /** One call as that household, with a loopback Host. */
  call(method: Method, url: string, options?: CallOptions): Promise<LightMyRequestResponse>;
  /** The same service and database as another household. */
  as(householdId?: string): Promise<TestApp>;
  close(): Promise<void>;
}

type Method = "GET" | "PUT" | "POST" | "DELETE" | "PATCH" | "OPTIONS" | "HEAD";

export interface CallOptions {
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface TestAppOptions {
  readonly clock?: Clock;
  readonly pages?: string;
  /** How long a season's plan at once is looked for. */
  readonly seasonMs?: number;
}

export async function testApp(options: TestAppOptions = {}): Promise<TestApp> {
  const test = await freshDb();
  const apps: FastifyInstance[] = [];
  const close = async (): Promise<void> => {
    for (const app of apps) await app.close();
    await test.drop();
  };
  const as = async (householdId: string = randomUUID()): Promise<TestApp> => {
    await makeHousehold(test.db, householdId);
    const app = await buildApp({
      db: test.db,
      clock: options.clock ?? fixedClock(TODAY),
      mode: "test",
      version: "0.0.0",
      log: "none",
      pages: options.pages ?? null,
      memberOf: () => ({ householdId }),
      ...(options.seasonMs === undefined ? {} : { seasonMs: options.seasonMs }),
    });
    apps.push(app);
    await app.ready();
    return { app, test, householdId, as, close, call: (method, url, call = {}) => app.inject(injection(method, url, call)) };
  };
  return as();
}

function injection(method: Method, url: string, { body, headers = {} }: CallOptions): InjectOptions {
  const base = { method, url, headers: { host: "localhost:8080", ...headers } };
  if (body === undefined) return base;
  if (typeof body === "string") return { ...base, payload: body };
  return { ...base, headers: { "content-type": "application/json", ...base.headers }, payload: JSON.stringify(body) };
}

/** Paths of the bad fields of a problem document. */
export function badFields(answer: LightMyRequestResponse): string[] {
  return (answer.json<{ fields?: { path: string }[] }>().fields ?? []).map((field) => field.path);
}

/** Puts a thing under a new id and answers the id; fails the test when it is not taken. */
export async function putNew(stillroom: TestApp, noun: string, body: unknown): Promise<string> {
  const id = randomUUID();
  const answer = await stillroom.call("PUT", `/api/${noun}/${id}`, { body });
  if (answer.statusCode !== 201) throw new Error(`${noun}: ${answer.statusCode} ${answer.body}`);
  return id;
}

/** An open bed of 10 m × 1.2 m. */
export const putBed = (stillroom: TestApp): Promise<string> => putNew(stillroom, "beds", { name: "Long bed", lengthM: 10, widthM: 1.2, cover: "open" });

/** Places the household near 52° N with monthly normals of a mild, wet climate; made up, since nothing is checked against them. */
export async function settle(stillroom: TestApp, more: Readonly<Record<string, unknown>> = {}): Promise<void> {
  const etag = String((await stillroom.call("GET", "/api/household")).headers.etag);
  const body = { name: "Mill house", zone: "Europe/Amsterdam", latitude: 52.1, longitude: 5.18, altitudeM: 4, people: 2, weekStart: "monday", units: "metric", ...more };
  const placed = await stillroom.call("PUT", "/api/household", { body, headers: { "if-match": etag } });
  const means = [3, 3.5, 6.5, 9.5, 13.5, 16, 18, 18, 15, 11, 7, 4];
  const normals = await stillroom.call("PUT", "/api/weather/normals", { body: { months: means.map((mean, i) => ({ month: i + 1, tmaxC: mean + 4, tminC: mean - 4 })) } });
  if (placed.statusCode !== 200 || normals.statusCode !== 200) throw new Error(`${placed.body} ${normals.body}`);
}
