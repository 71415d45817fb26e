/** Seasons and windows. ISO 8601: 2026 has 53 weeks, 2027 has 52; 1 January 2027 lies in 2026-W53. */
import { describe, expect, it } from "vitest";
import { dateOf, dayNumber } from "#shared/kernel/local-date.ts";
import { seasonOf, seasonsBetween, seasonStart, weekSpan, yearWindow } from "#shared/planning/season.ts";

describe("the year of weeks", () => {
  it.each([
    ["2027-07-26", "2027-W01", 52],
    ["2026-12-28", "2026-W01", 53],
    ["2027-01-01", "2026-W01", 53],
    ["2027-01-04", "2027-W01", 52],
  ])("of %s begins with %s and has %i", (day, from, weeks) => expect(yearWindow(day)).toEqual({ from, weeks }));
});

describe("a season", () => {
  it("is the calendar year in the north and July to June in the south, named by the year it ends in", () => {
    expect(seasonOf(dayNumber("2027-07-26"), false)).toBe(2027);
    expect(seasonOf(dayNumber("2027-06-30"), true)).toBe(2027);
    expect(seasonOf(dayNumber("2027-07-01"), true)).toBe(2028);
    expect([seasonStart(2027, false), seasonStart(2027, true)].map(dateOf)).toEqual(["2027-01-01", "2026-07-01"]);
  });
  it("counts where anything can come of it: not in its first month", () => {
    expect(seasonsBetween(dayNumber("2027-01-04"), dayNumber("2028-01-02"), false)).toEqual([2027]);
    expect(seasonsBetween(dayNumber("2027-01-04"), dayNumber("2028-02-01"), false)).toEqual([2027, 2028]);
    expect(seasonsBetween(dayNumber("2027-01-04"), dayNumber("2028-01-02"), true)).toEqual([2027, 2028]);
  });
});

it("a span has the lead weeks before the window and knows the running week", () => {
  const span = weekSpan({ from: "2027-W30", weeks: 4 }, 2, "2027-08-01");
  expect(span.weeks).toEqual(["2027-W28", "2027-W29", "2027-W30", "2027-W31", "2027-W32", "2027-W33"]);
  // Sunday 1 August still belongs to week 30
  expect([dateOf(span.firstMonday), dateOf(span.untilDay), span.current]).toEqual(["2027-07-12", "2027-08-23", 2]);
});
