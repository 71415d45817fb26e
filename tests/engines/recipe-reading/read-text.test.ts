/** Recipes as they are pasted. What a sentence means is read as a cook reads it, common practice, no source, where none is named. */
import { describe, expect, it } from "vitest";
import { isoMinutes, readJsonLd, readRecipeText } from "#shared/engines/recipe-reading/index.ts";

const stepOf = (sentence: string) => {
  const read = readRecipeText(`Dish\nServes 4\nIngredients\n1 egg\nMethod\n${sentence}`);
  const [first] = read.steps;
  if (!first) throw new Error("no step");
  return { ...first, doubts: read.doubts.filter(({ path }) => path.startsWith("steps.0.")) };
};
const spanOf = (minutes: number | { low: number; high: number }): [number, number] => (typeof minutes === "number" ? [minutes, minutes] : [minutes.low, minutes.high]);

describe("how long a step runs by itself", () => {
  it.each([
    ["Bake for 35–40 minutes at 180°C/160°C fan.", 35, 40],
    ["Bake for 35 to 40 mins.", 35, 40],
    ["Simmer for 1½ hours.", 90, 90],
    ["Simmer for 1 1/2 hours.", 90, 90],
    ["Simmer for an hour and a half.", 90, 90],
    ["Simmer for 1 hour and 20 minutes.", 80, 80],
    ["Simmer for 1 hr 20 min.", 80, 80],
    ["Simmer for half an hour.", 30, 30],
    ["Simmer for three quarters of an hour.", 45, 45],
    ["Simmer for 45 min to 1 hour.", 45, 60],
    ["Simmer for between 20 and 25 minutes.", 20, 25],
    ["Simmer for twenty minutes.", 20, 20],
    ["Leave in a warm place until doubled, about an hour.", 60, 60],
    // a night as long as beans are soaked: 8 to 12 hours (household tables of cook-day tasks, common practice)
    ["Leave overnight.", 480, 720],
    ["Chill for 2 hours or overnight.", 120, 720],
    // a first rise at 27 °C, 60 to 90 min (a bread cookbook, section on rising)
    ["Leave the dough until doubled.", 60, 90],
    ["Simmer for 20 minutes, stirring every 5 minutes.", 20, 20],
    ["Cook for 3 minutes per side.", 6, 6],
    ["Rest for 30 seconds.", 1, 1],
    ["Serve with bread.", 0, 0],
  ])("%s", (sentence, low, high) => expect(spanOf(stepOf(sentence).step.handsOffMin)).toEqual([low, high]));

  it.each([
    ["Knead for 10 minutes.", 10, 0],
    ["Fry the onions for 8 to 10 minutes.", 9, 0],
    ["Simmer for 10 minutes, stirring constantly.", 10, 0],
    ["Fry for 5 minutes, then simmer for 20 minutes.", 5, 20],
  ])("and how long the hands are on it: %s", (sentence, on, off) => {
    const { step } = stepOf(sentence);
    expect([step.handsOnMin, spanOf(step.handsOffMin)[1]]).toEqual([on, off]);
  });

  it("is never read from a time that is another's", () => {
    for (const sentence of ["Take out of the fridge 30 minutes before serving.", "Cool. It keeps for 3 days in the fridge.", "After 20 minutes, turn the tray."]) expect(spanOf(stepOf(sentence).step.handsOffMin)[1], sentence).toBe(0);
  });
  it("is doubted where the recipe does not say it", () => {
    for (const sentence of ["Leave overnight.", "Simmer until thick.", "Leave in a warm place until doubled, about an hour."]) expect(stepOf(sentence).doubts.map(({ path }) => path), sentence).toContain("steps.0.handsOffMin");
    expect(stepOf("Bake for 35 minutes at 180°C.").doubts).toEqual([]);
  });
});

describe("the oven", () => {
  it.each([
    ["Bake for 10 minutes at 180°C/160°C fan/gas 4.", 180],
    ["Bake for 10 minutes at 200C/fan 180C/gas 6.", 200],
    // °C = (°F − 32) × 5/9 (UCUM): 350 °F is 176.7 °C
    ["Bake for 10 minutes at 350°F.", 177],
    // gas 4 is 350 °F (encyclopaedia article "Gas mark")
    ["Bake for 10 minutes at gas mark 4.", 177],
    // a fan oven is set 20 °C lower (New South Wales Health)
    ["Bake for 10 minutes in a fan oven at 160°C.", 180],
    ["Bake for 10 minutes at 400 degrees.", 204],
  ])("%s", (sentence, c) => expect(stepOf(sentence).step.needs.oven?.c).toBe(c));
  it("is remembered from the sentence that heats it, and is not the heat of oil or of the middle", () => {
    const read = readRecipeText("Cake\nIngredients\n1 egg\nMethod\nPreheat the oven to 190°C.\nMix.\nBake for 20 minutes.");
    expect(read.steps.map(({ step }) => step.needs.oven?.c)).toEqual([undefined, undefined, 190]);
    expect(stepOf("Heat the oil to 180°C and fry for 5 minutes.").step.needs.oven).toBeUndefined();
    expect(stepOf("Cook for 5 minutes to 74°C inside.").step.needs.oven).toBeUndefined();
  });
});

describe("the parts of a pasted recipe", () => {
  it("are told apart without headings", () => {
    const read = readRecipeText("Leek soup\nServes 4-6\n3 leeks\n500 ml stock\n1. Slice the leeks.\n2. Simmer with the stock for 20 minutes.\n3. Serve immediately.");
    expect([read.title, read.makes, read.ingredients, read.steps.length, read.steps[2]?.step.maxWaitMin]).toEqual(["Leek soup", { amount: 4, unit: "portions" }, ["3 leeks", "500 ml stock"], 3, 5]);
  });
  it.each([["Makes 12 muffins", 12, "muffins"], ["Makes about 2 litres", 2, "litres"], ["Yield: 1 dozen rolls", 12, "rolls"], ["Serves 4 to 6", 4, "portions"], ["6 servings", 6, "portions"], ["Makes two 9-inch pies", 2, "9-inch pies"]])("yield: %s", (line, amount, unit) =>
    expect(readRecipeText(`A dish\n${line}\nIngredients\n1 egg`).makes).toEqual({ amount, unit }));
  it("lose nothing of what was typed, up to marks, numbers and headings", () => {
    const words = "alpha beta gamma delta epsilon zeta eta theta iota kappa".split(" ");
    const text = `Title ${words[0]}\nabout ${words[1]}\nIngredients\n1 g ${words[2]}\nFor the ${words[3]}:\n${"x".repeat(500)} ${words[4]}\nMethod\nStir ${words[5]}.\nNotes\n${words[6]}`;
    const read = readRecipeText(text);
    const kept = JSON.stringify(read);
    for (const word of words.slice(0, 7)) expect(kept).toContain(word);
  });
  it("of linked data: times as ISO 8601 writes them (schema.org Duration; PT90M and PT1H30M are the same)", () => {
    expect(["PT90M", "PT1H30M", "P0DT1H30M", "pt1h30m", "20 min", "P", ""].map(isoMinutes)).toEqual([90, 90, 90, 90, null, null, null]);
    expect(readJsonLd({ "@type": "Person" })).toBeNull();
    expect(readJsonLd({ "@type": "Recipe", name: "A", recipeInstructions: "<p>Mix.</p><p>Bake for 10 minutes.</p>" })?.steps.length).toBe(2);
  });
});

describe("hostile text", () => {
  const pieces = ["1/", "½ ", "1-", "1 to ", "and ", "5 minutes ", "Bake 5 minutes. A ", "2 onions\n", "1. Bake for 5 minutes at 180C fan.\n", "<a", "<", "&amp", "<p>", "((((", "Serves 4\n", "{", "[", "\u202Eabc ", "🍅 ", "180C/", "a", "a.A ", "1 hour and ", "\n\n", "\t "];
  /** Counted by the reader itself: looks at signs and words, which grow with the text and not with its square. */
  it.each(pieces.map((piece) => [JSON.stringify(piece), piece]))("%s over and over is looked at in proportion to its length", (_, piece) => {
    const looksAt = (length: number): number => readRecipeText(`Dish\nIngredients\n1 egg\nMethod\n${piece.repeat(Math.ceil(length / piece.length))}`).looks;
    const [some, more] = [looksAt(20_000), looksAt(80_000)];
    expect(more / some).toBeLessThan(4.4);
    expect(more).toBeLessThan(12 * 80_000);
  });
  it("as linked data a thousand lists deep, or ten thousand wide, has an answer", () => {
    let deep: unknown = { "@type": "Recipe", name: "Deep" };
    for (let i = 0; i < 5_000; i++) deep = [deep];
    expect(readJsonLd(deep)?.title).toBe("Deep");
    let steps: unknown = "Stir.";
    for (let i = 0; i < 5_000; i++) steps = { "@type": "HowToSection", itemListElement: [steps] };
    expect(readJsonLd({ "@type": "Recipe", recipeInstructions: steps })?.steps.length).toBe(1);
    expect(readJsonLd({ "@type": "Recipe", recipeIngredient: Array.from({ length: 10_000 }, () => "1 egg") })?.ingredients.length).toBe(80);
  });
});
