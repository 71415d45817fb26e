/** The calendar's sentences, as the look writes them. Amounts of the first two are those of its mock pages. */
import { describe, expect, it } from "vitest";
import { answerWords, weekHeadline, type AnswerFacts, type WeekFacts } from "#shared/planning/outlook-words.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("a week", () => {
  const facts = (more: Partial<WeekFacts>): string =>
    plain(weekHeadline({ when: "coming", grams: { low: 8100, likely: 10_400, high: 13_200 }, eatsGrams: 6500, plannedGrams: 0, surplusGrams: 3900, picked: [], waiting: [], ...more }));

  it.each<[string, Partial<WeekFacts>, string]>([
    ["with a surplus", {}, "8.1 to 13.2 kg, most likely 10.4 kg. We eat about 6.5 kg fresh; 3.9 kg is over."],
    ["partly planned", { plannedGrams: 2000, surplusGrams: 1900 }, "8.1 to 13.2 kg, most likely 10.4 kg. We eat about 6.5 kg fresh, 2.0 kg is planned for; 1.9 kg is over."],
    ["wholly planned", { plannedGrams: 3900, surplusGrams: 0 }, "8.1 to 13.2 kg, most likely 10.4 kg. We eat about 6.5 kg fresh, 3.9 kg is planned for; nothing is over."],
    ["without", { grams: { low: 400, likely: 600, high: 900 }, eatsGrams: 600, surplusGrams: 0 }, "400 to 900 g, most likely 600 g. All of it is eaten fresh."],
    ["nobody eats", { eatsGrams: 0, surplusGrams: 10_400 }, "8.1 to 13.2 kg, most likely 10.4 kg. All of it is over."],
    ["that may bring something", { grams: { low: 0, likely: 0, high: 1400 }, eatsGrams: 0, surplusGrams: 0 }, "Up to 1.4 kg, most likely nothing."],
    ["that begins", { grams: { low: 0, likely: 600, high: 1400 }, eatsGrams: 600, surplusGrams: 0 }, "Up to 1.4 kg, most likely 600 g. All of it is eaten fresh."],
    ["without anything", { grams: { low: 0, likely: 0, high: 0 }, eatsGrams: 0, surplusGrams: 0 }, "Nothing ripens this week."],
    ["with what waits", { grams: { low: 0, likely: 0, high: 0 }, eatsGrams: 0, surplusGrams: 0, waiting: ["Leek", "Potato, early", "Potato, main crop"] }, "Nothing has to be picked this week. Ready when wanted: leeks and potatoes."],
    ["running", { when: "running", picked: [{ name: "Courgette", grams: 1200 }] }, "8.1 to 13.2 kg, most likely 10.4 kg. 1.2 kg of it is picked. We eat about 6.5 kg fresh; 3.9 kg is over."],
    ["gone by", { when: "past", picked: [{ name: "Chard, leaf beet", grams: 380 }, { name: "Courgette", grams: 3240 }] }, "Picked: courgettes 3.2 kg, chard 380 g."],
    ["gone by, empty", { when: "past", picked: [{ name: "Courgette", grams: 0 }] }, "Nothing was picked."],
  ])("%s", (_, more, words) => expect(facts(more)).toBe(words));
});

describe("the page's answer", () => {
  const answer = (more: Partial<AnswerFacts>) =>
    answerWords({
      today: "2027-07-26", missing: [], from: null, overUntil: "2027-10-03", overGrams: 58_700, ripensUntil: "2027-12-05", pickedGrams: null,
      overBy: [{ name: "Tomato, large", grams: 20_000 }, { name: "Courgette", grams: 15_000 }, { name: "French bean, bush", grams: 12_000 }, { name: "Chard, leaf beet", grams: 11_700 }], ...more,
    });

  it("says how much is over, until when, and of what", () => {
    const { headline, headlineOver } = answer({});
    expect(plain(headline)).toBe("From now to 3 October the garden gives about 59 kg more than we eat, most of it tomatoes and courgettes.");
    expect(plain(headlineOver)).toBe("59 kg more than we eat");
    expect(headline).toContain(headlineOver);
  });
  it("names one crop where one makes most of it, and adds sowings of one kind together", () => {
    const overBy = [{ name: "French bean, bush", grams: 4000 }, { name: "Courgette", grams: 5000 }, { name: "French bean, climbing", grams: 4000 }];
    expect(plain(answer({ overBy }).headline)).toMatch(/, most of it French beans\.$/);
    expect(plain(answer({ overBy: [{ name: "Courgette", grams: 5000 }] }).headline)).toMatch(/, all of it courgettes\.$/);
  });
  it("says above all where three crops are not most of it", () => {
    const overBy = ["Courgette", "Tomato, large", "Pea", "Chard, leaf beet", "Rocket", "Cucumber", "Okra"].map((name) => ({ name, grams: 1000 }));
    expect(plain(answer({ overBy }).headline)).toMatch(/, above all chard, courgettes and cucumbers\.$/);
  });
  it("is calm where nothing is", () => {
    expect(answer({ overUntil: null, overGrams: 200 })).toEqual({ headline: "The garden gives about what we eat from now to 5\u00a0December.", headlineOver: "" });
    expect(answer({ overUntil: null, ripensUntil: null }).headline).toBe("Nothing that must be picked ripens in these weeks.");
  });
  it("speaks of weeks to come and of weeks gone by", () => {
    expect(plain(answer({ from: "2028-01-03", overUntil: "2028-05-07" }).headline)).toMatch(/^From 3 January 2028 to 7 May 2028 the garden gives/);
    expect(plain(answer({ pickedGrams: 84_300 }).headline)).toBe("84 kg came out of the garden in these weeks.");
  });
  it.each([
    [["place", "weather", "beds", "sowings"], /^Say where the garden lies and how warm/],
    [["beds", "sowings"], /^Make a bed/],
    [["sowings"], /^Write down what you sowed/],
    [["place"], /^From now to/],
  ] as const)("with %s missing says what to do first", (missing, words) => {
    expect(answer({ missing: [...missing] }).headline).toMatch(words);
  });
});
