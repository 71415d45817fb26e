/** Whether a food can be kept: the question that is asked, and the picture of how long. */
import { describe, expect, it } from "vitest";
import type { KeepingFoods } from "#shared/contracts/keeping.ts";
import { askedOf, inAddress, keepingFields, metresIn, sentenceOf, type KeepingFields } from "#web/pages/keeping/keeping-form.ts";
import { daysWords, layOutKeeps } from "#web/pages/keeping/keeps-bars.ts";

const FOODS: KeepingFoods = [{ food: "tomato", name: "Tomato, large", kind: "crop", ways: ["bottle"], jars: ["pint"], canners: ["boiling-water"] }];
const fields = (change: Partial<KeepingFields>): KeepingFields => ({ food: "", way: "", jar: "", canner: "", altitude: "", ...change });

describe("the question", () => {
  it("is none without a food, wants a way, and names the crop behind a name", () => {
    expect(askedOf(fields({}), FOODS)).toEqual({ kind: "nothing" });
    expect(askedOf(fields({ food: "Tomato, large" }), FOODS)).toMatchObject({ kind: "wrong", faults: [{ field: "way" }] });
    expect(askedOf(fields({ food: "tomato, LARGE", way: "bottle", jar: "pint", altitude: "1500 ft" }), FOODS)).toEqual({ kind: "ask", query: { food: "tomato", way: "bottle", jar: "pint", altitudeM: 457 } });
  });

  it("leaves jar and canner out where none is used, and passes on what no list knows", () => {
    expect(askedOf(fields({ food: "garlic in oil", way: "freeze", jar: "pint", canner: "boiling-water" }), FOODS)).toEqual({ kind: "ask", query: { food: "garlic in oil", way: "freeze" } });
  });

  it("refuses a height that is none, or that no kitchen has", () => {
    expect(askedOf(fields({ food: "pea", way: "bottle", altitude: "high" }), FOODS)).toMatchObject({ kind: "wrong", faults: [{ field: "altitude" }] });
    expect(askedOf(fields({ food: "pea", way: "bottle", altitude: "12000" }), FOODS)).toMatchObject({ kind: "wrong", faults: [{ field: "altitude" }] });
  });

  it("stands in the address and comes back from it", () => {
    const asked = fields({ food: "pea", way: "freeze" });
    const query = new URLSearchParams(Object.entries(inAddress(asked)).flatMap(([name, value]) => (value === null ? [] : [[name, value] as [string, string]])));
    expect(keepingFields(query)).toEqual(asked);
  });

  // a foot is 0.3048 m exactly: the first band of the guide ends at 1,000 ft, 304.8 m
  it("reads feet and metres", () => {
    expect([metresIn("1000 ft"), metresIn("450 m"), metresIn("450"), metresIn("4,5"), metresIn("up there")]).toEqual([305, 450, 450, 4.5, null]);
  });
});

describe("the sentence", () => {
  const never = [{ text: "Never can plain squash", source: { id: "s", text: "s" } }];
  it("never lets a yes stand alone where something must not be done", () => {
    expect(sentenceOf({ answer: "Yes, by the process below.", may: true, never })).toBe("Yes, by the process below. First read what must never be done.");
    expect(sentenceOf({ answer: "Yes, by the process below.", may: true, never: [] })).toBe("Yes, by the process below.");
    expect(sentenceOf({ answer: "No.", may: false, never })).toBe("No.");
  });
});

describe("how long it keeps", () => {
  const source = { id: "s", text: "s" };
  it("has its best before its end of safety, inside the plate", () => {
    const { bars, marks } = layOutKeeps([{ place: "fridge", best: { low: 3, high: 5 }, safe: { low: 7, high: 7 }, text: "", source }, { place: "freezer", best: { low: 240, high: 360 }, safe: null, text: "", source }], 100, 900, 80);
    const [fridge, freezer] = bars;
    expect([fridge?.bestLow, fridge?.bestHigh, fridge?.safe].every((x, i, all) => (x ?? 0) > (i === 0 ? 100 : (all[i - 1] ?? 0)))).toBe(true);
    expect(freezer).toMatchObject({ safe: null });
    expect(freezer?.bestHigh).toBeLessThanOrEqual(900);
    expect(marks.length).toBeGreaterThanOrEqual(2);
    expect(marks.every(({ x }, i) => x - (marks[i - 1]?.x ?? 100) >= 79.9)).toBe(true);
  });

  it("is marked in days, weeks, months and years", () => {
    expect([1, 5, 7, 14, 30, 180, 365, 730].map(daysWords)).toEqual(["1 day", "5 days", "1 week", "2 weeks", "1 month", "6 months", "1 year", "2 years"]);
  });
});
