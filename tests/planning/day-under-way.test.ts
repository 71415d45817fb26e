/** The clock of a day that has begun. Worked by hand; Amsterdam keeps UTC+2 in summer (IANA time zone database, Europe/Amsterdam). */
import { describe, expect, it } from "vitest";
import type { CookDayInput } from "#shared/engines/cook-day/index.ts";
import { clockWords } from "#shared/engines/cook-day/words.ts";
import { dayInHand, type AgreedPlan, type DayFacts, type MarkFacts } from "#shared/planning/day-under-way.ts";

const day: CookDayInput = { kitchen: { cooks: 1, ovens: [], burners: 2, pots: 2, sinks: 1 }, startsAtMin: 600, endByMin: 330, unavailable: [{ what: "cook", fromMin: 120, toMin: 150, why: "lunch" }], dishes: [] };
const plan: AgreedPlan = { id: "p", kind: "agree", atMs: 0, dayVersion: 1, day, steps: [], brokenOff: [], passed: [] };
const begunAt = (at: string): DayFacts => {
  const begun: MarkFacts = { id: "m", kind: "begun", dish: null, step: null, load: null, oven: null, line: null, stage: null, atMs: Date.parse(at) };
  return { on: "2027-08-01", startsAt: "10:00", zone: "Europe/Amsterdam", version: 1, plans: [plan], marks: [begun] };
};

describe("a day planned for ten o'clock", () => {
  it("begun at 10:20 loses the twenty minutes before lunch and before it must be done", () => {
    const inHand = dayInHand(begunAt("2027-08-01T08:20:00Z"), plan);
    expect([inHand.endByMin, inHand.unavailable[0]?.fromMin, inHand.unavailable[0]?.toMin]).toEqual([310, 100, 130]);
    expect(clockWords(inHand, 100)).toBe("12:00");
  });

  it("begun six days early, in the evening, keeps its distances and reads the evening's clock", () => {
    const inHand = dayInHand(begunAt("2027-07-26T20:26:00Z"), plan);
    expect([inHand.endByMin, inHand.unavailable]).toEqual([330, day.unavailable]);
    expect(clockWords(inHand, 64)).toBe("23:30");
  });
});
