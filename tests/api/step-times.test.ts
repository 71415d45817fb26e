/** Times of a step that cannot mean anything are refused, and those that can are taken. */
import { expect, it } from "vitest";
import { stepFaults } from "#server/recipes/check-steps.ts";

const step = (more: object) => ({ id: "boil", text: "Boil", handsOnMin: 4, handsOffMin: 6, needs: {}, after: [], ...more });
const faults = (more: object) => stepFaults({ steps: [step(more)] }).map((fault) => fault.path);

it.each([
  [{ maxWaitMin: 30 }, "steps.0.maxWaitMin"],
  [{ startAtMin: 10, endByMin: 15 }, "steps.0.endByMin"],
  [{ notBeforeMin: 500, endByMin: 100 }, "steps.0.endByMin"],
  [{ endByMin: 9 }, "steps.0.endByMin"],
  [{ startAtMin: 10, notBeforeMin: 20 }, "steps.0.startAtMin"],
])("%j is refused", (more, path) => {
  expect(faults(more)).toEqual([path]);
});

it.each([{ startAtMin: 10, endByMin: 20 }, { notBeforeMin: 10, endByMin: 20 }, { endByMin: 10 }, { endByMin: 9, handsOffMin: { low: 5, likely: 6, high: 9 } }])("%j is taken", (more) => {
  expect(faults(more)).toEqual([]);
});
