/** Scenario years: what was observed up to the day, then past years on the same calendar days; the rules are the product's own, the arithmetic is checked by hand. */
import { describe, expect, it } from "vitest";
import { forecastPlanting, weatherYears } from "#shared/engines/harvest-forecast/index.ts";
import type { DailyRecord, WeatherQuestion } from "#shared/engines/harvest-forecast/index.ts";
import { dateOf, dayOfYear } from "#shared/kernel/local-date.ts";
import { day, plantingOf, questionOf } from "./plantings.ts";
import { cropOf, normalsAt } from "./records.ts";

/** A record whose maximum tells its date: year − 2000 as °C, day of the year as hundredths; minimum ten below. */
function datedRecord(from: string, until: string): DailyRecord {
  const firstDay = day(from);
  const days = day(until) - firstDay + 1;
  const tmaxC = Float64Array.from({ length: days }, (_, d) => stamp(dateOf(firstDay + d)));
  return { firstDay, tmaxC, tminC: tmaxC.map((t) => t - 10) };
}

const stamp = (date: string): number => Number(date.slice(0, 4)) - 2000 + dayOfYear(date) / 1000;

const record = datedRecord("2001-03-01", "2027-12-31");
const question = (change: Partial<WeatherQuestion>): WeatherQuestion => ({
  record,
  normals: null,
  asOf: day("2027-07-26"),
  from: day("2026-09-01"),
  until: day("2028-06-30"),
  seed: 1,
  ...change,
});

describe("from a record", () => {
  const { value } = weatherYears(question({}));
  const on = (y: number, date: string): number => value.years[y]?.tmaxC[day(date) - value.firstDay] as number;

  it("takes every whole year that has ended, and no other", () => {
    expect(value.restsOn).toBe("record");
    expect(value.years.map((year) => year.label)).toEqual(Array.from({ length: 25 }, (_, i) => String(2002 + i)));
  });

  it("is observed up to the day itself, in every year", () => {
    for (let y = 0; y < 25; y++) expect([on(y, "2026-09-01"), on(y, "2027-07-26")]).toEqual([stamp("2026-09-01"), stamp("2027-07-26")]);
  });

  it("goes on with one past year each, and with the year that followed it; the last is followed by the first", () => {
    expect(on(0, "2027-07-27")).toBe(stamp("2002-07-27"));
    expect(on(0, "2028-01-01")).toBe(stamp("2003-01-01"));
    expect(on(24, "2027-12-31")).toBe(stamp("2026-12-31"));
    expect(on(24, "2028-01-01")).toBe(stamp("2002-01-01"));
  });

  it("repeats 28 February on the 29th where the past year has none, and drops it where this year has none", () => {
    expect(on(0, "2028-02-29")).toBe(stamp("2003-02-28"));
    expect(on(1, "2028-02-29")).toBe(stamp("2004-02-29"));
    expect(on(1, "2028-03-01")).toBe(stamp("2004-03-01"));
  });

  it("takes the last thirty of more, or as many as asked for", () => {
    const long = datedRecord("1970-01-01", "2026-12-31");
    const years = weatherYears(question({ record: long })).value.years;
    expect([years.length, years[0]?.label, years[29]?.label]).toEqual([30, "1997", "2026"]);
    expect(weatherYears(question({ record: long, maxYears: 40 })).value.years.length).toBe(40);
    const one = weatherYears(question({ record: long, maxYears: 1 })).value;
    expect([one.restsOn, one.years.length]).toEqual(["record", 1]);
  });

  it("reads nothing that is dated after the day", () => {
    const poisoned = { ...record, tmaxC: record.tmaxC.map((t, d) => (record.firstDay + d > day("2027-07-26") ? 99 : t)) };
    expect(weatherYears(question({ record: poisoned })).value).toEqual(value);
  });
});

describe("gaps", () => {
  const without = (from: string, until: string): DailyRecord => {
    const hole = (series: Float64Array): Float64Array => series.map((t, d) => (record.firstDay + d >= day(from) && record.firstDay + d <= day(until) ? NaN : t));
    return { ...record, tmaxC: hole(record.tmaxC), tminC: hole(record.tminC) };
  };

  it("of up to five days in a past year are bridged by a straight line", () => {
    const { value } = weatherYears(question({ record: without("2010-08-02", "2010-08-04") }));
    const year = value.years.find((y) => y.label === "2010");
    const on = (date: string): number => year?.tmaxC[day(date) - value.firstDay] as number;
    expect(on("2027-08-03")).toBeCloseTo((stamp("2010-08-01") + stamp("2010-08-05")) / 2, 9);
    expect(value.years.length).toBe(25);
  });

  it("that are longer leave the year out", () => {
    const { value } = weatherYears(question({ record: without("2010-08-02", "2010-08-09") }));
    expect(value.years.map((year) => year.label)).not.toContain("2010");
    expect(value.years.length).toBe(24);
    expect(weatherYears(question({ record: without("2010-08-02", "2010-08-09") })).notes.join(" ")).toMatch(/record of 2010 has a gap of more than 5 days, so that year is left out/);
    // a year of which nothing was written down is not a year with a gap
    expect(weatherYears(question({ record: without("2010-01-01", "2010-12-31") })).notes).toEqual([]);
  });

  it("of up to five days among those observed are bridged too, and counted", () => {
    const { value, notes } = weatherYears(question({ record: without("2027-07-01", "2027-07-05") }));
    const on = (date: string): number => value.years[3]?.tmaxC[day(date) - value.firstDay] as number;
    const [before, after] = [stamp("2027-06-30"), stamp("2027-07-06")];
    expect(on("2027-07-02")).toBeCloseTo(before + (2 / 6) * (after - before), 9);
    expect(value.unreadDays).toEqual([]);
    expect(notes.join(" ")).toMatch(/5 past days without a reading were bridged/);
  });

  it("are also days whose minimum lies above the maximum, which no thermometer reads", () => {
    const crossed = { ...record, tminC: record.tminC.map((t, d) => (record.firstDay + d === day("2027-07-03") || record.firstDay + d === day("2015-07-03") ? 90 : t)) };
    const { value, notes } = weatherYears(question({ record: crossed }));
    expect(value.years.every(({ tmaxC, tminC }) => tminC.every((min, d) => min <= (tmaxC[d] as number)))).toBe(true);
    expect(value.years.length).toBe(25);
    expect(notes.join(" ")).toMatch(/1 past day without a reading was bridged/);
  });

  it("among the days observed are filled by each year's own weather, and said", () => {
    const { value } = weatherYears(question({ record: without("2027-07-01", "2027-07-10") }));
    expect(value.years[0]?.tmaxC[day("2027-07-05") - value.firstDay]).toBe(stamp("2002-07-05"));
    expect(value.unreadDays).toEqual(Array.from({ length: 10 }, (_, d) => day("2027-07-01") + d));
  });

  it("are days before the one asked about, and only of a record that is there", () => {
    const { asOf } = question({});
    expect(weatherYears(question({ record: without(dateOf(asOf), dateOf(asOf)) })).value.unreadDays).toEqual([]);
    expect(weatherYears(question({ record: without(dateOf(asOf - 1), dateOf(asOf)) })).value.unreadDays).toEqual([asOf - 1]);
    expect(weatherYears(question({ record: null })).value.unreadDays).toEqual([]);
  });
});

describe("a night of −60 °C", () => {
  it("is taken as read: one year in twenty-five is that cold, its sums stay numbers, and tender plants die in it alone", () => {
    const frozen = { ...record, tminC: record.tminC.map((t, d) => (record.firstDay + d === day("2015-06-15") ? -60 : t)) };
    const { value: weather } = weatherYears(question({ record: frozen, asOf: day("2027-05-01") }));
    const planting = plantingOf("courgette", { plantedOutOn: day("2027-05-20"), crop: { ...cropOf("courgette"), killC: -40, baseC: -20, thermal: { low: 2000, likely: 2000, high: 2000 } } });
    const { value } = forecastPlanting(questionOf(planting, weather));
    const lost = [...new Set(Array.from(value.firstPickDay, (first, s) => (first < 0 ? weather.years[Math.floor(s / value.perYear)]?.label : "")).filter((label) => label !== ""))];
    expect(lost).toEqual(["2015"]);
    expect(value.totalGrams.every((grams) => Number.isFinite(grams))).toBe(true);
  });
});

describe("without ten whole years", () => {
  const short = datedRecord("2026-01-01", "2027-07-26");

  it("generates thirty years from typed monthly means, and keeps what was observed", () => {
    const { value } = weatherYears(question({ record: short, normals: normalsAt("de_bilt_1981-2010") }));
    expect([value.restsOn, value.years.length]).toEqual(["normals", 30]);
    expect(value.years[3]?.tmaxC[day("2027-07-01") - value.firstDay]).toBe(stamp("2027-07-01"));
    expect(value.years[3]?.tmaxC[day("2027-08-01") - value.firstDay]).not.toBe(value.years[4]?.tmaxC[day("2027-08-01") - value.firstDay]);
  });

  it("is the same for the same seed and another for another", () => {
    const ask = (seed: number) => weatherYears(question({ record: null, normals: normalsAt("de_bilt_1981-2010"), seed })).value;
    expect(ask(4)).toEqual(ask(4));
    expect(ask(5)).not.toEqual(ask(4));
  });

  it("takes the means of a short record where none are typed, and says how many whole years there are", () => {
    const { value, notes } = weatherYears(question({ record: short }));
    expect(value.restsOn).toBe("normals");
    expect(notes.join(" ")).toMatch(/1 whole years/);
  });

  it("owns up to having nothing: one year without readings", () => {
    const { value, notes } = weatherYears(question({ record: null }));
    expect([value.restsOn, value.years.length, value.years[0]?.tmaxC[3]]).toEqual(["nothing", 1, NaN]);
    expect(notes.join(" ")).toMatch(/twelve monthly means/);
  });
});
