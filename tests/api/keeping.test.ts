/** "Can I keep this?" Figures: USDA Complete Guide to Home Canning, AIB 539, 2015, guide and page beside each. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { KeepingAnswer, KeepingFoods } from "#shared/contracts/keeping.ts";
import { badFields, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
});
afterAll(() => stillroom.close());

const ask = (query: Record<string, string | number>) => stillroom.call("GET", `/api/keeping?${Object.entries(query).map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join("&")}`);
const answer = async (query: Record<string, string | number>): Promise<KeepingAnswer> => {
  const got = await ask(query);
  expect(got.statusCode, got.body).toBe(200);
  return got.json<KeepingAnswer>();
};

describe("can I keep this", () => {
  it("answers with the tested minutes of exactly the food, jar, canner and altitude (Guide 3, p. 3-8), and the acid of every jar (p. 3-5)", async () => {
    const kept = await answer({ food: "tomato-crushed", way: "bottle", jar: "quart", canner: "boiling-water", altitudeM: 762 });
    expect(kept.may).toBe(true);
    expect(kept.processes[0]?.lines).toEqual([expect.objectContaining({ pack: "hot", jar: "quart", minutes: 50, psi: null })]);
    expect(kept.processes[0]?.acid.join(" ")).toMatch(/lemon juice/);
    expect(kept.processes[0]?.sources.map(({ text }) => text).join(" ")).toMatch(/3-7 to 3-8/);
    expect(kept.keeps).toEqual([expect.objectContaining({ place: "shelf", best: { low: 365, high: 365 }, safe: null })]);
  });
  it("lets a half-pint take the time of a pint (Guide 1, p. 1-23)", async () => {
    const kept = await answer({ food: "french-bean", way: "bottle", jar: "half-pint", canner: "pressure-dial", altitudeM: 0 });
    const beans = kept.processes.find(({ key }) => key === "beans-snap");
    expect(beans?.lines.map(({ jar, minutes, psi }) => ({ jar, minutes, psi }))).toEqual([{ jar: "half-pint", minutes: 20, psi: 11 }, { jar: "half-pint", minutes: 20, psi: 11 }]);
    expect(beans?.notes.join(" ")).toMatch(/half-pint jar takes the time of a pint/);
  });
  it.each([
    ["no row: snap beans in boiling water (Guide 4, p. 4-8)", { food: "beans-snap", way: "bottle", canner: "boiling-water", altitudeM: 0 }],
    ["above the last band (Guide 4, p. 4-9, 8,000 ft)", { food: "beans-snap", way: "bottle", canner: "pressure-dial", altitudeM: 2500 }],
    ["purée of pumpkin (Guide 4, p. 4-18)", { food: "pumpkin puree", way: "bottle", altitudeM: 0 }],
    ["pesto (Penn State Extension)", { food: "pesto", way: "bottle", altitudeM: 0 }],
    ["a food nobody knows", { food: "moon cheese", way: "bottle", altitudeM: 0 }],
  ])("refuses %s, with what to do instead", async (_, query) => {
    const refused = await answer(query);
    expect([refused.may, refused.keeps, refused.processes.flatMap(({ lines }) => lines)]).toEqual([false, [], []]);
    expect(refused.never.length).toBeGreaterThan(0);
    expect(refused.never.every(({ source }) => source.id !== "")).toBe(true);
    expect(refused.instead.length).toBeGreaterThan(0);
  });
  it("opens summer squash only in the guide's own recipes, never plain (Clemson Extension; Guide 3, p. 3-12)", async () => {
    const kept = await answer({ food: "courgette", way: "bottle", altitudeM: 0 });
    expect(kept.answer).toMatch(/^Only as exactly the tested process/);
    expect(kept.processes.map(({ title }) => title).join(" ")).toMatch(/Tomatoes with okra or zucchini/);
    expect(kept.never.map(({ text }) => text).join(" ")).toMatch(/plain summer squash/);
  });
  it("shows no minutes while nobody has said how high the kitchen lies", async () => {
    const fresh = await stillroom.as();
    const kept = (await fresh.call("GET", "/api/keeping?food=tomato-crushed&way=bottle")).json<KeepingAnswer>();
    expect([kept.altitudeM, kept.processes[0]?.lines]).toEqual([null, []]);
    const squash = (await fresh.call("GET", "/api/keeping?food=courgette&way=bottle")).json<KeepingAnswer>();
    expect(squash.answer).toMatch(/^Only as exactly the tested process.*No minutes are shown/);
  });
  it("gives blanching, months and the load of a day for the freezer; quality and safety in two fields", async () => {
    const kept = await answer({ food: "french-bean", way: "freeze" });
    // NDSU freezing table: whole, cut or sliced, 3 min
    expect(kept.figures[0]?.text).toMatch(/blanch 3 min in boiling water/);
    expect(kept.figures.map(({ text }) => text).join(" ")).toMatch(/In 24 hours .* 32 to 48 g a litre/);
    expect(kept.keeps[0]).toMatchObject({ place: "freezer", safe: null });
    expect(kept.keeps[0]?.best?.high).toBeGreaterThanOrEqual(240);
  });
  it("gives the salt of kraut (Guide 6, p. 6-8) and the hours of drying", async () => {
    expect((await answer({ food: "cabbage", way: "ferment" })).figures[0]?.text).toMatch(/3 tablespoons canning salt per 5 lb/);
    expect((await answer({ food: "onion", way: "dry" })).figures[0]?.text).toMatch(/3 to 9 hours/);
  });
  it.each([[{ food: "", way: "bottle" }, "food"], [{ food: "tomato", way: "smoke" }, "way"], [{ food: "tomato", way: "bottle", altitudeM: 12000 }, "altitudeM"], [{ food: "tomato", way: "bottle", jar: "litre" }, "jar"]])("%j is refused at %s", async (query, path) => {
    const refused = await ask(query);
    expect([refused.statusCode, badFields(refused)]).toEqual([400, [path]]);
  });
  it("can be asked of every crop and tested food, by every way, at every height", async () => {
    const foods = (await stillroom.call("GET", "/api/keeping/foods")).json<KeepingFoods>();
    expect(foods.length).toBeGreaterThan(100);
    expect(foods.find(({ food }) => food === "tomato")?.ways).toContain("bottle");
    let reached = 0;
    for (const { food, ways } of foods.filter((_, i) => i % 5 === 0))
      for (const way of ways) {
        await answer({ food, way, altitudeM: 1500 });
        reached++;
      }
    expect(reached).toBeGreaterThan(40);
  });
});
