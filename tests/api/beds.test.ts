import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { badFields, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
});
afterAll(() => stillroom.close());

const bed = { name: "Long bed", lengthM: 10, widthM: 1.2, cover: "open" };

describe("a bed", () => {
  it("is made by its first PUT, with an address and a version, and read back", async () => {
    const id = randomUUID();
    const made = await stillroom.call("PUT", `/api/beds/${id}`, { body: bed });
    expect(made.statusCode, made.body).toBe(201);
    expect(made.headers.location).toBe(`/api/beds/${id}`);
    expect(made.json()).toEqual({ id, ...bed, areaM2: 12, freeM2: 12 });
    const read = await stillroom.call("GET", `/api/beds/${id}`);
    expect(read.statusCode).toBe(200);
    expect(read.json()).toEqual(made.json());
    expect(read.headers.etag).toBe(made.headers.etag);
    const list = await stillroom.call("GET", "/api/beds");
    expect(list.json()).toContainEqual(made.json());
  });

  it("is found under its id in upper case too", async () => {
    const id = randomUUID();
    await stillroom.call("PUT", `/api/beds/${id.toUpperCase()}`, { body: bed });
    expect((await stillroom.call("GET", `/api/beds/${id}`)).json()).toMatchObject({ id });
  });

  it("is changed only by naming the version that is changed", async () => {
    const id = randomUUID();
    const made = await stillroom.call("PUT", `/api/beds/${id}`, { body: bed });
    const first = String(made.headers.etag);
    const again = await stillroom.call("PUT", `/api/beds/${id}`, { body: { cover: "open", widthM: 1.2, lengthM: 10.0, name: " Long bed " } });
    expect([again.statusCode, again.headers.etag, again.headers.location]).toEqual([200, first, undefined]);
    const longer = { ...bed, lengthM: 12 };
    expect((await stillroom.call("PUT", `/api/beds/${id}`, { body: longer })).statusCode).toBe(428);
    expect((await stillroom.call("PUT", `/api/beds/${id}`, { body: longer, headers: { "if-match": '"7-x"' } })).statusCode).toBe(412);
    expect((await stillroom.call("PUT", `/api/beds/${id}`, { body: longer, headers: { "if-match": `W/${first}` } })).statusCode).toBe(412);
    const changed = await stillroom.call("PUT", `/api/beds/${id}`, { body: longer, headers: { "if-match": `"other", ${first}` } });
    expect(changed.statusCode, changed.body).toBe(200);
    expect(changed.json()).toMatchObject({ lengthM: 12, areaM2: 14.4 });
    expect(changed.headers.etag).not.toBe(first);
    expect((await stillroom.call("PUT", `/api/beds/${id}`, { body: bed, headers: { "if-match": first } })).statusCode).toBe(412);
  });

  it("does not answer to a version of an earlier life under the same id", async () => {
    const id = randomUUID();
    const first = String((await stillroom.call("PUT", `/api/beds/${id}`, { body: bed })).headers.etag);
    expect((await stillroom.call("DELETE", `/api/beds/${id}`, { headers: { "if-match": '"0-0"' } })).statusCode).toBe(412);
    expect((await stillroom.call("DELETE", `/api/beds/${id}`, { headers: { "if-match": first } })).statusCode).toBe(204);
    expect((await stillroom.call("DELETE", `/api/beds/${id}`)).statusCode).toBe(404);
    expect((await stillroom.call("PUT", `/api/beds/${id}`, { body: { ...bed, name: "New bed" }, headers: { "if-match": first } })).statusCode).toBe(412);
    expect((await stillroom.call("PUT", `/api/beds/${id}`, { body: { ...bed, name: "New bed" } })).statusCode).toBe(201);
    expect((await stillroom.call("PUT", `/api/beds/${id}`, { body: bed, headers: { "if-match": first } })).statusCode).toBe(412);
  });

  it("is made once by ten PUTs at the same moment", async () => {
    const id = randomUUID();
    const answers = await Promise.all(Array.from({ length: 10 }, () => stillroom.call("PUT", `/api/beds/${id}`, { body: bed })));
    expect(answers.map((answer) => answer.statusCode).sort()).toEqual([200, 200, 200, 200, 200, 200, 200, 200, 200, 201]);
    expect(new Set(answers.map((answer) => answer.headers.etag)).size).toBe(1);
  });

  it("is refused with every bad field named, and nothing is stored", async () => {
    const id = randomUUID();
    const refused = await stillroom.call("PUT", `/api/beds/${id}`, { body: { name: " ", lengthM: -1, widthM: "wide", cover: "glass", colour: "green" } });
    expect(refused.statusCode).toBe(400);
    expect(refused.headers["content-type"]).toMatch(/^application\/problem\+json/);
    expect(badFields(refused).sort()).toEqual(["colour", "cover", "lengthM", "name", "widthM"]);
    expect((await stillroom.call("GET", `/api/beds/${id}`)).statusCode).toBe(404);
  });

  it("needs an id that is a UUID", async () => {
    expect(badFields(await stillroom.call("PUT", "/api/beds/long-bed", { body: bed }))).toEqual(["id"]);
  });
});
