/** A stop in the middle of work: everything asked is answered or refused so that it can be asked again, nothing is half stored. */
import { randomUUID } from "node:crypto";
import { chmodSync } from "node:fs";
import { createConnection } from "node:net";
import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, expect, it } from "vitest";
import { asSuperuser } from "#tests/support/test-db.ts";
import { putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";
import { remove, scratchFolder, startApp } from "#tests/support/running-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
});
afterAll(() => stillroom.close());

it("answers fifty writes that are under way, each once or with a refusal to try again", async () => {
  const sowingId = await putNew(stillroom, "sowings", { bedId: await putBed(stillroom), crop: "french-bean", method: "direct", sownOn: "2027-05-10", rowM: 6 });
  const other = await stillroom.as(stillroom.householdId);
  await other.app.listen({ host: "127.0.0.1", port: 0 });
  const { port } = other.app.server.address() as AddressInfo;
  const ids: string[] = Array.from({ length: 50 }, () => randomUUID());
  const body = JSON.stringify({ sowingId, pickedOn: "2027-07-20", grams: 100 });
  const sent = ids.map((id) => fetch(`http://127.0.0.1:${port}/api/picks/${id}`, { method: "PUT", headers: { "content-type": "application/json" }, body }).then((answer) => answer.status, () => 0));
  await Promise.race(sent);
  await other.app.close();
  const statuses = await Promise.all(sent);
  const stored = await asSuperuser(stillroom.test.url, async (client) => (await client.query<{ id: string }>("select id from picks where household_id = $1", [stillroom.householdId])).rows.map((row) => row.id));
  // 201: stored; 503: the door was closing; 0: the connection came too late
  expect(statuses.filter((status) => ![201, 503, 0].includes(status))).toEqual([]);
  expect(statuses.filter((status) => status === 201).length).toBeGreaterThan(0);
  expect(ids.filter((_, i) => statuses[i] === 201).filter((id) => !stored.includes(id))).toEqual([]);
  expect(stored.filter((id) => !ids.includes(id))).toEqual([]);
});

it("takes no request without a Host (RFC 9112 §3.2)", async () => {
  const other = await stillroom.as(stillroom.householdId);
  await other.app.listen({ host: "127.0.0.1", port: 0 });
  const { port } = other.app.server.address() as AddressInfo;
  const ask = (head: string) =>
    new Promise<string>((resolve, reject) => {
      let answer = "";
      const line = createConnection(port, "127.0.0.1", () => line.end(head));
      line.on("data", (chunk) => (answer += chunk.toString())).on("end", () => resolve(answer)).on("error", reject);
    });
  expect(await ask("GET /api/beds HTTP/1.1\r\n\r\n")).toMatch(/^HTTP\/1\.1 400 /);
  expect(await ask("GET /api/beds HTTP/1.0\r\n\r\n")).toMatch(/^HTTP\/1\.1 403 /);
  expect(await ask("GET http://evil.example/api/beds HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n")).toMatch(/^HTTP\/1\.1 403 /);
});

it("ends by itself when it is asked to, having closed its database", async () => {
  const folder = scratchFolder("stop");
  // where the tests run as root the database runs as another, who must be able to enter
  chmodSync(folder, 0o755);
  try {
    const running = await startApp("start", { STILLROOM_DATA: folder });
    expect((await fetch(`${running.url}/api/household`)).status).toBe(200);
    await running.stop();
    expect(running.output()).toMatch(/Stopped\s*$/);
    // the same folder can be opened again at once
    const again = await startApp("start", { STILLROOM_DATA: folder });
    expect((await fetch(`${again.url}/api/health`)).status).toBe(200);
    await again.stop();
  } finally {
    remove(folder);
  }
});
