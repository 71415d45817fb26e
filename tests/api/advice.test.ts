/** Advice over the wire: what comes from planning unchanged, what is refused. Dates and sizes are checked where they are reckoned. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BedAdvice, SowingAdvice, TrackRecord } from "#shared/contracts/advice.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import { badFields, putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let bedId: string;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
  bedId = await putBed(stillroom);
});
afterAll(() => stillroom.close());

const get = async <Body>(path: string): Promise<Body> => {
  const answer = await stillroom.call("GET", path);
  if (answer.statusCode !== 200) throw new Error(answer.body);
  return answer.json<Body>();
};

describe("frost dates", () => {
  it("are a span for spring and autumn, in words and days", async () => {
    const frost = await get<{ season: number; lastSpring: { low: string; likely: string; high: string }; text: string }>("/api/frost-dates?season=2028");
    expect(frost.season).toBe(2028);
    expect([frost.lastSpring.low, frost.lastSpring.likely, frost.lastSpring.high]).toEqual([frost.lastSpring.low, frost.lastSpring.likely, frost.lastSpring.high].sort());
    expect(frost.text).toMatch(/last frost of spring/);
  });
});

describe("sowing for the weeks in which a crop is wanted", () => {
  it("says days, metres and the first pick of each sowing", async () => {
    const advice = await get<SowingAdvice>("/api/sowing-advice?crop=french-bean&from=2028-W30&weeks=4&gramsPerWeek=1000");
    expect(advice.sowings).toHaveLength(2);
    for (const sowing of advice.sowings) expect(sowing.rowM).toBe(1.2);
    expect(advice.basis.length).toBeGreaterThan(0);
  });

  it.each([
    ["crop=no-such-crop&from=2028-W30&weeks=4&gramsPerWeek=1000", "crop"],
    ["crop=pea&from=2028-W54&weeks=4&gramsPerWeek=1000", "from"],
    ["crop=pea&from=2028-W30&weeks=0&gramsPerWeek=1000", "weeks"],
    ["crop=pea&from=2028-W30&weeks=4&gramsPerWeek=-1", "gramsPerWeek"],
    ["crop=pea&from=2028-W30&weeks=4&gramsPerWeek=9&cover=tent", "cover"],
  ])("refuses ?%s and names it", async (question, path) => {
    const refused = await stillroom.call("GET", `/api/sowing-advice?${question}`);
    expect([refused.statusCode, badFields(refused)]).toEqual([400, [path]]);
  });
});

describe("what still ripens in a bed", () => {
  it("comes surest first, with the room there is", async () => {
    const advice = await get<BedAdvice>(`/api/beds/${bedId}/advice?on=2027-08-05`);
    expect(advice.on).toBe("2027-08-05");
    expect(advice.sensible.map((one) => one.crop)).toContain("radish");
    expect(advice.sensible.map((one) => one.crop)).not.toContain("pumpkin");
    const chances = advice.sensible.map((one) => one.chanceOfPick);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
  });
  it("of a bed that is not there is 404", async () => {
    expect((await stillroom.call("GET", "/api/beds/3f8a1c1e-4a59-4a0e-9d57-2b1f6f0c9a11/advice")).statusCode).toBe(404);
  });
});

describe("the track record", () => {
  it("has a row for each sowing that was picked, and claims nothing under five", async () => {
    const sowingId = await putNew(stillroom, "sowings", { bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-10", rowM: 4 });
    await putNew(stillroom, "picks", { sowingId, pickedOn: "2027-07-20", grams: 400 });
    const track = await get<TrackRecord>("/api/track-record");
    expect(track.rows.map((row) => [row.sowingId, row.cameOn, row.atSowing.asOf, row.monthBefore?.asOf])).toEqual([[sowingId, "2027-07-20", "2027-05-10", "2027-06-20"]]);
    expect(track.text).toMatch(/^1 sowing has been .* nothing can be said/);
    expect((await get<TrackRecord>("/api/track-record?asOf=2027-07-19")).rows).toEqual([]);
  });
});

describe("what waits for the grower", () => {
  it("says when it is at its best and by when it must be out", async () => {
    const id = await putNew(stillroom, "sowings", { bedId, crop: "carrot", method: "direct", sownOn: "2027-05-01", rowM: 4 });
    const { forecast } = await get<Sowing>(`/api/sowings/${id}`);
    expect(forecast.waits).toBe(true);
    const { ready, bestFrom, bestUntil, outBy } = forecast.lift!;
    const likely = [ready, bestFrom, bestUntil, outBy].map((band) => band.likely);
    expect(likely).toEqual([...likely].sort());
  });
});
