import { expect, it } from "vitest";
import { isMeasure, madeWords } from "#shared/kernel/made-words.ts";

// plural forms as in any English dictionary
it.each([
  [1, "jars", "1 jar"],
  [3, "jar", "3 jars"],
  [2, "jars of 500 ml", "2 jars of 500 ml"],
  [1, "jars of 500 ml", "1 jar of 500 ml"],
  [1, "boxes", "1 box"],
  [0.5, "portions", "0.5 portions"],
  [1, "loaves", "1 loaf"],
  [2, "loaf", "2 loaves"],
  [4, "shelves", "4 shelves"],
  [1, "dishes", "1 dish"],
  [2, "patty", "2 patties"],
  [2, "glass", "2 glasses"],
  [1.25, "kg", "1.25 kg"],
  [900, "g", "900 g"],
])("%d of %s is %s", (amount, unit, words) => {
  expect(madeWords(amount, unit).replaceAll("\u00a0", " ")).toBe(words);
});

it("tells what is weighed from what is counted", () => {
  expect(["g", "ml of syrup", "jars", "glasses", "litres"].map(isMeasure)).toEqual([true, true, false, false, false]);
});
