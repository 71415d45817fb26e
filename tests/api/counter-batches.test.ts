/**
 * A dish closed to the gram: what it took and became, how it comes back, and that nothing hot goes into the cold. Cooling: FDA Food Code 3-501.14 (A), from
 * 57 to 21 °C within two hours and to 5 °C within six in all.
 */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Batch } from "#shared/contracts/batches.ts";
import type { Counter } from "#shared/contracts/counter.ts";
import type { GramAccount } from "#shared/contracts/gram-account.ts";
import type { Lot } from "#shared/contracts/lots.ts";
import { badFields, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";
import { handClock } from "#tests/support/hand-clock.ts";

const NOON = "2027-08-01T10:00:00.000Z";
const clock = handClock(NOON);
let stillroom: TestApp;
let sauce: string;
let freezer: string;
let shelf: string;
let tomatoes: string;
let dayId: string;
beforeAll(async () => {
  stillroom = await testApp({ clock });
  await settle(stillroom);
  sauce = await putNew(stillroom, "recipes", {
    title: "Tomato sauce",
    way: "cook",
    makes: { amount: 6, unit: "portions" },
    ingredients: [{ text: "3 kg tomatoes", crop: "tomato" }],
    steps: [{ id: "simmer", text: "Simmer", handsOnMin: 10, handsOffMin: 60, needs: { burners: 1 }, after: [] }],
    keeps: [{ place: "freezer", days: 180 }],
    reheat: "Bring to the boil",
  });
  freezer = await putNew(stillroom, "places", { name: "Top drawer", kind: "freezer", litres: 45 });
  shelf = await putNew(stillroom, "places", { name: "Pantry", kind: "shelf" });
  const bedId = await putNew(stillroom, "beds", { name: "Long bed", lengthM: 10, widthM: 1.2, cover: "open" });
  const sowingId = await putNew(stillroom, "sowings", { bedId, crop: "tomato", method: "transplant", plantedOutOn: "2027-05-20", plants: 6 });
  await putNew(stillroom, "picks", { sowingId, pickedOn: "2027-08-01", grams: 5000 });
  tomatoes = await putNew(stillroom, "lots", { title: "Tomatoes", crop: "tomato", placeId: shelf, madeOn: "2027-08-01" });
  // the published worked account, but for the batch: 5,000 picked, 300 trimmed, 1,100 eaten, 400 given, 100 composted
  for (const [kind, grams, more] of [["put", 5000, {}], ["take", 300, { for: "trim" }], ["take", 1100, { for: "eat" }], ["give", 400, {}], ["compost", 100, {}]] as const) {
    await putNew(stillroom, `lots/${tomatoes}/movements`, { kind, on: "2027-08-01", grams, ...more });
  }
});
afterAll(() => stillroom.close());
beforeEach(async () => {
  clock.set(NOON);
  dayId = await putNew(stillroom, "cook-days", { on: "2027-08-01", startsAt: "12:00", cooks: 1, kitchen: { ovens: [], burners: 2 }, dishes: [{ recipeId: sauce, batches: 1 }] });
  await put("plans", { kind: "agree" });
  await put("marks", { kind: "begun" });
});

const put = (what: "plans" | "marks" | "batches", body: unknown, id: string = randomUUID()) => stillroom.call("PUT", `/api/cook-days/${dayId}/${what}/${id}`, { body });
const undo = (what: "marks" | "batches", id: string) => stillroom.call("DELETE", `/api/cook-days/${dayId}/${what}/${id}`);
const counter = async () => (await stillroom.call("GET", `/api/cook-days/${dayId}/counter`)).json<Counter>();
const account = async () => (await stillroom.call("GET", "/api/gram-account?season=2027")).json<GramAccount>().crops.find(({ crop }) => crop === "tomato");
const lot = (portions: number, more: object = {}) => ({ id: randomUUID(), placeId: freezer, portions, ...more });
const closing = (more: object = {}) => ({ recipeId: sauce, portions: 6, portionGrams: 400, weighedGrams: 2450, lossGrams: 50, eatenPortions: 2, lots: [lot(3), lot(1)], took: [{ lotId: tomatoes, grams: 3000 }], ...more });
const sentence = (answer: { json<T>(): T }): string => answer.json<{ detail: string }>().detail;

/** The heat ends at 13:10 local, and the sauce is cold two hours and a half after that. */
async function cooled(): Promise<void> {
  await put("marks", { kind: "done", dish: sauce, step: "simmer", at: NOON });
  clock.pass(90);
  expect((await put("marks", { kind: "cooled", dish: sauce, stage: 1 })).statusCode).toBe(201);
  clock.pass(60);
  expect((await put("marks", { kind: "cooled", dish: sauce, stage: 2 })).statusCode).toBe(201);
}

describe("a closed dish", () => {
  it("leaves the account of grams closed: 3,000 into batches, 100 on hand, nothing unaccounted; undone, all of it is back", async () => {
    expect((await counter()).dishes[0]?.draft).toMatchObject({ portions: 6, took: [{ lotId: tomatoes, grams: 3000, placeName: "Pantry" }], missing: [] });
    await cooled();
    const id = randomUUID();
    const body = closing();
    const closed = await put("batches", body, id);
    expect(closed.statusCode, closed.body).toBe(201);
    const batch = closed.json<Batch>();
    expect(batch).toMatchObject({ title: "Tomato sauce", portions: 6, eatenPortions: 2, lossGrams: 50, on: "2027-08-01" });
    // what goes on the labels
    expect(batch.lots.map((one) => [one.title, one.portions, one.grams, one.placeName, one.bestUntil, one.reheat])).toEqual(expect.arrayContaining([["Tomato sauce", 3, 1200, "Top drawer", "2028-01-28", "Bring to the boil"]]));
    expect(batch.took).toEqual([{ lotId: tomatoes, title: "Tomatoes", crop: "tomato", grams: 3000, portions: null }]);
    expect(await account()).toMatchObject({ pickedGrams: 5000, trimmedGrams: 300, eatenGrams: 1100, batchGrams: 3000, givenGrams: 400, compostedGrams: 100, onHandGrams: 100, unaccountedGrams: 0 });
    expect((await put("batches", body, id)).statusCode).toBe(200);
    expect((await put("batches", closing())).statusCode).toBe(409);
    expect((await counter()).dishes[0]).toMatchObject({ state: "put away", batch: { id } });

    // something is eaten of a lot: it cannot be undone before that is
    const [first] = body.lots as { id: string }[];
    const eaten = await putNew(stillroom, `lots/${(first as { id: string }).id}/movements`, { kind: "take", on: "2027-08-01", portions: 1 });
    const refused = await undo("batches", id);
    expect([refused.statusCode, sentence(refused)]).toEqual([409, "Something of “Tomato sauce” was moved since it was put away. Undo that first."]);
    await stillroom.call("DELETE", `/api/lots/${(first as { id: string }).id}/movements/${eaten}`);
    expect((await undo("batches", id)).statusCode).toBe(204);
    expect((await undo("batches", id)).statusCode).toBe(204);
    expect(await account()).toMatchObject({ batchGrams: 0, onHandGrams: 3100, unaccountedGrams: 0 });
    expect((await stillroom.call("GET", `/api/lots/${(first as { id: string }).id}`)).statusCode).toBe(404);
    expect((await stillroom.call("GET", `/api/lots/${tomatoes}`)).json<Lot>().grams).toBe(3100);
  });

  it("must add up to the portion and to the gram, and takes no more than there is", async () => {
    await cooled();
    expect(badFields(await put("batches", closing({ eatenPortions: 1 })))).toEqual(["portions"]);
    const open = await put("batches", closing({ lossGrams: 20 }));
    expect([badFields(open), sentence(open)]).toEqual([["weighedGrams"], expect.stringContaining("30 g are neither in a portion nor lost")]);
    const many = await put("batches", closing({ took: [{ lotId: tomatoes, grams: 9000 }] }));
    expect([many.statusCode, badFields(many)]).toEqual([409, ["took.0.grams"]]);
    // nothing of it was written
    expect(await account()).toMatchObject({ batchGrams: 0, onHandGrams: 3100 });
    expect(badFields(await put("batches", closing({ took: [{ lotId: randomUUID(), grams: 10 }] })))).toEqual(["took.0.lotId"]);
    expect(badFields(await put("batches", closing({ lots: [lot(4, { placeId: shelf })] })))).toEqual(["lots.0.placeId"]);
    expect(badFields(await put("batches", closing({ recipeId: randomUUID() })))).toEqual(["recipeId"]);
  });
});

describe("the way into the cold", () => {
  const away = () => put("batches", closing({ took: [] }));

  it("is shut until both stages were measured, and says by when", async () => {
    const before = await away();
    expect([before.statusCode, sentence(before)]).toEqual([409, expect.stringMatching(/^Mark “Simmer” as done when the heat ends: .*2.h.*21\.1 °C.*6.h.*5 °C/)]);
    await put("marks", { kind: "done", dish: sauce, step: "simmer" });
    clock.pass(30);
    expect(sentence(await away())).toMatch(/^Tomato sauce is not put away yet: it must be at 21\.1 °C by 14:00, 1.h.30 from now\. .*bring it to 74 °C right through before then/);
    clock.pass(60);
    const first = randomUUID();
    await put("marks", { kind: "cooled", dish: sauce, stage: 1 }, first);
    expect(sentence(await away())).toMatch(/5 °C by 18:00, 4.h.30 from now\. It may stand in the fridge/);
    clock.pass(240);
    await put("marks", { kind: "cooled", dish: sauce, stage: 2 });
    expect((await counter()).dishes[0]).toMatchObject({ state: "ready to put away", cooling: { state: "cold", mayGoCold: true } });
    expect((await away()).statusCode).toBe(201);
    // what the putting away rests on stays while it stands
    expect((await undo("marks", first)).statusCode).toBe(409);
  });

  it.each([
    [121, 21.1, "14:00"],
    [361, 5, "18:00"],
  ])("stays shut %d minutes after the heat without the measurement at %d °C", async (minutes, c, by) => {
    await put("marks", { kind: "done", dish: sauce, step: "simmer" });
    if (c === 5) await put("marks", { kind: "cooled", dish: sauce, stage: 1 });
    clock.pass(minutes);
    // measured too late, or heated again too late, does not open it
    await put("marks", { kind: "reheated", dish: sauce });
    await put("marks", { kind: "cooled", dish: sauce, stage: 2 });
    const late = await away();
    expect([late.statusCode, sentence(late)]).toEqual([409, expect.stringContaining(`Throw Tomato sauce away: it was not at ${c} °C by ${by}.`)]);
    await put("marks", { kind: "discarded", dish: sauce });
    expect(sentence(await away())).toBe("Tomato sauce was thrown away, so nothing of it is put away.");
    // all of it lost is an account that closes too
    expect((await put("batches", { recipeId: sauce, portions: 0, weighedGrams: 2450, lossGrams: 2450, lots: [], took: [] })).statusCode).toBe(201);
  });

  it("begins anew when the dish is brought to heat again in time", async () => {
    await put("marks", { kind: "done", dish: sauce, step: "simmer" });
    clock.pass(110);
    await put("marks", { kind: "reheated", dish: sauce });
    clock.pass(100);
    // cold at once is both stages
    await put("marks", { kind: "cooled", dish: sauce, stage: 2 });
    expect((await away()).statusCode).toBe(201);
  });
});
