/** What the log may hold (OWASP ASVS 5.0.0, 16.2.5: no sensitive data in logs) and what an error tells the caller (16.5.1). */
import { randomUUID } from "node:crypto";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openDb } from "#db/client.ts";
import { buildApp } from "#server/app.ts";
import { fixedClock } from "#server/clock.ts";
import { testApp, TODAY, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let app: FastifyInstance;
const lines: string[] = [];
const options = { clock: fixedClock(TODAY), mode: "test", version: "0.0.0", log: "json", writeLog: (line: string) => void lines.push(line), pages: null } as const;
beforeAll(async () => {
  stillroom = await testApp();
  app = await buildApp({ ...options, db: stillroom.test.db, memberOf: () => ({ householdId: stillroom.householdId }) });
  // a bug that carries what was sent, as a database driver's error does
  app.put<{ Body: { name: string } }>("/bug", (request) => {
    throw Object.assign(new Error(`Failed query: insert into beds values ($1) params: ${request.body.name}`), { cause: Object.assign(new Error(`duplicate key, Key (name)=(${request.body.name})`), { code: "XX000" }) });
  });
  await app.ready();
});
afterAll(async () => {
  await app.close();
  await stillroom.close();
});

const SECRET = "Grandmother's secret";
const put = (url: string, body: object) => app.inject({ method: "PUT", url, headers: { host: "localhost", "content-type": "application/json" }, payload: JSON.stringify(body) });

describe("the log", () => {
  it("has one line for each request: when in UTC, which, by which household, with what outcome", async () => {
    lines.length = 0;
    const id = randomUUID();
    const answer = await put(`/api/beds/${id}`, { name: SECRET, lengthM: 10, widthM: 1.2, cover: "open" });
    expect(answer.statusCode).toBe(201);
    expect(lines).toHaveLength(1);
    const line = JSON.parse(lines[0] as string) as Record<string, unknown>;
    expect(line).toMatchObject({ household: stillroom.householdId, method: "PUT", route: "/api/beds/:id", status: 201 });
    expect(line["time"]).toMatch(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/);
    expect(line["reqId"]).toMatch(/^[0-9a-f-]{36}$/);
  });

  it("holds nothing of what was sent, whether it was taken, refused or met a bug", async () => {
    lines.length = 0;
    await put(`/api/beds/${randomUUID()}`, { name: SECRET, lengthM: -1, widthM: 1.2, cover: SECRET });
    await put(`/api/beds/${randomUUID()}?note=${encodeURIComponent(SECRET)}`, {});
    const bug = await put("/bug", { name: SECRET });
    expect(lines.length).toBeGreaterThanOrEqual(4);
    expect(lines.join("\n")).not.toContain("Grandmother");
    expect(lines.join("\n")).toContain("XX000");
    // the caller gets one plain sentence and the number under which the line is found
    expect(bug.statusCode).toBe(500);
    expect(Object.keys(bug.json<object>()).sort()).toEqual(["detail", "instance", "status", "title", "type"]);
    expect(bug.body).not.toMatch(/Grandmother|insert into|at .*\.ts/);
    const failed = lines.map((line) => JSON.parse(line) as Record<string, unknown>).find((line) => line["msg"] === "request failed");
    expect(bug.json<{ instance: string }>().instance).toBe(`urn:uuid:${String(failed?.["reqId"])}`);
  });

  it("tells who was refused at the door", async () => {
    lines.length = 0;
    await app.inject({ method: "GET", url: "/api/beds", headers: { host: "evil.example" } });
    expect(lines.map((line) => (JSON.parse(line) as { msg: string }).msg)).toEqual(["refused at the door", "answered"]);
  });
});

describe("a database that is away", () => {
  it("is 503 with a time to try again, never a success", async () => {
    // port 1 (tcpmux, IANA) has nobody behind it
    const db = openDb("postgres://nobody:x@127.0.0.1:1/none", "server");
    const away = await buildApp({ ...options, db });
    for (const [method, url] of [["GET", "/api/health"], ["GET", "/api/beds"], ["GET", "/api/crops"], ["DELETE", `/api/picks/${randomUUID()}`]] as const) {
      const answer = await away.inject({ method, url, headers: { host: "localhost" } });
      expect([url, answer.statusCode, answer.headers["retry-after"]]).toEqual([url, 503, "2"]);
      expect(answer.json()).toMatchObject({ type: "urn:stillroom:problem:unavailable", status: 503 });
    }
    await away.close();
    await db.close();
  });
});
