/** What bad input gets: a problem document (RFC 9457) that names the field, and nothing stored. */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { badFields, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
});
afterAll(() => stillroom.close());

const bed = { name: "Long bed", lengthM: 10, widthM: 1.2, cover: "open" };
const put = (body: unknown, headers: Record<string, string> = {}) => stillroom.call("PUT", `/api/beds/${randomUUID()}`, { body, headers: { "content-type": "application/json", ...headers } });

describe("a body that cannot be read", () => {
  it.each([
    ["broken JSON", '{"name": "Long bed",'],
    ["two values", "{} {}"],
    ["a comment", '{/* */"name":"x"}'],
    ["a poisoned prototype", '{"__proto__": {"admin": true}, "name": "x"}'],
    ["a poisoned constructor", '{"constructor": {"prototype": {"admin": true}}}'],
  ])("%s is 400 and says so", async (_what, body) => {
    const answer = await put(body);
    expect(answer.statusCode).toBe(400);
    expect(answer.headers["content-type"]).toMatch(/^application\/problem\+json/);
    expect(badFields(answer)).toEqual([""]);
  });

  it.each([
    ["nothing", ""],
    ["null", "null"],
    ["a list", "[]"],
    ["a text", '"bed"'],
  ])("%s is not a bed", async (_what, body) => {
    const answer = await put(body);
    expect(answer.statusCode).toBe(400);
    expect(badFields(answer)).toEqual([""]);
  });

  it.each(["text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "text/csv", "application/xml"])("%s is 415", async (type) => {
    const answer = await put(JSON.stringify(bed), { "content-type": type });
    expect(answer.statusCode).toBe(415);
    expect(answer.json()).toMatchObject({ type: "urn:stillroom:problem:unsupported-media-type", status: 415 });
  });

  it("of two mebibytes is 413", async () => {
    const answer = await put({ ...bed, name: "x".repeat(2 * 1024 * 1024) });
    expect(answer.statusCode).toBe(413);
    expect(answer.json()).toMatchObject({ type: "urn:stillroom:problem:too-large" });
  });

  it("with the NUL character, which no database text can hold, names the field", async () => {
    const answer = await put({ ...bed, name: "Long\u0000bed" });
    expect(answer.statusCode).toBe(400);
    expect(badFields(answer)).toEqual(["name"]);
  });
});

describe("a day that the calendar of the database does not have", () => {
  it.each(["0000-01-01", "0000-12-31"])("%s is 400, not a failure", async (day) => {
    const answer = await stillroom.call("PUT", `/api/cook-days/${randomUUID()}`, { body: { on: day, startsAt: "10:00", cooks: 1, kitchen: { ovens: [], burners: 2 }, dishes: [] } });
    expect(answer.statusCode).toBe(400);
    expect((await stillroom.call("GET", `/api/calendar?asOf=${day}`)).statusCode).toBe(400);
  });
});

describe("a problem document", () => {
  it("has the members of RFC 9457 §3.1, and names the request", async () => {
    const body = (await put({ ...bed, lengthM: -1 })).json<Record<string, unknown>>();
    expect(body["title"]).toMatch(/\w/);
    expect(body).toMatchObject({ type: "urn:stillroom:problem:bad-request", status: 400, detail: "The body does not fit. lengthM: must be more than nothing." });
    expect(body["instance"]).toMatch(/^urn:uuid:[0-9a-f-]{36}$/);
    expect(body["fields"]).toEqual([{ path: "lengthM", message: "must be more than nothing" }]);
  });

  it("answers an address that is not there with 404, whatever the method", async () => {
    for (const method of ["GET", "PUT", "POST", "DELETE", "PATCH"] as const) {
      const answer = await stillroom.call(method, "/api/nothing-here");
      expect([method, answer.statusCode, answer.headers["content-type"]]).toEqual([method, 404, "application/problem+json"]);
    }
  });

  it("answers an address that cannot be read with 400", async () => {
    expect((await stillroom.call("GET", "/api/beds/%E0%A4%A")).statusCode).toBe(400);
    expect((await stillroom.call("GET", `/api/beds/${"a".repeat(300)}`)).statusCode).toBe(400);
  });

  it("refuses unknown questions after the ?", async () => {
    const answer = await stillroom.call("GET", "/api/picks?since=2027-01-01");
    expect(answer.statusCode).toBe(400);
    expect(badFields(answer)).toEqual(["since"]);
  });
});

it("stored nothing of all this", async () => {
  expect((await stillroom.call("GET", "/api/beds")).json()).toEqual([]);
});
