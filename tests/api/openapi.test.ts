/** The published interface: OpenAPI 3.1.0 (spec.openapis.org/oas/v3.1.0), and that a change of it is seen in review. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let document: OpenApi;
beforeAll(async () => {
  stillroom = await testApp();
  document = (await stillroom.call("GET", "/api/openapi.json")).json<OpenApi>();
});
afterAll(() => stillroom.close());

interface Operation {
  readonly summary?: string;
  readonly tags?: readonly string[];
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly requestBody?: { readonly content: Record<string, unknown> };
  readonly responses: Record<string, { readonly content?: Record<string, unknown> }>;
}

interface OpenApi {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, Operation>>;
  readonly components: { readonly schemas: Record<string, unknown> };
}

/** Sorted keys, so that only a change of the interface changes the file. */
function stable(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(stable);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, inner]) => [key, stable(inner)]));
}

const FILE = new URL("./openapi.json", import.meta.url);

describe("the interface", () => {
  it("is the one under review in tests/api/openapi.json (vitest -u writes it anew)", async () => {
    await expect(`${JSON.stringify(stable(document), null, 2)}\n`).toMatchFileSnapshot(FILE.pathname);
  });

  it("has the calls of the design that are in use, and nothing that is only half there", () => {
    const calls = Object.entries(document.paths).flatMap(([path, methods]) => Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`)).sort();
    const both = (path: string) => [`GET ${path}`, `PUT ${path}`, `DELETE ${path}`];
    expect(calls).toEqual(
      [
        "GET /api/health",
        ...both("/api/household"),
        "GET /api/weather", "PUT /api/weather/days", "DELETE /api/weather/days", "PUT /api/weather/normals",
        "GET /api/crops",
        "GET /api/beds", ...both("/api/beds/{id}"),
        "GET /api/sowings", ...both("/api/sowings/{id}"), "GET /api/sowings/{id}/forecast", "POST /api/sowings/preview",
        "GET /api/sowings/{id}/sightings", ...both("/api/sowings/{id}/sightings/{sightingId}"),
        "GET /api/picks", ...both("/api/picks/{id}"),
        "GET /api/plan-lines", ...both("/api/plan-lines/{id}"),
        "GET /api/calendar", "GET /api/today",
        "GET /api/frost-dates", "GET /api/sowing-advice", "GET /api/beds/{id}/advice", "GET /api/track-record",
        "GET /api/recipes", "GET /api/recipes/brief", ...both("/api/recipes/{id}"), "POST /api/recipes/read", "POST /api/recipes/{id}/scaled",
        "GET /api/keeping", "GET /api/keeping/foods",
        "GET /api/places", ...both("/api/places/{id}"), "GET /api/places/{id}/room",
        ...both("/api/lots/{id}"), "PUT /api/lots/{id}/movements/{movementId}", "DELETE /api/lots/{id}/movements/{movementId}",
        "GET /api/larder", "GET /api/larder/oldest-first", "GET /api/gram-account", "GET /api/shopping", "GET /api/take-out",
        "POST /api/season/plan", "GET /api/season/plan", "GET /api/season/jobs/{id}", "DELETE /api/season/jobs/{id}", ...both("/api/season/weeks/{week}/agreed"),
        "GET /api/tastes", "PUT /api/tastes/{recipeId}", "DELETE /api/tastes/{recipeId}",
        "GET /api/wishes", ...both("/api/wishes/{id}"), "GET /api/stock-targets", "GET /api/stock-targets/suggested", ...both("/api/stock-targets/{id}"), "GET /api/supplies", ...both("/api/supplies/{id}"),
        "GET /api/cook-days", ...both("/api/cook-days/{id}"), "POST /api/cook-days/{id}/timetable", "POST /api/cook-days/{id}/advice", "POST /api/cook-days/choices",
        "GET /api/cook-days/{id}/counter", ...["plans/{planId}", "marks/{markId}", "batches/{batchId}"].flatMap((part) => [`PUT /api/cook-days/{id}/${part}`, `DELETE /api/cook-days/{id}/${part}`]), ...both("/api/cook-days/{id}/timers/{timerId}"),
        "GET /api/events",
      ].sort(),
    );
  });

  it("says for every call what it is for, what it takes, what it answers and how it refuses", () => {
    for (const [path, methods] of Object.entries(document.paths))
      for (const [method, call] of Object.entries(methods)) {
        const where = `${method} ${path}`;
        expect(call.summary, where).toBeTruthy();
        expect(call.tags, where).toHaveLength(1);
        expect(Object.keys(call.responses), where).toEqual(expect.arrayContaining(["4XX", "5XX"]));
        expect(call.responses["4XX"]?.content, where).toHaveProperty(["application/problem+json"]);
        if (method === "put") expect(call.requestBody, where).toBeDefined();
        const named = [...path.matchAll(/\{([^}]+)\}/g)].map(([, name]) => name);
        expect((call.parameters ?? []).filter((one) => one.in === "path").map((one) => one.name).sort(), where).toEqual(named.sort());
      }
  });

  it("has every description that it points at, and no other", () => {
    const text = JSON.stringify(document);
    const named = new Set([...text.matchAll(/"#\/components\/schemas\/([^"]+)"/g)].map(([, name]) => name));
    expect([...named].sort()).toEqual(Object.keys(document.components.schemas).sort());
    expect(document.openapi).toBe("3.1.0");
    expect(document.paths["/api/weather/days"]?.["put"]?.requestBody?.content).toHaveProperty(["text/csv"]);
  });
});

describe("what schemas cannot say", () => {
  interface Told {
    readonly requestBody?: { readonly required?: boolean };
  }
  const all = () => Object.entries(document.paths).flatMap(([path, methods]) => Object.entries(methods).map(([method, call]) => ({ where: `${method} ${path}`, call })));

  it("an answer without content has none (RFC 9110 §15.3.5)", () => {
    const without = all().filter(({ call }) => call.responses["204"] !== undefined);
    expect(without.length).toBeGreaterThan(6);
    for (const { where, call } of without) expect(call.responses["204"], where).not.toHaveProperty("content");
  });

  it("the header that names the version stands where it is read", () => {
    const reading = all().filter(({ call }) => call.parameters?.some((one) => one.in === "header" && one.name === "If-Match")).map(({ where }) => where).sort();
    const nouns = ["beds/{id}", "sowings/{id}", "sowings/{id}/sightings/{sightingId}", "plan-lines/{id}", "recipes/{id}", "cook-days/{id}", "cook-days/{id}/timers/{timerId}", "places/{id}", "lots/{id}", "wishes/{id}", "stock-targets/{id}", "supplies/{id}"];
    expect(reading).toEqual([...nouns.flatMap((noun) => [`put /api/${noun}`, `delete /api/${noun}`]), "put /api/household"].sort());
  });

  it("a timetable may be asked for without a body, a bed may not be put so", () => {
    expect((document.paths["/api/cook-days/{id}/timetable"]?.["post"] as Told).requestBody?.required).toBe(false);
    expect((document.paths["/api/beds/{id}"]?.["put"] as Told).requestBody?.required).toBe(true);
  });

  it("an id may be written in capitals (RFC 9562 §4)", () => {
    const patterns = [...JSON.stringify(document).matchAll(/"pattern":"(\^\[0-9[^"]*\{12\}\$)"/g)].map(([, pattern]) => new RegExp(String(pattern)));
    expect(patterns.length).toBeGreaterThan(5);
    for (const pattern of patterns) expect("F81D4FAE-7DEC-11D0-A765-00A0C91E6BF6").toMatch(pattern);
  });
});

describe("the page to read it", () => {
  it("names nothing that is not served from here", async () => {
    const page = await stillroom.call("GET", "/api/docs/");
    expect(page.statusCode).toBe(200);
    const parts = [...page.body.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, address]) => String(address));
    expect(parts.length).toBeGreaterThan(3);
    for (const part of parts) {
      expect(part).toMatch(/^(?:\.?\/|\.\/)/);
      expect([part, (await stillroom.call("GET", new URL(part, "http://localhost/api/docs/").pathname)).statusCode]).toEqual([part, 200]);
    }
    expect(page.body).not.toMatch(/<script(?![^>]*\ssrc=)|\sstyle=|\son[a-z]+=/);
  });
});
