/**
 * The wall between households, through every route: the published interface is walked, so that a route added later cannot be forgotten.
 * (OWASP ASVS 5.0.0, 8.2.2: access to data is limited to those who may have it.)
 */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let ours: TestApp;
let theirs: TestApp;
/** Ids of the first household's things, by the noun in the address. */
const things: Record<string, string> = {};
let sightingId = "";
let movementId = "";
/** Of our cook day: a plan, a mark, a timer and a closed dish. */
const ofDay = { planId: "", markId: "", timerId: "", batchId: "" };
const SECRET = "Grandmother's secret";

beforeAll(async () => {
  ours = await testApp();
  await settle(ours, { name: SECRET });
  theirs = await ours.as();
  await settle(theirs);
  things["beds"] = await putNew(ours, "beds", { name: SECRET, lengthM: 10, widthM: 1.2, cover: "open" });
  things["sowings"] = await putNew(ours, "sowings", { bedId: things["beds"], crop: "french-bean", method: "direct", sownOn: "2027-05-10", rowM: 6, variety: SECRET, note: SECRET });
  sightingId = await putNew(ours, `sowings/${things["sowings"]}/sightings`, { stage: "first-pick", seenOn: "2027-07-20" });
  things["picks"] = await putNew(ours, "picks", { sowingId: things["sowings"], pickedOn: "2027-07-20", grams: 654_321 });
  things["recipes"] = await putNew(ours, "recipes", recipe);
  things["plan-lines"] = await putNew(ours, "plan-lines", { week: "2027-W31", recipeId: things["recipes"], batches: 2 });
  things["cook-days"] = await putNew(ours, "cook-days", { on: "2027-08-01", startsAt: "10:00", cooks: 1, kitchen, dishes: [{ recipeId: things["recipes"], batches: 1 }], title: SECRET });
  things["places"] = await putNew(ours, "places", { name: SECRET, kind: "freezer", litres: 45 });
  things["lots"] = await putNew(ours, "lots", { title: SECRET, crop: "french-bean", placeId: things["places"], madeOn: "2027-07-20", note: SECRET });
  movementId = await putNew(ours, `lots/${things["lots"]}/movements`, { kind: "put", on: "2027-07-20", grams: 654_321, note: SECRET });
  const day = `cook-days/${things["cook-days"]}`;
  ofDay.planId = await putNew(ours, `${day}/plans`, { kind: "agree" });
  ofDay.markId = await putNew(ours, `${day}/marks`, { kind: "begun" });
  ofDay.timerId = await putNew(ours, `${day}/timers`, { label: SECRET, minutes: 600 });
  ofDay.batchId = await putNew(ours, `${day}/batches`, { recipeId: things["recipes"], portions: 4, eatenPortions: 4, lots: [], took: [] });
  things["wishes"] = await putNew(ours, "wishes", { recipeId: things["recipes"], portions: 4, by: SECRET });
  things["stock-targets"] = await putNew(ours, "stock-targets", { recipeId: things["recipes"], portions: 40, by: "2027-11-01" });
  // ended before anything is compared, because how far it is would change by itself
  const job = await ours.call("POST", "/api/season/plan", { body: { from: "2027-W30", weeks: 1 }, headers: { prefer: "respond-async" } });
  things["season"] = job.json<{ id: string }>().id;
  await ended(things["season"]);
  things["supplies"] = await putNew(ours, "supplies", { kind: "jar", name: SECRET, amount: 9, unit: "pieces" });
});
afterAll(() => ours.close());

const ended = async (job: string): Promise<void> => {
  const state = async (): Promise<string> => (await ours.call("GET", `/api/season/jobs/${job}`)).json<{ state: string }>().state;
  for (let asked = 0; asked < 400 && ["waiting", "working"].includes(await state()); asked += 1) await new Promise((resolve) => setTimeout(resolve, 25));
};
const kitchen = { ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4 };
const recipe = {
  title: SECRET,
  way: "cook",
  makes: { amount: 4, unit: "portions" },
  ingredients: [{ text: "500 g french beans", crop: "french-bean" }],
  steps: [{ id: "boil", text: "Boil", handsOnMin: 5, handsOffMin: 10, needs: { burners: 1 }, after: [] }],
  keeps: [{ place: "fridge", days: 3 }],
  note: SECRET,
};

interface OpenApi {
  readonly paths: Record<string, Record<string, { readonly parameters?: unknown }>>;
}

const routes = async (): Promise<[method: string, path: string][]> => {
  const { paths } = (await ours.call("GET", "/api/openapi.json")).json<OpenApi>();
  // a stream that goes on for ever is read in counter-events.test.ts
  return Object.entries(paths).filter(([path]) => path !== "/api/events").flatMap(([path, methods]) => Object.keys(methods).map((method): [string, string] => [method.toUpperCase(), path]));
};

/** What a question needs to be answered at all. */
const QUESTIONS: Record<string, string> = { "/api/larder/oldest-first": "?crop=french-bean&grams=50" };

/** What is sent where a thing is asked about and not stored. */
const BODIES: Record<string, unknown> = { "/api/recipes/{id}/scaled": { batches: 2 } };

const fill = (path: string): string => (path + (QUESTIONS[path] ?? "")).replace("{sightingId}", sightingId).replace("{movementId}", movementId).replace(/\{(planId|markId|timerId|batchId)\}/, (_all, name: keyof typeof ofDay) => ofDay[name]).replace("{id}", things[path.split("/")[2] as string] ?? "no-thing-of-this-noun");
const everythingOf = async (who: TestApp): Promise<string> => {
  const reads = (await routes()).filter(([method]) => method === "GET");
  const answers = await Promise.all(reads.map(async ([, path]) => (await who.call("GET", fill(path))).body));
  // each refusal has a number of its own, and time goes on
  return answers.join("\n").replaceAll(/"(?:instance|now)":"[^"]*"/g, "");
};

describe("another household", () => {
  it("has a thing to try for every noun in the interface", async () => {
    const nouns = (await routes()).filter(([, path]) => path.includes("{id}")).map(([, path]) => path.split("/")[2] as string);
    expect(nouns.length).toBeGreaterThan(20);
    expect([...new Set(nouns)].filter((noun) => things[noun] === undefined)).toEqual([]);
  });

  it("reads nothing of ours: every thing is not there, no list holds it, no text of ours comes through", async () => {
    const ids = [...Object.values(things), sightingId, movementId, ...Object.values(ofDay)];
    let tried = 0;
    for (const [method, path] of await routes()) {
      if (method !== "GET") continue;
      const answer = await theirs.call("GET", fill(path));
      if (path.includes("{id}")) expect([path, answer.statusCode]).toEqual([path, 404]);
      expect(ids.filter((id) => answer.body.includes(id)), path).toEqual([]);
      expect(answer.body, path).not.toContain(SECRET);
      expect(answer.body, path).not.toContain("654321");
      tried += 1;
    }
    expect(tried).toBeGreaterThan(15);
    // and we do see it, so that the check above can fail
    const seen = await everythingOf(ours);
    expect(ids.filter((id) => !seen.includes(id))).toEqual([]);
    expect(seen).toContain(SECRET);
  });

  it("is told the same about our things as about things that nobody has", async () => {
    for (const [method, path] of await routes()) {
      if (!path.includes("{id}") || method === "PUT") continue;
      const sent = BODIES[path] === undefined || method !== "POST" ? {} : { body: BODIES[path] };
      const nobodysPath = path.replace("{sightingId}", randomUUID()).replaceAll(/\{\w+Id\}/g, () => randomUUID()).replace("{id}", randomUUID());
      const answers = [await theirs.call(method as "GET", fill(path), sent), await theirs.call(method as "GET", nobodysPath, sent)];
      const [of, nobodys] = answers.map((answer) => ({ status: answer.statusCode, ...answer.json<object>(), instance: "" }));
      expect([method, path, of]).toEqual([method, path, nobodys]);
      expect(of?.status).toBe(404);
    }
  });

  it("changes nothing of ours: its own things under our ids are its own", async () => {
    const before = await everythingOf(ours);
    const bodies: Record<string, unknown> = {
      "/api/beds/{id}": { name: "Theirs", lengthM: 1, widthM: 1, cover: "open" },
      "/api/recipes/{id}": { ...recipe, title: "Theirs", note: "theirs" },
    };
    for (const [path, body] of Object.entries(bodies)) expect((await theirs.call("PUT", fill(path), { body })).statusCode).toBe(201);
    // what names a thing of ours names nothing in their household
    const bed = { bedId: things["beds"], crop: "pea", method: "direct", sownOn: "2027-04-01", rowM: 2 };
    expect((await theirs.call("PUT", `/api/sowings/${things["sowings"]}`, { body: bed })).statusCode).toBe(201);
    const theirBed = await putNew(theirs, "beds", { name: "Theirs", lengthM: 9, widthM: 1, cover: "open" });
    const stranger = randomUUID();
    const foreign: [string, unknown, string][] = [
      [`/api/picks/${stranger}`, { sowingId: sightingId, pickedOn: "2027-07-20", grams: 5 }, "sowingId"],
      [`/api/lots/${stranger}`, { title: "Theirs", placeId: things["places"], madeOn: "2027-07-20" }, "placeId"],
      [`/api/wishes/${stranger}`, { recipeId: things["plan-lines"], portions: 1 }, "recipeId"],
      [`/api/stock-targets/${stranger}`, { recipeId: things["plan-lines"], portions: 1, by: "2027-11-01" }, "recipeId"],
      [`/api/cook-days/${stranger}`, { on: "2027-08-01", startsAt: "10:00", cooks: 1, kitchen, dishes: [{ recipeId: things["plan-lines"], batches: 1 }] }, "dishes.0.recipeId"],
    ];
    for (const [address, body, path] of foreign) {
      const answer = await theirs.call("PUT", address, { body });
      expect([answer.statusCode, answer.json<{ fields: { path: string }[] }>().fields.map((field) => field.path)]).toEqual([400, [path]]);
    }
    for (const [method, path] of await routes()) if (method === "DELETE") await theirs.call("DELETE", fill(path));
    expect((await theirs.call("GET", `/api/beds/${theirBed}`)).statusCode).toBe(404);
    expect(await everythingOf(ours)).toBe(before);
  });
});

describe("a bed of ours", () => {
  it("cannot be sown into by another household", async () => {
    const third = await ours.as();
    const answer = await third.call("PUT", `/api/sowings/${randomUUID()}`, { body: { bedId: things["beds"], crop: "pea", method: "direct", sownOn: "2027-04-01", rowM: 2 } });
    expect(answer.statusCode).toBe(400);
    const line = await third.call("PUT", `/api/plan-lines/${randomUUID()}`, { body: { week: "2027-W31", recipeId: things["recipes"], batches: 1 } });
    expect(line.statusCode).toBe(400);
    const pick = await third.call("PUT", `/api/picks/${randomUUID()}`, { body: { sowingId: things["sowings"], pickedOn: "2027-07-20", grams: 5 } });
    expect(pick.statusCode).toBe(400);
    const lot = await third.call("PUT", `/api/lots/${randomUUID()}`, { body: { title: "Theirs", recipeId: things["recipes"], placeId: things["places"], madeOn: "2027-07-20" } });
    expect(lot.statusCode).toBe(400);
    const movement = await third.call("PUT", `/api/lots/${things["lots"]}/movements/${randomUUID()}`, { body: { kind: "take", on: "2027-07-20", grams: 5 } });
    expect(movement.statusCode).toBe(404);
    const part = await third.call("PUT", `/api/recipes/${randomUUID()}`, { body: { ...recipe, ingredients: [{ text: "what they made", madeBy: things["recipes"] }] } });
    expect(part.statusCode).toBe(400);
  });
});
