/** Who is let in: RFC 9110 §7.2 (Host), RFC 6454 (Origin), W3C Fetch Metadata Request Headers (Sec-Fetch-Site, -Mode, -Dest). */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
});
afterAll(() => stillroom.close());

const bed = { name: "Long bed", lengthM: 10, widthM: 1.2, cover: "open" };
const write = (headers: Record<string, string>) => stillroom.call("PUT", `/api/beds/${randomUUID()}`, { body: bed, headers });
const read = (headers: Record<string, string>) => stillroom.call("GET", "/api/beds", { headers });

describe("the name the service is called by", () => {
  it.each(["localhost", "localhost:8080", "LOCALHOST:80", "127.0.0.1", "127.9.8.7:65535", "[::1]", "[::1]:8080"])("lets %s in", async (host) => {
    expect((await read({ host })).statusCode).toBe(200);
  });

  it.each(["evil.example", "localhost.evil.example", "evil.example:8080", "127.0.0.1.evil.example", "192.168.1.4", "10.0.0.1:8080", "0.0.0.0", "[::2]", "[::ffff:127.0.0.1]", "localhost:8080@evil.example"])(
    "refuses %s, for reading and for writing",
    async (host) => {
      for (const answer of [await read({ host }), await write({ host })]) {
        expect(answer.statusCode).toBe(403);
        expect(answer.headers["content-type"]).toMatch(/^application\/problem\+json/);
        expect(answer.json()).toMatchObject({ status: 403, type: "urn:stillroom:problem:forbidden" });
      }
    },
  );
});

describe("a page elsewhere in the browser", () => {
  it.each([
    ["another site", { "sec-fetch-site": "cross-site" }],
    ["another port of this machine", { "sec-fetch-site": "same-site" }],
    ["another site that claims our origin", { "sec-fetch-site": "cross-site", origin: "http://localhost:8080" }],
    ["an old browser, by its origin", { origin: "https://evil.example" }],
    ["an old browser on another port", { origin: "http://localhost:9999" }],
    ["a sandboxed frame", { origin: "null" }],
    ["our name by another scheme", { origin: "https://localhost:8080" }],
    ["a link followed to the interface", { "sec-fetch-site": "cross-site", "sec-fetch-mode": "navigate", "sec-fetch-dest": "document" }],
  ])("can neither write nor read: %s", async (_who, headers) => {
    const before = (await stillroom.call("GET", "/api/beds")).json<unknown[]>().length;
    expect((await write(headers)).statusCode).toBe(403);
    expect((await stillroom.call("DELETE", "/api/household", { headers })).statusCode).toBe(403);
    expect((await stillroom.call("PUT", "/api/weather/days", { body: "date,tmax_c,tmin_c\n2027-01-01,5,1\n", headers: { ...headers, "content-type": "text/csv" } })).statusCode).toBe(403);
    expect((await read(headers)).statusCode).toBe(403);
    expect((await stillroom.call("GET", "/api/beds")).json()).toHaveLength(before);
  });

  it("gets no leave to call across origins", async () => {
    const asked = await stillroom.call("OPTIONS", "/api/beds", { headers: { origin: "https://evil.example", "access-control-request-method": "PUT", "sec-fetch-site": "cross-site" } });
    expect(asked.statusCode).toBe(403);
    expect(Object.keys(asked.headers).filter((name) => name.startsWith("access-control"))).toEqual([]);
  });
});

describe("our own page, and programs on the machine", () => {
  it.each([
    ["the page itself", { "sec-fetch-site": "same-origin", origin: "http://localhost:8080" }],
    ["a person typing the address", { "sec-fetch-site": "none" }],
    ["our page in an old browser", { origin: "http://localhost:8080" }],
    ["a program", {}],
  ])("write and read: %s", async (_who, headers) => {
    expect((await write(headers as Record<string, string>)).statusCode).toBe(201);
    expect((await read(headers as Record<string, string>)).statusCode).toBe(200);
  });
});
