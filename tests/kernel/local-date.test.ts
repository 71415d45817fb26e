import fc from "fast-check";
import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { addDays, dateOf, dayNumber, dayOfYear, daysBetween, inYear, isLocalDate } from "#shared/kernel/local-date.ts";
import { isZone, localDateIn } from "#shared/kernel/zone.ts";

describe("calendar days", () => {
  // Gregorian rules; 2000 is a leap year, 1900 and 2100 are not (ISO 8601:2019 §4.2.1)
  it.each(["2027-04-31", "2027-02-29", "2100-02-29", "2027-13-01", "2027-00-10", "27-07-26", "2027-7-26", "2027-07-26T00:00"])("refuses %s", (text) => {
    expect(isLocalDate(text)).toBe(false);
    expect(() => dayNumber(text)).toThrow(RangeError);
  });

  it.each(["2028-02-29", "2000-02-29", "2027-07-26", "1970-01-01"])("takes %s", (text) => {
    expect(isLocalDate(text)).toBe(true);
    expect(dateOf(dayNumber(text))).toBe(text);
  });

  it("counts days as the calendar library does", () => {
    let checked = 0;
    fc.assert(
      fc.property(fc.integer({ min: -30_000, max: 60_000 }), fc.integer({ min: -3_000, max: 3_000 }), (start, span) => {
        const date = dateOf(start);
        const library = DateTime.fromISO(date, { zone: "utc" });
        expect(addDays(date, span)).toBe(library.plus({ days: span }).toFormat("yyyy-MM-dd"));
        expect(dayOfYear(date)).toBe(library.ordinal);
        expect(daysBetween(date, addDays(date, span))).toBe(span);
        checked++;
      }),
      { numRuns: 400 },
    );
    expect(checked).toBeGreaterThanOrEqual(400);
  });

  it("tells every day that exists from those that do not, as the calendar library does", () => {
    let real = 0;
    let unreal = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1900, max: 2199 }), fc.integer({ min: 0, max: 13 }), fc.integer({ min: 27, max: 32 }), (year, month, day) => {
        const text = `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
        const there = DateTime.fromISO(text, { zone: "utc" }).isValid;
        expect(isLocalDate(text)).toBe(there);
        if (there) real++;
        else unreal++;
      }),
      { numRuns: 600 },
    );
    expect(Math.min(real, unreal)).toBeGreaterThanOrEqual(100);
  });

  it("moves 29 February to 28 where the year has none", () => {
    expect(inYear("2028-02-29", 2027)).toBe("2027-02-28");
    expect(inYear("2028-02-29", 2032)).toBe("2032-02-29");
  });
});

describe("zones", () => {
  it("puts an instant on the household's own day", () => {
    // 2027-07-25T22:30Z is past midnight in Amsterdam (UTC+2 in summer, tz database) and still the 25th in New York (UTC−4)
    const instant = Date.UTC(2027, 6, 25, 22, 30);
    expect(localDateIn("Europe/Amsterdam", instant)).toBe("2027-07-26");
    expect(localDateIn("America/New_York", instant)).toBe("2027-07-25");
    expect(localDateIn("Pacific/Auckland", instant)).toBe("2027-07-26");
  });

  it("knows a zone from a word", () => {
    expect(isZone("Europe/Amsterdam")).toBe(true);
    expect(isZone("Europe/Nowhere")).toBe(false);
    expect(isZone("")).toBe(false);
  });
});
