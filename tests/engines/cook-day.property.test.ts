/** What must hold on any day, whatever its plan: no figures, only relations. Each property counts the days that it really reached. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayInput, type CookDayPlan, type DayDish } from "#shared/engines/cook-day/index.ts";
import { answerFor, SOLVER } from "#shared/engines/cook-day/door.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";
import { readCookDays } from "#tests/support/cook-days.ts";
import { smallDays } from "#tests/support/small-days.ts";

const BUDGET = { schedules: 4_000, seed: 3 };
const DAYS = smallDays({ dishes: 3, mostSteps: 4 });
// Why a day cannot be is no matter here, and costs more than the rest.
const solve = (day: CookDayInput): CookDayPlan => answerFor(day, BUDGET, { ...SOLVER, explain: () => ({ clashes: [], used: 0 }) });
const proved = (plan: CookDayPlan): boolean => plan.status !== "feasible";
/** An impossible day ends never. */
const endOf = (plan: CookDayPlan): number => plan.endMin ?? Infinity;

function holds(days: fc.Arbitrary<CookDayInput>, seed: number, atLeast: number, check: (day: CookDayInput) => boolean, runs = 80): void {
  let reached = 0;
  fc.assert(fc.property(days, (day) => void (check(day) && reached++)), { numRuns: runs, seed });
  expect(reached).toBeGreaterThanOrEqual(atLeast);
}

describe("any plan", () => {
  test("passes the referee, ends no earlier than its bound, and is measured as the plan says", () => {
    holds(DAYS, 1, 45, (day) => {
      const plan = solve(day);
      if (plan.endMin === null) return false;
      const { faults, measures } = checkCookDay(day, plan.steps);
      expect(faults).toEqual([]);
      expect(measures).toMatchObject({ endMin: plan.endMin, longestStandMin: plan.longestStandMin });
      expect(plan.lowerBoundMin).toBeLessThanOrEqual(plan.endMin);
      if (plan.status === "optimal") expect(plan.lowerBoundMin).toBe(plan.endMin);
      expect(plan.endSpread?.likely).toBe(plan.endMin);
      expect(plan.endSpread?.low).toBeLessThanOrEqual(plan.endMin);
      expect(plan.endSpread?.high).toBeGreaterThanOrEqual(plan.endMin);
      return true;
    }, 80);
  });

  test("gives every step with hands a cook of its own, also while another is away", () => {
    holds(DAYS, 2, 40, (day) => {
      const plan = solve(day);
      for (const step of plan.steps) {
        expect(step.cook !== null).toBe(step.handsOnMin > 0);
        if (step.cook === null) continue;
        expect(step.cook).toBeLessThanOrEqual(day.kitchen.cooks);
        const same = plan.steps.filter((other) => other.cook === step.cook && other.startMin < step.startMin + step.handsOnMin && step.startMin < other.startMin + other.handsOnMin);
        expect(same).toEqual([step]);
      }
      return plan.endMin !== null;
    });
  });

  test("says how late a step may start: a minute more is a fault, that minute itself is not one of waiting", () => {
    holds(DAYS, 3, 25, (day) => {
      const plan = solve(day);
      const held = plan.steps.filter((step) => step.mustStartByMin !== null);
      for (const step of held) {
        const late = step.mustStartByMin as number;
        expect(late).toBeGreaterThanOrEqual(step.startMin);
        const moved = plan.steps.map((other) => (other === step ? { ...step, startMin: late + 1 } : other));
        expect(checkCookDay(day, moved).faults.length).toBeGreaterThan(0);
      }
      return held.length > 0;
    });
  });

  test("is the same for the same input", () => {
    holds(DAYS, 4, 30, (day) => {
      expect(scheduleCookDay(day, BUDGET)).toEqual(scheduleCookDay(JSON.parse(JSON.stringify(day)) as CookDayInput, BUDGET));
      return true;
    }, 30);
  });
});

describe("a kinder day never ends later", () => {
  const kinder: Record<string, (day: CookDayInput) => CookDayInput> = {
    "one more cook": (day) => ({ ...day, kitchen: { ...day.kitchen, cooks: day.kitchen.cooks + 1 } }),
    "one more burner": (day) => ({ ...day, kitchen: { ...day.kitchen, burners: day.kitchen.burners + 1 } }),
    "one more pot": (day) => ({ ...day, kitchen: { ...day.kitchen, pots: day.kitchen.pots + 1 } }),
    "one more tray": (day) => ({ ...day, kitchen: { ...day.kitchen, ovens: day.kitchen.ovens.map((oven) => ({ ...oven, trays: oven.trays + 1 })) } }),
    "one more oven": (day) => ({ ...day, kitchen: { ...day.kitchen, ovens: [...day.kitchen.ovens, ...day.kitchen.ovens.slice(0, 1)] } }),
    "nobody away": (day) => ({ ...day, unavailable: [] }),
    "no deadline": (day) => ({ ...day, endByMin: null }),
    "no limit for safety": (day) => withDishes(day, (dish) => ({ ...dish, limits: [] })),
    "a minute longer to wait": (day) => withSteps(day, (step) => (typeof step.maxWaitMin === "object" ? { ...step, maxWaitMin: Object.fromEntries(Object.entries(step.maxWaitMin).map(([id, wait]) => [id, wait + 1])) } : step)),
    "one dish less": (day) => ({ ...day, dishes: day.dishes.slice(1) }),
  };

  test.each(Object.keys(kinder))("%s", (name) => {
    let improved = 0;
    holds(DAYS, 10 + name.length, 70, (day) => {
      const [hard, easy] = [solve(day), solve((kinder[name] as (day: CookDayInput) => CookDayInput)(day))];
      if (!proved(hard) || !proved(easy)) return false;
      expect(endOf(easy)).toBeLessThanOrEqual(endOf(hard));
      if (endOf(easy) < endOf(hard)) improved++;
      return true;
    }, 100);
    expect(improved).toBeGreaterThan(0);
  });
});

describe("what must not matter", () => {
  test("all minutes five times as long: the end is five times as late", () => {
    holds(DAYS, 30, 30, (day) => {
      const [once, five] = [solve(day), solve(times(day, 5))];
      expect(five.status).toBe(once.status);
      expect(five.endMin).toBe(once.endMin === null ? null : once.endMin * 5);
      expect(five.longestStandMin).toBe(once.longestStandMin === null ? null : once.longestStandMin * 5);
      return once.endMin !== null;
    });
  });

  test("other ids and texts, dishes and steps in another order: the same end and the same stand", () => {
    let reached = 0;
    for (const { day } of [...readCookDays(), ...fc.sample(DAYS, { numRuns: 40, seed: 31 }).map((one) => ({ day: one }))]) {
      const [plain, other] = [solve(day), solve(turned(day))];
      if (!proved(plain) || !proved(other)) continue;
      expect([other.status, other.endMin, other.longestStandMin]).toEqual([plain.status, plain.endMin, plain.longestStandMin]);
      reached++;
    }
    expect(reached).toBeGreaterThan(35);
  });

  test("two dishes with the same step ids keep apart", () => {
    const dish = (id: string): DayDish => ({ id, title: id, batches: 1, holds: [], limits: [], steps: [{ id: "a", text: "A", handsOnMin: 10, handsOffMin: 0, needs: {}, after: [] }, { id: "b", text: "B", handsOnMin: 5, handsOffMin: 0, needs: {}, after: ["a"], maxWaitMin: 0 }] });
    const kitchen = { cooks: 1, ovens: [], burners: 0, pots: 0, sinks: 0 };
    const plan = solve({ kitchen, dishes: [dish("x"), dish("y"), dish("x")], endByMin: null, unavailable: [] });
    expect(plan).toMatchObject({ status: "optimal", endMin: 45 });
  });
});

const withDishes = (day: CookDayInput, change: (dish: DayDish) => DayDish): CookDayInput => ({ ...day, dishes: day.dishes.map(change) });
const withSteps = (day: CookDayInput, change: (step: RecipeStep) => RecipeStep): CookDayInput => withDishes(day, (dish) => ({ ...dish, steps: dish.steps.map(change) }));

const MINUTES = /^(handsOnMin|handsOffMin|low|likely|high|maxMin|preheatMin|changeMin|fromMin|toMin|endByMin|startAtMin|notBeforeMin)$/;

/** Every number that is minutes, by its name; longest waits are numbers by predecessor. */
function times(day: CookDayInput, factor: number): CookDayInput {
  const scaled = (value: unknown, key: string, inWait: boolean): unknown => {
    if (typeof value === "number") return inWait || MINUTES.test(key) ? value * factor : value;
    if (Array.isArray(value)) return value.map((one) => scaled(one, key, inWait));
    if (value === null || typeof value !== "object") return value;
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, scaled(v, k, inWait || k === "maxWaitMin")]));
  };
  return scaled(day, "", false) as CookDayInput;
}

/** Everything named anew and listed backwards. */
function turned(day: CookDayInput): CookDayInput {
  const id = (old: string): string => `new ${old}`;
  return {
    ...day,
    dishes: [...day.dishes].reverse().map((dish) => ({
      ...dish,
      id: id(dish.id),
      title: "Dish",
      holds: dish.holds.map((hold) => ({ ...hold, from: id(hold.from), to: id(hold.to) })),
      limits: dish.limits.map((limit) => ({ ...limit, from: id(limit.from), to: id(limit.to) })),
      steps: [...dish.steps].reverse().map((step) => ({
        ...step,
        id: id(step.id),
        text: "Step",
        after: [...step.after].reverse().map(id),
        ...(typeof step.maxWaitMin === "object" ? { maxWaitMin: Object.fromEntries(Object.entries(step.maxWaitMin).map(([before, wait]) => [id(before), wait])) } : {}),
      })),
    })),
  };
}
