/**
 * The referee itself: plans that were proved right by two other programs are broken, and every kind of fault is made by hand.
 * After a step was moved, "allowed" is believed only when a second reading of the rules (below, by intervals, not by minutes)
 * says so too.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { importsOf } from "#tests/support/tidy.ts";
import { checkCookDay, scheduleCookDay, type CookDayInput, type DayDish, type PlacedStep } from "#shared/engines/cook-day/index.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";
import { readCookDays } from "#tests/support/cook-days.ts";

const KITCHEN = { cooks: 1, ovens: [{ trays: 2, preheatMin: 10, changeMin: 5 }], burners: 1, pots: 1, sinks: 1 };

function step(id: string, handsOnMin: number, handsOffMin: RecipeStep["handsOffMin"], more: Partial<RecipeStep> = {}): RecipeStep {
  return { id, text: id.toUpperCase(), handsOnMin, handsOffMin, needs: {}, after: [], ...more };
}

function dayOf(steps: RecipeStep[], more: Partial<CookDayInput> = {}, dish: Partial<DayDish> = {}): CookDayInput {
  return { kitchen: KITCHEN, endByMin: null, unavailable: [], ...more, dishes: [{ id: "d", title: "Dish", batches: 1, holds: [], limits: [], steps, ...dish }] };
}

/** Starts by step id; an oven where one is named as `[start, oven]`. */
function place(starts: Record<string, number | [number, number]>): PlacedStep[] {
  return Object.entries(starts).map(([key, at]) => {
    const [id, load] = key.split("#");
    const [startMin, oven] = typeof at === "number" ? [at, undefined] : at;
    return { dish: "d", step: id as string, load: load === undefined ? null : Number(load), startMin, ...(oven === undefined ? {} : { oven }) };
  });
}

const oven = (c: number, trays = 1): Partial<RecipeStep> => ({ needs: { oven: { c, trays } } });

interface Fault {
  readonly fault: string;
  readonly day: CookDayInput;
  readonly bad: PlacedStep[];
  readonly good: PlacedStep[];
  readonly says: RegExp;
}

const ab = (more: Partial<RecipeStep> = {}): RecipeStep[] => [step("a", 10, 5), step("b", 5, 0, { after: ["a"], ...more })];

const FAULTS: Fault[] = [
  { fault: "a step is missing", day: dayOf(ab()), bad: place({ a: 0 }), good: place({ a: 0, b: 15 }), says: /“B” \(Dish\) is not in the plan/ },
  { fault: "a step too many", day: dayOf([step("a", 10, 5)]), bad: place({ a: 0, b: 15 }), good: place({ a: 0 }), says: /a step that is not in this day/ },
  { fault: "before the day", day: dayOf([step("a", 10, 5)]), bad: place({ a: -5 }), good: place({ a: 0 }), says: /whole minute of the day/ },
  { fault: "another length", day: dayOf([step("a", 10, 5)]), bad: [{ dish: "d", step: "a", load: null, startMin: 0, handsOnMin: 9, handsOffMin: 5 }], good: [{ dish: "d", step: "a", load: null, startMin: 0, handsOnMin: 10, handsOffMin: 5 }], says: /not as long as its recipe says/ },
  { fault: "out of order", day: dayOf(ab()), bad: place({ a: 5, b: 0 }), good: place({ a: 0, b: 15 }), says: /before “A” \(Dish\) is done/ },
  { fault: "a minute too early", day: dayOf(ab()), bad: place({ a: 0, b: 14 }), good: place({ a: 0, b: 15 }), says: /before “A” \(Dish\) is done/ },
  { fault: "waits too long", day: dayOf(ab({ maxWaitMin: 10 })), bad: place({ a: 0, b: 26 }), good: place({ a: 0, b: 25 }), says: /starts 11 min after .* wait 10 min at most/ },
  { fault: "not at once", day: dayOf(ab({ maxWaitMin: { a: 0 } })), bad: place({ a: 0, b: 16 }), good: place({ a: 0, b: 15 }), says: /wait 0 min at most/ },
  { fault: "past a limit", day: dayOf(ab(), {}, { limits: [{ from: "a", to: "b", maxMin: 20, why: "cold in time" }] }), bad: place({ a: 0, b: 36 }), good: place({ a: 0, b: 35 }), says: /within 20 min .*cold in time/ },
  {
    fault: "past a limit when what lies between takes its longest",
    day: dayOf([step("a", 10, 0), step("b", 0, { low: 10, likely: 15, high: 25 }, { after: ["a"] }), step("c", 5, 0, { after: ["b"] })], {}, { limits: [{ from: "a", to: "c", maxMin: 30 }] }),
    bad: place({ a: 0, b: 16, c: 31 }), good: place({ a: 0, b: 15, c: 30 }), says: /With the longest times in between it would start 31 min/,
  },
  { fault: "not at its time", day: dayOf([step("a", 10, 0, { startAtMin: 30 })]), bad: place({ a: 31 }), good: place({ a: 30 }), says: /its time is 30 min/ },
  { fault: "before its time", day: dayOf([step("a", 10, 0, { notBeforeMin: 30 })]), bad: place({ a: 29 }), good: place({ a: 40 }), says: /before 30 min/ },
  { fault: "after its time", day: dayOf([step("a", 10, 5, { endByMin: 30 })]), bad: place({ a: 16 }), good: place({ a: 15 }), says: /after 30 min/ },
  { fault: "after the day's end", day: dayOf([step("a", 10, 5)], { endByMin: 30 }), bad: place({ a: 16 }), good: place({ a: 15 }), says: /all should be done by 30 min/ },
  { fault: "two steps for one pair of hands", day: dayOf([step("a", 10, 20), step("b", 5, 0)]), bad: place({ a: 0, b: 9 }), good: place({ a: 0, b: 10 }), says: /“A” \(Dish\) and “B” \(Dish\) need hands, and one cook is there/ },
  { fault: "hands while the cook is away", day: dayOf([step("a", 10, 20)], { unavailable: [{ what: "cook", fromMin: 10, toMin: 20 }] }), bad: place({ a: 1 }), good: place({ a: 0 }), says: /needs hands, and no cooks are there/ },
  { fault: "one burner too many", day: dayOf([step("a", 5, 20, { needs: { burners: 1 } }), step("b", 5, 20, { needs: { burners: 1 } })]), bad: place({ a: 0, b: 24 }), good: place({ a: 0, b: 25 }), says: /take 2 burners; the kitchen has one burner/ },
  { fault: "one sink too many", day: dayOf([step("a", 5, 20, { needs: { sinks: 1 } }), step("b", 5, 20, { needs: { sinks: 1 } })]), bad: place({ a: 0, b: 10 }), good: place({ a: 0, b: 25 }), says: /2 sinks; the kitchen has one sink/ },
  {
    fault: "a pot kept in a pause",
    day: dayOf([step("a", 5, 0), step("b", 5, 0, { after: ["a"] }), step("x", 5, 0, { needs: { pots: 1 } })], {}, { holds: [{ what: "pots", from: "a", to: "b" }] }),
    bad: place({ a: 0, x: 10, b: 20 }), good: place({ a: 0, b: 10, x: 15 }), says: /2 large pots; the kitchen has one large pot/,
  },
  { fault: "one tray too many", day: dayOf([step("a", 0, 20, oven(200, 2)), step("b", 0, 20, oven(200))]), bad: place({ a: 10, b: 29 }), good: place({ a: 10, b: 30 }), says: /3 trays together; oven 1 holds 2/ },
  { fault: "two temperatures at once", day: dayOf([step("a", 0, 20, oven(200)), step("b", 0, 20, oven(180))]), bad: place({ a: 10, b: 20 }), good: place({ a: 10, b: 35 }), says: /ask oven 1 for 200 °C and 180 °C at once/ },
  { fault: "too soon after another temperature", day: dayOf([step("a", 0, 20, oven(200)), step("b", 0, 20, oven(180))]), bad: place({ a: 10, b: 34 }), good: place({ a: 10, b: 35 }), says: /from 200 to 180 °C takes it 5 min/ },
  { fault: "a cold oven", day: dayOf([step("a", 0, 20, oven(200))]), bad: place({ a: 9 }), good: place({ a: 10 }), says: /takes 10 min to heat/ },
  { fault: "no oven at all", day: dayOf([step("a", 0, 20, oven(200))], { kitchen: { ...KITCHEN, ovens: [] } }), bad: place({ a: 10 }), good: [], says: /needs an oven; the kitchen has none/ },
  { fault: "a dish too large for the oven", day: dayOf([step("a", 0, 20, oven(200, 3))]), bad: place({ a: 10 }), good: [], says: /needs 3 trays; the oven holds 2/ },
  {
    fault: "no oven named where there are two",
    day: dayOf([step("a", 0, 20, oven(200)), step("b", 0, 20, oven(180))], { kitchen: { ...KITCHEN, ovens: [...KITCHEN.ovens, ...KITCHEN.ovens] } }),
    bad: place({ a: [10, 1], b: 10 }), good: place({ a: [10, 1], b: [10, 2] }), says: /not given to one of the ovens/,
  },
  { fault: "one load before the other is ready", day: dayOf([step("a", 5, 5, { loads: { holds: 1, of: 2 } }), step("b", 5, 0, { after: ["a"] })]), bad: place({ "a#1": 0, "a#2": 5, b: 10 }), good: place({ "a#1": 0, "a#2": 5, b: 15 }), says: /before “A” \(Dish, load 2\) is done/ },
  { fault: "the first load waits too long", day: dayOf([step("a", 5, 5, { loads: { holds: 1, of: 2 } }), step("b", 5, 0, { after: ["a"], maxWaitMin: 4 })]), bad: place({ "a#1": 0, "a#2": 5, b: 15 }), good: [], says: /5 min after “A” \(Dish, load 1\)/ },
  { fault: "another temperature than the recipe's", day: dayOf([step("a", 0, 20, oven(200))]), bad: [{ dish: "d", step: "a", load: null, startMin: 10, ovenC: 190 }], good: [{ dish: "d", step: "a", load: null, startMin: 10, ovenC: 200 }], says: /another oven temperature/ },
  {
    fault: "one cook in two places",
    day: dayOf([step("a", 10, 0), step("b", 10, 0)], { kitchen: { ...KITCHEN, cooks: 2 } }),
    bad: [1, 1].map((cook, k) => ({ dish: "d", step: "ab".charAt(k), load: null, startMin: 0, cook })), good: [1, 2].map((cook, k) => ({ dish: "d", step: "ab".charAt(k), load: null, startMin: 0, cook })), says: /cook 1 has .* at once/,
  },
  {
    fault: "two steps on one numbered burner",
    day: dayOf([step("a", 0, 10, { needs: { burners: 1 } }), step("b", 0, 10, { needs: { burners: 1 } })], { kitchen: { ...KITCHEN, burners: 2 } }),
    bad: [1, 1].map((burner, k) => ({ dish: "d", step: "ab".charAt(k), load: null, startMin: 0, burner })), good: [1, 2].map((burner, k) => ({ dish: "d", step: "ab".charAt(k), load: null, startMin: 0, burner })), says: /burner 1 has .* at once/,
  },
];

describe("a fault of each kind is told in words, and its mended neighbour is allowed", () => {
  test.each(FAULTS)("$fault", ({ day, bad, good, says }) => {
    expect(checkCookDay(day, bad).faults.join("\n")).toMatch(says);
    if (good.length > 0) expect(checkCookDay(day, good).faults).toEqual([]);
  });

  test("no fault names a step by its id only", () => {
    const told = FAULTS.flatMap(({ day, bad }) => checkCookDay(day, bad).faults);
    expect(told.length).toBeGreaterThanOrEqual(FAULTS.length);
    for (const words of told) expect(words).toMatch(/^[^{}_]*\.$/);
  });
});

test("measures count what the plan does", () => {
  const day = dayOf([step("a", 10, 0), step("b", 10, 30, { after: ["a"], maxWaitMin: 60, ...oven(200) }), step("c", 5, 20, { after: ["b"], ...oven(180) })]);
  const other: DayDish = { id: "e", title: "Other", batches: 1, holds: [], limits: [], steps: [step("x", 5, 0)] };
  const placed = [...place({ a: 0, b: 25, c: 70 }), { dish: "e", step: "x", load: null, startMin: 15 }];
  // Hands: a 0–10, x 15–20 (5 min pause), b 25–35 (5 min pause), c 70–75. Oven: 200 °C to 65, 180 °C from 70.
  expect(checkCookDay({ ...day, dishes: [...day.dishes, other] }, placed)).toEqual({
    faults: [],
    measures: { endMin: 95, longestStandMin: 15, heatUps: 2, shortGaps: 2, dishChanges: 2, handsSpreadMin: 0 },
  });
});

describe("good plans broken by five minutes", () => {
  const days = readCookDays().filter(({ known, day }) => known.status === "optimal" && day.kitchen.ovens.length === 1);

  test.each(days)("$id: each step moved either way is a fault, or truly allowed", ({ day }) => {
    const plan = scheduleCookDay(day, { schedules: 5_000, seed: 1 });
    let [refused, allowed] = [0, 0];
    for (const one of plan.steps) {
      for (const by of [-5, 5]) {
        const moved = plan.steps.map((other): PlacedStep => ({ dish: other.dish, step: other.step, load: other.load, startMin: other.startMin + (other === one ? by : 0) }));
        const { faults } = checkCookDay(day, moved);
        expect(faults.length === 0).toBe(allowedByIntervals(day, moved));
        if (faults.length === 0) allowed++;
        else refused++;
      }
    }
    expect(refused).toBeGreaterThan(plan.steps.length / 2);
    expect(allowed + refused).toBe(2 * plan.steps.length);
  });
});

/** The rules once more, by overlapping spans, for days of one oven without loads or ranges. */
function allowedByIntervals(day: CookDayInput, placed: readonly PlacedStep[]): boolean {
  const [oven0] = day.kitchen.ovens;
  const all = day.dishes.flatMap((dish) =>
    dish.steps.map((one) => {
      const at = placed.find((p) => p.dish === dish.id && p.step === one.id)?.startMin as number;
      return { dish, one, at, hands: at + one.handsOnMin, end: at + one.handsOnMin + (one.handsOffMin as number) };
    }),
  );
  type Placed = (typeof all)[number];
  const find = (dish: DayDish, id: string): Placed => all.find((p) => p.dish === dish && p.one.id === id) as Placed;
  /** Most at once: tried at the beginning of every span, where a new most can only be reached. */
  const most = (spans: { from: number; to: number; amount: number }[]): number =>
    Math.max(0, ...spans.map(({ from }) => spans.filter((s) => s.from <= from && from < s.to).reduce((sum, s) => sum + s.amount, 0)));
  const thing = (what: "burners" | "pots" | "sinks"): number =>
    most([
      ...all.map((p) => ({ from: p.at, to: p.end, amount: p.one.needs[what] ?? 0 })),
      ...day.dishes.flatMap((dish) => dish.holds.filter((h) => h.what === what).map((h) => ({ from: find(dish, h.from).at, to: find(dish, h.to).end, amount: 1 }))),
    ]);
  const baked = all.filter((p) => p.one.needs.oven);
  const away = day.unavailable.map(({ fromMin, toMin }) => ({ from: fromMin, to: toMin, amount: 1 }));
  return (
    all.every((p) => p.at >= 0 && (p.one.startAtMin ?? p.at) === p.at) &&
    all.every((p) => p.one.after.every((id) => {
      const wait = p.at - find(p.dish, id).end;
      const longest = typeof p.one.maxWaitMin === "object" ? p.one.maxWaitMin[id] : p.one.maxWaitMin;
      return wait >= 0 && wait <= (longest ?? Infinity);
    })) &&
    day.dishes.every((dish) => dish.limits.every((l) => find(dish, l.to).at - find(dish, l.from).end <= l.maxMin)) &&
    all.every((p) => p.end <= (day.endByMin ?? Infinity)) &&
    most([...all.map((p) => ({ from: p.at, to: p.hands, amount: 1 })), ...away]) <= day.kitchen.cooks &&
    (["burners", "pots", "sinks"] as const).every((what) => thing(what) <= day.kitchen[what]) &&
    most(baked.map((p) => ({ from: p.at, to: p.end, amount: p.one.needs.oven?.trays ?? 0 }))) <= (oven0?.trays ?? 0) &&
    baked.every((p) => p.at >= (oven0?.preheatMin ?? 0)) &&
    baked.every((p) => baked.every((q) => p.one.needs.oven?.c === q.one.needs.oven?.c || q.at >= p.end + (oven0?.changeMin ?? 0) || p.at >= q.end + (oven0?.changeMin ?? 0)))
  );
}

test("a page that loads the referee loads nothing of the search", () => {
  const loaded = new Set(["shared/engines/cook-day/check.ts"]);
  for (const file of loaded) {
    const text = readFileSync(new URL(`../../${file}`, import.meta.url), "utf8").replaceAll(/^import type .*$/gm, "");
    for (const other of importsOf(file, text)) loaded.add(other);
  }
  expect([...loaded].map((file) => file.replace("shared/engines/cook-day/", "")).sort()).toEqual(["check-heat.ts", "check-measures.ts", "check-minutes.ts", "check-order.ts", "check.ts", "words.ts"]);
});
