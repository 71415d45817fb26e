/**
 * Degree-days against the University of California validation set (366 days of Esparto-A 2020, UC IPM calculator; file in tests/cases/weather,
 * MIT licence, copyright 2022 Andy Lyons) and against rows worked by hand from the published formulas.
 */
import { describe, expect, it } from "vitest";
import { simpleAverage, simpleAverageClipped, singleSine, singleTriangle } from "#shared/engines/harvest-forecast/index.ts";
import { projectFile, rowsOf } from "./records.ts";

const rows = rowsOf(projectFile("tests/cases/weather/degree_day_vectors_50_70F.csv"));
const LOWER = 50;
const UPPER = 70;

describe("University of California vectors, °F", () => {
  const methods = [
    ["single_sine_horizontal", singleSine, "horizontal", 4011.14],
    ["single_sine_vertical", singleSine, "vertical", 1645.37],
    ["single_triangle_horizontal", singleTriangle, "horizontal", 4093.85],
    ["single_triangle_vertical", singleTriangle, "vertical", 1679.33],
  ] as const;

  it.each(methods)("%s agrees on all 366 days to 0.01, and over the year", (column, method, cutOff, yearSum) => {
    let sum = 0;
    for (const row of rows) {
      const found = method(Number(row["tmax_f"]), Number(row["tmin_f"]), LOWER, UPPER, cutOff);
      expect(Math.abs(found - Number(row[column])), `${row["date"]}`).toBeLessThanOrEqual(0.0100001);
      sum += found;
    }
    expect(rows.length).toBe(366);
    expect(sum).toBeCloseTo(yearSum, 1);
  });

  it("all methods agree where the whole day lies between the limits, and where it lies above both", () => {
    let within = 0;
    let above = 0;
    for (const row of rows) {
      const [max, min] = [Number(row["tmax_f"]), Number(row["tmin_f"])];
      const all = [simpleAverageClipped(max, min, LOWER, UPPER), singleTriangle(max, min, LOWER, UPPER), singleSine(max, min, LOWER, UPPER)];
      if (min >= LOWER && max <= UPPER) {
        within++;
        for (const value of [...all, simpleAverage(max, min, LOWER)]) expect(value).toBeCloseTo(Number(row["single_sine_horizontal"]), 2);
      }
      if (min >= UPPER) {
        above++;
        for (const value of all) expect(value).toBeCloseTo(20, 9);
      }
    }
    expect(within).toBeGreaterThanOrEqual(5);
    expect(above).toBeGreaterThan(0);
  });
});

describe("rows worked by hand", () => {
  // [min, max, simple, simple clipped, triangle horizontal, triangle vertical, sine horizontal, sine vertical], °F, 50–70
  it.each([
    [36, 67, 1.5, 8.5, 4.66, 4.66, 5.71, 5.71],
    [52, 73, 12.5, 11.0, 12.29, 9.43, 12.01, 7.08],
    [44, 76, 10.0, 10.0, 10.0, 6.25, 10.0, 4.3],
    [54, 67, 10.5, 10.5, 10.5, 10.5, 10.5, 10.5],
    [50, 64, 7, 7, 7, 7, 7, 7],
    [41, 50, 0, 0, 0, 0, 0, 0],
    [71, 103, 37, 20, 20, 0, 20, 0],
  ])("%d / %d °F", (min, max, simple, clipped, triangle, triangleVertical, sine, sineVertical) => {
    expect(simpleAverage(max, min, 50)).toBeCloseTo(simple, 2);
    expect(simpleAverageClipped(max, min, 50, 70)).toBeCloseTo(clipped, 2);
    expect(singleTriangle(max, min, 50, 70)).toBeCloseTo(triangle, 2);
    expect(singleTriangle(max, min, 50, 70, "vertical")).toBeCloseTo(triangleVertical, 2);
    expect(singleSine(max, min, 50, 70)).toBeCloseTo(sine, 2);
    expect(singleSine(max, min, 50, 70, "vertical")).toBeCloseTo(sineVertical, 2);
  });

  it("°C, 10–30 and 12–33", () => {
    expect([simpleAverage(20, 8, 10), simpleAverageClipped(20, 8, 10, 30)]).toEqual([4, 5]);
    expect(singleTriangle(20, 8, 10, 30)).toBeCloseTo(4.17, 2);
    expect(singleSine(20, 8, 10, 30)).toBeCloseTo(4.35, 2);
    expect([simpleAverage(34, 18, 10), simpleAverageClipped(34, 18, 10, 30)]).toEqual([16, 14]);
    expect(singleTriangle(34, 18, 10, 30)).toBeCloseTo(15.5, 2);
    expect(singleSine(34, 18, 10, 30)).toBeCloseTo(15.13, 2);
    expect(singleSine(34, 18, 10, 30, "vertical")).toBeCloseTo(8.46, 2);
    // also in the tests of the R package TrenchR, except the last, which follows from the definition of the horizontal cut-off
    expect(singleSine(14, 7, 12, 33)).toBeCloseTo(0.47, 2);
    expect(singleTriangle(14, 7, 12, 33)).toBeCloseTo(0.29, 2);
    expect(singleSine(40, 7, 12, 33)).toBeCloseTo(10.94, 2);
    expect(singleSine(40, 13, 12, 33)).toBeCloseTo(12.94, 2);
    expect(singleSine(40, 35, 12, 33)).toBe(21);
  });

  it("a day whose two ends are the same counts its mean", () => {
    for (const method of [singleSine, singleTriangle]) {
      expect(method(15, 15, 5, 30)).toBe(10);
      expect(method(15, 15, 5, 30, "vertical")).toBe(10);
      expect(method(40, 40, 5, 30, "vertical")).toBe(0);
    }
  });
});
