import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";
import { badFields, putNew, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let bread: string;
let soup: string;
beforeAll(async () => {
  stillroom = await testApp();
  bread = await putNew(stillroom, "recipes", {
    ...dish("Bread"),
    steps: [step("mix", 10), step("rise", 0, { handsOffMin: 60, after: ["mix"] }), step("bake", 2, { handsOffMin: 40, needs: { oven: { c: 230, trays: 1 } }, after: ["rise"], maxWaitMin: 10 })],
  });
  soup = await putNew(stillroom, "recipes", { ...dish("Soup"), steps: [step("cut", 20), step("simmer", 5, { handsOffMin: 30, needs: { burners: 1, pots: 1 }, after: ["cut"] })] });
});
afterAll(() => stillroom.close());

const dish = (title: string) => ({ title, way: "cook", makes: { amount: 4, unit: "portions" }, ingredients: [], keeps: [] });
const step = (id: string, handsOnMin: number, more: object = {}) => ({ id, text: `Do ${id}`, handsOnMin, handsOffMin: 0, needs: {}, after: [], ...more });
const kitchen = { ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4, pots: 2, sinks: 1 };
const day = (more: object = {}) => ({ on: "2027-08-01", startsAt: "10:00", endsBy: "15:00", cooks: 1, kitchen, dishes: [{ recipeId: bread, batches: 1 }, { recipeId: soup, batches: 2 }], ...more });
const put = (id: string, body: unknown, headers: Record<string, string> = {}) => stillroom.call("PUT", `/api/cook-days/${id}`, { body, headers });
const timetable = async (id: string) => (await stillroom.call("POST", `/api/cook-days/${id}/timetable`)).json<Timetable>();

describe("a cook day", () => {
  it("is made by its first PUT, read back, changed by version and dropped", async () => {
    const id = randomUUID();
    const made = await put(id, day({ title: "Sunday", unavailable: [{ what: "cook", fromMin: 60, toMin: 90, why: "lunch" }] }));
    expect(made.statusCode, made.body).toBe(201);
    expect(made.json<CookDay>()).toMatchObject({ id, on: "2027-08-01", title: "Sunday", dishes: [{ recipeId: bread, title: "Bread", batches: 1 }, { recipeId: soup, title: "Soup", batches: 2 }] });
    expect((await stillroom.call("GET", `/api/cook-days/${id}`)).json()).toEqual(made.json());
    expect((await stillroom.call("GET", "/api/cook-days")).json()).toContainEqual(made.json());
    expect((await put(id, day({ unavailable: [{ what: "cook", fromMin: 60, toMin: 90, why: "lunch" }], title: "Sunday" }))).statusCode).toBe(200);
    // the order of the dishes is the household's, so another order is another day
    expect((await put(id, day({ dishes: [{ recipeId: soup, batches: 2 }, { recipeId: bread, batches: 1 }] }))).statusCode).toBe(428);
    const changed = await put(id, day({ dishes: [{ recipeId: soup, batches: 1 }], endsBy: undefined }), { "if-match": String(made.headers.etag) });
    expect(changed.json<CookDay>()).toMatchObject({ dishes: [{ recipeId: soup, batches: 1 }], unavailable: [] });
    expect(changed.json()).not.toHaveProperty("endsBy");
    expect((await stillroom.call("DELETE", `/api/cook-days/${id}`)).statusCode).toBe(204);
    expect((await stillroom.call("POST", `/api/cook-days/${id}/timetable`)).statusCode).toBe(404);
  });

  it.each([
    ["an unknown recipe", { dishes: [{ recipeId: randomUUID(), batches: 1 }] }, ["dishes.0.recipeId"]],
    ["no batches", { dishes: [{ recipeId: randomUUID(), batches: 0 }] }, ["dishes.0.batches"]],
    ["an end before its start", { endsBy: "09:00" }, ["endsBy"]],
    ["25 o'clock", { startsAt: "25:00" }, ["startsAt"]],
    ["31 April", { on: "2027-04-31" }, ["on"]],
    ["nobody to cook", { cooks: 0 }, ["cooks"]],
    ["an absence upside down", { unavailable: [{ what: "cook", fromMin: 90, toMin: 60 }] }, ["unavailable.0.toMin"]],
    ["an unknown field in the kitchen", { kitchen: { ...kitchen, microwave: 1 } }, ["kitchen.microwave"]],
  ])("with %s is refused, and nothing is stored", async (_what, fault, paths) => {
    const id = randomUUID();
    const refused = await put(id, day(fault));
    expect([refused.statusCode, badFields(refused)]).toEqual([400, paths]);
    expect((await stillroom.call("GET", `/api/cook-days/${id}`)).statusCode).toBe(404);
  });

  it("refuses the same recipe twice", async () => {
    expect(badFields(await put(randomUUID(), day({ dishes: [{ recipeId: soup, batches: 1 }, { recipeId: soup, batches: 1 }] })))).toEqual(["dishes.1.recipeId"]);
  });
});

describe("the timetable", () => {
  it("interleaves the dishes and says which dish, step and load each line is", async () => {
    const plan = await timetable(await putNew(stillroom, "cook-days", day()));
    expect(plan.status).toMatch(/optimal|feasible/);
    // no shorter than the bread alone: 10 + 60 + 2 + 40 minutes
    expect(plan.endMin).toBeGreaterThanOrEqual(112);
    expect(plan.lowerBoundMin).toBeLessThanOrEqual(plan.endMin ?? 0);
    expect(plan.dishes.map(({ dish: id, letter, batches }) => [id, letter, batches])).toEqual([[bread, "A", 1], [soup, "B", 2]]);
    const bake = plan.steps.find((one) => one.dish === bread && one.step === "bake");
    const rise = plan.steps.find((one) => one.dish === bread && one.step === "rise");
    expect(bake).toMatchObject({ ovenC: 230, handsOnMin: 2, handsOffMin: 40, text: "Do bake" });
    const wait = (bake?.startMin ?? 0) - ((rise?.startMin ?? 0) + 60);
    expect(wait).toBeGreaterThanOrEqual(0);
    expect(wait).toBeLessThanOrEqual(10);
  });

  it("takes an empty body, with or without its type, and nothing else", async () => {
    const id = await putNew(stillroom, "cook-days", day());
    const address = `/api/cook-days/${id}/timetable`;
    expect((await stillroom.call("POST", address, { body: {} })).statusCode).toBe(200);
    expect((await stillroom.call("POST", address, { headers: { "content-type": "application/json" } })).statusCode).toBe(200);
    expect(badFields(await stillroom.call("POST", address, { body: { hurry: true } }))).toEqual(["hurry"]);
  });

  it("of a day that cannot be is an answer that says what clashes and what would help", async () => {
    const plan = await timetable(await putNew(stillroom, "cook-days", day({ endsBy: "11:00" })));
    expect(plan).toMatchObject({ status: "infeasible", endMin: null, lowerBoundMin: null, steps: [] });
    expect(plan.conflicts.length).toBeGreaterThan(0);
    for (const conflict of plan.conflicts) expect(conflict.text.length).toBeGreaterThan(10);
    const noOven = await timetable(await putNew(stillroom, "cook-days", day({ kitchen: { ovens: [], burners: 4 } })));
    expect(noOven.status).toBe("infeasible");
  });

  it("is worked out beside the service, which answers others meanwhile", async () => {
    const many = Array.from({ length: 30 }, (_, i) => step(`s${i}`, 5, { handsOffMin: 10 + i, needs: i % 3 ? { burners: 1 } : { oven: { c: 150 + 10 * (i % 5), trays: 1 } }, after: i > 5 ? [`s${i - 5}`] : [] }));
    const dishes = await Promise.all(["One", "Two", "Three"].map(async (title) => ({ recipeId: await putNew(stillroom, "recipes", { ...dish(title), steps: many }), batches: 1 })));
    const id = await putNew(stillroom, "cook-days", day({ endsBy: undefined, cooks: 2, dishes }));
    let done = false;
    const plan = timetable(id).finally(() => (done = true));
    let answered = 0;
    while (!done) if ((await stillroom.call("GET", "/api/health")).statusCode === 200) answered += 1;
    expect((await plan).steps).toHaveLength(90);
    // in the same thread at most one or two would slip in before the search
    expect(answered).toBeGreaterThan(10);
  });

  it("of no dishes is empty", async () => {
    expect(await timetable(await putNew(stillroom, "cook-days", day({ dishes: [] })))).toMatchObject({ status: "optimal", endMin: 0, steps: [], dishes: [] });
  });
});

describe("a way chosen for a week", () => {
  it("is put once, changed by version, listed by week and taken back", async () => {
    const id = randomUUID();
    const line = { week: "2027-W31", recipeId: soup, batches: 2 };
    const write = (body: unknown, headers: Record<string, string> = {}) => stillroom.call("PUT", `/api/plan-lines/${id}`, { body, headers });
    const made = await write(line);
    expect([made.statusCode, made.headers.location]).toEqual([201, `/api/plan-lines/${id}`]);
    expect(made.json()).toEqual({ id, ...line, title: "Soup", way: "cook", uses: [] });
    expect((await write({ ...line })).statusCode).toBe(200);
    expect((await write({ ...line, batches: 3 })).statusCode).toBe(428);
    expect((await write({ ...line, batches: 3 }, { "if-match": String(made.headers.etag) })).json()).toMatchObject({ batches: 3 });
    const ids = async (question: string) => (await stillroom.call("GET", `/api/plan-lines${question}`)).json<{ id: string }[]>().map((one) => one.id);
    expect([await ids("?week=2027-W31"), await ids("?week=2027-W32"), await ids("")]).toEqual([[id], [], [id]]);
    expect((await stillroom.call("DELETE", `/api/plan-lines/${id}`)).statusCode).toBe(204);
    expect((await stillroom.call("GET", `/api/plan-lines/${id}`)).statusCode).toBe(404);
  });

  it.each([
    ["week 54", { week: "2027-W54" }, "week"],
    ["week 53 of a year of 52", { week: "2027-W53" }, "week"],
    ["an unknown recipe", { recipeId: randomUUID() }, "recipeId"],
    ["no batches", { batches: 0 }, "batches"],
  ])("with %s is refused", async (_what, fault, path) => {
    const refused = await stillroom.call("PUT", `/api/plan-lines/${randomUUID()}`, { body: { week: "2027-W31", recipeId: soup, batches: 1, ...fault } });
    expect([refused.statusCode, badFields(refused)]).toEqual([400, [path]]);
  });
});
