import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Recipe } from "#shared/contracts/recipes.ts";
import type { Scaled } from "#shared/contracts/scaling.ts";
import { badFields, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let book: Recipe[];
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
  book = (await stillroom.call("GET", "/api/recipes")).json<Recipe[]>();
});
afterAll(() => stillroom.close());

const scaled = (id: string, body: unknown) => stillroom.call("POST", `/api/recipes/${id}/scaled`, { body });
const named = (title: string): Recipe => {
  const found = book.find((recipe) => recipe.title === title);
  if (!found) throw new Error(`the book has no ${title}`);
  return found;
};

describe("a recipe for another amount", () => {
  it("comes in both systems with the rounding error, its cautions and whether it fits", async () => {
    const gratin = named("Courgette gratin");
    const answer = (await scaled(gratin.id, { yield: 16 })).json<Scaled>();
    expect(answer).toMatchObject({ batches: 2, apart: false, makes: { amount: 16, unit: "portions" }, uses: [{ crop: "courgette", grams: 3200 }, { crop: "onion", grams: 600 }] });
    expect(answer.ingredients[0]).toMatchObject({ grams: 3200, scales: "in-proportion", line: "3.2\u00a0kg courgettes" });
    expect(answer.ingredients.filter(({ byWeight }) => byWeight !== null).every(({ weightErrorPercent }) => weightErrorPercent !== null && Math.abs(weightErrorPercent) <= 5)).toBe(true);
    expect(answer.doesNotScale.map(({ what }) => what)).toEqual(expect.arrayContaining(["times", "tins", "cooling"]));
    expect(answer.fits.some(({ what, fits }) => what === "oven" && fits !== undefined)).toBe(true);
    expect(answer.cautions.join(" ")).toMatch(/within 2 hours/);
  });
  it("of a tested process comes only in whole batches", async () => {
    const jars = named("Crushed tomatoes in jars");
    expect((await scaled(jars.id, { batches: 2 })).json()).toMatchObject({ apart: true, makes: { amount: 18, unit: "jars" } });
    for (const [body, path] of [[{ batches: 1.5 }, "batches"], [{ yield: 10 }, "yield"], [{ atHand: { crop: "tomato", grams: 3400 } }, "atHand.grams"], [{ atHand: { crop: "leek", grams: 34_000 } }, "atHand.crop"]] as const) {
      const refused = await scaled(jars.id, body);
      expect([refused.statusCode, badFields(refused)]).toEqual([400, [path]]);
    }
    expect((await scaled(jars.id, { atHand: { crop: "tomato", grams: 15_000 } })).json()).toMatchObject({ batches: 2, leftGrams: 2200 });
  });
  it.each([[{ batches: 0 }, "batches"], [{ batches: 1e9 }, "batches"], [{ yield: -1 }, "yield"], [{}, ""], [{ batches: 1, yield: 2 }, ""], [{ dish: { from: { shape: "round", acrossCm: 0 }, to: { shape: "square", sideCm: 20 } } }, "dish.from.acrossCm"]])(
    "%j is refused at %s",
    async (body, path) => {
      const refused = await scaled(named("Courgette gratin").id, body);
      expect([refused.statusCode, badFields(refused)]).toEqual([400, [path]]);
    },
  );
  it("that is not there is 404", async () => expect((await scaled(randomUUID(), { batches: 2 })).statusCode).toBe(404));
  it("is had of every recipe of the book, twice over", async () => {
    let reached = 0;
    for (const { id, title } of book.filter((_, i) => i % 4 === 0)) {
      const answer = await scaled(id, { batches: 2 });
      expect(answer.statusCode, title).toBe(200);
      reached++;
    }
    expect(reached).toBeGreaterThan(40);
  });
});
