import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
const folder = mkdtempSync(path.join(tmpdir(), "stillroom-pages-"));
beforeAll(async () => {
  mkdirSync(path.join(folder, "assets"));
  writeFileSync(path.join(folder, "index.html"), "<!doctype html><title>Stillroom</title>");
  writeFileSync(path.join(folder, "assets", "app-3f8a1c1e.js"), "export {};");
  stillroom = await testApp({ pages: folder });
});
afterAll(async () => {
  await stillroom.close();
  rmSync(folder, { recursive: true });
});

const get = (address: string, accept = "text/html,application/xhtml+xml,*/*;q=0.8") => stillroom.call("GET", address, { headers: { accept } });

describe("the pages", () => {
  it.each(["/", "/calendar", "/calendar?week=2027-W31", "/beds/3f8a1c1e-4a59-4a0e-9d57-2b1f6f0c9a11", "/cook-day/a.b"])("%s is the one document, asked for again each time", async (address) => {
    const answer = await get(address);
    expect([answer.statusCode, answer.headers["content-type"], answer.headers["cache-control"]]).toEqual([200, "text/html; charset=utf-8", "no-cache"]);
    expect(answer.body).toContain("<title>Stillroom</title>");
  });

  it("have files with a hash in their name, which may be kept for ever", async () => {
    const answer = await get("/assets/app-3f8a1c1e.js", "*/*");
    expect([answer.statusCode, answer.headers["cache-control"]]).toEqual([200, "public, max-age=31536000, immutable"]);
    expect(answer.headers["content-type"]).toMatch(/^(?:text|application)\/javascript/);
  });

  it.each([
    ["/assets/app-00000000.js", "text/html"],
    ["/api/nothing-here", "text/html"],
    ["/api", "text/html"],
    ["/calendar", "application/json"],
    ["/%2e%2e/package.json", "*/*"],
    ["/..%2fpackage.json", "*/*"],
    ["/.git/config", "*/*"],
  ])("do not stand in for %s asked for as %s", async (address, accept) => {
    const answer = await get(address, accept);
    expect(answer.statusCode).toBeGreaterThanOrEqual(400);
    expect(answer.statusCode).toBeLessThan(500);
    expect(answer.body).not.toContain("<title>");
  });

  it("are not written to", async () => {
    for (const method of ["PUT", "POST", "DELETE"] as const) expect((await stillroom.call(method, "/calendar", { headers: { accept: "text/html" } })).statusCode).toBe(404);
  });

  it("may be opened by a link from elsewhere, and used for nothing else from there", async () => {
    const from = (more: Record<string, string>) => stillroom.call("GET", "/calendar", { headers: { accept: "text/html", "sec-fetch-site": "cross-site", ...more } });
    expect((await from({ "sec-fetch-mode": "navigate", "sec-fetch-dest": "document" })).statusCode).toBe(200);
    expect((await from({ "sec-fetch-mode": "navigate", "sec-fetch-dest": "iframe" })).statusCode).toBe(403);
    expect((await from({ "sec-fetch-mode": "no-cors", "sec-fetch-dest": "script" })).statusCode).toBe(403);
  });
});
