import { randomUUID } from "node:crypto";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { Calendar } from "#shared/contracts/calendar.ts";
import { badFields, putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let bedId: string;
let beans: string;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom, { eats: [{ crop: "french-bean", gramsPerWeek: 500 }] });
  bedId = await putBed(stillroom);
  beans = await putNew(stillroom, "sowings", { bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-20", rowM: 40 });
});
afterAll(() => stillroom.close());

const calendar = async (question = "", of: TestApp = stillroom) => {
  const answer = await of.call("GET", `/api/calendar${question}`);
  if (answer.statusCode !== 200) throw new Error(answer.body);
  return answer.json<Calendar>();
};

describe("the calendar", () => {
  it("has the weeks asked for, Monday to Sunday (ISO 8601), and the year of today when nothing is asked", async () => {
    const asked = await calendar("?from=2027-W14&weeks=30");
    expect(asked.weeks).toHaveLength(30);
    expect(asked.weeks[0]).toMatchObject({ week: "2027-W14", starts: "2027-04-05", ends: "2027-04-11" });
    expect(asked.weeks[29]).toMatchObject({ week: "2027-W43", starts: "2027-10-25", ends: "2027-10-31" });
    const year = await calendar();
    expect([year.weeks.length, year.weeks[0]?.week, year.weeks.at(-1)?.week]).toEqual([52, "2027-W01", "2027-W52"]);
    // 2026 is a year of 53 weeks (it begins on a Thursday)
    const long = await calendar("?asOf=2026-06-01");
    expect([long.weeks.length, long.weeks.at(-1)?.week]).toEqual([53, "2026-W53"]);
  });

  it.each([
    ["from=2027-W54", "from"],
    ["from=2027-W53", "from"],
    ["from=2027-W00", "from"],
    ["from=2027-31", "from"],
    ["weeks=0", "weeks"],
    ["weeks=61", "weeks"],
    ["weeks=many", "weeks"],
    ["asOf=2027-04-31", "asOf"],
    ["until=2027-W40", "until"],
  ])("refuses ?%s and names it", async (question, path) => {
    const refused = await stillroom.call("GET", `/api/calendar?${question}`);
    expect([refused.statusCode, badFields(refused)]).toEqual([400, [path]]);
  });

  it("shows a sowing that was just written down, its surplus over what is eaten, and what can be done with it", async () => {
    const { weeks, rows } = await calendar("?from=2027-W30&weeks=12");
    expect(rows.find((row) => row.crop === "french-bean")?.sowings.map((sowing) => sowing.id)).toContain(beans);
    const gluts = weeks.filter((week) => week.glut);
    expect(gluts.length).toBeGreaterThan(0);
    for (const week of gluts) {
      expect(week.crops.find((crop) => crop.crop === "french-bean")?.grams.likely).toBeGreaterThan(500);
      expect(week.pairings.map((pairing) => pairing.way)).toContain("freeze");
    }
    for (const { grams } of weeks) expect(grams.low <= grams.likely && grams.likely <= grams.high).toBe(true);
  });

  it("takes off the surplus what a chosen way uses", async () => {
    const before = (await calendar("?from=2027-W30&weeks=12")).weeks.find((week) => week.glut);
    const freeze = before?.pairings.find((pairing) => pairing.way === "freeze" && pairing.uses.some((use) => use.crop === "french-bean"));
    if (!before || !freeze) throw new Error("a glut of beans can be frozen");
    const line = await putNew(stillroom, "plan-lines", { week: before.week, recipeId: freeze.recipeId, batches: 1 });
    const after = (await calendar("?from=2027-W30&weeks=12")).weeks.find((week) => week.week === before.week);
    expect(after?.planned.map((one) => one.id)).toEqual([line]);
    expect(after?.surplusGrams).toBeLessThan(before.surplusGrams);
    await stillroom.call("DELETE", `/api/plan-lines/${line}`);
    expect((await calendar("?from=2027-W30&weeks=12")).weeks.find((week) => week.week === before.week)).toEqual(before);
  });

  it("says what is missing before it can say more", async () => {
    const fresh = await stillroom.as();
    expect((await calendar("", fresh)).missing).toEqual(["place", "weather", "beds", "sowings"]);
  });
});

describe("an answer as of a day", () => {
  it("is not changed by anything dated later, whenever it was typed in", async () => {
    const fresh = await stillroom.as();
    await settle(fresh);
    const bed = await putBed(fresh);
    const sowing = await putNew(fresh, "sowings", { bedId: bed, crop: "french-bean", method: "direct", sownOn: "2027-05-20", rowM: 40 });
    const addresses = ["/api/calendar?asOf=2027-06-15", "/api/today?asOf=2027-06-15", "/api/sowings?asOf=2027-06-15", `/api/sowings/${sowing}/forecast?asOf=2027-06-15`];
    const answers = () => Promise.all(addresses.map(async (address) => (await fresh.call("GET", address)).body));
    const before = await answers();
    const now = (await fresh.call("GET", `/api/sowings/${sowing}/forecast`)).body;
    await fresh.call("PUT", "/api/weather/days", { body: `date,tmax_c,tmin_c\n${days("2027-06-16", 40).map((day) => `${day},35.0,25.0`).join("\n")}\n`, headers: { "content-type": "text/csv" } });
    for (const [stage, seenOn] of [["emerged", "2027-06-16"], ["first-pick", "2027-07-10"], ["finished", "2027-07-20"]]) await putNew(fresh, `sowings/${sowing}/sightings`, { stage, seenOn });
    await putNew(fresh, "picks", { sowingId: sowing, pickedOn: "2027-07-10", grams: 9_000 });
    expect(await answers()).toEqual(before);
    // and the same facts do change the answer of today
    expect((await fresh.call("GET", `/api/sowings/${sowing}/forecast`)).body).not.toBe(now);
    // facts of the very day count
    await putNew(fresh, `sowings/${sowing}/sightings`, { stage: "emerged", seenOn: "2027-06-15" });
    expect((await answers())[3]).not.toBe(before[3]);
  });

  it("takes a sowing dated later as planned", async () => {
    const fresh = await stillroom.as();
    await settle(fresh);
    const sowing = await putNew(fresh, "sowings", { bedId: await putBed(fresh), crop: "pea", method: "direct", sownOn: "2027-03-20", rowM: 5 });
    expect((await calendar("?asOf=2027-01-10&from=2027-W01&weeks=52", fresh)).rows.flatMap((row) => row.sowings.map((one) => one.id))).toEqual([sowing]);
  });
});

describe("what a reading costs", () => {
  it("is the same number of questions to the database for one sowing and for many", async () => {
    const count = async (address: string): Promise<number> => {
      await stillroom.call("GET", address);
      const asked = vi.spyOn(pg.Client.prototype, "query");
      await stillroom.call("GET", address);
      const { length } = asked.mock.calls;
      asked.mockRestore();
      return length;
    };
    const addresses = ["/api/calendar", "/api/today", "/api/sowings", "/api/beds", "/api/recipes", "/api/cook-days", "/api/plan-lines", "/api/picks"];
    const few = [];
    for (const address of addresses) few.push([address, await count(address)]);
    expect(few.every(([, n]) => (n as number) > 3)).toBe(true);
    for (let i = 0; i < 12; i++) {
      const bed = await putBed(stillroom);
      const sowing = await putNew(stillroom, "sowings", { bedId: bed, crop: i % 2 ? "pea" : "carrot", method: "direct", sownOn: "2027-04-10", rowM: 3 });
      await putNew(stillroom, `sowings/${sowing}/sightings`, { stage: "emerged", seenOn: "2027-04-28" });
      await putNew(stillroom, "picks", { sowingId: sowing, pickedOn: "2027-07-10", grams: 100 });
      await stillroom.call("PUT", `/api/cook-days/${randomUUID()}`, { body: { on: "2027-08-01", startsAt: "10:00", cooks: 1, kitchen: { ovens: [], burners: 2 }, dishes: [] } });
    }
    const many = [];
    for (const address of addresses) many.push([address, await count(address)]);
    expect(many).toEqual(few);
  });
});

function days(from: string, count: number): string[] {
  return Array.from({ length: count }, (_, i) => new Date(Date.parse(from) + i * 86_400_000).toISOString().slice(0, 10));
}
