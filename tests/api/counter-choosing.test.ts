/** Choosing a cook day: what fits together, what each adds, when the rises begin, what the night before can take. Ends follow by hand from the minutes of the recipes. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Choice, DayAdvice } from "#shared/contracts/choosing.ts";
import { badFields, putNew, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
const recipe: Record<string, string> = {};
const step = (id: string, handsOnMin: number, more: object = {}) => ({ id, text: `Do ${id}`, handsOnMin, handsOffMin: 0, needs: {}, after: [], ...more });
const dish = (title: string, steps: object[]) => ({ title, way: "cook", makes: { amount: 4, unit: "portions" }, ingredients: [], keeps: [], steps });
beforeAll(async () => {
  stillroom = await testApp();
  // hands only: 90, 60 and 40 minutes; of bread 10 + a rise of 60 + 10 + 5 at once
  recipe["jam"] = await putNew(stillroom, "recipes", dish("Jam", [step("stir", 90)]));
  recipe["soup"] = await putNew(stillroom, "recipes", dish("Soup", [step("cook", 60)]));
  recipe["beans"] = await putNew(stillroom, "recipes", dish("Beans", [step("trim", 40)]));
  recipe["bread"] = await putNew(stillroom, "recipes", dish("Bread", [step("mix", 10), step("rise", 0, { handsOffMin: 60, after: ["mix"] }), step("shape", 10, { after: ["rise"], maxWaitMin: 900 }), step("serve", 5, { after: ["shape"], maxWaitMin: 0, notBeforeMin: 0 })]));
  recipe["note"] = await putNew(stillroom, "recipes", dish("Notes only", []));
});
afterAll(() => stillroom.close());

const choose = (body: object) => stillroom.call("POST", "/api/cook-days/choices", { body });
const named = (...names: string[]) => names.map((name) => ({ recipeId: recipe[name], batches: 1 }));

describe("choosing the day", () => {
  it("says which of the week's dishes fit into two hours together, and what each adds", async () => {
    for (const name of ["jam", "soup", "beans", "note"]) await putNew(stillroom, "plan-lines", { week: "2027-W31", recipeId: recipe[name], batches: 1 });
    const answer = await choose({ week: "2027-W31", withinMin: 120 });
    expect(answer.statusCode, answer.body).toBe(200);
    const { sets, dishes, leftOut, complete, text } = answer.json<Choice>();
    // 60 + 40 fit; 90 + 40 and 90 + 60 do not, so jam stands alone
    expect(sets.map(({ recipeIds, endMin }) => [[...recipeIds].sort(), endMin])).toEqual([[[recipe["soup"], recipe["beans"]].sort(), 100], [[recipe["jam"]], 90]]);
    expect(complete).toBe(true);
    expect(text).toMatch(/^2 of 3 fit into 2.h together: /);
    expect(Object.fromEntries(dishes.map(({ title, addsMin, aloneMin }) => [title, [addsMin, aloneMin]]))).toEqual({ Jam: [90, 90], Soup: [60, 60], Beans: [40, 40] });
    expect(leftOut).toEqual(["Notes only has no steps written."]);
  });

  it("says of a day when its rise has to begin and what the evening before can take", async () => {
    const id = await putNew(stillroom, "cook-days", { on: "2027-08-01", startsAt: "09:00", endsBy: "11:00", cooks: 1, kitchen: { ovens: [], burners: 2 }, dishes: named("bread", "beans") });
    const { rests, nightBefore, dishes } = (await stillroom.call("POST", `/api/cook-days/${id}/advice`)).json<DayAdvice>();
    // ten minutes of mixing first; sixty of rising and fifteen of shaping and serving have to end by minute 120
    expect(rests).toMatchObject([{ dish: recipe["bread"], step: "rise", earliestMin: 10, latestMin: 45, text: "Begin “Do rise” (Bread) between 09:10 and 09:45." }]);
    // beans fit into the rise, so the day takes 85 minutes; with mixing and rising done the evening before, 40 + 10 + 5
    const bread = nightBefore.find(({ dish: one }) => one === recipe["bread"]);
    expect(bread).toMatchObject({ title: "Bread", steps: ["mix", "rise"], whole: false, handsOnMin: 10, savesMin: 30 });
    expect(dishes.find(({ title }) => title === "Bread")?.aloneMin).toBe(85);
  });

  it.each([
    ["neither a week nor dishes", { withinMin: 60 }, ["dishes"]],
    ["a week without a plan", { week: "2027-W40", withinMin: 60 }, ["week"]],
    ["no cooks", { week: "2027-W31", withinMin: 60, cooks: 0 }, ["cooks"]],
    ["no time", { week: "2027-W31", withinMin: 0 }, ["withinMin"]],
    ["a recipe that is not there", { dishes: [{ recipeId: "00000000-0000-4000-8000-00000000dead", batches: 1 }], withinMin: 60 }, ["dishes.0.recipeId"]],
  ])("refuses %s", async (_what, body, paths) => {
    const answer = await choose(body);
    expect([answer.statusCode, badFields(answer)]).toEqual([400, paths]);
  });
});
