/** Hands-on work by batches, by the rule of loads: a step holding 8 of 20 is done three times, of two batches (40) five times. */
import { expect, it } from "vitest";
import { handsOnMinOf } from "#shared/kernel/recipe.ts";

it("counts loads by batches and other steps once", () => {
  const steps = [{ handsOnMin: 10 }, { handsOnMin: 4, loads: { holds: 8, of: 20 } }, { handsOnMin: 6, loads: { holds: 1, of: 1 } }];
  expect(handsOnMinOf(steps, 1)).toBe(10 + 3 * 4 + 6); // ⌈20 / 8⌉ = 3
  expect(handsOnMinOf(steps, 2)).toBe(10 + 5 * 4 + 2 * 6); // ⌈40 / 8⌉ = 5
});
