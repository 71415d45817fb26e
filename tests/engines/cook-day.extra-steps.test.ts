/** Washing up and thawing as steps of the day, cooling in two stages, and a day put down as a household does it. The sums stand beside. */
import { describe, expect, test } from "vitest";
import { checkCookDay, dayToPlan, scheduleCookDay, WASH_UP, withThawing, withWashingUp, type CookDayInput, type DayDish } from "#shared/engines/cook-day/index.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";

const step = (id: string, handsOnMin: number, handsOffMin: RecipeStep["handsOffMin"], more: Partial<RecipeStep> = {}): RecipeStep => ({ id, text: id, handsOnMin, handsOffMin, needs: {}, after: [], ...more });
const dish = (id: string, steps: RecipeStep[], more: Partial<DayDish> = {}): DayDish => ({ id, title: id, batches: 1, holds: [], limits: [], steps, ...more });
const dayOf = (dishes: DayDish[], more: Partial<CookDayInput> = {}): CookDayInput => ({ kitchen: { cooks: 1, ovens: [], burners: 2, pots: 1, sinks: 1 }, dishes, endByMin: null, unavailable: [], ...more });

function planned(day: CookDayInput): { end: number | null; at: (dish: string, id: string) => number | undefined } {
  const plan = scheduleCookDay(day, { schedules: 3_000, seed: 1 });
  expect([plan.status, checkCookDay(day, plan.steps).faults]).toEqual(["optimal", []]);
  return { end: plan.endMin, at: (id, name) => plan.steps.find((one) => one.dish === id && one.step === name)?.startMin };
}

describe("washing up", () => {
  const soup = dish("soup", [step("chop", 10, 0), step("boil", 0, 30, { needs: { burners: 1 }, after: ["chop"] }), step("rest", 0, 20, { after: ["boil"] })]);

  test("comes when the pot is done, and the rest goes on meanwhile", () => {
    // 10 + 30, then 15 at the sink while the soup stands its 20: 60. Without a rest it is 10 + 30 + 15.
    const { end, at } = planned(withWashingUp(dayOf([soup]), 15));
    expect([end, at("soup", WASH_UP)]).toEqual([60, 40]);
    expect(planned(withWashingUp(dayOf([dish("soup", soup.steps.slice(0, 2))]), 15)).end).toBe(55);
  });

  test("takes hands and the sink like any step, once, and only where it is wanted", () => {
    // Two cooks and one sink: 10 each at once, then the two washings up one after the other. 10 + 15 + 15.
    const chop = (id: string): DayDish => dish(id, [step("chop", 10, 0)]);
    const two = dayOf([chop("a"), chop("b")], { kitchen: { cooks: 2, ovens: [], burners: 0, pots: 0, sinks: 1 } });
    expect(planned(withWashingUp(two, 15)).end).toBe(40);
    expect(withWashingUp(withWashingUp(two, 15), 15)).toEqual(withWashingUp(two, 15));
    expect(withWashingUp(two, 0)).toBe(two);
    expect(planned(withWashingUp({ ...two, kitchen: { ...two.kitchen, sinks: 0 } }, 15)).end).toBe(25);
  });

  test("is part of a day as it is put down, with the things by name", () => {
    const day = { startsAt: "09:00", cooks: 1, kitchen: { ovens: [], burners: 2, appliances: [{ name: "steamer", count: 1 }], washUpMin: 15 }, unavailable: [] };
    const put = dayToPlan(day, [{ ...soup, parts: [] }]);
    expect(put.kitchen).toEqual({ cooks: 1, ovens: [], burners: 2, pots: 2, sinks: 1, appliances: [{ name: "steamer", count: 1 }] });
    expect(planned(put).end).toBe(60);
  });
});

describe("a part from the freezer", () => {
  test("thaws before it is used, without hands, from the beginning or later", () => {
    // 90 to thaw, then 10 to roll and 5 to fill: 105. Filling is chopped for meanwhile.
    const tart = withThawing(dish("tart", [step("chop", 20, 0), step("roll", 10, 0), step("fill", 5, 0, { after: ["chop", "roll"], maxWaitMin: 30 })]), [{ title: "pastry", thawMin: 90, usedBy: "roll" }]);
    const { end, at } = planned(dayOf([tart]));
    expect([end, at("tart", "roll")]).toEqual([105, 90]);
    expect(at("tart", "chop")).toBeGreaterThanOrEqual(95 + 5 - 30 - 20);
  });

  test("holds up every beginning where it is not said what uses it; a wait of old is not one for the thawing", () => {
    const stew = withThawing(dish("stew", [step("a", 5, 0), step("b", 5, 0), step("c", 5, 0, { after: ["a"], maxWaitMin: 0 })]), [{ title: "stock", thawMin: { low: 20, likely: 30, high: 60 } }]);
    expect(stew.steps.map(({ id, after, maxWaitMin }) => [id, after, maxWaitMin])).toEqual([["thaw-1", [], undefined], ["a", ["thaw-1"], undefined], ["b", ["thaw-1"], undefined], ["c", ["a"], 0]]);
    expect(planned(dayOf([stew])).end).toBe(45);
    expect(withThawing(stew, [{ title: "peas", thawMin: 5, usedBy: "c" }]).steps.find(({ id }) => id === "c")).toMatchObject({ after: ["a", "thaw-1"], maxWaitMin: { a: 0 } });
  });
});

describe("cooling in two stages before cold store", () => {
  // From the end of the heat: down to 21 °C within 2 h, cold within 6 h in all (FDA Food Code 2022, 3-501.14 (A)).
  const stages = [{ from: "boil", to: "chilled", maxMin: 120, why: "21 °C within 2 h" }, { from: "boil", to: "store", maxMin: 360, why: "cold within 6 h" }];
  const broth = (off: RecipeStep["handsOffMin"], store = 0): DayDish => dish("broth", [step("boil", 0, 60, { needs: { burners: 1 } }), step("chill", 5, off, { after: ["boil"] }), step("chilled", 5, 0, { after: ["chill"] }), step("store", 5, 0, { after: ["chilled"], notBeforeMin: store })], { limits: stages });

  test("each stage is a limit from the end of the heat", () => {
    expect(planned(dayOf([broth(115)])).end).toBe(190);
    expect(scheduleCookDay(dayOf([broth(116)]), { schedules: 500, seed: 1 }).status).toBe("infeasible");
    expect(planned(dayOf([broth(60, 420)])).end).toBe(425);
    // Stored at 500 it has to be boiled no earlier than 500 − 360 − 60.
    expect(planned(dayOf([broth(60, 500)])).at("broth", "boil")).toBeGreaterThanOrEqual(80);
  });

  test("a stage that would be missed if the chilling took its longest is not planned", () => {
    expect(planned(dayOf([broth({ low: 60, likely: 90, high: 115 })])).end).toBe(165);
    const { status, conflicts } = scheduleCookDay(dayOf([broth({ low: 60, likely: 90, high: 116 })]), { schedules: 500, seed: 1 });
    expect([status, conflicts[0]?.text]).toEqual(["infeasible", expect.stringContaining("21 °C within 2 h")]);
  });
});
