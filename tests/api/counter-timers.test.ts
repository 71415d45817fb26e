/**
 * Timers are instants. Nights on which the clocks change in the European Union: 28 March 2027 at 02:00 forward, 31 October 2027 at 03:00 back, both at 01:00 UTC
 * (Directive 2000/84/EC, articles 2 and 3: last Sundays of March and October).
 */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Counter } from "#shared/contracts/counter.ts";
import type { DayPlan } from "#shared/contracts/day-plans.ts";
import type { Timer } from "#shared/contracts/timers.ts";
import { badFields, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";
import { handClock } from "#tests/support/hand-clock.ts";

const clock = handClock("2027-03-27T20:00:00Z");
let stillroom: TestApp;
let recipe: string;
beforeAll(async () => {
  stillroom = await testApp({ clock });
  await settle(stillroom);
  recipe = await putNew(stillroom, "recipes", { title: "Stock", way: "cook", makes: { amount: 4, unit: "portions" }, ingredients: [], keeps: [], steps: [{ id: "simmer", text: "Simmer", handsOnMin: 10, handsOffMin: 240, needs: { burners: 1 }, after: [] }] });
});
afterAll(() => stillroom.close());

const night = (on: string, startsAt = "22:00") => putNew(stillroom, "cook-days", { on, startsAt, cooks: 1, kitchen: { ovens: [], burners: 1 }, dishes: [{ recipeId: recipe, batches: 1 }] });
const put = (day: string, body: object, id: string = randomUUID(), etag?: string) => stillroom.call("PUT", `/api/cook-days/${day}/timers/${id}`, { body: { label: "Skim it", ...body }, ...(etag === undefined ? {} : { headers: { "if-match": etag } }) });
const at = (instant: string) => new Date(instant).toISOString();

describe("a timer", () => {
  it("set in minutes rings so many minutes later, whatever the clock on the wall does that night", async () => {
    clock.set("2027-03-28T00:30:00Z"); // 01:30 in Amsterdam
    const spring = (await put(await night("2027-03-27"), { minutes: 60 })).json<Timer>();
    expect([spring.endsAt, spring.endsAtClock]).toEqual([at("2027-03-28T01:30:00Z"), "03:30"]);
    clock.set("2027-10-31T00:30:00Z"); // 02:30, for the first time
    const autumn = (await put(await night("2027-10-30"), { minutes: 60 })).json<Timer>();
    expect([autumn.endsAt, autumn.endsAtClock]).toEqual([at("2027-10-31T01:30:00Z"), "02:30"]);
  });

  it("set by the clock takes the next such time: the first of two, then the second, and none that the night leaves out", async () => {
    const day = await night("2027-10-30");
    clock.set("2027-10-30T22:00:00Z");
    expect((await put(day, { clock: "02:30" })).json<Timer>().endsAt).toBe(at("2027-10-31T00:30:00Z"));
    clock.set("2027-10-31T00:40:00Z");
    expect((await put(day, { clock: "02:30" })).json<Timer>().endsAt).toBe(at("2027-10-31T01:30:00Z"));
    clock.set("2027-10-31T01:40:00Z");
    expect((await put(day, { clock: "02:30" })).json<Timer>().endsAt).toBe(at("2027-11-01T01:30:00Z"));
    clock.set("2027-03-27T22:00:00Z");
    const gone = await put(await night("2027-03-27"), { clock: "02:30" });
    expect([gone.statusCode, badFields(gone), gone.json<{ detail: string }>().detail]).toEqual([400, ["clock"], expect.stringContaining("02:30 does not come that night")]);
  });

  it("in the past is answered plainly", async () => {
    clock.set("2027-07-26T12:00:00Z");
    const past = await put(await night("2027-07-26"), { endsAt: "2027-07-26T11:20:00Z" });
    expect([past.statusCode, badFields(past)]).toEqual([400, ["endsAt"]]);
    expect(past.json<{ detail: string }>().detail).toMatch(/that was 13:20, 40.min ago; it is 14:00 now/);
    for (const body of [{}, { minutes: 5, clock: "15:00" }, { minutes: 0 }]) expect(badFields(await put(await night("2027-07-26"), body))).toEqual(["minutes"]);
  });

  it("is set once, rings, is put off, heard and stopped; two phones that do the same do it once", async () => {
    clock.set("2027-07-26T12:00:00Z");
    const day = await night("2027-07-26");
    const id = randomUUID();
    const first = (await put(day, { minutes: 10 }, id)).json<Timer>();
    clock.pass(3);
    const again = await put(day, { minutes: 10 }, id);
    expect([again.statusCode, again.json<Timer>().endsAt]).toEqual([200, first.endsAt]);
    clock.pass(8);
    expect((await stillroom.call("GET", `/api/cook-days/${day}/timers/${id}`)).json<Timer>().state).toBe("ringing");
    const later = (await put(day, { endsAt: "2027-07-26T12:16:00Z" }, id, first.etag)).json<Timer>();
    expect([later.state, later.endsAt]).toEqual(["running", at("2027-07-26T12:16:00Z")]);
    expect((await put(day, { endsAt: later.endsAt, stopped: true }, id, first.etag)).statusCode).toBe(412);
    const stopped = { endsAt: later.endsAt, stopped: true };
    expect((await put(day, stopped, id, later.etag)).json<Timer>()).toMatchObject({ state: "stopped", stoppedAt: at("2027-07-26T12:11:00Z") });
    expect((await put(day, stopped, id)).statusCode).toBe(200);
    expect((await stillroom.call("GET", `/api/cook-days/${day}/counter`)).json<Counter>().timers).toEqual([]);
    expect((await stillroom.call("DELETE", `/api/cook-days/${day}/timers/${id}`)).statusCode).toBe(204);
    expect((await put(randomUUID(), { minutes: 1 })).statusCode).toBe(404);
  });
});

describe("a cook day over such a night", () => {
  it("counts elapsed minutes: what takes four hours from 23:00 ends at 04:10 in spring and at 02:10 in autumn", async () => {
    for (const [on, ten, ends] of [["2027-03-27", "2027-03-27T22:00:00Z", "2027-03-28T02:10:00Z"], ["2027-10-30", "2027-10-30T21:00:00Z", "2027-10-31T01:10:00Z"]] as const) {
      clock.set(ten);
      const day = await night(on, "23:00");
      const plan = await stillroom.call("PUT", `/api/cook-days/${day}/plans/${randomUUID()}`, { body: { kind: "agree" } });
      expect(plan.json<DayPlan>().endsAt).toBe(at(ends));
    }
  });
});
