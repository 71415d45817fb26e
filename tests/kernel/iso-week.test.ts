import fc from "fast-check";
import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { addWeeks, isIsoWeek, weekEnd, weekOf, weekStart, weeksFrom } from "#shared/kernel/iso-week.ts";
import { addDays } from "#shared/kernel/local-date.ts";

describe("ISO weeks", () => {
  // ISO 8601:2019 §3.1.1.23: week 1 holds the year's first Thursday. The rows are the worked dates that RFC 3339's companion texts and
  // ISO 8601 itself use (2005-01-01 = 2004-W53-6, 2008-12-29 = 2009-W01-1, 2010-01-03 = 2009-W53-7; from memory of the standard's table).
  it.each([
    ["2005-01-01", "2004-W53"],
    ["2005-01-02", "2004-W53"],
    ["2007-01-01", "2007-W01"],
    ["2007-12-30", "2007-W52"],
    ["2008-12-28", "2008-W52"],
    ["2008-12-29", "2009-W01"],
    ["2009-12-31", "2009-W53"],
    ["2010-01-03", "2009-W53"],
    ["2010-01-04", "2010-W01"],
    // experience reference §5: 28 December 2026 to 3 January 2027 is 2026-W53
    ["2026-12-28", "2026-W53"],
    ["2027-01-03", "2026-W53"],
    ["2027-07-26", "2027-W30"],
  ])("%s lies in %s", (date, week) => {
    expect(weekOf(date)).toBe(week);
  });

  it("knows the years that have a week 53: 71 in a 400-year cycle", () => {
    // 71 long years in 400 (ISO 8601 week calendar, a property of the Gregorian cycle)
    const long = Array.from({ length: 400 }, (_, i) => 2000 + i).filter((year) => isIsoWeek(`${year}-W53`));
    expect(long).toHaveLength(71);
    expect(long.slice(0, 6)).toEqual([2004, 2009, 2015, 2020, 2026, 2032]);
  });

  it.each(["2027-W54", "2027-W53", "2027-W00", "2027-W1", "2027W10", "2027-W30-1", "", "W30"])("refuses %j", (text) => {
    expect(isIsoWeek(text)).toBe(false);
  });

  it("agrees with the platform's calendar through a Monday rule of its own", () => {
    let checked = 0;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40_000 }), (offset) => {
        const date = addDays("1990-01-01", offset);
        const week = weekOf(date);
        // independent reading: the Thursday of the date's week names the year, its day of the year names the week
        const js = new Date(`${date}T00:00:00Z`);
        const thursday = new Date(js.getTime() + (3 - ((js.getUTCDay() + 6) % 7)) * 86_400_000);
        const ordinal = Math.floor((thursday.getTime() - Date.UTC(thursday.getUTCFullYear(), 0, 1)) / 86_400_000);
        expect(week).toBe(`${thursday.getUTCFullYear()}-W${String(1 + Math.floor(ordinal / 7)).padStart(2, "0")}`);
        expect(weekStart(week) <= date && date <= weekEnd(week)).toBe(true);
        expect(addDays(weekStart(week), 6)).toBe(weekEnd(week));
        // and the calendar library names and steps the same weeks
        const library = DateTime.fromISO(date, { zone: "utc" });
        expect(week).toBe(library.toFormat("kkkk-'W'WW"));
        expect(addWeeks(week, offset % 120)).toBe(library.plus({ weeks: offset % 120 }).toFormat("kkkk-'W'WW"));
        checked++;
      }),
      { numRuns: 500 },
    );
    expect(checked).toBeGreaterThanOrEqual(500);
  });

  it("counts on over the turn of a year", () => {
    expect(weeksFrom("2026-W52", 4)).toEqual(["2026-W52", "2026-W53", "2027-W01", "2027-W02"]);
    expect(addWeeks("2027-W01", -1)).toBe("2026-W53");
    expect(DateTime.fromISO(weekStart("2027-W01")).weekday).toBe(1);
  });
});
