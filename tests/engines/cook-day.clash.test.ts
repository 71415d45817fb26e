/**
 * Days that cannot be. The worked one was refuted by two other programs, which also found the set of its limits that clash and
 * the least changes that help (tests/cases/cook-day/supper-at-seven-impossible.json: oneMinimalConflict, waysOut). Every way that
 * the scheduler says is carried out here by hand and solved again.
 */
import { describe, expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayInput, type DayDish } from "#shared/engines/cook-day/index.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";
import { CASES, readCookDay } from "#tests/support/cook-days.ts";

const BUDGET = { schedules: 20_000, seed: 1 };
const { day } = readCookDay(`${CASES}/supper-at-seven-impossible.json`);
const plan = scheduleCookDay(day, BUDGET);
const words = plan.conflicts.map((clash) => clash.text).join(" ");
const ways = plan.conflicts.flatMap((clash) => clash.ways);

/** What a way asks for, done to the day itself. */
const BY_HAND: Record<string, (from: CookDayInput) => CookDayInput> = {
  "Move “To the table” (Onion tart for supper) and “To the table” (Roast potatoes for supper) 10 min later.": (from) => withSteps(from, (step) => (step.startAtMin === undefined ? step : { ...step, startAtMin: step.startAtMin + 10 })),
  "Be away from 1 h 25 min after the start instead of 1 h 15 min after the start.": (from) => ({ ...from, unavailable: [{ what: "cook", fromMin: 85, toMin: 105 }] }),
  "Be back by 1 h 35 min after the start instead of 1 h 45 min after the start.": (from) => ({ ...from, unavailable: [{ what: "cook", fromMin: 75, toMin: 95 }] }),
  "Let “Bake blind” (Onion tart for supper) wait 30 min instead of 20 min.": (from) => withSteps(from, (step) => (step.id === "tart.blind" ? { ...step, maxWaitMin: 30 } : step)),
  "Work with 2 pairs of hands.": (from) => ({ ...from, kitchen: { ...from.kitchen, cooks: 2 } }),
  "Leave out Roast potatoes for supper.": (from) => ({ ...from, dishes: from.dishes.filter((dish) => dish.id !== "potatoes") }),
  "Leave out Onion tart for supper.": (from) => ({ ...from, dishes: from.dishes.filter((dish) => dish.id !== "tart") }),
};

describe("supper at seven, impossible", () => {
  test("is refused as an answer, with a clash and no plan", () => {
    expect(plan).toMatchObject({ status: "infeasible", endMin: null, lowerBoundMin: null, endSpread: null, longestStandMin: null, steps: [] });
    expect(plan.conflicts.length).toBeGreaterThan(0);
  });

  test("names the limits that two other programs found to clash", () => {
    for (const limit of [
      "“Bake blind” within 20 min of the end of “Roll out and line the tin”",
      "“Fill with onions and custard” within 20 min of the end of “Bake blind”",
      "“Bake” within 10 min of the end of “Fill with onions and custard”",
      "“To the table” within 15 min of the end of “Bake”",
      "“Roast in hot fat” within 20 min of the end of “Peel and parboil”",
      "“To the table” within 20 min of the end of “Roast in hot fat”",
      "“To the table” at 3 h after the start",
      "“To the table” at 3 h 5 min after the start",
      "cook away from 1 h 15 min after the start to 1 h 45 min after the start (fetching a child)",
    ]) expect(words).toContain(limit);
    expect(words).not.toMatch(/Bean stew|Apple compote|burner|sink|pot\b/);
  });

  test("says the ways out that were found before, and each of them makes a plan possible", () => {
    expect([...ways].sort()).toEqual(Object.keys(BY_HAND).sort());
    for (const way of ways) {
      const changed = (BY_HAND[way] as (from: CookDayInput) => CookDayInput)(day);
      const answer = scheduleCookDay(changed, BUDGET);
      expect([way, answer.status]).toEqual([way, "optimal"]);
      expect(checkCookDay(changed, answer.steps).faults).toEqual([]);
    }
  });

  test("no way is larger than it must be: five minutes less does not help", () => {
    const less: ((from: CookDayInput) => CookDayInput)[] = [
      (from) => withSteps(from, (step) => (step.startAtMin === undefined ? step : { ...step, startAtMin: step.startAtMin + 5 })),
      (from) => ({ ...from, unavailable: [{ what: "cook", fromMin: 80, toMin: 105 }] }),
      (from) => ({ ...from, unavailable: [{ what: "cook", fromMin: 75, toMin: 100 }] }),
      (from) => withSteps(from, (step) => (step.id === "tart.blind" ? { ...step, maxWaitMin: 25 } : step)),
    ];
    for (const change of less) expect(scheduleCookDay(change(day), BUDGET).status).toBe("infeasible");
  });

  test("the ends after the changes are those that were proved with the case", () => {
    const ends = [205, 215, 205, 200, 195];
    const changes = ["Let “Bake blind”", "Move “To", "Be away", "Be back", "Leave out Roast"].map((start) => Object.keys(BY_HAND).find((way) => way.startsWith(start)) as string);
    expect(changes.map((way) => scheduleCookDay((BY_HAND[way] as (from: CookDayInput) => CookDayInput)(day), BUDGET).endMin)).toEqual(ends);
  });

  test("never shows a step's id", () => {
    for (const text of [words, ...ways]) expect(text).not.toMatch(/[a-z]+\.[a-z]+/);
  });

  test("speaks by the clock where the day says when it begins", () => {
    const { conflicts } = scheduleCookDay({ ...day, startsAtMin: 16 * 60 }, BUDGET);
    expect(conflicts[0]?.text).toContain("A cook away from 17:15 to 17:45 (fetching a child)");
    expect(conflicts[0]?.ways).toContain("Be back by 17:35 instead of 17:45.");
  });
});

describe("days that no kitchen could have, or this one cannot", () => {
  const kitchen = { cooks: 1, ovens: [{ trays: 2, preheatMin: 10, changeMin: 5 }], burners: 2, pots: 1, sinks: 1 };
  const one = (steps: RecipeStep[], more: Partial<CookDayInput> = {}, dish: Partial<DayDish> = {}): CookDayInput => ({
    kitchen, endByMin: null, unavailable: [], ...more, dishes: [{ id: "loaf", title: "Loaf", batches: 1, holds: [], limits: [], steps, ...dish }],
  });
  const mix: RecipeStep = { id: "m", text: "Mix and let rise", handsOnMin: 10, handsOffMin: 720, needs: {}, after: [] };
  const bake: RecipeStep = { id: "b", text: "Bake", handsOnMin: 5, handsOffMin: 40, needs: { oven: { c: 220, trays: 1 } }, after: ["m"] };

  test("a twelve-hour rise before a two-hour deadline: the length is named, and the hour that would do", () => {
    // 10 + 720 + 5 + 40 = 775 min = 12 h 55 min, counted by hand.
    expect(scheduleCookDay(one([mix, bake], { endByMin: 120 }), BUDGET)).toMatchObject({
      status: "infeasible",
      conflicts: [{ text: "All done by 2 h after the start. “Mix and let rise” (Loaf) takes 12 h 10 min. All that together cannot be had.", ways: ["Have all done by 12 h 55 min after the start instead of 2 h after the start."] }],
    });
  });

  test("steps that wait for each other are told as such, not searched for ever", () => {
    const { status, conflicts } = scheduleCookDay(one([{ ...mix, after: ["b"] }, bake]), BUDGET);
    expect(status).toBe("infeasible");
    expect(conflicts[0]?.text).toMatch(/“Bake” \(Loaf\) takes 45 min and comes before “Mix and let rise” \(Loaf\)/);
  });

  test("two dishes too large for the oven and a deadline: every way names all the changes that it takes", () => {
    const large = { ...bake, needs: { oven: { c: 220, trays: 3 } } };
    const { conflicts } = scheduleCookDay(one([mix, large], { endByMin: 120 }), BUDGET);
    expect(conflicts).toHaveLength(2);
    expect(conflicts[0]?.ways).toEqual(["Have all done by 12 h 55 min after the start instead of 2 h after the start and work with an oven for 3 trays."]);
    expect(scheduleCookDay(one([mix, large], { endByMin: 775, kitchen: { ...kitchen, ovens: [{ trays: 3, preheatMin: 10, changeMin: 5 }] } }), BUDGET).status).toBe("optimal");
  });

  test.each([
    ["burners", { needs: { burners: 3 } }, "“Bake” (Loaf) needs 3 burners", "Work with 3 burners."],
    ["pots", { needs: { pots: 2 } }, "“Bake” (Loaf) needs 2 large pots", "Work with 2 large pots."],
    ["sinks", { needs: { sinks: 2 } }, "“Bake” (Loaf) needs 2 sinks", "Work with 2 sinks."],
    ["trays", { needs: { oven: { c: 200, trays: 3 } } }, "“Bake” (Loaf) needs 3 trays in the oven", "Work with an oven for 3 trays."],
  ])("more %s than there are", (_, needs, says, way) => {
    const { status, conflicts } = scheduleCookDay(one([mix, { ...bake, ...needs }]), BUDGET);
    expect([status, conflicts[0]?.ways]).toEqual(["infeasible", [way]]);
    expect(conflicts[0]?.text).toContain(says);
  });

  test("nobody to cook, and a step longer than the day", () => {
    const chop = { id: "chop", text: "Chop", handsOnMin: 10, handsOffMin: 0, needs: {}, after: [] };
    const day = (cooks: number, handsOnMin: number): CookDayInput => ({ kitchen: { cooks, ovens: [], burners: 1, pots: 1, sinks: 1 }, dishes: [{ id: "d", title: "Slaw", batches: 1, holds: [], limits: [], steps: [{ ...chop, handsOnMin }] }], endByMin: 60, unavailable: [] });
    const refused = (cooks: number, handsOnMin: number): readonly [string, number | null, string, readonly string[]] => {
      const { status, endMin, conflicts } = scheduleCookDay(day(cooks, handsOnMin), { schedules: 100, seed: 1 });
      return [status, endMin, conflicts[0]?.text ?? "", conflicts[0]?.ways ?? []];
    };
    expect(refused(0, 10)).toEqual(["infeasible", null, "No pairs of hands. “Chop” (Slaw) needs one pair of hands. All that together cannot be had.", ["Work with one pair of hands."]]);
    expect(refused(1, 90)).toEqual(["infeasible", null, "All done by 1 h after the start. “Chop” (Slaw) takes 1 h 30 min. All that together cannot be had.", ["Have all done by 1 h 30 min after the start instead of 1 h after the start."]]);
    expect(scheduleCookDay(day(1, 60), { schedules: 100, seed: 1 })).toMatchObject({ status: "optimal", endMin: 60 });
  });

  test("a limit for safety is named and never loosened", () => {
    const cook: RecipeStep = { id: "c", text: "Cook", handsOnMin: 5, handsOffMin: 30, needs: { burners: 1 }, after: [] };
    const chill: RecipeStep = { id: "k", text: "Chill", handsOnMin: 5, handsOffMin: 90, needs: { sinks: 1 }, after: ["c"] };
    const store: RecipeStep = { id: "s", text: "Into the freezer", handsOnMin: 5, handsOffMin: 0, needs: {}, after: ["k"] };
    const soup = one([cook, chill, store], {}, { limits: [{ from: "c", to: "s", maxMin: 90, why: "hot food must be cold in time" }] });
    const { status, conflicts } = scheduleCookDay({ ...soup, dishes: [...soup.dishes, { id: "x", title: "Salad", batches: 1, holds: [], limits: [], steps: [{ id: "x", text: "Wash", handsOnMin: 5, handsOffMin: 0, needs: {}, after: [] }] }] }, BUDGET);
    expect(status).toBe("infeasible");
    expect(conflicts[0]?.text).toContain("“Into the freezer” within 1 h 30 min of the end of “Cook” (hot food must be cold in time)");
    expect(conflicts[0]?.ways).toEqual(["Leave out Loaf."]);
  });
});

function withSteps(from: CookDayInput, change: (step: RecipeStep) => RecipeStep): CookDayInput {
  return { ...from, dishes: from.dishes.map((dish) => ({ ...dish, steps: dish.steps.map(change) })) };
}
