import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Forecast, Sowing } from "#shared/contracts/sowings.ts";
import { badFields, putBed, putNew, settle, testApp, TODAY, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let bedId: string;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
  bedId = await putBed(stillroom);
});
afterAll(() => stillroom.close());

const beans = () => ({ bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-20", rowM: 6 });
const put = (id: string, body: unknown, headers: Record<string, string> = {}) => stillroom.call("PUT", `/api/sowings/${id}`, { body, headers });

describe("a sowing", () => {
  it("is made by its first PUT and answers with its forecast", async () => {
    const id = randomUUID();
    const made = await put(id, { ...beans(), variety: "climbing, purple", note: "from our own seed" });
    expect(made.statusCode, made.body).toBe(201);
    expect(made.headers.location).toBe(`/api/sowings/${id}`);
    const sowing = made.json<Sowing>();
    expect(sowing).toMatchObject({ id, ...beans(), variety: "climbing, purple", note: "from our own seed", sightings: [], pickedGrams: 0 });
    const { firstPick, lastPick, totalGrams, weeks, basis } = sowing.forecast;
    if (!firstPick || !lastPick) throw new Error("beans sown in May come to a pick");
    expect(firstPick.low <= firstPick.likely && firstPick.likely <= firstPick.high).toBe(true);
    expect(firstPick.likely > "2027-05-20" && firstPick.likely <= lastPick.likely).toBe(true);
    expect(totalGrams.low <= totalGrams.likely && totalGrams.likely <= totalGrams.high && totalGrams.likely > 0).toBe(true);
    expect(weeks.length).toBeGreaterThan(0);
    expect(basis.length).toBeGreaterThan(0);
    expect((await stillroom.call("GET", `/api/sowings/${id}`)).json()).toEqual(sowing);
    expect((await stillroom.call("GET", `/api/sowings/${id}/forecast`)).json()).toEqual(sowing.forecast);
    // the list leaves out the warmth, which is reckoned of one sowing alone
    const { warmth, ...forecast } = sowing.forecast;
    expect(warmth).toMatchObject({ from: "coming-up", baseC: 10 });
    expect((await stillroom.call("GET", "/api/sowings?crop=french-bean")).json()).toContainEqual({ ...sowing, forecast });
    expect((await stillroom.call("GET", "/api/sowings?crop=pea")).json()).toEqual([]);
  });

  it("keeps the days that a packet prints, one figure or two, and is ready the sooner for fewer", async () => {
    const tomatoes = { bedId, crop: "tomato", method: "transplant", plantedOutOn: "2027-05-20", plants: 4 };
    const asked = async (varietyDays: unknown): Promise<Sowing> => {
      const id = randomUUID();
      expect((await put(id, { ...tomatoes, varietyDays })).statusCode).toBe(201);
      expect((await put(id, { ...tomatoes, varietyDays })).statusCode).toBe(200);
      return (await stillroom.call("GET", `/api/sowings/${id}`)).json<Sowing>();
    };
    const [one, two] = [await asked(57), await asked({ low: 80, high: 90, from: "transplanting" })];
    expect([one.varietyDays, two.varietyDays]).toEqual([{ low: 57, high: 57 }, { low: 80, high: 90, from: "transplanting" }]);
    expect((one.forecast.firstPick?.likely ?? "") < (two.forecast.firstPick?.likely ?? "")).toBe(true);
    for (const [varietyDays, field] of [[5, "varietyDays"], [{ low: 60, high: 50 }, "varietyDays.high"], [{ low: 60 }, "varietyDays.high"], [{ low: 60, high: 70, from: "planting" }, "varietyDays.from"]])
      expect(badFields(await put(randomUUID(), { ...tomatoes, varietyDays }))).toEqual([field]);
  });

  it("is the same again without effect, and changed only by naming its version", async () => {
    const id = randomUUID();
    const first = String((await put(id, beans())).headers.etag);
    expect((await put(id, beans())).statusCode).toBe(200);
    expect((await put(id, { ...beans(), rowM: 8 })).statusCode).toBe(428);
    const changed = await put(id, { bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-21", plants: 40 }, { "if-match": first });
    expect(changed.statusCode, changed.body).toBe(200);
    expect(changed.json()).toMatchObject({ sownOn: "2027-05-21", plants: 40 });
    // what the new body leaves out is forgotten
    expect(changed.json()).not.toHaveProperty("rowM");
    expect((await put(id, beans(), { "if-match": first })).statusCode).toBe(412);
  });

  it("is made once by ten PUTs at the same moment", async () => {
    const id = randomUUID();
    const answers = await Promise.all(Array.from({ length: 10 }, () => put(id, beans())));
    expect(answers.map((answer) => answer.statusCode).sort()).toEqual([...Array<number>(9).fill(200), 201]);
  });

  it.each([
    ["31 April", { sownOn: "2027-04-31" }, ["sownOn"]],
    ["an unknown crop", { crop: "triffid" }, ["crop"]],
    ["a bed that does not exist", { bedId: randomUUID() }, ["bedId"]],
    ["both unknown", { crop: "triffid", bedId: randomUUID() }, ["bedId", "crop"]],
    ["an unknown field", { moon: "waxing" }, ["moon"]],
    ["no day of sowing", { sownOn: undefined }, ["sownOn"]],
    ["two amounts", { plants: 10 }, ["plants"]],
    ["no amount", { rowM: undefined }, ["rowM"]],
    ["less than nothing", { rowM: -3 }, ["rowM"]],
    ["half a plant", { rowM: undefined, plants: 0.5 }, ["plants"]],
    ["planted out before it was sown", { method: "transplant", plantedOutOn: "2027-05-01" }, ["plantedOutOn"]],
    ["a method that is none", { method: "thrown" }, ["method"]],
  ])("is refused with %s, and nothing is stored", async (_what, fault, paths) => {
    const id = randomUUID();
    const refused = await put(id, { ...beans(), ...fault });
    expect(refused.statusCode, refused.body).toBe(400);
    expect(badFields(refused)).toEqual(paths);
    expect((await stillroom.call("GET", `/api/sowings/${id}`)).statusCode).toBe(404);
  });

  it("that does not fit its bed is kept, and says so in square metres", async () => {
    const small = await putNew(stillroom, "beds", { name: "Small bed", lengthM: 1, widthM: 1, cover: "open" });
    const answer = await put(randomUUID(), { ...beans(), bedId: small, rowM: undefined, areaM2: 3 });
    expect(answer.statusCode).toBe(201);
    expect(answer.json<Sowing>().fits.join(" ")).toMatch(/2\.0.m²/);
  });

  it("keeps its bed from being taken away, and can itself be taken out", async () => {
    const bed = await putBed(stillroom);
    const id = await putNew(stillroom, "sowings", { ...beans(), bedId: bed });
    expect((await stillroom.call("DELETE", `/api/beds/${bed}`)).statusCode).toBe(409);
    await stillroom.call("PUT", `/api/sowings/${id}/sightings/${randomUUID()}`, { body: { stage: "emerged", seenOn: "2027-06-01" } });
    expect((await stillroom.call("DELETE", `/api/sowings/${id}`)).statusCode).toBe(204);
    expect((await stillroom.call("DELETE", `/api/sowings/${id}`)).statusCode).toBe(404);
    expect((await stillroom.call("DELETE", `/api/beds/${bed}`)).statusCode).toBe(204);
  });
});

describe("a sowing that is only being thought of", () => {
  it("is forecast like one that is written down, and leaves nothing behind", async () => {
    const before = (await stillroom.call("GET", "/api/sowings")).json<unknown[]>().length;
    const thought = await stillroom.call("POST", "/api/sowings/preview", { body: beans() });
    expect(thought.statusCode, thought.body).toBe(200);
    expect(thought.json<{ forecast: Forecast }>().forecast.firstPick).not.toBeNull();
    expect((await stillroom.call("GET", "/api/sowings")).json()).toHaveLength(before);
    expect(badFields(await stillroom.call("POST", "/api/sowings/preview", { body: { ...beans(), bedId: randomUUID() } }))).toEqual(["bedId"]);
  });
});

describe("what stands for years", () => {
  it("has a forecast for each season asked for", async () => {
    const id = await putNew(stillroom, "sowings", { bedId, crop: "rhubarb", method: "established", plants: 2 });
    const of = async (season: number) => (await stillroom.call("GET", `/api/sowings/${id}/forecast?season=${season}`)).json<Forecast>();
    const [this_, next] = [await of(2027), await of(2028)];
    expect(this_.firstPick?.likely.slice(0, 4)).toBe("2027");
    expect(next.firstPick?.likely.slice(0, 4)).toBe("2028");
    expect((await stillroom.call("GET", `/api/sowings/${id}/forecast`)).json()).toEqual(this_);
    expect(badFields(await stillroom.call("GET", `/api/sowings/${id}/forecast?season=soon`))).toEqual(["season"]);
  });
});

describe("what was seen", () => {
  const see = (sowing: string, body: unknown, id = randomUUID(), headers: Record<string, string> = {}) => stillroom.call("PUT", `/api/sowings/${sowing}/sightings/${id}`, { body, headers });

  it("is written down once, changed by version, listed, and moves the forecast", async () => {
    const sowing = await putNew(stillroom, "sowings", beans());
    const before = (await stillroom.call("GET", `/api/sowings/${sowing}`)).json<Sowing>();
    const id = randomUUID();
    const made = await see(sowing, { stage: "first-pick", seenOn: "2027-07-20" }, id);
    expect([made.statusCode, made.headers.location]).toEqual([201, `/api/sowings/${sowing}/sightings/${id}`]);
    expect((await see(sowing, { seenOn: "2027-07-20", stage: "first-pick" }, id)).statusCode).toBe(200);
    expect((await see(sowing, { stage: "first-pick", seenOn: "2027-07-21" }, id)).statusCode).toBe(428);
    const changed = await see(sowing, { stage: "first-pick", seenOn: "2027-07-21" }, id, { "if-match": String(made.headers.etag) });
    expect(changed.json()).toEqual({ id, stage: "first-pick", seenOn: "2027-07-21" });
    expect((await stillroom.call("GET", `/api/sowings/${sowing}/sightings`)).json()).toEqual([changed.json()]);
    expect((await stillroom.call("GET", `/api/sowings/${sowing}/sightings/${id}`)).json()).toEqual(changed.json());
    const after = (await stillroom.call("GET", `/api/sowings/${sowing}`)).json<Sowing>();
    expect(after.sightings).toEqual([changed.json()]);
    expect(after.forecast.firstPick).toEqual({ low: "2027-07-21", likely: "2027-07-21", high: "2027-07-21" });
    expect(after.forecast.firstPick).not.toEqual(before.forecast.firstPick);
    expect((await stillroom.call("DELETE", `/api/sowings/${sowing}/sightings/${id}`)).statusCode).toBe(204);
    expect((await stillroom.call("DELETE", `/api/sowings/${sowing}/sightings/${id}`)).statusCode).toBe(404);
    expect((await stillroom.call("GET", `/api/sowings/${sowing}`)).json()).toEqual(before);
  });

  it("is not older than the sowing and not of tomorrow, and belongs to its sowing", async () => {
    const sowing = await putNew(stillroom, "sowings", beans());
    const other = await putNew(stillroom, "sowings", beans());
    expect(badFields(await see(sowing, { stage: "emerged", seenOn: "2027-05-19" }))).toEqual(["seenOn"]);
    expect(badFields(await see(sowing, { stage: "emerged", seenOn: "2027-07-27" }))).toEqual(["seenOn"]);
    expect(badFields(await see(sowing, { stage: "asleep", seenOn: "2027-06-01" }))).toEqual(["stage"]);
    expect((await see(randomUUID(), { stage: "emerged", seenOn: "2027-06-01" })).statusCode).toBe(404);
    expect((await see(sowing, { stage: "emerged", seenOn: TODAY })).statusCode).toBe(201);
    const id = randomUUID();
    expect((await see(sowing, { stage: "emerged", seenOn: "2027-06-01" }, id)).statusCode).toBe(201);
    expect((await see(other, { stage: "emerged", seenOn: "2027-06-01" }, id, { "if-match": "*" })).statusCode).toBe(409);
    expect((await stillroom.call("GET", `/api/sowings/${other}/sightings/${id}`)).statusCode).toBe(404);
    expect((await stillroom.call("DELETE", `/api/sowings/${other}/sightings/${id}`)).statusCode).toBe(404);
  });

  it("keeps its sowing from being moved to a later day", async () => {
    const sowing = await putNew(stillroom, "sowings", beans());
    await see(sowing, { stage: "emerged", seenOn: "2027-06-01" });
    const etag = String((await stillroom.call("GET", `/api/sowings/${sowing}`)).headers.etag);
    const moved = await put(sowing, { ...beans(), sownOn: "2027-06-02" }, { "if-match": etag });
    expect([moved.statusCode, badFields(moved)]).toEqual([409, ["sownOn"]]);
    expect((await put(sowing, { ...beans(), sownOn: "2027-06-01" }, { "if-match": etag })).statusCode).toBe(200);
  });
});
