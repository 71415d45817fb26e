/** Choosing the day: small sums written beside each, and every set of a worked day's dishes asked one by one. */
import { describe, expect, test } from "vitest";
import { dishesThatFit, scheduleCookDay, theNightBefore, whatEachAdds, windowsOfRests, type CookDayInput, type DayDish } from "#shared/engines/cook-day/index.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";
import { CASES, readCookDay } from "#tests/support/cook-days.ts";

const BUDGET = { schedules: 3_000, seed: 1 };
const KITCHEN = { cooks: 1, ovens: [{ trays: 1, preheatMin: 10, changeMin: 5 }], burners: 1, pots: 1, sinks: 1 };
const step = (id: string, handsOnMin: number, handsOffMin: number, more: Partial<RecipeStep> = {}): RecipeStep => ({ id, text: id, handsOnMin, handsOffMin, needs: {}, after: [], ...more });
const dish = (id: string, steps: RecipeStep[], more: Partial<DayDish> = {}): DayDish => ({ id, title: id, batches: 1, holds: [], limits: [], steps, ...more });
const dayOf = (dishes: DayDish[], more: Partial<CookDayInput> = {}): CookDayInput => ({ kitchen: KITCHEN, dishes, endByMin: null, unavailable: [], ...more });

describe("which dishes fit together", () => {
  test("by hand: 30, 40 and 50 minutes of one pair of hands in 80", () => {
    const day = dayOf([dish("a", [step("x", 30, 0)]), dish("b", [step("x", 40, 0)]), dish("c", [step("x", 50, 0)])]);
    const { sets, complete } = dishesThatFit(day, 80, BUDGET);
    expect(sets).toEqual([
      { dishes: ["a", "b"], endMin: 70, handsOnMin: 70 },
      { dishes: ["a", "c"], endMin: 80, handsOnMin: 80 },
    ]);
    expect(complete).toBe(true);
    expect(dishesThatFit(day, 90, BUDGET).sets.map((set) => set.dishes.join(""))).toEqual(["ab", "ac", "bc"]);
    expect(dishesThatFit(day, 20, BUDGET).sets).toEqual([]);
  });

  test("a worked day: the sets are those that a plan of each set by itself gives", () => {
    const { day } = readCookDay(`${CASES}/autumn-sunday.json`);
    const within = 150;
    const n = day.dishes.length;
    const fits = new Set<number>();
    for (let mask = 1; mask < 1 << n; mask++) {
      const end = scheduleCookDay({ ...day, dishes: day.dishes.filter((_, d) => mask & (1 << d)) }, BUDGET).endMin;
      if (end !== null && end <= within) fits.add(mask);
    }
    const largest = [...fits].filter((mask) => ![...fits].some((other) => other !== mask && (other & mask) === mask));
    const names = largest.map((mask) => day.dishes.filter((_, d) => mask & (1 << d)).map((one) => one.id).join());
    const { sets } = dishesThatFit(day, within, BUDGET);
    expect(sets.map((set) => set.dishes.join()).sort()).toEqual(names.sort());
    expect(sets.length).toBeGreaterThan(1);
  });
});

test("what each adds: hands add all they take, what runs beside adds nothing", () => {
  // Bread 10 + 60 by itself; salad 20 of hands inside the hour; stew 10 + 80: 90 from its start. All: stew first, 90.
  const day = dayOf([dish("bread", [step("rise", 10, 60)]), dish("salad", [step("wash", 20, 0)]), dish("stew", [step("simmer", 10, 80)])]);
  expect(whatEachAdds(day, BUDGET)).toEqual([
    { dish: "bread", addsMin: 0, aloneMin: 70, handsOnMin: 10 },
    { dish: "salad", addsMin: 0, aloneMin: 20, handsOnMin: 20 },
    // Without it bread ends at 70.
    { dish: "stew", addsMin: 20, aloneMin: 90, handsOnMin: 10 },
  ]);
});

describe("when the long rests have to begin", () => {
  test("by hand: 10 + 60 of rise, then 5 + 30 in the oven, all done by 180", () => {
    const loaf = dish("loaf", [step("rise", 10, 60), step("bake", 5, 30, { after: ["rise"], needs: { oven: { c: 220, trays: 1 } } })]);
    // 180 − 35 − 70 = 75.
    expect(windowsOfRests(dayOf([loaf], { endByMin: 180, startsAtMin: 480 }), BUDGET)).toEqual([{ dish: "loaf", step: "rise", earliestMin: 0, latestMin: 75, text: "Begin “rise” (loaf) between 08:00 and 09:15." }]);
    // With no deadline its least end is 105, and there is no play.
    expect(windowsOfRests(dayOf([loaf]), BUDGET)).toMatchObject([{ earliestMin: 0, latestMin: 0 }]);
    // The rise may wait 10 minutes for the oven, and the oven is free only from 100 on: 100 − 10 − 70 = 20 at the earliest.
    const hasty = dish("loaf", [step("rise", 10, 60), step("bake", 5, 30, { after: ["rise"], maxWaitMin: 10, notBeforeMin: 100, needs: { oven: { c: 220, trays: 1 } } })]);
    expect(windowsOfRests(dayOf([hasty], { endByMin: 180 }), BUDGET)).toMatchObject([{ earliestMin: 20, latestMin: 75 }]);
  });

  test("a day that cannot be has none", () => {
    expect(windowsOfRests(dayOf([dish("loaf", [step("rise", 10, 60)])], { endByMin: 30 }), BUDGET)).toEqual([]);
  });
});

describe("the night before", () => {
  test("what may stand for a night, with all that comes before it; short waits, limits, kept things and fixed times stay", () => {
    const pie = dish("pie", [step("pastry", 15, 30), step("onions", 20, 10), step("fill", 10, 0, { after: ["pastry", "onions"], maxWaitMin: { onions: 60 } }), step("bake", 5, 40, { after: ["fill"], startAtMin: 120, needs: { oven: { c: 180, trays: 1 } } })]);
    // Pastry may wait; onions wait an hour at most for the filling, which waits for nothing afterwards but the bake, without limit.
    expect(theNightBefore(dayOf([pie]), BUDGET)).toMatchObject([{ dish: "pie", steps: ["pastry", "onions", "fill"], whole: false, handsOnMin: 45, savesMin: 0 }]);
    const hasty = { ...pie, steps: pie.steps.map((one) => (one.id === "bake" ? { ...one, maxWaitMin: 20 } : one)) };
    expect(theNightBefore(dayOf([hasty]), BUDGET)).toMatchObject([{ steps: ["pastry"], handsOnMin: 15 }]);
    const kept = { ...hasty, holds: [{ what: "pots" as const, from: "pastry", to: "fill" }] };
    expect(theNightBefore(dayOf([kept]), BUDGET)).toEqual([]);
    const limited = { ...hasty, limits: [{ from: "pastry", to: "bake", maxMin: 240 }] };
    expect(theNightBefore(dayOf([limited]), BUDGET)).toEqual([]);
    expect(theNightBefore(dayOf([limited]), BUDGET, 240)).toMatchObject([{ steps: ["pastry"] }]);
  });

  test("a whole dish, and how much earlier the day then ends", () => {
    const soup = dish("soup", [step("chop", 30, 0), step("cook", 0, 20, { after: ["chop"] })]);
    const salad = dish("salad", [step("wash", 10, 0, { notBeforeMin: 1 }), step("dress", 5, 0, { after: ["wash"], maxWaitMin: 5 })]);
    // 30 of soup's hands, 15 of salad's, at least; the soup's 20 run beside: 50 with salad inside. Without the soup 1 + 15.
    expect(theNightBefore(dayOf([soup, salad]), BUDGET)).toEqual([{ dish: "soup", steps: ["chop", "cook"], whole: true, handsOnMin: 30, savesMin: 34 }]);
  });
});
