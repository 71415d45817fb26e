/** Each rule of the model on a day small enough to be solved by hand; the sum is written beside each. */
import { describe, expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayInput, type CookDayPlan, type DayDish } from "#shared/engines/cook-day/index.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";

const KITCHEN = { cooks: 1, ovens: [{ trays: 2, preheatMin: 10, changeMin: 15 }], burners: 2, pots: 1, sinks: 1 };

function step(id: string, handsOnMin: number, handsOffMin: RecipeStep["handsOffMin"], more: Partial<RecipeStep> = {}): RecipeStep {
  return { id, text: id.toUpperCase(), handsOnMin, handsOffMin, needs: {}, after: [], ...more };
}

function dish(steps: RecipeStep[], more: Partial<DayDish> = {}): DayDish {
  return { id: "d", title: "Dish", batches: 1, holds: [], limits: [], steps, ...more };
}

function solve(dishes: DayDish[], kitchen: Partial<CookDayInput["kitchen"]> = {}, more: Partial<CookDayInput> = {}): CookDayPlan {
  const day: CookDayInput = { kitchen: { ...KITCHEN, ...kitchen }, endByMin: null, unavailable: [], dishes, ...more };
  const plan = scheduleCookDay(day, { schedules: 5_000, seed: 1 });
  if (plan.endMin !== null) expect(checkCookDay(day, plan.steps).faults).toEqual([]);
  return plan;
}

const end = (plan: CookDayPlan): [string, number | null] => [plan.status, plan.endMin];
const oven = (c: number, trays = 1): Partial<RecipeStep> => ({ needs: { oven: { c, trays } } });

describe("hands", () => {
  test("one pair does one thing at a time; what runs by itself runs on", () => {
    expect(end(solve([dish([step("a", 10, 30), step("b", 20, 0)])]))).toEqual(["optimal", 40]);
    expect(end(solve([dish([step("a", 10, 10), step("b", 20, 0)])]))).toEqual(["optimal", 30]);
  });

  test("an absence stops hands-on work, not what runs by itself", () => {
    const away = { unavailable: [{ what: "cook" as const, fromMin: 5, toMin: 25 }] };
    expect(end(solve([dish([step("a", 10, 5)])], {}, away))).toEqual(["optimal", 40]);
    expect(end(solve([dish([step("a", 5, 35)])], {}, away))).toEqual(["optimal", 40]);
    expect(end(solve([dish([step("a", 10, 5)])], { cooks: 2 }, away))).toEqual(["optimal", 15]);
  });

  test("two absences at once with one cook are one absence", () => {
    const away = { unavailable: [{ what: "cook" as const, fromMin: 5, toMin: 25 }, { what: "cook" as const, fromMin: 10, toMin: 30 }] };
    expect(end(solve([dish([step("a", 10, 5)])], {}, away))).toEqual(["optimal", 45]);
  });
});

describe("ovens", () => {
  test("heat first; the same heat is shared while trays allow; another heat waits for the change", () => {
    expect(end(solve([dish([step("a", 0, 20, oven(200))])]))).toEqual(["optimal", 30]);
    expect(end(solve([dish([step("a", 0, 20, oven(200)), step("b", 0, 20, oven(200))])]))).toEqual(["optimal", 30]);
    expect(end(solve([dish([step("a", 0, 20, oven(200, 2)), step("b", 0, 20, oven(200))])]))).toEqual(["optimal", 50]);
    // 10 to heat, 20, 15 to change, 20.
    expect(end(solve([dish([step("a", 0, 20, oven(200)), step("b", 0, 20, oven(180))])]))).toEqual(["optimal", 65]);
  });

  test("two ovens take two heats at once, and each its own trays and heating time", () => {
    const two = { ovens: [{ trays: 2, preheatMin: 10, changeMin: 15 }, { trays: 1, preheatMin: 25, changeMin: 15 }] };
    const plan = solve([dish([step("a", 0, 20, oven(200, 2)), step("b", 0, 20, oven(180))])], two);
    expect(end(plan)).toEqual(["optimal", 45]);
    expect(plan.steps.map((one) => [one.step, one.oven, one.ovenC])).toEqual([["a", 1, 200], ["b", 2, 180]]);
  });

  test("what can only go into one of the ovens takes no room in the others", () => {
    const full = (id: string, c: number, trays: number): RecipeStep => step(id, 0, 20, oven(c, trays));
    const alike = { trays: 2, preheatMin: 10, changeMin: 15 };
    // Two ovens alike, two heats: both at once after heating, 10 + 20.
    expect(end(solve([dish([full("a", 200, 2), full("b", 180, 2)])], { ovens: [alike, alike] }))).toEqual(["optimal", 30]);
    // The three trays fit the second oven only; the first is free for the other heat meanwhile.
    expect(end(solve([dish([full("a", 200, 3), full("b", 180, 2)])], { ovens: [alike, { ...alike, trays: 3 }] }))).toEqual(["optimal", 30]);
  });
});

describe("an oven at a heat that suits several", () => {
  const span = (c: number, fromC: number, toC: number): Partial<RecipeStep> => ({ needs: { oven: { c, trays: 1, fromC, toC } } });
  const heats = (plan: CookDayPlan): (string | number | null)[][] => plan.steps.map((one) => [one.step, one.startMin, one.ovenC]);

  test("two share it where what each allows meets; by themselves each has its own", () => {
    // 10 to heat, then 20 at 190: it suits 180–190 and 190–210. One degree less, and the change of 15 lies between: 10 + 20 + 15 + 20.
    const plan = solve([dish([step("a", 0, 20, span(180, 180, 190)), step("b", 0, 20, span(200, 190, 210))])]);
    expect(end(plan)).toEqual(["optimal", 30]);
    expect(heats(plan)).toEqual([["a", 10, 190], ["b", 10, 190]]);
    expect(end(solve([dish([step("a", 0, 20, span(180, 180, 189)), step("b", 0, 20, span(200, 190, 210))])]))).toEqual(["optimal", 65]);
    expect(heats(solve([dish([step("a", 0, 20, span(180, 170, 190))])]))).toEqual([["a", 10, 180]]);
  });

  test("what suits both of two heats joins either, and does not join the two", () => {
    // a and c keep apart: 10 + 20 + 15 + 20; b, which suits both, goes beside one of them.
    const plan = solve([dish([step("a", 0, 20, oven(180)), step("b", 0, 20, span(190, 180, 200)), step("c", 0, 20, oven(200))])]);
    expect(end(plan)).toEqual(["optimal", 65]);
    expect(checkCookDay({ kitchen: KITCHEN, dishes: [dish([step("a", 0, 20, oven(180)), step("b", 0, 20, span(190, 180, 200)), step("c", 0, 20, oven(200))])], endByMin: null, unavailable: [] }, plan.steps).measures?.heatUps).toBe(2);
  });

  test("the referee sees a heat outside what a step allows, and two that do not meet", () => {
    const day: CookDayInput = { kitchen: KITCHEN, endByMin: null, unavailable: [], dishes: [dish([step("a", 0, 20, span(180, 180, 190)), step("b", 0, 20, oven(200))])] };
    const at = (startMin: number, ovenC?: number) => [{ dish: "d", step: "a", load: null, startMin: 10, ...(ovenC === undefined ? {} : { ovenC }) }, { dish: "d", step: "b", load: null, startMin }];
    expect(checkCookDay(day, at(45, 190)).faults).toEqual([]);
    expect(checkCookDay(day, at(45, 195)).faults.join()).toMatch(/another oven temperature/);
    expect(checkCookDay(day, at(44)).faults.join()).toMatch(/from 180–190 to 200 °C takes it 15 min/);
    expect(checkCookDay(day, at(20)).faults.join()).toMatch(/180–190 °C and 200 °C at once/);
  });
});

describe("things by name", () => {
  const stew = (id: string): DayDish => dish([step("a", 5, 40, { needs: { appliance: "slow pot" } })], { id, title: id });

  test("one at a time, two with two, beside anything else", () => {
    // 5 + 40, then 5 + 40; with two pots the second begins when the hands are free.
    expect(end(solve([stew("x"), stew("y")], { appliances: [{ name: "slow pot", count: 1 }] }))).toEqual(["optimal", 90]);
    expect(end(solve([stew("x"), stew("y")], { appliances: [{ name: "slow pot", count: 2 }] }))).toEqual(["optimal", 50]);
    expect(end(solve([stew("x"), dish([step("b", 0, 45, { needs: { appliance: "steamer" } })])], { appliances: [{ name: "slow pot", count: 1 }, { name: "steamer", count: 1 }] }))).toEqual(["optimal", 45]);
  });

  test("what the kitchen has not is named, and having it is the way out", () => {
    const plan = solve([stew("x")], { appliances: [{ name: "steamer", count: 1 }] });
    expect(plan.status).toBe("infeasible");
    expect(plan.conflicts[0]?.text).toMatch(/no slow pot/i);
    expect(plan.conflicts[0]?.ways.join()).toMatch(/Work with a slow pot/);
  });

  test("the referee counts them", () => {
    const day: CookDayInput = { kitchen: { ...KITCHEN, appliances: [{ name: "slow pot", count: 1 }] }, endByMin: null, unavailable: [], dishes: [stew("x"), stew("y")] };
    const at = (startMin: number) => [{ dish: "x", step: "a", load: null, startMin: 0 }, { dish: "y", step: "a", load: null, startMin }];
    expect(checkCookDay(day, at(45)).faults).toEqual([]);
    expect(checkCookDay(day, at(44)).faults.join()).toMatch(/take the slow pot; the kitchen has 1/);
  });
});

describe("things kept", () => {
  test("a pot stays taken through the pauses of its dish", () => {
    // Soup holds the only pot 0–45 (5 + 30 alone + 10); the other soup then 45–90.
    const soup = (id: string): DayDish => dish([step("a", 5, 30), step("b", 10, 0, { after: ["a"] })], { id, holds: [{ what: "pots", from: "a", to: "b" }] });
    expect(end(solve([soup("x"), soup("y")]))).toEqual(["optimal", 90]);
    expect(end(solve([soup("x"), soup("y")], { pots: 2 }))).toEqual(["optimal", 55]);
  });

  test("burners and sinks are counted over the whole step", () => {
    const boil = (id: string): RecipeStep => step(id, 0, 30, { needs: { burners: 1 } });
    expect(end(solve([dish([boil("a"), boil("b"), boil("c")])]))).toEqual(["optimal", 60]);
    expect(end(solve([dish([step("a", 0, 10, { needs: { sinks: 1 } }), step("b", 0, 10, { needs: { sinks: 1 } })])]))).toEqual(["optimal", 20]);
  });

  test("a dish keeps its burner from step to step", () => {
    const one = (id: string): DayDish => dish([step("a", 5, 10, { needs: { burners: 1 } }), step("b", 5, 10, { needs: { burners: 1 }, after: ["a"], maxWaitMin: 5 })], { id });
    const plan = solve([one("x"), one("y")], { cooks: 2 });
    for (const id of ["x", "y"]) expect(new Set(plan.steps.filter((s) => s.dish === id).map((s) => s.burner)).size).toBe(1);
  });
});

describe("loads", () => {
  const shape = step("shape", 10, 0, { loads: { holds: 8, of: 20 } });
  const bake = step("bake", 0, 30, { after: ["shape"], ...oven(200, 2) });

  test("twenty to make, eight on the tray: three copies, each with its own hands; batches multiply what there is to load", () => {
    const plan = solve([dish([shape])]);
    expect([plan.endMin, plan.steps.map((one) => one.load)]).toEqual([30, [1, 2, 3]]);
    expect(solve([dish([shape], { batches: 2 })])).toMatchObject({ endMin: 50, handsOnMin: 50, oneAfterAnotherMin: 50 });
  });

  test("a step after loads waits for all of them, unless it comes in as many: then load by load", () => {
    // All shaped at 30, then 30 in the oven.
    expect(end(solve([dish([shape, bake])]))).toEqual(["optimal", 60]);
    // Load by load: 10 shaped, three bakes of 30 behind each other.
    expect(end(solve([dish([shape, { ...bake, loads: { holds: 8, of: 20 } }])]))).toEqual(["optimal", 100]);
  });

  test("a longest wait holds for every load, so too long a row of loads cannot be had", () => {
    const patient = { ...bake, maxWaitMin: 20 };
    const hasty = { ...bake, maxWaitMin: 15 };
    expect(end(solve([dish([shape, patient])]))).toEqual(["optimal", 60]);
    expect(solve([dish([shape, hasty])]).status).toBe("infeasible");
    expect(solve([dish([shape, { ...hasty, loads: { holds: 8, of: 20 } }])]).status).toBe("optimal");
  });

  test("a part made the same day is used when its last load is done, also where both come in as many loads", () => {
    // Sauce in two loads of 10 (0–10, 10–20); filling in two loads of 5 only then: 20 + 2 x 5.
    const sauce = dish([step("cook", 10, 0, { loads: { holds: 1, of: 2 } })], { id: "sauce", title: "Sauce" });
    const pie = dish([step("fill", 5, 0, { after: ["sauce/cook"], loads: { holds: 1, of: 2 } })], { id: "pie", title: "Pie" });
    expect(end(solve([sauce, pie]))).toEqual(["optimal", 30]);
    expect(end(solve([pie, sauce]))).toEqual(["optimal", 30]);
    // Two cooks make both loads at once, then fill both at once.
    expect(end(solve([sauce, pie], { cooks: 2 }))).toEqual(["optimal", 15]);
    const early = [{ dish: "sauce", step: "cook", load: 1, startMin: 0 }, { dish: "pie", step: "fill", load: 1, startMin: 10 }, { dish: "sauce", step: "cook", load: 2, startMin: 15 }, { dish: "pie", step: "fill", load: 2, startMin: 25 }];
    const day: CookDayInput = { kitchen: KITCHEN, endByMin: null, unavailable: [], dishes: [sauce, pie] };
    expect(checkCookDay(day, early).faults).toEqual(["“FILL” (Pie, load 1) starts at 10 min after the start, before “COOK” (Sauce, load 2) is done at 25 min after the start."]);
  });

  test("what is kept for loads is kept once for each load", () => {
    const blanch = step("blanch", 5, 10, { loads: { holds: 1, of: 2 } });
    const held = (pots: number): [string, number | null] => end(solve([dish([blanch], { holds: [{ what: "pots", from: "blanch", to: "blanch" }] })], { pots }));
    expect(held(1)).toEqual(["optimal", 30]);
    expect(held(2)).toEqual(["optimal", 20]);
  });
});

describe("ranges", () => {
  const rise = (high: number): RecipeStep => step("rise", 0, { low: 20, likely: 30, high }, { after: ["cook"] });

  test("are planned on likely, with the end as a spread", () => {
    const plan = solve([dish([step("cook", 10, 0), rise(50), step("store", 5, 0, { after: ["rise"] })])]);
    expect(plan).toMatchObject({ endMin: 45, endSpread: { low: 35, likely: 45, high: 65 } });
    expect(plan.steps.find((one) => one.step === "rise")?.handsOffMin).toBe(30);
  });

  test("a limit must be kept with high in place of likely", () => {
    const chain = (high: number): DayDish => dish([step("cook", 10, 0), rise(high), step("store", 5, 0, { after: ["rise"] })], { limits: [{ from: "cook", to: "store", maxMin: 40 }] });
    expect(end(solve([chain(40)]))).toEqual(["optimal", 45]);
    expect(solve([chain(41)]).status).toBe("infeasible");
  });

  test("what waits for the same cook or oven is pushed along in the spread", () => {
    // One bake of 20 to 60 min fills the oven; the other of 20 follows it at the same heat.
    const bakes = [step("a", 0, { low: 20, likely: 20, high: 60 }, oven(200, 2)), step("b", 0, 20, { ...oven(200, 2), notBeforeMin: 30 })];
    expect(solve([dish(bakes)])).toMatchObject({ endMin: 50, endSpread: { low: 50, likely: 50, high: 90 } });
  });
});

describe("times", () => {
  test("a fixed start, an earliest start, a latest end", () => {
    expect(end(solve([dish([step("a", 5, 0, { startAtMin: 40 })])]))).toEqual(["optimal", 45]);
    expect(end(solve([dish([step("a", 5, 0, { notBeforeMin: 25 })])]))).toEqual(["optimal", 30]);
    expect(solve([dish([step("a", 5, 0), step("b", 5, 0, { endByMin: 5 }), step("c", 5, 0, { endByMin: 9 })])]).status).toBe("infeasible");
  });

  test("how late a step may start comes from its longest wait, a limit or a time; else it is open", () => {
    const plan = solve([dish([step("a", 10, 0), step("b", 5, 0, { after: ["a"], maxWaitMin: 12 }), step("c", 5, 0, { after: ["b"] }), step("e", 5, 0, { after: ["c"], endByMin: 60 })], { limits: [{ from: "a", to: "c", maxMin: 8 }] })]);
    expect(Object.fromEntries(plan.steps.map((one) => [one.step, one.mustStartByMin]))).toEqual({ a: null, b: 22, c: 18, e: 55 });
  });
});

describe("dishes together", () => {
  test("a part made the same day comes before the dish that takes it, named by dish and step", () => {
    const part = dish([step("roll", 20, 30)], { id: "pastry", title: "Pastry" });
    const tart = dish([step("fill", 10, 0, { after: ["pastry/roll"] })], { id: "tart", title: "Tart" });
    expect(end(solve([tart, part]))).toEqual(["optimal", 60]);
  });

  test("what is named and not there is left aside with a note", () => {
    const plan = solve([dish([step("a", 5, 0, { after: ["nothing"] })])]);
    expect([plan.endMin, plan.notes.length]).toEqual([5, 1]);
  });

  test("more loads than a day holds are refused at once, with what would bring them down", () => {
    const plan = solve([dish([step("a", 5, 0, { loads: { holds: 1, of: 10_000 } })], { batches: 20 })]);
    expect(plan).toMatchObject({ status: "infeasible", endMin: null, steps: [], conflicts: [{ ways: ["Make larger loads, or fewer of them."] }] });
    expect(plan.conflicts[0]?.text).toContain("200000 steps");
    // 20 dishes of 3 loads a batch: 20 x 3 x 6 = 360 steps; in 4 batches 240, which is planned.
    const many = Array.from({ length: 20 }, (_, d) => dish([step("a", 5, 0, { loads: { holds: 1, of: 3 } })], { id: `d${d}`, title: `Dish ${d}`, batches: 6 }));
    const refused = solve(many);
    expect(refused.conflicts[0]?.text).toContain("360 steps");
    expect(refused.conflicts[0]?.ways[0]).toBe("Make no dish in more than 4 batches on this day.");
    // 7 dishes of 18 steps have to go: 13 x 18 = 234.
    expect(refused.conflicts[0]?.ways[1]?.match(/Dish/g)).toHaveLength(7);
  });

  test("an empty day is done at once", () => {
    expect(solve([])).toMatchObject({ status: "optimal", endMin: 0, handsOnMin: 0, steps: [] });
  });
});
