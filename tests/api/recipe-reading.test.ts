import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { RecipeDraft } from "#shared/contracts/recipe-reading.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { badFields, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
});
afterAll(() => stillroom.close());

const read = (body: unknown) => stillroom.call("POST", "/api/recipes/read", { body });
const draftOf = async (body: unknown): Promise<RecipeDraft> => {
  const answer = await read(body);
  expect(answer.statusCode, answer.body).toBe(200);
  return answer.json<RecipeDraft>();
};

const GRATIN = `Beetroot bake
Serves 6

Ingredients
1.2 kg beetroot
2 onions, sliced
300 ml cream
salt to taste

Method
Peel and slice the beetroot.
Layer with the onions and cream, then bake for 50–60 minutes at 190°C/170°C fan.
Immediately scatter with herbs.`;

describe("a pasted recipe", () => {
  it("comes back as a draft that can be stored as it stands, and is not stored", async () => {
    const before = (await stillroom.call("GET", "/api/recipes")).json<Recipe[]>().length;
    const draft = await draftOf({ text: GRATIN });
    expect(draft.recipe).toMatchObject({ title: "Beetroot bake", way: "cook", makes: { amount: 6, unit: "portions" }, keeps: [] });
    expect(draft.recipe.ingredients[0]).toEqual({ text: "1.2 kg beetroot", crop: "beetroot" });
    expect(draft.ingredients[0]).toMatchObject({ grams: 1200, crop: "beetroot" });
    expect(draft.recipe.steps.map(({ handsOffMin, needs, maxWaitMin }) => ({ handsOffMin, needs, maxWaitMin }))).toEqual([
      { handsOffMin: 0, needs: {}, maxWaitMin: undefined },
      { handsOffMin: { low: 50, likely: 55, high: 60 }, needs: { oven: { c: 190, trays: 1 } }, maxWaitMin: undefined },
      { handsOffMin: 0, needs: {}, maxWaitMin: 5 },
    ]);
    expect((await stillroom.call("GET", "/api/recipes")).json<Recipe[]>().length).toBe(before);
    const stored = await stillroom.call("PUT", `/api/recipes/${randomUUID()}`, { body: draft.recipe });
    expect(stored.statusCode, stored.body).toBe(201);
  });

  it("without a yield or a title is one batch of something, and says so", async () => {
    const draft = await draftOf({ text: "2 eggs\n100 g flour\n1. Mix." });
    expect(draft.recipe.makes).toEqual({ amount: 1, unit: "batch" });
    expect(draft.doubts.map(({ path }) => path)).toEqual(expect.arrayContaining(["makes", "title"]));
  });

  it("is text, whatever it holds: markup, signs from right to left, pictures", async () => {
    const line = "1 kg <script>alert(1)</script> tomatoes 🍅 \u202Eevil";
    const draft = await draftOf({ text: `Soup\nIngredients\n${line}\nMethod\nBoil for 10 minutes.` });
    expect(draft.recipe.ingredients[0]?.text).toBe(line);
  });

  it("of ten thousand lines is taken as far as a recipe goes, and the rest handed back", async () => {
    const lines = Array.from({ length: 10_000 }, (_, i) => `${i + 1} g flour of kind ${i + 1}`);
    const draft = await draftOf({ text: `Long\nIngredients\n${lines.join("\n")}` });
    const back = draft.notUnderstood.flatMap(({ text }) => text.split("\n"));
    expect([...draft.recipe.ingredients.map(({ text }) => text), ...back]).toEqual(lines);
  });

  it.each([
    [{ text: "" }, "text"],
    [{ text: "a\u0000b" }, "text"],
    [{ jsonLd: { "@type": "Event", name: "Fair" } }, "jsonLd"],
    [{}, ""],
    [{ text: "a", jsonLd: {} }, ""],
    [{ words: "a" }, "words"],
  ])("%j is refused at %s", async (body, path) => {
    const answer = await read(body);
    expect(answer.statusCode, answer.body).toBe(400);
    expect(badFields(answer)).toContain(path);
  });
});

describe("linked data of a page", () => {
  it("is read from a graph, with sections, marked-up text and a yield given twice", async () => {
    const jsonLd = {
      "@context": "https://schema.org",
      "@graph": [
        { "@type": "WebPage", name: "A page" },
        {
          "@type": ["Thing", "Recipe"],
          name: "Plum &amp; oat bars",
          recipeYield: ["12", "12 bars"],
          prepTime: "PT20M",
          recipeIngredient: ["250 g plums", "&frac12; cup sugar"],
          recipeInstructions: [{ "@type": "HowToSection", name: "Base", itemListElement: [{ "@type": "HowToStep", text: "<p>Rub together.</p>" }, { "@type": "HowToStep", text: "Bake at 350°F for 25 to 30 minutes." }] }],
        },
      ],
    };
    const draft = await draftOf({ jsonLd });
    expect(draft.recipe).toMatchObject({ title: "Plum & oat bars", makes: { amount: 12, unit: "bars" } });
    expect(draft.recipe.ingredients.map(({ text }) => text)).toEqual(["250 g plums", "½ cup sugar"]);
    expect(draft.recipe.steps[1]).toMatchObject({ handsOffMin: { low: 25, likely: 28, high: 30 }, needs: { oven: { c: 177, trays: 1 } } });
    // the recipe's 20 minutes of preparing, shared between two steps that give no time for the hands
    expect(draft.recipe.steps.map(({ handsOnMin }) => handsOnMin)).toEqual([10, 10]);
    expect(draft.notUnderstood).toEqual([{ text: "Base", why: "The heading of a group of steps." }]);
    expect((await draftOf({ text: JSON.stringify(jsonLd) })).recipe).toEqual(draft.recipe);
  });
});
