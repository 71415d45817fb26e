/** The week's own sentence: crops are named only as far as they weigh. Common practice, no source. */
import { describe, expect, it } from "vitest";
import type { CalendarWeek } from "#shared/contracts/calendar.ts";
import { rowNames } from "#web/parts/crop-names.ts";
import { glutSentence, weekBars } from "#web/pages/week/week-glut.ts";

const NAMES = { cabbage: "Cabbage", courgette: "Courgette", tomato: "Tomato, large", bean: "French bean, bush" } as const;
const names = rowNames(Object.entries(NAMES).map(([crop, name]) => ({ crop, name })));
const week = (over: Partial<Record<keyof typeof NAMES, number>>, rest: Partial<CalendarWeek> = {}): CalendarWeek => {
  const crops = Object.entries(over).map(([crop, surplusGrams]) => ({ crop, name: NAMES[crop as keyof typeof NAMES], grams: { low: 0, likely: 0, high: 0 }, pickedGrams: 0, freshGrams: 0, surplusGrams, chanceInHarvest: 1, waits: false }));
  const surplusGrams = crops.reduce((sum, crop) => sum + crop.surplusGrams, 0);
  return { week: "2027-W30", starts: "2027-07-26", ends: "2027-08-01", headline: "", crops, grams: { low: 5000, likely: 9000, high: 14_000 }, pickedGrams: 0, eatsGrams: 5000, surplusGrams, glut: surplusGrams > 1000, planned: [], pairings: [], cookDay: [], ...rest };
};
const said = (of: CalendarWeek, thisWeek = true): string => {
  const { before, over, after } = glutSentence(of, names, thisWeek);
  return (before + over + after).replaceAll("\u00a0", " ");
};

describe("the week's sentence", () => {
  it.each([
    [{ cabbage: 1643, courgette: 735 }, "This week 2.4 kg is over, most of it cabbage."],
    [{ cabbage: 1000, courgette: 900 , tomato: 800, bean: 100 }, "This week 2.8 kg is over, most of it cabbage and courgettes."],
    [{ cabbage: 2000 }, "This week 2.0 kg is over: cabbage."],
  ] as const)("%o", (over, words) => {
    expect(said(week(over))).toBe(words);
  });

  it("says “most of it” only of more than half", () => {
    const many = Object.fromEntries(["a", "b", "c", "d", "e", "f", "g", "h"].map((crop) => [crop, 500]));
    expect(said(week(many as never))).not.toMatch(/most of it/);
    expect(said(week(many as never))).toMatch(/and 5 other crops\.$/);
  });

  it("leaves a calm week calm", () => {
    expect(said(week({}))).toBe("Nothing is over this week.");
    expect(said(week({}), false)).toBe("Nothing is over in week 30.");
    expect(glutSentence(week({}), names, true).over).toBe("");
  });

  it("draws all weeks on one scale, what is over inside what is likely", () => {
    const [small, large] = weekBars([week({ cabbage: 2000 }), week({ cabbage: 9000 }, { grams: { low: 1, likely: 8000, high: 28_000 } })], 280);
    expect(large?.high).toBe(280);
    expect([small?.eaten, small?.over, small?.high]).toEqual([70, 20, 140]);
    expect([large?.eaten, large?.over]).toEqual([0, 80]);
  });
});
