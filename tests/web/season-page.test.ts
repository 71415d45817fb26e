/** Words and geometry of the season's page. How numbers are written follows the house's own rules (experience reference §3 and the look's table of numbers): no published source. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addWeeks, weekEnd, weekStart, weeksFrom } from "#shared/kernel/iso-week.ts";
import { barsOf, levelField, levelPath, weekAxis } from "#web/pages/season/week-axis.ts";
import { freezerWords, handsWords, reachedWords, ripensWords, sureWords, titlesWords, together, weeksTitle, type PlanLineOf, type PlanWeek } from "#web/pages/season/season-words.ts";
import { readWanted, type WantedFields } from "#web/pages/season/wanted-read.ts";
import { askedBy, targetWords, wishWords } from "#web/pages/season/wanted-words.ts";

const ID = "00000000-0000-4000-8000-000000000001";
const plain = (text: string): string => text.replaceAll("\u00a0", " ");
const line = (title: string, rest: Partial<PlanLineOf> = {}): PlanLineOf => ({ recipeId: ID, title, way: "freeze", batches: 1, uses: [], makes: { amount: 4, unit: "bags" }, handsOnMin: 20, freezerLitres: 2, jars: 0, why: "", agreedIds: [], ...rest });
const week = (n: number, rest: Partial<PlanWeek> = {}): PlanWeek => {
  const name = addWeeks("2027-W30", n);
  return { week: name, starts: weekStart(name), ends: weekEnd(name), away: false, pickedGrams: 4000, freshGrams: 3000, lostGrams: 0, handsOnMin: 0, handsOnMostMin: 240, text: "All of it is eaten fresh or keeps.", lines: [], ...rest };
};

describe("how sure a plan is", () => {
  it.each([
    [{ plannedBy: "rule", status: "rule", gapPct: null }, /^Worked out by the simple rule.*solver has not answered/],
    [{ plannedBy: "solver", status: "optimal", gapPct: 0 }, /proved/],
    [{ plannedBy: "solver", status: "feasible", gapPct: null }, /not known/],
    [{ plannedBy: "solver", status: "feasible", gapPct: 18.4 }, /could lose about a fifth less/],
    [{ plannedBy: "solver", status: "feasible", gapPct: 100 }, /could lose all of it less/],
    [{ plannedBy: "solver", status: "infeasible", gapPct: null }, /cannot all be done/],
  ] as const)("%o", (plan, words) => {
    expect(sureWords(plan)).toMatch(words);
    expect(sureWords(plan)).not.toMatch(/%|per cent/);
  });
});

describe("the sentences above the strips", () => {
  it("name the fullest week and what finds no use", () => {
    const weeks = [week(0), week(1, { pickedGrams: 14_000, lostGrams: 2300, handsOnMin: 220 }), week(2)];
    expect(plain(ripensWords(weeks))).toBe("Most ripens in week 31: about 14.0 kg. Of it 2.3 kg finds no use.");
    expect(plain(ripensWords([week(0)]))).toMatch(/All of it is eaten/);
    expect(plain(handsWords(weeks))).toBe("Hands are busiest in week 31: 3 h 40 of 4 h.");
    expect(handsWords([week(0)])).toBe("Nothing is to be cooked or put up.");
  });

  it("say how full the freezer gets, and that nobody has said its litres", () => {
    const fill = (usedLitres: number, capacityLitres: number | null) => plain(freezerWords({ litres: capacityLitres, weeks: [{ week: "2027-W30", usedLitres: 3, capacityLitres }, { week: "2027-W31", usedLitres, capacityLitres }] }));
    expect(fill(118, 150)).toBe("The freezer is fullest in week 31: 118 l of 150 l.");
    expect(fill(149.6, 150)).toMatch(/, full\.$/);
    expect(fill(40, null)).toMatch(/Nobody has said how many litres/);
  });
});

describe("weeks as rows", () => {
  it("gather quiet weeks in a row, never one with a line or a loss", () => {
    const weeks = [week(0, { lines: [line("Freeze peas")] }), week(1), week(2), week(3, { lostGrams: 400 }), week(4), week(5, { away: true }), week(6)];
    const rows = together(weeks);
    expect(rows.map((row) => row.length)).toEqual([1, 2, 1, 1, 1, 1]);
    expect(rows.flat()).toEqual(weeks);
    expect(plain(weeksTitle(week(1), week(2)))).toBe("Weeks 31–32 · 2 Aug – 15 Aug");
  });

  it("name what is made, and count what is given away", () => {
    const give = (name: string) => line(`${name} for a neighbour`, { way: "give" });
    expect(plain(titlesWords(week(0, { lines: [line("Freeze peas"), line("Tomato sauce", { batches: 2 }), give("Courgettes"), give("Beans")] })))).toBe("Freeze peas; Tomato sauce, 2 batches; 2 crops to give away");
  });
});

describe("the axis of weeks", () => {
  it("keeps every bar inside its week and stacked bars edge to edge", () => {
    let bars = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 200, max: 1300 }), fc.array(fc.tuple(fc.integer({ min: 0, max: 9000 }), fc.integer({ min: 0, max: 9000 })), { minLength: 40, maxLength: 40 }), (count, width, amounts) => {
        const axis = weekAxis(weeksFrom("2027-W30", count).map(weekStart), width, 16);
        const given = amounts.slice(0, count);
        const below = barsOf(given.map(([to]) => ({ from: 0, to })), 18_000, 100, axis);
        const above = barsOf(given.map(([from, more]) => ({ from, to: from + more })), 18_000, 100, axis);
        for (const bar of [...below, ...above]) {
          bars++;
          const at = Math.floor((bar.x / width) * count + 1e-6);
          expect(bar.x).toBeGreaterThanOrEqual(axis.x(at) - 1e-6);
          expect(bar.x + bar.width).toBeLessThanOrEqual(axis.x(at + 1) + 1e-6);
          expect(bar.y).toBeGreaterThanOrEqual(-1e-6);
        }
        for (const top of above) {
          const foot = below.find(({ x }) => x === top.x);
          expect(top.y + top.height).toBeCloseTo(foot ? foot.y : 100, 6);
        }
        const labels = axis.months.filter(({ labelled }) => labelled).map(({ x }) => x);
        expect(labels.every((x, i) => i === 0 || x - (labels[i - 1] ?? 0) >= 48 - 1e-6)).toBe(true);
      }),
      { numRuns: 60 },
    );
    expect(bars).toBeGreaterThan(500);
  });

  it("draws a level line that breaks where nothing is known", () => {
    const axis = weekAxis(weeksFrom("2027-W30", 4).map(weekStart), 400, 16);
    expect(levelPath([100, 100, null, 50], 100, 80, axis)).toBe("M0.0 0.0H100.0H200.0M300.0 40.0H400.0");
    expect(levelField([100, 50, 50, 50], 100, 80, axis)).toBe("M0.0 0.0H100.0V40.0H200.0H300.0H400.0V80H0Z");
  });
});

describe("what is wanted", () => {
  const recipes = [{ id: ID, title: "Plain tomato sauce" }];
  const typed = (change: Partial<WantedFields>): WantedFields => ({ kind: "target", dish: "plain tomato sauce", portions: "40", by: "1 November", who: "", ...change });
  const faults = (change: Partial<WantedFields>): string[] => {
    const read = readWanted(typed(change), recipes, "2027-07-26");
    return read.ok ? [] : read.faults.map(({ field }) => field);
  };

  it("is read from words, and refused with the field named", () => {
    expect(readWanted(typed({}), recipes, "2027-07-26")).toEqual({ ok: true, kind: "target", title: "Plain tomato sauce", body: { recipeId: ID, portions: 40, by: "2027-11-01" } });
    expect(readWanted(typed({ kind: "wish", by: "", who: "the children" }), recipes, "2027-07-26")).toMatchObject({ kind: "wish", body: { recipeId: ID, portions: 40, from: "the children" } });
    expect(faults({ by: "" })).toEqual(["wanted-by"]);
    expect(faults({ by: "1 July" })).toEqual(["wanted-by"]);
    expect(faults({ dish: "Sauce of the moon", portions: "-3" })).toEqual(["wanted-dish", "wanted-portions"]);
    expect(faults({ portions: "2.5" })).toEqual(["wanted-portions"]);
  });

  it("is said with its day, who asked, and how far the plan comes", () => {
    const target = { id: ID, recipeId: ID, title: "Sauce", portions: 40, by: "2027-11-01", inLarderPortions: 1, missingPortions: 39, past: false };
    expect(plain(targetWords(target, "2027-07-26"))).toBe("40 portions wanted by 1 November; 1 is in the larder");
    const wish = { id: ID, recipeId: ID, title: "Lasagne", portions: 8, by: "2027-08-14", from: "the children", inLarderPortions: 0, askedOn: "2027-07-20" };
    expect(plain(wishWords(wish, "2027-07-26"))).toBe("8 portions asked for by the children, wanted by 14 August");
    expect(askedBy({ by: "the neighbours" })).toBe("the neighbours");
    expect(plain(reachedWords({ kind: "target", portions: 40, reachedPortions: 27, missingPortions: 13 }))).toBe("By then 27 of 40 portions, 13 short.");
    expect(plain(reachedWords({ kind: "wish", portions: 6, reachedPortions: 6, missingPortions: 0 }))).toBe("The plan makes all 6 portions.");
  });
});
