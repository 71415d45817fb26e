/** What people type into the forms. Today is Monday 26 July 2027. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dateOf, dayNumber } from "#shared/kernel/local-date.ts";
import { MONTHS } from "#web/format.ts";
import { numberOf, readGrams, readLength, readSowingAmount } from "#web/parts/typed-amount.ts";
import { readDay } from "#web/parts/typed-day.ts";

const TODAY = "2027-07-26";
const dateIn = (text: string, latest?: "today"): string => {
  const read = readDay(text, TODAY, latest);
  return read.ok ? read.value.date : `✗ ${read.wrong} ${read.works}`;
};

describe("a day", () => {
  it.each([
    ["today", "2027-07-26"],
    ["Yesterday", "2027-07-25"],
    ["12 April", "2027-04-12"],
    ["12th of April", "2027-04-12"],
    ["April 12", "2027-04-12"],
    ["12 Apr 2026", "2026-04-12"],
    ["12.4.", "2027-04-12"],
    ["12/04/2026", "2026-04-12"],
    ["2027-04-12", "2027-04-12"],
    ["mid April", "2027-04-15"],
    ["early may", "2027-05-05"],
    ["late Sept", "2027-09-25"],
  ])("“%s” is %s", (typed, date) => {
    expect(dateIn(typed)).toBe(date);
  });

  it("“mid April” stays marked as about right", () => {
    expect(readDay("mid April", TODAY)).toMatchObject({ ok: true, value: { about: true } });
    expect(readDay("15 April", TODAY)).toMatchObject({ ok: true, value: { about: false } });
  });

  it("without a year is the nearest one, and for what already happened the last one", () => {
    expect(readDay("12 December", "2027-01-10")).toMatchObject({ value: { date: "2026-12-12" } });
    expect(readDay("10 January", "2027-12-20")).toMatchObject({ value: { date: "2028-01-10" } });
    expect(dateIn("20 January", "today")).toBe("2027-01-20");
  });

  it("that is not there is answered with what would work", () => {
    expect(dateIn("31 April")).toBe("✗ April has no 31st. Write 30 April or 1 May.");
    expect(dateIn("29 February 2027")).toBe("✗ February has no 29th. Write 28 February or 1 March.");
    // 2028 is a leap year in the Gregorian calendar
    expect(dateIn("29 February 2028")).toBe("2028-02-29");
    for (const typed of ["", "soon", "13/13", "0 May", "4 Smarch", "2027-13-01"]) expect(readDay(typed, TODAY).ok).toBe(false);
    expect(dateIn("tomorrow", "today")).toMatch(/still to come/);
  });

  it("of any year, written out or as figures, reads back as itself", () => {
    let checked = 0;
    fc.assert(
      fc.property(fc.integer({ min: dayNumber("2000-01-01"), max: dayNumber("2099-12-31") }), (number) => {
        const date = dateOf(number);
        const [year, month, day] = date.split("-").map(Number) as [number, number, number];
        const name = MONTHS[month - 1] as string;
        for (const typed of [date, `${day} ${name} ${year}`, `${name} ${day}, ${year}`, `${day}.${month}.${year}`, `${day} ${name.slice(0, 3)} ${year}`]) {
          expect(dateIn(typed)).toBe(date);
          checked++;
        }
      }),
      { seed: 1 },
    );
    expect(checked).toBeGreaterThanOrEqual(500);
  });
});

describe("how much was sown", () => {
  it.each([
    ["3 m", { rowM: 3 }],
    ["3,5 m", { rowM: 3.5 }],
    ["3.5 metres of row", { rowM: 3.5 }],
    ["12 plants", { plants: 12 }],
    ["1 plant", { plants: 1 }],
    ["2 m²", { areaM2: 2 }],
    ["2 m2", { areaM2: 2 }],
    ["1.5 sq m", { areaM2: 1.5 }],
    ["4", { rowM: 4 }],
    // 1 ft = 0.3048 m exactly (NIST Handbook 44, appendix C)
    ["10 ft", { rowM: 3.05 }],
  ])("“%s”", (typed, amount) => {
    expect(readSowingAmount(typed, "rowM")).toEqual({ ok: true, value: amount });
  });

  it("a bare number counts in what the book counts this crop in", () => {
    expect(readSowingAmount("6", "plants")).toEqual({ ok: true, value: { plants: 6 } });
  });

  it.each(["", "−3 m", "-3 m", "0 m", "half a row", "3 kg", "2.5 plants", "0.001 m"])("“%s” is refused with what would work", (typed) => {
    const read = readSowingAmount(typed, "rowM");
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.works).toMatch(/\d/);
  });
});

describe("a weight", () => {
  it.each([
    ["450", 450],
    ["450g", 450],
    ["1.2 kg", 1200],
    ["1,2 kg", 1200],
    ["1,200", 1200],
    ["1.200 g", 1200],
    ["1 200 g", 1200],
    // 1 lb = 453.59237 g exactly, 1 oz = 1/16 lb (NIST Handbook 44, appendix C)
    ["2 lb 3 oz", 992],
    ["1 lb", 454],
    ["8 oz", 227],
  ])("“%s” is %i g", (typed, grams) => {
    expect(readGrams(typed)).toEqual({ ok: true, value: grams });
  });

  it.each(["", "0", "-5", "lots", "3 jars", "1.2.3 kg"])("“%s” is refused", (typed) => {
    expect(readGrams(typed).ok).toBe(false);
  });
});

describe("numbers and lengths", () => {
  it("take a decimal comma as a point, and part thousands only where whole numbers make sense", () => {
    expect(numberOf("1,5", false)).toBe(1.5);
    expect(numberOf("1,234", false)).toBe(1.234);
    expect(numberOf("1,234", true)).toBe(1234);
    expect(numberOf("1,234.5", false)).toBe(1234.5);
    expect(numberOf("1.234,5", false)).toBe(1234.5);
    expect(numberOf("1'234", false)).toBe(1234);
    expect(numberOf("1.", false)).toBeNull();
  });

  it("of a bed are metres", () => {
    expect(readLength("7")).toEqual({ ok: true, value: 7 });
    expect(readLength("120 cm")).toEqual({ ok: true, value: 1.2 });
    expect(readLength("-2").ok).toBe(false);
  });
});
