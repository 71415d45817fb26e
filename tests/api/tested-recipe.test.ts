/** A recipe of the book with a tested process stays tested only as it is (USDA Complete Guide to Home Canning 2015, Guide 1, p. 1-10). */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { badFields, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
});
afterAll(() => stillroom.close());

type Body = Record<string, unknown> & { steps: Recipe["steps"]; makes: Recipe["makes"] };

/** The dilled beans of the book as their own body, changed and put again. */
async function putChanged(change: (body: Body) => unknown) {
  const fresh = await stillroom.as();
  const all = (await fresh.call("GET", "/api/recipes?way=pickle")).json<Recipe[]>();
  const beans = all.find(({ process }) => process?.startsWith("pickled-beans"));
  if (!beans) throw new Error("the book pickles beans");
  const etag = String((await fresh.call("GET", `/api/recipes/${beans.id}`)).headers.etag);
  const { title, way, makes, measures, ingredients, steps, holds, limits, keeps, process, note } = beans;
  const lines = ingredients.map(({ text, crop }) => (crop === undefined ? { text } : { text, crop }));
  return fresh.call("PUT", `/api/recipes/${beans.id}`, { body: change({ title, way, makes, measures, ingredients: lines, steps, holds, limits, keeps, process, note }), headers: { "if-match": etag } });
}

describe("a tested recipe of the book", () => {
  it("may have another name and note", async () => {
    const answer = await putChanged((body) => ({ ...body, title: "Our beans", note: "For the fair" }));
    expect(answer.statusCode, answer.body).toBe(200);
  });
  it.each<[string, (body: Body) => unknown]>([
    ["a step left out", (body) => ({ ...body, holds: [], limits: [], steps: body.steps.slice(0, 1) })],
    ["a shorter time in the canner", (body) => ({ ...body, steps: body.steps.map((step) => ({ ...step, handsOffMin: 1 })) })],
    ["cups of another country", (body) => ({ ...body, measures: "australian" })],
    ["another yield", (body) => ({ ...body, makes: { ...body.makes, amount: body.makes.amount * 2 } })],
  ])("is no longer tested with %s", async (_, change) => {
    const answer = await putChanged(change);
    expect([answer.statusCode, badFields(answer)]).toEqual([400, ["process", "keeps.0"]]);
  });
});
