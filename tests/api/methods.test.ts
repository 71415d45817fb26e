/** Methods and addresses (RFC 9110 §9.3.2 HEAD, §12.5.1 Accept, §15.5.5 404, §15.5.6 405 with Allow). */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { badFields, putBed, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
});
afterAll(() => stillroom.close());

const call = (method: string, address: string) => stillroom.call(method as "GET", address);

describe("a method that an address does not take", () => {
  it.each([
    ["PATCH", "/api/household", "DELETE, GET, HEAD, PUT"],
    ["POST", `/api/beds/${randomUUID()}`, "DELETE, GET, HEAD, PUT"],
    ["DELETE", "/api/calendar", "GET, HEAD"],
    ["PUT", "/api/beds", "GET, HEAD"],
    ["GET", `/api/cook-days/${randomUUID()}/timetable`, "POST"],
    ["POST", "/api/weather/days?from=2026-01-01", "DELETE, PUT"],
    ["DELETE", "/api/openapi.json", "GET, HEAD"],
  ])("%s %s is told from a wrong address, and which it takes is said", async (method, address, allow) => {
    const refused = await call(method, address);
    expect([refused.statusCode, refused.headers.allow]).toEqual([405, allow]);
    expect(refused.headers["content-type"]).toBe("application/problem+json");
    expect(refused.json()).toMatchObject({ type: "urn:stillroom:problem:method-not-allowed", status: 405 });
  });

  it.each(["/api/nothing", "/api/bedsteads", `/api/beds/${randomUUID()}/more`, "/api"])("%s is no address, whatever the method", async (address) => {
    for (const method of ["GET", "PUT", "PATCH", "DELETE"]) expect([method, (await call(method, address)).statusCode]).toEqual([method, 404]);
  });
});

describe("HEAD", () => {
  it.each(["/api/household", "/api/calendar", "/api/crops", "/api/openapi.json"])("of %s says what GET says, without the body", async (address) => {
    const [head, get] = [await call("HEAD", address), await call("GET", address)];
    expect([head.statusCode, head.body, head.headers.etag, head.headers["content-type"], head.headers["content-length"]]).toEqual([200, "", get.headers.etag, get.headers["content-type"], get.headers["content-length"]]);
  });

  it("of one thing carries its tag, and of what is not there is 404", async () => {
    const bed = await putBed(stillroom);
    expect((await call("HEAD", `/api/beds/${bed}`)).headers.etag).toBe((await call("GET", `/api/beds/${bed}`)).headers.etag);
    expect((await call("HEAD", `/api/beds/${randomUUID()}`)).statusCode).toBe(404);
  });
});

describe("Accept", () => {
  it("of something else than JSON is answered in JSON all the same, as RFC 9110 allows, and never with a page", async () => {
    for (const accept of ["text/html", "application/xml", "image/*"]) {
      const answer = await stillroom.call("GET", "/api/beds", { headers: { accept } });
      expect([accept, answer.statusCode, answer.headers["content-type"]]).toEqual([accept, 200, "application/json; charset=utf-8"]);
    }
  });
});

describe("the page of the interface", () => {
  it("is the same with a slash at its end and without", async () => {
    const [bare, slash] = [await call("GET", "/api/docs"), await call("GET", "/api/docs/")];
    expect([bare.statusCode, slash.statusCode]).toEqual([200, 200]);
    // what they load is found from both addresses
    for (const [page, address] of [[bare, "/api/docs"], [slash, "/api/docs/"]] as const) {
      const files = [...page.body.matchAll(/(?:src|href)="([^"]+\.(?:js|css))"/g)].map(([, file]) => new URL(file as string, `http://localhost${address}`).pathname);
      expect(files.length).toBeGreaterThanOrEqual(3);
      for (const file of files) expect([address, file, (await call("GET", file)).statusCode]).toEqual([address, file, 200]);
    }
  });
});

it("a cook day that would end after midnight is refused with what to do instead", async () => {
  const body = { on: "2027-07-31", startsAt: "20:00", endsBy: "01:30", cooks: 1, kitchen: { ovens: [], burners: 2 }, dishes: [] };
  const refused = await stillroom.call("PUT", `/api/cook-days/${randomUUID()}`, { body });
  expect([refused.statusCode, badFields(refused)]).toEqual([400, ["endsBy"]]);
  expect(refused.json<{ detail: string }>().detail).toMatch(/a cook day ends on the day it begins\. Put what runs past midnight into a cook day of the next morning\.$/);
});
