/** Steps moved by hand: who goes along, which hands and burners they get, and what the referee says of it. Days by hand, then any plan. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CookDay, TimetableStep } from "#shared/contracts/cook-days.ts";
import type { Counter } from "#shared/contracts/counter.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { agreedPlan } from "#web/pages/cook-day/agreed.ts";
import { refusalWords } from "#web/pages/cook-day/move-words.ts";
import { andAllAfter, minutesToAfter, nameOf, renumbered, shifted } from "#web/pages/cook-day/moves.ts";
import { refereed } from "#web/pages/cook-day/referee.ts";

const step = (dish: string, name: string, startMin: number, handsOnMin: number, handsOffMin = 0, rest: Partial<TimetableStep> = {}): TimetableStep => ({ dish, step: name, text: `${name} it`, startMin, handsOnMin, handsOffMin, ...(handsOnMin > 0 ? { cook: 1 } : {}), ...rest });

/** Bread: knead 0–10, rises to 70, shaped within 15 minutes, 10 min of hands. Soup: chopped 10–25. One cook, from 10:00. */
const PLAN = [step("bread", "knead", 0, 10, 60), step("soup", "chop", 10, 15), step("bread", "shape", 70, 10)];
const DAY: CookDay = { id: "d", on: "2027-08-01", startsAt: "10:00", cooks: 1, kitchen: { ovens: [], burners: 2 }, dishes: [{ recipeId: "bread", title: "Bread", batches: 1 }, { recipeId: "soup", title: "Soup", batches: 1 }], unavailable: [] };
const recipe = (id: string, steps: readonly Partial<Recipe["steps"][number]>[]): Recipe =>
  ({ id, title: id, holds: [], limits: [], ingredients: [], steps: steps.map((one) => ({ text: `${one.id} it`, handsOffMin: 0, needs: {}, after: [], ...one })) }) as unknown as Recipe;
const BOOK = [recipe("bread", [{ id: "knead", handsOnMin: 10, handsOffMin: 60 }, { id: "shape", handsOnMin: 10, after: ["knead"], maxWaitMin: 15 }]), recipe("soup", [{ id: "chop", handsOnMin: 15 }])];
const faults = (steps: readonly TimetableStep[]): readonly string[] => refereed(DAY, BOOK, renumbered(steps)).faults;

describe("a step moved by hand", () => {
  const [knead, chop, shape] = PLAN as [TimetableStep, TimetableStep, TimetableStep];

  it("may go where hands are free and every wait is kept", () => {
    expect(faults(PLAN)).toEqual([]);
    expect(faults(shifted(PLAN, [chop], 30))).toEqual([]);
    expect(faults(shifted(PLAN, [shape], 15))).toEqual([]);
  });

  it("is refused with the reason: hands, order, longest wait", () => {
    expect(faults(shifted(PLAN, [chop], -5)).join(" ")).toMatch(/need hands, and one cook is there/);
    expect(faults(shifted(PLAN, [shape], -5)).join(" ")).toMatch(/starts at 11:05, before .*knead it.* is done at 11:10/);
    expect(faults(shifted(PLAN, [shape], 20)).join(" ")).toMatch(/20 min after .*it may wait 15 min at most/);
  });

  it("stands against every plan when its recipe is gone", () => {
    expect(refereed(DAY, BOOK.slice(0, 1), PLAN).faults.join(" ")).toMatch(/not in this day/);
  });

  it("takes along what begins with it or after it, and nothing before", () => {
    expect(andAllAfter(PLAN, [chop]).map((one) => one.step)).toEqual(["chop", "shape"]);
    expect(shifted(PLAN, andAllAfter(PLAN, [chop]), 5).map(({ startMin }) => startMin)).toEqual([0, 15, 75]);
  });

  it("goes straight after another where that one ends, hands-off time included", () => {
    expect(minutesToAfter([chop], [knead])).toBe(60);
    expect(minutesToAfter([shape], [chop])).toBe(-45);
  });

  it("says two reasons at most, steps by their first words", () => {
    const words = refusalWords(["“Shape into two tins; second rise” (Bread) waits.", "B.", "C.", "D."]);
    expect(words).toBe("Not moved. “Shape into two tins” (Bread) waits. B. 2 more things stand against it.");
  });
});

describe("the plan agreed on", () => {
  const counter = (change: Partial<Counter>): Counter => ({ plan: { endMin: 80, passed: ["Late."], notes: ["Note."] }, stale: false, steps: PLAN, dishes: [], cautions: [], ...change }) as unknown as Counter;

  it("stands in for the timetable until the day is changed, and claims nothing that nobody proved", () => {
    expect(agreedPlan(counter({}))).toMatchObject({ status: "feasible", lowerBoundMin: null, endMin: 80, handsOnMin: 35, oneAfterAnotherMin: 95, notes: ["Late.", "Note."] });
    expect([agreedPlan(counter({ stale: true })), agreedPlan(counter({ plan: null }))]).toEqual([null, null]);
  });
});

describe("hands and burners after a move", () => {
  it("are never given twice at once, and stay where they can", () => {
    let met = 0;
    const steps = fc.array(fc.record({ startMin: fc.integer({ min: 0, max: 60 }), handsOnMin: fc.integer({ min: 1, max: 20 }), handsOffMin: fc.integer({ min: 0, max: 20 }), cook: fc.integer({ min: 1, max: 3 }), burner: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }) }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(steps, (drawn) => {
        const before = drawn.map(({ startMin, handsOnMin, handsOffMin, cook, burner }, i) => step("d", String(i), startMin, handsOnMin, handsOffMin, { cook, ...(burner === undefined ? {} : { burner }) }));
        const after = renumbered(before);
        const meet = (a: TimetableStep, b: TimetableStep, end: (one: TimetableStep) => number): boolean => a.startMin < end(b) && b.startMin < end(a);
        const handsEnd = (one: TimetableStep): number => one.startMin + one.handsOnMin;
        after.forEach((a, i) => {
          after.slice(i + 1).forEach((b) => {
            if (!meet(a, b, handsEnd)) return;
            met++;
            expect(a.cook, `${nameOf(a)} and ${nameOf(b)}`).not.toBe(b.cook);
          });
        });
        // never more numbers than there is work at once
        const most = Math.max(...after.map((a) => after.filter((b) => b.startMin <= a.startMin && a.startMin < handsEnd(b)).length));
        expect(Math.max(...after.map(({ cook }) => cook ?? 0))).toBeLessThanOrEqual(Math.max(most, ...before.map(({ cook }) => cook ?? 0)));
      }),
      { numRuns: 200, seed: 7 },
    );
    expect(met).toBeGreaterThan(500);
  });
});
