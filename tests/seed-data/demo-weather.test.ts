/** The demo's weather is the published record, and the running season is that record moved by eight years and by nothing else. */
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { dateOf, dayNumber } from "#shared/kernel/local-date.ts";
import { readReference, readText } from "./read.ts";

interface Row {
  readonly date: string;
  readonly tmax_c: string;
  readonly tmin_c: string;
}

const text = readText("demo/weather.csv");
const rows = parse(text, { columns: true }) as unknown as Row[];
const YEARS_MOVED = 8;
/** The service takes bodies up to this size. */
const MEBIBYTE = 1_048_576;
const within = (from: string, until: string) => rows.filter(({ date }) => date >= from && date <= until);

describe("demo/weather.csv", () => {
  test("is well formed and can be sent in one go", () => {
    expect(text.split("\n")[0]).toBe("date,tmax_c,tmin_c");
    expect(Buffer.byteLength(text)).toBeLessThan(MEBIBYTE);
    for (const { date, tmax_c, tmin_c } of rows) {
      expect(dateOf(dayNumber(date))).toBe(date);
      expect(tmax_c).toMatch(/^-?\d{1,2}\.\d$/);
      expect(tmin_c).toMatch(/^-?\d{1,2}\.\d$/);
      expect(Number(tmax_c), date).toBeGreaterThanOrEqual(Number(tmin_c));
    }
  });

  test("has thirty years in a row, a gap, and the season under way in a row up to yesterday", () => {
    const first = within("1990-01-01", "2019-12-31");
    const season = within("2026-09-01", "2027-07-25");
    expect(first.length).toBe(dayNumber("2020-01-01") - dayNumber("1990-01-01"));
    expect(season.length).toBe(dayNumber("2027-07-26") - dayNumber("2026-09-01"));
    expect(first.length + season.length).toBe(rows.length);
    expect(rows.map(({ date }) => date)).toEqual([...new Set(rows.map(({ date }) => date))].sort());
  });

  test("borrows the season from 2018 and 2019", () => {
    const borrowed = within("2018-09-01", "2019-07-25").map((row) => ({ ...row, date: `${Number(row.date.slice(0, 4)) + YEARS_MOVED}${row.date.slice(4)}` }));
    expect(borrowed.length).toBe(328);
    expect(within("2026-09-01", "2027-07-25")).toEqual(borrowed);
  });

  test("gives the monthly means that KNMI's climate normals have for De Bilt (January and July 1991–2010 within 1 °C of the 1981–2010 normals, from memory)", () => {
    const mean = (month: string, column: "tmax_c" | "tmin_c") => {
      const days = within("1991-01-01", "2010-12-31").filter(({ date }) => date.slice(5, 7) === month);
      return days.reduce((sum, row) => sum + Number(row[column]), 0) / days.length;
    };
    for (const [month, tmax, tmin] of [["01", 5.6, 0.3], ["07", 22.8, 12.8]] as const) {
      expect(Math.abs(mean(month, "tmax_c") - tmax)).toBeLessThan(1);
      expect(Math.abs(mean(month, "tmin_c") - tmin)).toBeLessThan(1);
    }
  });

  test("equals the record of station 260 day by day, where the record lies beside the project", ({ skip }) => {
    const record = readReference("weather/knmi_260_debilt_1980-2019.csv");
    if (record === null) skip("the KNMI record is not beside the project: equality with it is not checked here");
    const known = new Map((parse(record as string, { columns: true }) as unknown as Row[]).map((row) => [row.date, `${row.tmax_c} ${row.tmin_c}`]));
    const compared = within("1990-01-01", "2019-12-31");
    expect(compared.length).toBe(10_957);
    expect(compared.filter(({ date, tmax_c, tmin_c }) => known.get(date) !== `${tmax_c} ${tmin_c}`)).toEqual([]);
  });
});
