/** The season's plan through the interface: at once, in the background, kept, agreed, and once only. Gardens are invented; what is checked are sums. */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Calendar } from "#shared/contracts/calendar.ts";
import type { AgreedWeek, SeasonJob, SeasonPlanAnswer, StandingSeason } from "#shared/contracts/season-plan.ts";
import { badFields, putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
const beans = { title: "Frozen beans of the house", way: "freeze", makes: { amount: 4, unit: "bags" }, ingredients: [{ text: "1 kg French beans", crop: "french-bean" }], steps: [step("top", 20)], keeps: [{ place: "freezer", days: 240 }] };
let beansId = "";

function step(id: string, handsOnMin: number) {
  return { id, text: `Do it: ${id}.`, handsOnMin, handsOffMin: 0, needs: {}, after: [], loads: { holds: 1, of: 1 } };
}

beforeAll(async () => {
  // the solver's plans have tests of their own; here it is enough that one is looked for
  stillroom = await testApp({ seasonMs: 400 });
  await settle(stillroom, { eats: [{ crop: "french-bean", gramsPerWeek: 300 }] });
  const bedId = await putBed(stillroom);
  await putNew(stillroom, "sowings", { bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-20", rowM: 10 });
  await putNew(stillroom, "places", { name: "Chest", kind: "freezer", litres: 60 });
  const fresh = await putNew(stillroom, "places", { name: "Fridge", kind: "fridge" });
  const lot = await putNew(stillroom, "lots", { title: "Beans", crop: "french-bean", placeId: fresh, madeOn: "2027-07-26" });
  await putNew(stillroom, `lots/${lot}/movements`, { kind: "put", on: "2027-07-26", grams: 6000 });
  await putNew(stillroom, "supplies", { kind: "bag", name: "Bags", amount: 400, unit: "pieces" });
  beansId = await putNew(stillroom, "recipes", beans);
});
afterAll(() => stillroom.close());

const WEEK = "2027-W30";
const plan = (body: unknown, headers: Record<string, string> = {}) => stillroom.call("POST", "/api/season/plan", { body, headers });
const agreedOf = async (week = WEEK): Promise<AgreedWeek> => (await stillroom.call("GET", `/api/season/weeks/${week}/agreed`)).json<AgreedWeek>();
const agree = (lines: unknown[], more: object = {}, week = WEEK) => stillroom.call("PUT", `/api/season/weeks/${week}/agreed`, { body: { lines, ...more } });
const cropLeft = async (week = WEEK): Promise<number> => (await agreedOf(week)).limits.find(({ id }) => id === "french-bean")?.left ?? -1;

describe("a season planned at once", () => {
  it("accounts for every gram of a week, loses no more than the rule, and stands afterwards in the calendar", async () => {
    const answer = await plan({ from: WEEK, weeks: 8 });
    expect(answer.statusCode, answer.body).toBe(200);
    const season = answer.json<SeasonPlanAnswer>();
    expect(season.weeks).toHaveLength(8);
    expect(season.lostGrams).toBeLessThanOrEqual(season.byRule.lostGrams + 1);
    const lines = season.weeks.flatMap((week) => week.lines);
    expect(lines.length).toBeGreaterThan(0);
    for (const { handsOnMin, handsOnMostMin } of season.weeks) expect(handsOnMin).toBeLessThanOrEqual(handsOnMostMin);
    for (const { usedLitres } of season.freezer.weeks) expect(usedLitres).toBeLessThanOrEqual(60.05);
    const used = lines.reduce((sum, { uses }) => sum + uses.reduce((all, { crop, grams }) => all + (crop === "french-bean" ? grams : 0), 0), 0);
    const [eaten, lost, picked] = [season.weeks.reduce((sum, week) => sum + week.freshGrams, 0), season.lostGrams, season.pickedGrams];
    expect(used + eaten + lost).toBeLessThanOrEqual(picked + 1);
    expect(season.courses.map(({ id }) => id)).toEqual(["usual", "poor", "good"]);
    expect(season.courses.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 1);

    const standing = (await stillroom.call("GET", "/api/season/plan")).json<StandingSeason>();
    expect(standing).toMatchObject({ upToDate: true, plan: { from: WEEK, lostGrams: season.lostGrams } });
    const calendar = (await stillroom.call("GET", `/api/calendar?from=${WEEK}&weeks=8`)).json<Calendar>();
    expect(calendar.seasonPlan).toMatchObject({ from: WEEK, weeks: 8, upToDate: true });
    for (const [i, week] of calendar.weeks.entries()) {
      const proposed = season.weeks[i]?.lines.map(({ recipeId, batches }) => ({ recipeId, batches })) ?? [];
      expect(week.pairings.filter(({ planned }) => planned).map(({ recipeId, batches }) => ({ recipeId, batches }))).toEqual(proposed);
      expect(week.cookDay).toEqual((season.weeks[i]?.lines ?? []).filter(({ way }) => way !== "give").map(({ recipeId, batches }) => ({ recipeId, batches })));
    }
  });

  it("refuses what lies behind and what is no number of weeks, and answers an empty garden plainly", async () => {
    expect(badFields(await plan({ from: "2027-W29", weeks: 4 }))).toEqual(["from"]);
    expect(badFields(await plan({ from: WEEK, weeks: 0, more: 1 })).sort()).toEqual(["more", "weeks"]);
    const empty = await stillroom.as();
    const answer = (await empty.call("POST", "/api/season/plan", { body: { from: WEEK, weeks: 3 } })).json<SeasonPlanAnswer>();
    expect(answer).toMatchObject({ pickedGrams: 0, lostGrams: 0 });
    expect(answer.headline).toContain("nothing to plan");
    expect(answer.weeks.flatMap(({ lines }) => lines)).toEqual([]);
  });
});

describe("a season planned in the background", () => {
  it("answers with an address to ask at, shows a plan from the start, and ends when it is told to", async () => {
    const answer = await plan({ from: WEEK, weeks: 8 }, { prefer: "respond-async" });
    expect(answer.statusCode).toBe(202);
    const address = String(answer.headers.location);
    expect(answer.json<SeasonJob>().plan.weeks).toHaveLength(8);
    expect((await stillroom.call("DELETE", address)).statusCode).toBe(204);
    let job = (await stillroom.call("GET", address)).json<SeasonJob>();
    for (let asked = 0; asked < 100 && job.state !== "cancelled" && job.state !== "done"; asked += 1) {
      await new Promise((resolve) => setTimeout(resolve, 50));
      job = (await stillroom.call("GET", address)).json<SeasonJob>();
    }
    expect(["cancelled", "done"]).toContain(job.state);
    const theirs = await stillroom.as();
    expect((await theirs.call("GET", address)).statusCode).toBe(404);
    expect((await stillroom.call("GET", `/api/season/jobs/${randomUUID()}`)).statusCode).toBe(404);
  });
});

describe("what is agreed", () => {
  it("is given out once, however many press at once, and comes back when it is taken back", async () => {
    const before = await cropLeft();
    expect(before).toBeGreaterThanOrEqual(6000);
    const most = Math.floor(before / 1000);
    const presses = Array.from({ length: 200 }, () => ({ id: randomUUID(), recipeId: beansId, batches: 1 }));
    const other = await stillroom.as(stillroom.householdId);
    const answers = await Promise.all(presses.map((line, i) => (i % 2 === 0 ? stillroom : other).call("PUT", `/api/season/weeks/${WEEK}/agreed`, { body: { lines: [line] } })));
    const taken = answers.filter(({ statusCode }) => statusCode === 200);
    expect(taken).toHaveLength(most);
    const refused = answers.filter(({ statusCode }) => statusCode === 409);
    expect(refused).toHaveLength(200 - most);
    expect(refused[0]?.json<{ left: { grams: number } }>().left.grams).toBe(before - most * 1000);
    const week = await agreedOf();
    expect(week.lines).toHaveLength(most);
    expect(week.limits.find(({ id }) => id === "french-bean")).toMatchObject({ there: before, reserved: most * 1000, left: before - most * 1000 });
    expect(week.limits.find(({ id }) => id === "bag")).toMatchObject({ there: 400, reserved: most * 4, left: 400 - most * 4 });
    // the same press again has no second effect
    const mine = presses[answers.findIndex(({ statusCode }) => statusCode === 200)];
    expect((await agree([mine])).statusCode).toBe(200);
    expect((await agreedOf()).lines).toHaveLength(most);
    expect((await stillroom.call("DELETE", `/api/season/weeks/${WEEK}/agreed`)).statusCode).toBe(204);
    expect(await cropLeft()).toBe(before);
  });

  it("is kept by planning anew, bought where that is said, and never put where there is no room", async () => {
    const id = randomUUID();
    expect((await agree([{ id, recipeId: beansId, batches: 2 }])).statusCode).toBe(200);
    const season = (await plan({ from: WEEK, weeks: 4 })).json<SeasonPlanAnswer>();
    const line = season.weeks[0]?.lines.find(({ recipeId }) => recipeId === beansId);
    expect(line?.agreedIds).toEqual([id]);
    expect(line?.batches).toBeGreaterThanOrEqual(2);
    const more = { id: randomUUID(), recipeId: beansId, batches: 40 };
    const refused = await agree([more]);
    expect([refused.statusCode, badFields(refused)[0]]).toEqual([409, "lines.0"]);
    // a single way is held to the same: 40 more batches neither as a new line nor as another number of one
    const alone = (batches: number, lineId: string = randomUUID(), headers: Record<string, string> = {}) => stillroom.call("PUT", `/api/plan-lines/${lineId}`, { body: { week: WEEK, recipeId: beansId, batches }, headers });
    const left = await cropLeft();
    const beyond = await alone(40);
    expect([beyond.statusCode, badFields(beyond)[0], beyond.json<{ left: { grams: number } }>().left.grams]).toEqual([409, "batches", left]);
    const etag = String((await stillroom.call("GET", `/api/plan-lines/${id}`)).headers.etag);
    expect((await alone(42, id, { "if-match": etag })).statusCode).toBe(409);
    expect(await cropLeft()).toBe(left);
    // 40 batches of 1.2 l do not fit beside 2 in 60 l, whatever is bought: at 1.2 l a kilogram
    expect((await agree([{ ...more, batches: 49 }], { buyMissing: true })).statusCode).toBe(409);
    expect((await agree([more], { buyMissing: true })).statusCode).toBe(200);
    expect((await agree([{ id, recipeId: beansId, batches: 3 }])).statusCode).toBe(409);
    expect(badFields(await agree([{ id: randomUUID(), recipeId: randomUUID(), batches: 1 }]))).toEqual(["lines.0.recipeId"]);
    expect(badFields(await agree([{ id: randomUUID(), recipeId: beansId, batches: 1 }], {}, "2027-W28"))).toEqual(["week"]);
  });
});
