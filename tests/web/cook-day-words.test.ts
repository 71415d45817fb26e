/** The sentences of a cook day, held against a day made by hand. */
import { describe, expect, it } from "vitest";
import type { CookDay, Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { awaySentence, clockAt, daySentence, dishesOf, dishWords, roundSentence, stepSentence, underSentence, weekdayOf } from "#web/pages/cook-day/day-words.ts";

const TODAY = "2027-07-26";
const DAY: CookDay = {
  id: "d",
  on: "2027-08-01",
  startsAt: "10:00",
  endsBy: "15:30",
  cooks: 1,
  kitchen: { ovens: [], burners: 4 },
  dishes: [
    { recipeId: "a", title: "Soup", batches: 1 },
    { recipeId: "b", title: "Bread", batches: 2 },
  ],
  unavailable: [],
};
const PLAN: Timetable = { status: "optimal", endMin: 252, lowerBoundMin: 252, endSpread: { low: 242, likely: 252, high: 303 }, handsOnMin: 192, oneAfterAnotherMin: 577, longestStandMin: 13, steps: [], dishes: [], conflicts: [], cautions: [], notes: [] };
const step = (change: Partial<TimetableStep>): TimetableStep => ({ dish: "a", step: "s", text: "Do it", startMin: 60, handsOnMin: 0, handsOffMin: 0, ...change });
const WITH_STEP: Timetable = { ...PLAN, steps: [step({ handsOnMin: 5 })] };
const plainly = (text: string): string => text.replace(/\u00a0/g, " ");

describe("the clock and the week", () => {
  it("minutes from the start are a time of day, past midnight too", () => {
    expect([0, 61, 600, 840, 900].map((minutes) => clockAt(DAY, minutes))).toEqual(["10:00", "11:01", "20:00", "00:00", "01:00"]);
  });

  // 1 August 2027 is a Sunday, 29 February 2028 a Tuesday, 1 January 2000 a Saturday: any perpetual calendar
  it("days have their names", () => {
    expect(["2027-08-01", "2028-02-29", "2000-01-01"].map(weekdayOf)).toEqual(["Sunday", "Tuesday", "Saturday"]);
  });
});

describe("the day's sentence", () => {
  const say = (day: Partial<CookDay>, plan: Partial<Timetable> | null): string => plainly(daySentence({ ...DAY, ...day }, plan && { ...PLAN, ...plan }, TODAY));
  it("says when to begin, when it ends and how long hands are busy", () => {
    expect(say({}, {})).toBe("Begin at 10:00 on Sunday, 1 August, and two dishes are put away by 14:12. Your hands are busy for 3 h 12 of it.");
    expect(say({ dishes: DAY.dishes.slice(1), cooks: 2 }, {})).toBe("Begin at 10:00 on Sunday, 1 August, and one dish is put away by 14:12. Two pairs of hands are busy for 3 h 12 of it.");
  });

  it("says what is missing, what cannot be, and where the way out stands", () => {
    expect(say({ dishes: [] }, {})).toBe("Nothing is chosen for Sunday, 1 August yet. Put a dish in, and its timetable stands here.");
    expect(say({}, null)).toBe("There is no timetable for Sunday, 1 August yet.");
    expect(say({}, { status: "infeasible", endMin: null, conflicts: [{ text: "x", ways: ["y"] }] })).toBe("These two dishes cannot all be had on Sunday, 1 August as the day is set. What clashes, and what would help, stands below.");
    expect(say({ dishes: DAY.dishes.slice(1) }, { status: "infeasible", endMin: null })).toBe("This dish cannot be had on Sunday, 1 August as the day is set.");
  });
});

describe("the sentence below", () => {
  const say = (day: Partial<CookDay>, plan: Partial<Timetable>): string => plainly(underSentence({ ...DAY, ...day }, { ...WITH_STEP, ...plan }));
  it("says what is saved, how good the plan is, how long a dish waits, and the spread of the end", () => {
    expect(say({}, {})).toBe("One after another they would take 9 h 37. No plan ends earlier. Where a dish should not wait, it waits 13 min at most. Simmering and baking are ranges, so the end lies between 14:02 and 15:03.");
  });

  it("says when the longest times would run past the hour to be done by", () => {
    expect(say({ endsBy: "15:00" }, {})).toMatch(/between 14:02 and 15:03; at the longest that is after 15:00\.$/);
    expect(say({ endsBy: "15:03" }, {})).toMatch(/and 15:03\.$/);
  });

  it("leaves out what says nothing", () => {
    expect(say({}, { status: "feasible", lowerBoundMin: 240, endSpread: { low: 252, likely: 252, high: 252 }, longestStandMin: 0, oneAfterAnotherMin: 252 })).toBe("No plan can end before 14:00.");
    expect(say({}, { status: "infeasible", endMin: null })).toBe("");
    expect(say({}, { steps: [] })).toBe("");
  });

  it("says who is away and when", () => {
    const unavailable = [{ what: "cook" as const, fromMin: 120, toMin: 150, why: "lunch" }, { what: "cook" as const, fromMin: 240, toMin: 250 }];
    expect(awaySentence({ ...DAY, unavailable })).toBe("Away: 12:00 to 12:30, lunch; 14:00 to 14:10.");
    expect(awaySentence({ ...DAY, cooks: 2, unavailable })).toMatch(/^One cook is away: /);
    expect(say({ unavailable }, {})).toMatch(/Away: 12:00 to 12:30, lunch; 14:00 to 14:10\.$/);
  });
});

describe("a step", () => {
  it.each<[Partial<TimetableStep>, Partial<CookDay>, string]>([
    [{ handsOnMin: 22 }, {}, "22 min of hands"],
    [{ handsOnMin: 3, handsOffMin: 35, ovenC: 230, oven: 1 }, {}, "3 min of hands, then 35 min in the oven at 230 °C"],
    [{ handsOnMin: 3, handsOffMin: 20, burner: 2 }, {}, "3 min of hands, then 20 min on burner 2"],
    [{ handsOffMin: 75 }, {}, "1 h 15 by itself"],
    [{ handsOnMin: 5, cook: 2 }, { cooks: 2 }, "5 min of hands, cook 2"],
    // it starts at 11:00; only a limit that presses is worth a word
    [{ handsOnMin: 5, mustStartByMin: 75 }, {}, "5 min of hands; by 11:15 at the latest"],
    [{ handsOnMin: 5, mustStartByMin: 76 }, {}, "5 min of hands"],
    [{ handsOnMin: 5, mustStartByMin: 60 }, {}, "5 min of hands; straight on, without a wait"],
  ])("%j says “%s”", (change, day, words) => {
    expect(plainly(stepSentence({ ...DAY, ...day }, step(change)))).toBe(words);
  });

  it("in loads says what each asks, and the tightest wait of all", () => {
    const load = (startMin: number, mustStartByMin?: number): TimetableStep => step({ startMin, handsOnMin: 1, handsOffMin: 3, ...(mustStartByMin === undefined ? {} : { mustStartByMin }) });
    expect(plainly(roundSentence([load(0), load(4)]))).toBe("Each 1 min of hands, then 3 min by itself");
    expect(plainly(roundSentence([load(0, 14), load(4, 12)]))).toBe("Each 1 min of hands, then 3 min by itself; each may wait 8 min more at most");
    expect(plainly(roundSentence([load(0, 14), load(4, 4)]))).toBe("Each 1 min of hands, then 3 min by itself; straight on, without a wait");
    expect(plainly(roundSentence([load(0, 90), load(4, 94)]))).toBe("Each 1 min of hands, then 3 min by itself");
    expect(roundSentence([])).toBe("");
  });
});

describe("a dish", () => {
  const recipe = { makes: { amount: 4, unit: "bag" }, uses: [{ crop: "french-bean", grams: 1000 }, { crop: "thyme", grams: 0 }] } as unknown as Recipe;
  const names = new Map([["french-bean", "French bean, bush"]]);
  it("says what it takes from the garden and makes, for all its batches", () => {
    expect(plainly(dishWords(1, recipe, names))).toBe("1.0 kg French beans make 4 bags");
    expect(plainly(dishWords(2, recipe, names))).toBe("2 batches: 2.0 kg French beans make 8 bags");
    expect(plainly(dishWords(1, { ...recipe, uses: [] }, names))).toBe("Makes 4 bags");
    expect(plainly(dishWords(3, { ...recipe, uses: [] }, names))).toBe("3 batches: makes 12 bags");
    expect(plainly(dishWords(2, undefined, names))).toBe("2 batches");
  });

  it("stands in the list of days with its batches", () => {
    expect(dishesOf(DAY)).toBe("Soup · Bread × 2");
    expect(dishesOf({ dishes: [] })).toBe("Nothing chosen yet");
  });
});
