/**
 * Planning again while the day is under way. No figure of our own: facts stand, nothing begins in the past, and the referee's word on the
 * day as it was written decides whether a limit was passed. That ten minutes' delay two hours into autumn-sunday cannot be had as
 * written was found by another program when the case was made.
 */
import { describe, expect, test } from "vitest";
import { checkCookDay, replanCookDay, scheduleCookDay, type Begun, type CookDayInput, type CookDayPlan, type DayDish, type DayEvent, type PlacedStep, type Replan } from "#shared/engines/cook-day/index.ts";
import { readCookDays } from "#tests/support/cook-days.ts";

const BUDGET = { schedules: 2_000, seed: 1 };
const DAYS = readCookDays().filter(({ known }) => known.status === "optimal").map(({ id, day }) => ({ id, day, plan: scheduleCookDay(day, BUDGET) }));
const dayOf = (id: string): { day: CookDayInput; plan: CookDayPlan } => DAYS.find((one) => one.id === id) as (typeof DAYS)[number];

/** Everything done as planned up to a moment. */
function begunBy(plan: CookDayPlan, nowMin: number): Begun[] {
  return plan.steps.filter((step) => step.startMin < nowMin).map(({ dish, step, load, startMin, handsOnMin, handsOffMin, oven }) => {
    const end = startMin + handsOnMin + handsOffMin;
    return { dish, step, load, startMin, endMin: end <= nowMin ? end : null, oven };
  });
}

const same = (one: { dish: string; step: string; load: number | null }) => (other: { dish: string; step: string; load: number | null }): boolean => other.dish === one.dish && other.step === one.step && other.load === one.load;
const places = ({ plan }: Replan): PlacedStep[] => plan.steps.map(({ dish, step, load, startMin, oven }) => ({ dish, step, load, startMin, oven }));

function replan(day: CookDayInput, plan: CookDayPlan, nowMin: number, events: DayEvent[], begun = begunBy(plan, nowMin)): Replan {
  const answer = replanCookDay({ day, plan: plan.steps, begun, nowMin, events }, BUDGET);
  for (const fact of begun) {
    const there = answer.plan.steps.find(same(fact));
    if (there) expect([fact.step, there.startMin]).toEqual([fact.step, fact.startMin]);
  }
  for (const step of answer.plan.steps) if (!begun.some(same(step))) expect(step.startMin).toBeGreaterThanOrEqual(nowMin);
  return answer;
}

describe.each(DAYS)("$id", ({ day, plan }) => {
  const end = plan.endMin as number;
  const moments = [0.25, 0.5, 0.75].map((share) => Math.round(share * end));

  test("while all goes as planned nothing moves and nothing is passed", () => {
    for (const now of moments) {
      const answer = replan(day, plan, now, []);
      expect([answer.moved, answer.passed, answer.plan.endMin]).toEqual([[], [], end]);
    }
  });

  test("twenty minutes late: what is passed is said, and only that; each moved step is named", () => {
    for (const now of moments) {
      const answer = replan(day, plan, now, [{ kind: "late", byMin: 20 }]);
      expect(answer.plan.endMin).not.toBeNull();
      for (const step of answer.plan.steps) if (!begunBy(plan, now).some(same(step))) expect(step.startMin).toBeGreaterThanOrEqual(now + 20);
      // The lengths are those of the recipes, so the referee can judge the new plan by the day as it was written.
      expect(answer.passed.length > 0).toBe(checkCookDay(day, places(answer)).faults.length > 0);
      const moved = answer.plan.steps.filter((step) => plan.steps.find(same(step))?.startMin !== step.startMin);
      expect(answer.moved.map(({ step, load, toMin }) => [step, load, toMin])).toEqual(moved.map(({ step, load, startMin }) => [step, load, startMin]));
      for (const { text, toMin } of answer.moved) expect(text).toMatch(toMin === 0 ? /moves/ : /moves from .* to /);
    }
  });

  test("a dish left out: its steps that have not begun are gone, and the day ends no later", () => {
    const now = moments[0] as number;
    for (const { id } of day.dishes) {
      const answer = replan(day, plan, now, [{ kind: "skip", dish: id }]);
      const begun = begunBy(plan, now);
      expect(answer.plan.steps.every((step) => step.dish !== id || begun.some(same(step)))).toBe(true);
      expect(answer.plan.endMin).toBeLessThanOrEqual(end);
    }
  });

  test("one dish more: all is still there, the new dish from now on", () => {
    const now = moments[1] as number;
    const salad: DayDish = { id: "salad", title: "Salad", batches: 1, holds: [], limits: [], steps: [{ id: "wash", text: "Wash", handsOnMin: 5, handsOffMin: 0, needs: {}, after: [] }, { id: "dress", text: "Dress", handsOnMin: 5, handsOffMin: 0, needs: {}, after: ["wash"] }] };
    const answer = replan(day, plan, now, [{ kind: "one-dish-more", dish: salad }]);
    expect(answer.plan.steps).toHaveLength(plan.steps.length + 2);
    const whole = { ...day, dishes: [...day.dishes, salad] };
    expect(answer.passed.length > 0).toBe(checkCookDay(whole, places(answer)).faults.length > 0);
  });
});

test("ten minutes late two hours into the autumn Sunday: a wait is passed, it is named, and by no more than the delay", () => {
  const { day, plan } = dayOf("autumn-sunday");
  const answer = replan(day, plan, 120, [{ kind: "late", byMin: 10 }]);
  const faults = checkCookDay(day, places(answer)).faults;
  expect(answer.passed.length).toBeGreaterThan(0);
  expect(answer.passed).toEqual(faults);
  for (const text of answer.passed) expect(text).toMatch(/it may wait|done by|has to start within|its time is/);
});

describe("an oven that breaks", () => {
  const bake = (id: string, handsOffMin = 30): DayDish => ({ id, title: id, batches: 1, holds: [], limits: [], steps: [{ id: "bake", text: "Bake", handsOnMin: 5, handsOffMin, needs: { oven: { c: 180, trays: 1 } }, after: [] }] });
  const oven = { trays: 1, preheatMin: 10, changeMin: 5 };
  const kitchen = { cooks: 2, ovens: [oven, oven], burners: 0, pots: 0, sinks: 0 };
  const day: CookDayInput = { kitchen, endByMin: null, unavailable: [], dishes: [bake("a"), bake("b"), bake("c")] };
  const plan = scheduleCookDay(day, BUDGET);

  test("with another: everything left goes there, also what was inside", () => {
    // Two at 10–45, one after: the one inside the broken oven has 15 of its 35 minutes behind it at 25, so 20 are left.
    const now = 25;
    const inside = plan.steps.find((step) => step.oven === 1 && step.startMin < now) as CookDayPlan["steps"][number];
    const answer = replanCookDay({ day, plan: plan.steps, begun: begunBy(plan, now), nowMin: now, events: [{ kind: "oven-broken", oven: 1 }] }, BUDGET);
    for (const step of answer.plan.steps.filter((one) => one.startMin >= now)) expect(step.oven).toBe(2);
    expect(answer.notes).toEqual([`“Bake” (${inside.dish}) was in the oven that broke; it goes on elsewhere for the time it lacks, and may come out differently.`]);
    // 45 end of the one in oven 2, then 20 and 35 in either order.
    expect(answer.plan).toMatchObject({ endMin: 100 });
  });

  test("without another: no plan is pretended, and the oven is named", () => {
    const one = { ...day, kitchen: { ...kitchen, ovens: [oven] } };
    const answer = replanCookDay({ day: one, plan: [], begun: [], nowMin: 5, events: [{ kind: "oven-broken", oven: 1 }] }, BUDGET);
    expect(answer.plan).toMatchObject({ status: "infeasible", steps: [] });
    expect(answer.plan.conflicts[0]?.text).toMatch(/tray in the oven/);
  });
});

test("a step that overruns: it ends later by that, its follower waits, and a limit for safety that cannot be kept is said", () => {
  const day: CookDayInput = {
    kitchen: { cooks: 1, ovens: [], burners: 1, pots: 1, sinks: 1 }, endByMin: null, unavailable: [],
    dishes: [{
      id: "soup", title: "Soup", batches: 1, holds: [], limits: [{ from: "cook", to: "store", maxMin: 60, why: "hot food must be cold in time" }],
      steps: [
        { id: "cook", text: "Cook", handsOnMin: 5, handsOffMin: 25, needs: { burners: 1 }, after: [] },
        { id: "chill", text: "Chill", handsOnMin: 5, handsOffMin: 40, needs: { sinks: 1 }, after: ["cook"] },
        { id: "store", text: "Store", handsOnMin: 5, handsOffMin: 0, needs: {}, after: ["chill"] },
      ],
    }],
  };
  const plan = scheduleCookDay(day, BUDGET);
  expect(plan.endMin).toBe(80);
  const begun: Begun[] = [{ dish: "soup", step: "cook", load: null, startMin: 0, endMin: 30 }, { dish: "soup", step: "chill", load: null, startMin: 30, endMin: null }];
  const chill = { dish: "soup", step: "chill", load: null };
  // Chill 30–75, ten longer 85: store at 85, 55 after the end of cooking, within 60. Twenty longer: 95, five past it.
  const ten = replan(day, plan, 40, [{ kind: "late", byMin: 10, step: chill }], begun);
  expect([ten.plan.endMin, ten.passed]).toEqual([90, []]);
  const twenty = replan(day, plan, 40, [{ kind: "late", byMin: 20, step: chill }], begun);
  expect(twenty.plan).toMatchObject({ endMin: 100, status: "feasible" });
  expect(twenty.passed).toEqual(["“Store” (Soup) has to start within 1 h of the end of “Cook” (Soup): hot food must be cold in time. It starts 1 h 5 min after it."]);
});
