/** A cook day lived through at the counter: agreed on, begun, marked, late, planned anew, seen the same on a second phone and after the service was started anew. */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { buildApp } from "#server/app.ts";
import type { Counter } from "#shared/contracts/counter.ts";
import type { Timetable } from "#shared/contracts/cook-days.ts";
import type { DayPlan } from "#shared/contracts/day-plans.ts";
import type { Timer } from "#shared/contracts/timers.ts";
import { badFields, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";
import { handClock } from "#tests/support/hand-clock.ts";

/** Sunday 1 August 2027, 10:00 in Amsterdam (UTC+2 in summer). */
const TEN = "2027-08-01T08:00:00.000Z";
const clock = handClock(TEN);
let stillroom: TestApp;
let bread: string;
let soup: string;
beforeAll(async () => {
  stillroom = await testApp({ clock });
  await settle(stillroom);
  bread = await putNew(stillroom, "recipes", {
    ...dish("Bread"),
    steps: [step("mix", 10), step("rise", 0, { handsOffMin: 60, after: ["mix"] }), step("bake", 2, { handsOffMin: 40, needs: { oven: { c: 230, trays: 1 } }, after: ["rise"], maxWaitMin: 10 })],
  });
  soup = await putNew(stillroom, "recipes", { ...dish("Soup"), ingredients: [{ text: "1 kg carrots" }, { text: "salt" }], steps: [step("cut", 20), step("simmer", 5, { handsOffMin: 30, needs: { burners: 1, pots: 1 }, after: ["cut"] })] });
});
afterAll(() => stillroom.close());
beforeEach(() => clock.set(TEN));

const dish = (title: string) => ({ title, way: "cook", makes: { amount: 4, unit: "portions" }, ingredients: [], keeps: [{ place: "freezer", days: 90 }] });
const step = (id: string, handsOnMin: number, more: object = {}) => ({ id, text: `Do ${id}`, handsOnMin, handsOffMin: 0, needs: {}, after: [], ...more });
const kitchen = { ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4, pots: 2, sinks: 1 };
const day = (more: object = {}) => ({ on: "2027-08-01", startsAt: "10:00", cooks: 1, kitchen, dishes: [{ recipeId: bread, batches: 1 }, { recipeId: soup, batches: 1 }], ...more });
const counter = async (id: string, on = stillroom) => (await on.call("GET", `/api/cook-days/${id}/counter`)).json<Counter>();
const put = (id: string, what: "plans" | "marks" | "timers", body: unknown, its: string = randomUUID(), headers: Record<string, string> = {}) => stillroom.call("PUT", `/api/cook-days/${id}/${what}/${its}`, { body, headers });
const undo = (id: string, what: "plans" | "marks", its: string) => stillroom.call("DELETE", `/api/cook-days/${id}/${what}/${its}`);
const stepOf = (view: Counter, dish: string, id: string) => view.steps.find((one) => one.dish === dish && one.step === id) as Counter["steps"][number];

async function agreed(more: object = {}): Promise<string> {
  const id = await putNew(stillroom, "cook-days", day(more));
  const plan = await put(id, "plans", { kind: "agree" });
  expect(plan.statusCode, plan.body).toBe(201);
  return id;
}
async function begun(more: object = {}): Promise<string> {
  const id = await agreed(more);
  expect((await put(id, "marks", { kind: "begun" })).statusCode).toBe(201);
  return id;
}

describe("a timetable", () => {
  it("is agreed on as it is made, or as it was moved by hand once the referee has nothing against it", async () => {
    const id = await putNew(stillroom, "cook-days", day());
    expect((await counter(id)).state).toBe("draft");
    const made = (await stillroom.call("POST", `/api/cook-days/${id}/timetable`)).json<Timetable>();
    const steps = made.steps.map(({ dish: recipe, step: s, startMin, cook, oven, burner }) => ({ dish: recipe, step: s, startMin, cook, oven, burner }));
    // the soup's last step five minutes later is allowed: it may stand
    const later = steps.map((one) => (one.step === "simmer" ? { ...one, startMin: one.startMin + 5 } : one));
    const moved = await put(id, "plans", { kind: "agree", steps: later });
    expect(moved.statusCode, moved.body).toBe(201);
    expect(moved.json<DayPlan>().title).toBe("The timetable, moved by hand");
    // two things at once for one pair of hands, and a bake before its rise is over
    const wrong = await put(id, "plans", { kind: "agree", steps: steps.map((one) => (one.step === "bake" || one.step === "cut" ? { ...one, startMin: 20 } : one)) });
    expect(wrong.statusCode).toBe(409);
    expect(wrong.json<{ detail: string }>().detail).toMatch(/“Do bake” \(Bread\)/);
    expect(badFields(wrong).every((path) => path === "steps")).toBe(true);
    const now = await counter(id);
    expect(now.plan?.id).toBe(moved.json<DayPlan>().id);
    expect(stepOf(now, soup, "simmer").startMin).toBe((later.find((one) => one.step === "simmer") as { startMin: number }).startMin);
  });

  it("is stored once, is undone, and is asked for again when the day is changed", async () => {
    const id = await agreed();
    const planId = randomUUID();
    expect((await put(id, "plans", { kind: "agree" }, planId)).statusCode).toBe(201);
    expect((await put(id, "plans", { kind: "agree" }, planId)).statusCode).toBe(200);
    expect((await put(id, "plans", { kind: "from-now" }, planId)).statusCode).toBe(409);
    expect((await undo(id, "plans", planId)).statusCode).toBe(204);
    expect((await undo(id, "plans", planId)).statusCode).toBe(204);
    expect((await counter(id)).planCanBeUndone).toBe(false);
    const etag = String((await stillroom.call("GET", `/api/cook-days/${id}`)).headers.etag);
    expect((await stillroom.call("PUT", `/api/cook-days/${id}`, { body: day({ startsAt: "11:00" }), headers: { "if-match": etag } })).statusCode).toBe(200);
    expect((await counter(id)).stale).toBe(true);
    expect((await put(id, "marks", { kind: "begun" })).statusCode).toBe(409);
  });

  it("says in words why a day cannot be", async () => {
    const id = await putNew(stillroom, "cook-days", day({ endsBy: "10:30" }));
    const answer = await put(id, "plans", { kind: "agree" });
    expect(answer.statusCode).toBe(409);
    expect(answer.json<{ detail: string }>().detail).toMatch(/cannot be had/);
  });
});

describe("a day that asks too much", () => {
  const bake = (c: number) => putNew(stillroom, "recipes", { ...dish(`Baked at ${c}`), steps: [step("bake", 5, { handsOffMin: 30, needs: { oven: { c, trays: 1 } } })] });

  it("of three heats in one oven bakes them one after another, with the oven changed between", async () => {
    const dishes = [];
    for (const c of [150, 180, 220]) dishes.push({ recipeId: await bake(c), batches: 1 });
    const plan = (await put(await putNew(stillroom, "cook-days", day({ dishes })), "plans", { kind: "agree" })).json<DayPlan>();
    const starts = plan.steps.map(({ startMin }) => startMin).sort((a, b) => a - b);
    // preheat 15, each 35 minutes in the oven, 10 to change its heat
    expect(starts).toEqual([15, 60, 105]);
  });

  it("of four hundred loads is answered with what brings it down, and planning goes on for others", async () => {
    const buns = await putNew(stillroom, "recipes", { ...dish("Buns"), steps: [step("bake", 1, { loads: { holds: 1, of: 400 } })] });
    const answer = await put(await putNew(stillroom, "cook-days", day({ dishes: [{ recipeId: buns, batches: 1 }] })), "plans", { kind: "agree" });
    expect([answer.statusCode, answer.json<{ detail: string }>().detail]).toEqual([409, expect.stringContaining("400 steps")]);
  });

  it("plans washing up where it is wanted, also of a dish that comes under way", async () => {
    const id = await begun({ kitchen: { ...kitchen, washUpMin: 8 }, dishes: [{ recipeId: soup, batches: 1 }] });
    expect((await counter(id)).steps.map((one) => one.text)).toContain("Wash up after Soup");
    const more = (await put(id, "plans", { kind: "dish-more", recipeId: bread, batches: 1 })).json<DayPlan>();
    expect(more.steps.map((one) => one.text)).toContain("Wash up after Bread");
  });
});

describe("a day under way", () => {
  it("goes through start, tick, reload, a second phone, late, a restart during a ring, and its end", async () => {
    const id = await begun();
    expect((await counter(id)).headline).toBe("Next: Do mix.");
    await put(id, "marks", { kind: "started", dish: bread, step: "mix" });
    const tick = await put(id, "marks", { kind: "ticked", dish: soup, line: 0 });
    expect(tick.statusCode).toBe(201);
    const timerId = randomUUID();
    await put(id, "timers", { label: "Look at the dough", pot: "big bowl", minutes: 30 }, timerId);

    clock.pass(10);
    await put(id, "marks", { kind: "done", dish: bread, step: "mix" });
    // reload and second phone: another service on the same database, as after a restart
    const second = await buildApp({ db: stillroom.test.db, clock, mode: "test", version: "0.0.0", log: "none", pages: null, memberOf: () => ({ householdId: stillroom.householdId }) });
    const elsewhere = async () => (await second.inject({ method: "GET", url: `/api/cook-days/${id}/counter`, headers: { host: "localhost" } })).json<Counter>();
    expect(await elsewhere()).toEqual(await counter(id));
    const view = await counter(id);
    expect(stepOf(view, bread, "mix").state).toBe("done");
    // a rest begins by itself when what it follows is done
    expect(stepOf(view, bread, "rise")).toMatchObject({ state: "minding itself", startedAt: "2027-08-01T08:10:00.000Z" });
    expect(view.dishes.find((one) => one.dish === soup)?.ingredients).toMatchObject([{ line: 0, tickedAt: TEN }, { line: 1 }]);
    expect(view.dishes.find((one) => one.dish === soup)?.ingredients[1]).not.toHaveProperty("tickedAt");

    // twenty minutes late: what is done and running stays, each moved step is named
    const planId = randomUUID();
    const late = (await put(id, "plans", { kind: "late", byMin: 20 }, planId)).json<DayPlan>();
    expect(late.title).toMatch(/^20\smin late$/);
    const after = await counter(id);
    expect(stepOf(after, bread, "mix").startedAt).toBe(TEN);
    expect(stepOf(after, bread, "rise").startedAt).toBe("2027-08-01T08:10:00.000Z");
    expect(stepOf(after, soup, "cut").startMin).toBeGreaterThanOrEqual(30);
    expect(late.moved.map((one) => one.text)).toContainEqual(expect.stringMatching(/“Do cut” \(Soup\) moves from 10:10 to 10:30\./));
    expect(late.passed).toEqual([]);
    // sent twice it is late once
    expect((await put(id, "plans", { kind: "late", byMin: 20 }, planId)).statusCode).toBe(200);
    expect((await counter(id)).plan?.endMin).toBe(after.plan?.endMin);

    // the timer rings while the service is started anew; it is heard once, on either
    clock.pass(22);
    const ringing = (await elsewhere()).timers;
    expect(ringing).toMatchObject([{ id: timerId, state: "ringing", endsAt: "2027-08-01T08:30:00.000Z", endsAtClock: "10:30" }]);
    const heard = await put(id, "timers", { label: "Look at the dough", pot: "big bowl", minutes: 30, heard: true }, timerId, { "if-match": (ringing[0] as Timer).etag });
    expect(heard.json<Timer>()).toMatchObject({ state: "heard", endsAt: "2027-08-01T08:30:00.000Z" });
    expect((await elsewhere()).timers[0]?.state).toBe("heard");
    await second.close();

    for (const [recipe, id2] of [[soup, "cut"], [soup, "simmer"], [bread, "bake"]] as const) {
      clock.pass(45);
      const done = await put(id, "marks", { kind: "done", dish: recipe, step: id2 });
      expect(done.statusCode, done.body).toBe(201);
    }
    expect((await counter(id)).headline).toBe("Everything is done.");
    expect((await put(id, "marks", { kind: "finished" })).statusCode).toBe(201);
    expect((await counter(id)).state).toBe("finished");
    expect((await put(id, "plans", { kind: "from-now" })).statusCode).toBe(409);
  });

  it("never pretends that a limit which is gone was kept", async () => {
    const id = await begun();
    await put(id, "marks", { kind: "done", dish: bread, step: "mix", at: "2027-08-01T08:00:00Z" });
    // the rise ends at 11:00 and the loaf may wait ten minutes; at 11:40 that is half an hour gone
    clock.set("2027-08-01T09:40:00Z");
    await put(id, "marks", { kind: "done", dish: bread, step: "rise", at: "2027-08-01T09:00:00Z" });
    const plan = (await put(id, "plans", { kind: "from-now" })).json<DayPlan>();
    expect(plan.passed.join(" ")).toMatch(/“Do bake” \(Bread\)/);
    expect(plan.steps.find((one) => one.step === "bake")?.startMin).toBeGreaterThanOrEqual(100);
    expect((await counter(id)).plan?.passed).toEqual(plan.passed);
  });

  it("leaves a dish out and takes it in again, and goes on with one dish more", async () => {
    const id = await begun();
    await put(id, "marks", { kind: "done", dish: soup, step: "cut" });
    const skip = (await put(id, "plans", { kind: "skip", dish: soup })).json<DayPlan>();
    expect(skip.title).toBe("Without Soup");
    let view = await counter(id);
    expect(view.skipped).toEqual([{ dish: soup, step: "simmer", text: "Do simmer" }]);
    // what was done of it stays
    expect(stepOf(view, soup, "cut").state).toBe("done");
    expect((await undo(id, "plans", skip.id)).statusCode).toBe(204);
    expect(stepOf(await counter(id), soup, "simmer")).toBeDefined();

    const beans = await putNew(stillroom, "recipes", { ...dish("Beans"), steps: [step("trim", 15)] });
    const more = await put(id, "plans", { kind: "dish-more", recipeId: beans, batches: 1 });
    expect(more.json<DayPlan>().title, more.body).toBe("With Beans as well");
    view = await counter(id);
    expect(view.dishes.map(({ letter, title }) => `${letter} ${title}`)).toEqual(["A Bread", "B Soup", "C Beans"]);
    expect(badFields(await put(id, "plans", { kind: "dish-more", recipeId: beans, batches: 1 }))).toEqual(["recipeId"]);
    expect((await undo(id, "plans", more.json<DayPlan>().id)).statusCode).toBe(204);
    expect((await counter(id)).dishes).toHaveLength(2);
  });

  it("bakes elsewhere or not at all when the oven breaks", async () => {
    const id = await begun();
    const broken = await put(id, "plans", { kind: "oven-broken", oven: 1 });
    // the only oven: the loaf cannot be baked any more, and that is said, not planned away
    expect(broken.statusCode).toBe(409);
    expect(broken.json<{ detail: string }>().detail).toMatch(/oven/);
    await put(id, "plans", { kind: "skip", dish: bread });
    expect((await put(id, "plans", { kind: "oven-broken", oven: 1 })).statusCode).toBe(201);
    expect(badFields(await put(id, "plans", { kind: "oven-broken", oven: 2 }))).toEqual(["oven"]);
  });

  it("is not changed or dropped behind the cooks: a dish deleted under way is refused with what to do, and nothing is lost", async () => {
    const id = await begun();
    const etag = String((await stillroom.call("GET", `/api/cook-days/${id}`)).headers.etag);
    const without = await stillroom.call("PUT", `/api/cook-days/${id}`, { body: day({ dishes: [{ recipeId: soup, batches: 1 }] }), headers: { "if-match": etag } });
    expect([without.statusCode, without.json<{ detail: string }>().detail]).toEqual([409, expect.stringMatching(/leave a dish out/)]);
    expect((await stillroom.call("PUT", `/api/cook-days/${id}`, { body: day({ title: "Sunday" }), headers: { "if-match": etag } })).statusCode).toBe(200);
    expect((await stillroom.call("DELETE", `/api/cook-days/${id}`)).statusCode).toBe(409);
    expect((await stillroom.call("DELETE", `/api/recipes/${bread}`)).statusCode).toBe(409);
    const view = await counter(id);
    expect([view.state, view.dishes.length]).toEqual(["under way", 2]);
    // undone, it may go
    expect((await undo(id, "marks", view.begunMark as string)).statusCode).toBe(204);
    expect((await stillroom.call("DELETE", `/api/cook-days/${id}`)).statusCode).toBe(204);
  });

  it("keeps its steps from being marked twice, before their time or ahead of it, and undoes what was wrong", async () => {
    const id = await begun();
    const mark = randomUUID();
    expect((await put(id, "marks", { kind: "started", dish: bread, step: "mix" }, mark)).statusCode).toBe(201);
    expect((await put(id, "marks", { kind: "started", dish: bread, step: "mix" }, mark)).statusCode).toBe(200);
    const twice = await put(id, "marks", { kind: "started", dish: bread, step: "mix" });
    expect([twice.statusCode, twice.json<{ detail: string }>().detail]).toEqual([409, "“Do mix” was begun at 10:00 already."]);
    expect(badFields(await put(id, "marks", { kind: "done", dish: bread, step: "knead" }))).toEqual(["step"]);
    expect(badFields(await put(id, "marks", { kind: "done", dish: bread, step: "mix", at: "2027-08-01T09:00:00Z" }))).toEqual(["at"]);
    expect((await undo(id, "marks", mark)).statusCode).toBe(204);
    expect((await undo(id, "marks", mark)).statusCode).toBe(204);
    expect(stepOf(await counter(id), bread, "mix").state).toBe("ready");
    expect((await undo(id, "marks", randomUUID())).statusCode).toBe(404);
  });

  it("begun at another time keeps what hangs on the clock on the clock", async () => {
    // away 11:00 to 11:30; begun at 10:40, that is minute 20 to 50
    const id = await agreed({ unavailable: [{ what: "cook", fromMin: 60, toMin: 90, why: "out" }], endsBy: "14:00" });
    clock.set("2027-08-01T08:40:30Z");
    await put(id, "marks", { kind: "begun" });
    const view = await counter(id);
    expect(view.zeroAt).toBe("2027-08-01T08:40:00.000Z");
    const plan = (await put(id, "plans", { kind: "from-now" })).json<DayPlan>();
    const busy = plan.steps.filter((one) => one.handsOnMin > 0 && one.startMin < 50 && one.startMin + one.handsOnMin > 20);
    expect(busy).toEqual([]);
    expect(plan.steps.length).toBe(5);
  });
});
