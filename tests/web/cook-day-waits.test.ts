/** How long a dish may wait, drawn beside the lanes; oven heat for each kind of dial. */
import { afterEach, describe, expect, it } from "vitest";
import type { Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";
import { waitsOf } from "#web/pages/cook-day/waits.ts";
import { ovenHeat } from "#web/parts/heat.ts";
import { unbroken } from "#web/parts/written.ts";
import { units } from "#web/units.ts";

const step = (name: string, startMin: number, handsOnMin: number, handsOffMin: number, rest: Partial<TimetableStep> = {}): TimetableStep => ({ dish: "a", step: name, text: name, startMin, handsOnMin, handsOffMin, cook: 1, ...rest });
const planOf = (steps: readonly TimetableStep[]): Timetable => ({
  status: "optimal",
  endMin: 200,
  lowerBoundMin: 200,
  endSpread: null,
  handsOnMin: 0,
  oneAfterAnotherMin: 0,
  longestStandMin: null,
  steps: [...steps],
  dishes: [{ dish: "a", letter: "A", title: "Bread", batches: 1 }],
  conflicts: [],
  cautions: [],
  notes: [],
});
const bread = [{ id: "a", steps: [{ id: "mix", after: [] }, { id: "fold", after: ["mix"] }, { id: "bake", after: ["fold", "mix"] }] }];

describe("a wait", () => {
  it("runs from the end of what goes before to the latest minute, and says where the plan goes on", () => {
    const plan = planOf([step("mix", 0, 10, 30), step("fold", 50, 5, 20, { mustStartByMin: 60 }), step("bake", 75, 2, 30, { mustStartByMin: 90 })]);
    expect(waitsOf(plan, bread)).toEqual([
      { fromMin: 40, atMin: 50, toMin: 60, letter: "A", number: 2 },
      { fromMin: 75, atMin: 75, toMin: 90, letter: "A", number: 3 },
    ]);
  });

  it("is not drawn where the step goes straight on, where it may wait long, where it goes in loads, where nothing limits it", () => {
    const straight = step("fold", 40, 5, 20, { mustStartByMin: 40 });
    const long = step("fold", 40, 5, 20, { mustStartByMin: 56 });
    const loads = [step("fold", 40, 5, 0, { load: 1, mustStartByMin: 45 }), step("bake", 46, 1, 0), step("fold", 47, 5, 0, { load: 2, mustStartByMin: 50 })];
    for (const steps of [[straight], [long], loads, [step("fold", 40, 5, 0)]]) expect(waitsOf(planOf([step("mix", 0, 10, 30), ...steps]), bread)).toEqual([]);
  });

  it("starts where the step does when no recipe is at hand", () => {
    expect(waitsOf(planOf([step("fold", 50, 5, 20, { mustStartByMin: 60 })]), [])).toEqual([{ fromMin: 50, atMin: 50, toMin: 60, letter: "A", number: 1 }]);
  });
});

describe("oven heat", () => {
  afterEach(() => {
    units.value = "metric";
  });

  // the pairs of the NIST oven words, cool 200 °F / 90 °C to very hot 500 °F / 260 °C
  it("is said in the steps of a US dial", () => {
    units.value = "us";
    expect([90, 120, 150, 160, 180, 190, 200, 230, 260].map(ovenHeat)).toEqual([200, 250, 300, 325, 350, 375, 400, 450, 500].map((f) => `${f}\u00a0°F`));
    expect(ovenHeat(60)).toBe("140\u00a0°F");
  });

  // British cookers: gas 2 is 300 °F, 4 is 350 °F, 5 is 375 °F, 9 is 475 °F; from the common table, no standard
  it("has its gas mark in an imperial kitchen, where there is one", () => {
    units.value = "imperial";
    expect([149, 177, 191, 246].map(ovenHeat)).toEqual([[300, 2], [350, 4], [375, 5], [475, 9]].map(([f, mark]) => `${f}\u00a0°F (gas\u00a0${mark})`));
    expect([60, 290].map(ovenHeat)).toEqual(["140\u00a0°F", "550\u00a0°F"]);
  });

  it("is in °C else", () => {
    expect(ovenHeat(190)).toBe("190\u00a0°C");
  });
});

describe("written words", () => {
  it("keep a number and its unit on one line, and nothing else", () => {
    expect(unbroken("Cool to 21 °C within 2 hours, 1½ cups, 5 cm deep; 4 litres to the half kilo")).toBe("Cool to 21\u00a0°C within 2\u00a0hours, 1½\u00a0cups, 5\u00a0cm deep; 4\u00a0litres to the half kilo");
    expect(unbroken("8 medium onions, step 4 gets 2 goes, 3 men")).toBe("8 medium onions, step 4 gets 2 goes, 3 men");
  });
});
