/** Where things stand in the lanes and in the list of a cook day. A day by hand, then any day that a kitchen can have. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CookDay, Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";
import { clockMarks, markEvery } from "#web/pages/cook-day/clock-marks.ts";
import { endOf, entriesOf, loadsOf, roundsOf } from "#web/pages/cook-day/entries.ts";
import { fitted, lanesOf, ovenLine, runsOf, shortWords, stacked, type Stretch } from "#web/pages/cook-day/lanes.ts";

const OVEN = { trays: 2, preheatMin: 15, changeMin: 10 };
const dayOf = (change: Partial<CookDay> = {}): CookDay => ({ id: "d", on: "2027-08-01", startsAt: "10:00", cooks: 1, kitchen: { ovens: [OVEN], burners: 4 }, dishes: [], unavailable: [], ...change });
const planOf = (steps: readonly TimetableStep[]): Timetable => ({
  status: "optimal",
  endMin: Math.max(0, ...steps.map(endOf)),
  lowerBoundMin: 0,
  endSpread: null,
  handsOnMin: 0,
  oneAfterAnotherMin: 0,
  longestStandMin: null,
  steps: [...steps],
  dishes: ["A", "B", "C"].map((letter) => ({ dish: letter.toLowerCase(), letter, title: letter, batches: 1 })),
  conflicts: [],
  cautions: [],
  notes: [],
});
const step = (dish: string, name: string, startMin: number, handsOnMin: number, handsOffMin = 0, rest: Partial<TimetableStep> = {}): TimetableStep => ({ dish, step: name, text: `${name} it`, startMin, handsOnMin, handsOffMin, cook: 1, ...rest });

/** Beans blanched in two loads while bread rises and bakes: 0–10 knead, 10–26 trim twice, 26–42 boil, then blanch, chill, blanch, chill. */
const BEANS = planOf([
  step("a", "knead", 0, 10, 60),
  step("b", "trim", 10, 8, 0, { load: 1 }),
  step("b", "trim", 18, 8, 0, { load: 2 }),
  step("b", "boil", 26, 2, 14, { burner: 1 }),
  step("b", "blanch", 42, 1, 4, { load: 1 }),
  step("b", "chill", 47, 1, 3, { load: 1 }),
  step("b", "blanch", 48, 1, 4, { load: 2 }),
  step("b", "chill", 53, 1, 3, { load: 2 }),
  step("a", "bake", 70, 3, 35, { oven: 1, ovenC: 230 }),
]);

describe("the list", () => {
  it("has loads that follow each other as one entry, numbered through", () => {
    expect(entriesOf(BEANS).map(({ letter, first, last, steps }) => `${letter} ${first}–${last} ${[...new Set(steps.map((one) => one.step))].join(" ")}`)).toEqual(["A 1–1 knead", "B 2–3 trim", "B 4–4 boil", "B 5–8 blanch chill", "A 9–9 bake"]);
    expect(loadsOf(BEANS).get("b blanch")).toBe(2);
  });

  it("says each step of such an entry once, with every start", () => {
    const entry = entriesOf(BEANS)[3];
    expect(entry && roundsOf(entry).map(({ text, steps }) => `${text} ${steps.map(({ startMin }) => startMin).join(" ")}`)).toEqual(["blanch it 42 48", "chill it 47 53"]);
  });

  it("parts loads where another dish comes between, and leaves a step of one load by itself", () => {
    const between = planOf([step("b", "blanch", 0, 1, 4, { load: 1 }), step("a", "knead", 1, 5), step("b", "blanch", 6, 1, 4, { load: 2 }), step("c", "fry", 7, 5, 0, { load: 1 }), step("c", "box", 12, 5, 0, { load: 1 })]);
    expect(entriesOf(between).map(({ first, last }) => [first, last])).toEqual([[1, 1], [2, 2], [3, 3], [4, 4], [5, 5]]);
  });
});

describe("the lanes of a day by hand", () => {
  const lanes = lanesOf(dayOf({ unavailable: [{ what: "cook", fromMin: 56, toMin: 70, why: "tea" }, { what: "cook", fromMin: 75, toMin: 90 }] }), BEANS, [{ id: "b", holds: [{ what: "burners", from: "boil", to: "blanch" }, { what: "pots", from: "boil", to: "blanch" }] }]);

  it("hands: blocks with their loads, and the sum of their minutes", () => {
    expect(lanes.hands).toHaveLength(1);
    expect(lanes.hands[0]?.spans.map(({ letter, fromMin, toMin, parts }) => [letter, fromMin, toMin, parts.length])).toEqual([["A", 0, 10, 1], ["B", 10, 26, 2], ["B", 26, 28, 1], ["B", 42, 54, 4], ["A", 70, 73, 1]]);
    // 10 + 8 + 8 + 2 + 4 × 1 + 3
    expect(lanes.hands[0]?.busyMin).toBe(35);
  });

  it("away: both times stand in the lane of the cook who is free then", () => {
    expect(lanes.hands[0]?.away).toEqual([{ fromMin: 56, toMin: 70, why: "tea" }, { fromMin: 75, toMin: 90, why: "" }]);
  });

  it("burner: the pot stays on it until the last load is out, because the recipe keeps it there", () => {
    expect(lanes.burners.map(({ burner, spans }) => [burner, spans.map(({ fromMin, toMin }) => [fromMin, toMin])])).toEqual([[1, [[26, 53]]]]);
    expect(lanesOf(dayOf(), BEANS).burners[0]?.spans[0]?.toMin).toBe(42);
  });

  it("oven: one run at its heat; by itself: rise and loads in rows", () => {
    expect(lanes.ovens).toEqual([{ oven: 1, runs: [{ fromMin: 70, toMin: 108, c: 230, letters: ["A"] }] }]);
    // the loads of the beans run into each other: 43–47, 48–51 beside 49–53, 54–57
    expect(lanes.alone.map((row) => row.map(({ letter, fromMin, toMin }) => [letter, fromMin, toMin]))).toEqual([[["A", 10, 70]], [["B", 43, 47], ["B", 48, 53], ["B", 54, 57]]]);
    expect(lanes.endMin).toBe(108);
  });
});

describe("two cooks", () => {
  it("one who is away stands in the lane that is free, not over the other's work", () => {
    const plan = planOf([step("a", "chop", 0, 30, 0, { cook: 1 }), step("b", "peel", 40, 30, 0, { cook: 2 })]);
    const lanes = lanesOf(dayOf({ cooks: 2, unavailable: [{ what: "cook", fromMin: 0, toMin: 20 }, { what: "cook", fromMin: 45, toMin: 60 }] }), plan);
    expect(lanes.hands.map(({ away }) => away.map(({ fromMin }) => fromMin))).toEqual([[45], [0]]);
    // with both free it is the last cook's, so that the first lane stays whole
    const late = lanesOf(dayOf({ cooks: 2, unavailable: [{ what: "cook", fromMin: 80, toMin: 90 }] }), plan);
    expect(late.hands.map(({ away }) => away.length)).toEqual([0, 1]);
  });
});

type Asked = { dish: number; cook: number; wait: number; on: number; off: number; place: "none" | "oven" | "burner"; c: number; loads: number };

/** A timetable that a kitchen of two cooks, one oven and two burners can have: each thing is taken only once it is free. */
function timetable(asked: readonly Asked[]): Timetable {
  const free = new Map<string, number>();
  let oven: { c: number; from: number; until: number } = { c: 0, from: 0, until: 0 };
  const steps: TimetableStep[] = [];
  asked.forEach(({ dish, cook, wait, on, off, place, c, loads }, i) => {
    for (let load = 1; load <= loads; load++) {
      const burner = place === "burner" ? (i % 2) + 1 : undefined;
      const startMin = wait + Math.max(free.get(`cook ${cook}`) ?? 0, burner === undefined ? 0 : (free.get(`burner ${burner}`) ?? 0), place !== "oven" ? 0 : oven.c === c ? oven.from : oven.until);
      const one = step(["a", "b", "c"][dish] as string, `s${i}`, startMin, on, off, { cook, ...(loads > 1 ? { load } : {}), ...(burner === undefined ? {} : { burner }), ...(place === "oven" ? { oven: 1, ovenC: c } : {}) });
      steps.push(one);
      free.set(`cook ${cook}`, startMin + on);
      if (burner !== undefined) free.set(`burner ${burner}`, endOf(one));
      if (place === "oven") oven = { c, from: oven.c === c ? oven.from : startMin, until: Math.max(oven.until, endOf(one)) };
    }
  });
  return planOf(steps.sort((a, b) => a.startMin - b.startMin));
}

const anyDay = fc.array(
  fc.record({
    dish: fc.integer({ min: 0, max: 2 }),
    cook: fc.integer({ min: 1, max: 2 }),
    wait: fc.integer({ min: 0, max: 15 }),
    on: fc.integer({ min: 0, max: 20 }),
    off: fc.integer({ min: 0, max: 60 }),
    place: fc.constantFrom<Asked["place"]>("none", "oven", "burner"),
    c: fc.constantFrom(160, 190, 230),
    loads: fc.integer({ min: 1, max: 4 }),
  }),
  { minLength: 1, maxLength: 14 },
);

const overlaps = (spans: readonly Stretch[]): boolean => [...spans].sort((a, b) => a.fromMin - b.fromMin).some((span, i, all) => i > 0 && span.fromMin < (all[i - 1] as Stretch).toMin);
const asText = ({ fromMin, toMin }: Stretch): string => `${fromMin}–${toMin}`;

describe("the lanes of any day", () => {
  it("nothing lies over anything in a row, and every step has its place once", () => {
    const seen = { steps: 0, loads: 0, burners: 0, runs: 0, rows: 0 };
    fc.assert(
      fc.property(anyDay, (asked) => {
        const plan = timetable(asked);
        const lanes = lanesOf(dayOf({ cooks: 2 }), plan);
        lanes.hands.forEach(({ spans, busyMin }, i) => {
          const parts = spans.flatMap((span) => span.parts);
          const own = plan.steps.filter(({ cook, handsOnMin }) => cook === i + 1 && handsOnMin > 0);
          expect(overlaps(parts)).toBe(false);
          expect(parts.map(asText).sort()).toEqual(own.map(({ startMin, handsOnMin }) => asText({ fromMin: startMin, toMin: startMin + handsOnMin })).sort());
          expect(busyMin).toBe(own.reduce((sum, { handsOnMin }) => sum + handsOnMin, 0));
          seen.loads += spans.filter((span) => span.parts.length > 1).length;
        });
        for (const { burner, spans } of lanes.burners) {
          const parts = spans.flatMap((span) => span.parts);
          expect(overlaps(parts)).toBe(false);
          expect(parts).toHaveLength(plan.steps.filter((one) => one.burner === burner).length);
          seen.burners += parts.length;
        }
        for (const row of lanes.alone) expect(overlaps(row)).toBe(false);
        const itself = plan.steps.filter((one) => one.handsOffMin > 0 && one.oven === undefined && one.burner === undefined);
        expect(lanes.alone.flat().flatMap((span) => span.parts)).toHaveLength(itself.length);
        for (const { runs } of lanes.ovens) {
          expect(overlaps(runs)).toBe(false);
          for (const one of plan.steps.filter(({ oven }) => oven === 1)) expect(runs.some((run) => run.c === one.ovenC && run.fromMin <= one.startMin && endOf(one) <= run.toMin)).toBe(true);
          seen.runs += runs.length;
        }
        expect(lanes.endMin).toBe(Math.max(...plan.steps.map(endOf)));
        seen.steps += plan.steps.length;
        seen.rows += lanes.alone.length;
      }),
      { numRuns: 300 },
    );
    expect(seen.steps).toBeGreaterThan(2000);
    for (const [what, n] of Object.entries(seen)) expect(n, what).toBeGreaterThan(100);
  });

  it("the list has every step once, by the clock, and its numbers run through", () => {
    let entries = 0;
    fc.assert(
      fc.property(anyDay, (asked) => {
        const plan = timetable(asked);
        const list = entriesOf(plan);
        expect(list.flatMap(({ steps }) => steps)).toEqual(plan.steps);
        let next = 1;
        for (const { first, last, steps } of list) {
          expect(first).toBe(next);
          expect(last - first + 1).toBe(steps.length);
          expect(new Set(steps.map(({ dish }) => dish)).size).toBe(1);
          next = last + 1;
        }
        entries += list.length;
      }),
      { numRuns: 300 },
    );
    expect(entries).toBeGreaterThan(1000);
  });
});

describe("an oven", () => {
  const use = (fromMin: number, toMin: number, c: number, letter = "A") => ({ fromMin, toMin, c, letter });
  it("has one run for uses at one heat that touch or overlap", () => {
    expect(runsOf([use(40, 60, 190, "B"), use(0, 30, 190), use(30, 50, 190, "A"), use(70, 80, 190), use(80, 100, 230)])).toEqual([
      { fromMin: 0, toMin: 60, c: 190, letters: ["A", "B"] },
      { fromMin: 70, toMin: 80, c: 190, letters: ["A"] },
      { fromMin: 80, toMin: 100, c: 230, letters: ["A"] },
    ]);
  });

  it("is cold before it is heated, holds its heat while something is in it, and cools", () => {
    const line = ovenLine([{ fromMin: 60, toMin: 100, c: 200, letters: ["A"] }], 15, 200);
    expect(line.slice(0, 3)).toEqual([
      [45, 20],
      [60, 200],
      [100, 200],
    ]);
    expect(line[3]?.[1]).toBeLessThan(200);
    expect(ovenLine([{ fromMin: 5, toMin: 100, c: 200, letters: [] }], 15, 100)).toEqual([
      [0, 20],
      [5, 200],
      [100, 200],
    ]);
    expect(ovenLine([], 15, 100)).toEqual([]);
  });
});

describe("the marks of the clock", () => {
  it("stand at round times, and the start has its own", () => {
    expect(clockMarks(600, 60, 15)).toEqual([0, 15, 30, 45, 60]);
    // from 10:10: 10:15 would touch the start's own figures
    expect(clockMarks(610, 60, 15)).toEqual([0, 20, 35, 50]);
    expect(clockMarks(570, 120, 60)).toEqual([0, 90]);
  });

  it("are never nearer than their figures need, for any day and width", () => {
    let marks = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1439 }), fc.integer({ min: 20, max: 900 }), fc.integer({ min: 600, max: 1300 }), (startMin, endMin, width) => {
        const least = 58;
        const every = markEvery(endMin, width, least);
        const at = clockMarks(startMin, endMin, every);
        expect(at[0]).toBe(0);
        at.slice(1).forEach((minute, i) => {
          expect((startMin + minute) % every).toBe(0);
          expect(minute).toBeLessThanOrEqual(endMin);
          expect(((minute - (at[i] as number)) / endMin) * width).toBeGreaterThanOrEqual(least);
          marks++;
        });
      }),
      { numRuns: 500 },
    );
    expect(marks).toBeGreaterThan(1000);
  });
});

describe("words in little room", () => {
  it("are the first of the step, with none left hanging", () => {
    expect(shortWords("Slice the onions and garlic, cut courgettes")).toBe("slice the onions");
    expect(shortWords("Mix and knead the dough; rest covered")).toBe("mix and knead");
    expect(shortWords("Bake until set in the middle (71 °C)")).toBe("bake until set");
    expect(shortWords("Blend")).toBe("blend");
  });

  it("are cut between words, to nothing where none has room", () => {
    expect(fitted("slice the onions", 16)).toBe("slice the onions");
    expect(fitted("slice the onions", 12)).toBe("slice");
    expect(fitted("slice the onions", 5)).toBe("slice");
    expect(fitted("slice the onions", 4)).toBe("");
    expect(fitted("slice", -3)).toBe("");
  });

  it("rows hold spans in as few rows as will do", () => {
    const at = (fromMin: number, toMin: number) => ({ fromMin, toMin });
    expect(stacked([at(30, 40), at(0, 30), at(10, 20), at(20, 50)])).toEqual([
      [at(0, 30), at(30, 40)],
      [at(10, 20), at(20, 50)],
    ]);
  });
});
