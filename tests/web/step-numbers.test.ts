/** Steps come, go and change places; what names them by number follows. Held against the ids behind the numbers. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emptyStep, recipeFields, type RecipeFields } from "#web/pages/recipes/recipe-form.ts";
import { numbersIn, pairsIn } from "#web/pages/recipes/read-recipe.ts";
import { movedStep, withoutStep, withStep } from "#web/pages/recipes/step-numbers.ts";

/** wash → cut → cook → box → cool, the pot from cook to box, cold two hours after cook. */
const FIVE: RecipeFields = {
  ...recipeFields(null),
  steps: [
    { ...emptyStep("wash", ""), text: "wash" },
    { ...emptyStep("cut", "1"), text: "cut" },
    { ...emptyStep("cook", "1, 2"), text: "cook", within: "5 after 2, 20 after 1" },
    { ...emptyStep("box", "3"), text: "box", within: "15" },
    { ...emptyStep("cool", "4"), text: "cool" },
  ],
  holds: [{ what: "pots", from: "3", to: "4" }],
  limits: [{ maxMin: "120", from: "3", to: "5", why: "hot food" }],
};
const afters = (fields: RecipeFields): Record<string, string> => Object.fromEntries(fields.steps.map(({ id, after }) => [id, after]));

describe("a step that goes", () => {
  it("leaves its followers after what it came after, and moves the numbers behind it", () => {
    const left = withoutStep(FIVE, 1);
    expect(afters(left)).toEqual({ wash: "", cook: "1", box: "2", cool: "3" });
    expect(left.steps[1]?.within).toBe("20 after 1");
    expect(left.steps[2]?.within).toBe("15");
    expect(left.holds).toEqual([{ what: "pots", from: "2", to: "3" }]);
    expect(left.limits).toEqual([{ maxMin: "120", from: "2", to: "4", why: "hot food" }]);
  });

  it("does not move a time limit or a pot that began or ended with it: the number has to be said anew", () => {
    expect(withoutStep(FIVE, 4).limits).toEqual([{ maxMin: "120", from: "3", to: "", why: "hot food" }]);
    const left = withoutStep(FIVE, 2);
    expect(left.limits[0]).toMatchObject({ from: "", to: "4" });
    expect(left.holds[0]).toMatchObject({ from: "", to: "3" });
    expect(afters(left)).toEqual({ wash: "", cut: "1", box: "1, 2", cool: "3" });
  });
});

describe("a step that moves", () => {
  it("takes its number along", () => {
    const moved = movedStep(FIVE, 1, -1);
    expect(moved.steps.map(({ id }) => id)).toEqual(["cut", "wash", "cook", "box", "cool"]);
    expect(afters(moved)).toEqual({ cut: "2", wash: "", cook: "1, 2", box: "3", cool: "4" });
    expect(moved.steps[2]?.within).toBe("5 after 1, 20 after 2");
  });

  it("stays at either end", () => {
    expect(movedStep(FIVE, 0, -1)).toBe(FIVE);
    expect(movedStep(FIVE, 4, 1)).toBe(FIVE);
  });
});

it("a new step comes last, after the one before it, with an id of its own", () => {
  const more = withStep({ ...FIVE, steps: [...FIVE.steps, emptyStep("step-7", "5")] });
  expect(more.steps.at(-1)).toMatchObject({ id: "step-8", after: "6" });
  expect(withStep({ ...FIVE, steps: [] }).steps).toMatchObject([{ id: "step-1", after: "" }]);
});

it("what cannot be read is left as it was typed", () => {
  const typed = { ...FIVE, steps: FIVE.steps.map((step, i) => (i === 3 ? { ...step, after: "the third", within: "soon after" } : step)), holds: [{ what: "pots" as const, from: "third", to: "99" }] };
  const left = withoutStep(typed, 0);
  expect(left.steps[2]).toMatchObject({ after: "the third", within: "soon after" });
  expect(left.holds).toEqual([{ what: "pots", from: "third", to: "99" }]);
});

describe("for any recipe", () => {
  const recipe = fc.integer({ min: 2, max: 9 }).chain((n) =>
    fc.record({
      steps: fc.tuple(...Array.from({ length: n }, (_, i) => fc.subarray(Array.from({ length: i }, (__, k) => k + 1)).map((after) => ({ ...emptyStep(`s${i}`, after.join(", ")), within: after.length > 0 ? after.map((k) => `${k * 10} after ${k}`).join(", ") : "" })))),
      hold: fc.tuple(fc.integer({ min: 1, max: n }), fc.integer({ min: 1, max: n })),
      at: fc.integer({ min: 0, max: n - 1 }),
      by: fc.constantFrom<-1 | 1>(-1, 1),
    }),
  );
  const fieldsOf = ({ steps, hold }: { steps: RecipeFields["steps"]; hold: readonly [number, number] }): RecipeFields => ({ ...recipeFields(null), steps, holds: [{ what: "pots", from: String(hold[0]), to: String(hold[1]) }] });
  /** By ids: who comes after whom with which wait, and what the pot stands through. */
  const meaning = ({ steps, holds }: RecipeFields) => {
    const id = (n: number): string => steps[n - 1]?.id ?? "";
    return {
      after: Object.fromEntries(steps.map((step) => [step.id, (numbersIn(step.after) ?? []).map(id).sort()])),
      within: Object.fromEntries(steps.map((step) => [step.id, step.within === "" ? [] : (pairsIn(step.within) ?? []).map(({ min, step: n }) => `${min} ${id(n)}`).sort()])),
      pot: holds.map(({ from, to }) => [id(Number(from)), id(Number(to))]),
    };
  };

  it("moving a step changes no meaning", () => {
    let moved = 0;
    fc.assert(
      fc.property(recipe, (one) => {
        const fields = fieldsOf(one);
        const after = movedStep(fields, one.at, one.by);
        expect(meaning(after)).toEqual(meaning(fields));
        if (after !== fields) moved++;
      }),
      { numRuns: 400 },
    );
    expect(moved).toBeGreaterThan(200);
  });

  it("removing one keeps every order among those that stay", () => {
    let inherited = 0;
    fc.assert(
      fc.property(recipe, (one) => {
        const fields = fieldsOf(one);
        const gone = fields.steps[one.at]?.id ?? "";
        const [before, left] = [meaning(fields), meaning(withoutStep(fields, one.at))];
        for (const [id, after] of Object.entries(left.after)) {
          const had = before.after[id] ?? [];
          const wanted = had.includes(gone) ? [...new Set([...had.filter((other) => other !== gone), ...(before.after[gone] ?? [])])] : had;
          expect(after).toEqual(wanted.sort());
          if (had.includes(gone) && (before.after[gone] ?? []).length > 0) inherited++;
          expect(left.within[id]).toEqual((before.within[id] ?? []).filter((wait) => !wait.endsWith(` ${gone}`)));
        }
        expect(left.pot).toEqual(before.pot.map((ends) => ends.map((id) => (id === gone ? "" : id))));
      }),
      { numRuns: 400 },
    );
    expect(inherited).toBeGreaterThan(50);
  });
});
