/** Writers of one household meet at its rows and at its stamps: they wait for each other, and none gives way (PostgreSQL manual, §13.3.4 Deadlocks). */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
});
afterAll(() => stillroom.close());

const ROUNDS = 8;
const step = { id: "boil", text: "Boil.", handsOnMin: 5, handsOffMin: 10, needs: { burners: 1 }, after: [] };
const recipe = (title: string, more: object = {}) => ({ title, way: "cook", makes: { amount: 4, unit: "portions" }, ingredients: [{ text: "500 g French beans", crop: "french-bean" }], steps: [step], keeps: [], ...more });
const put = (address: string, body: unknown, etag?: unknown) => stillroom.call("PUT", address, { body, headers: etag === undefined ? {} : { "if-match": String(etag) } });
const tagOf = async (address: string) => (await stillroom.call("GET", address)).headers.etag;

it("all kinds of writes at once come through", async () => {
  const bedId = await putBed(stillroom);
  const sowing = { bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-10", rowM: 6 };
  const sowingId = await putNew(stillroom, "sowings", sowing);
  await putNew(stillroom, "picks", { sowingId, pickedOn: "2027-07-19", grams: 100 });
  const part = await putNew(stillroom, "recipes", recipe("Beans"));
  const whole = await putNew(stillroom, "recipes", recipe("Beans again", { ingredients: [{ text: "2 portions beans", madeBy: part }] }));
  const day = { on: "2027-07-31", startsAt: "09:00", cooks: 1, kitchen: { ovens: [], burners: 2 }, dishes: [{ recipeId: part, batches: 1 }, { recipeId: whole, batches: 1 }] };
  const dayId = await putNew(stillroom, "cook-days", day);
  const { eats: _eats, ...household } = (await stillroom.call("GET", "/api/household")).json<Record<string, unknown>>();
  const statuses = new Map<number, number>();
  for (let round = 1; round <= ROUNDS; round++) {
    const tags = { house: await tagOf("/api/household"), sowing: await tagOf(`/api/sowings/${sowingId}`), part: await tagOf(`/api/recipes/${part}`), whole: await tagOf(`/api/recipes/${whole}`), day: await tagOf(`/api/cook-days/${dayId}`) };
    const answers = await Promise.all([
      put("/api/household", { ...household, glutGrams: 500 + round }, tags.house),
      put(`/api/sowings/${sowingId}`, { ...sowing, rowM: round }, tags.sowing),
      put(`/api/recipes/${part}`, recipe(`Beans ${round}`), tags.part),
      put(`/api/recipes/${whole}`, recipe(`Beans again ${round}`, { ingredients: [{ text: "2 portions beans", madeBy: part }] }), tags.whole),
      put(`/api/cook-days/${dayId}`, { ...day, cooks: 1 + (round % 2) }, tags.day),
      // eight batches take more than these beans give, so what is missing is bought
      put(`/api/plan-lines/${randomUUID()}`, { week: "2027-W31", recipeId: part, batches: 1, buyMissing: true }),
      put(`/api/picks/${randomUUID()}`, { sowingId, pickedOn: "2027-07-20", grams: round }),
      put(`/api/picks/${randomUUID()}`, { sowingId, pickedOn: "2027-07-21", grams: round }),
      put(`/api/sowings/${sowingId}/sightings/${randomUUID()}`, { stage: "emerged", seenOn: "2027-05-20" }),
      put(`/api/beds/${randomUUID()}`, { name: `Bed ${round}`, lengthM: 2, widthM: 1, cover: "open" }),
      stillroom.call("PUT", "/api/weather/days", { body: `date,tmax_c,tmin_c\n2027-06-${String(round).padStart(2, "0")},20,10\n`, headers: { "content-type": "text/csv" } }),
      stillroom.call("DELETE", `/api/recipes/${part}`),
      stillroom.call("DELETE", `/api/sowings/${sowingId}`),
    ]);
    for (const { statusCode } of answers) statuses.set(statusCode, (statuses.get(statusCode) ?? 0) + 1);
  }
  // 11 writes a round go through; the recipe and the sowing are in use, so both deletes are refused
  expect([...statuses].filter(([status]) => status !== 200 && status !== 201).sort()).toEqual([[409, 2 * ROUNDS]]);
  expect([...statuses.values()].reduce((sum, n) => sum + n, 0)).toBe(13 * ROUNDS);
});
