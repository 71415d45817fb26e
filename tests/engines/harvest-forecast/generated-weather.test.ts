/**
 * The weather generator: monthly means as given, persistence and scatter as its published parameters say (Richardson 1981, figures fitted to two public
 * records), and, where the records are at hand, what it is for: season warmth, ripening dates and frost.
 */
import { describe, expect, it } from "vitest";
import { calendarOf, MONTH_SLOTS } from "#shared/engines/harvest-forecast/calendar-days.ts";
import { simpleAverage } from "#shared/engines/harvest-forecast/index.ts";
import type { MonthlyNormal } from "#shared/engines/harvest-forecast/index.ts";
import { climateOf, CONTINENTAL, MARITIME, residuals, weatherMaker } from "#shared/engines/harvest-forecast/generated-weather.ts";
import { dailyByStraightLines, dailyMeans } from "#shared/engines/harvest-forecast/seasonal-mean.ts";
import { quantile } from "#shared/kernel/band.ts";
import { dayOfYear } from "#shared/kernel/local-date.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { day } from "./plantings.ts";
import { dailyRecordOf, DE_BILT, longRecordsAtHand, MILWAUKEE, NEEDS_RECORDS, normalsAt } from "./records.ts";

const YEARS = 400;
/** Monthly means scatter by 2.7 °C from year to year, so 400 years leave 0.14 °C of chance; four times as many leave half of it. */
const YEARS_FOR_MEANS = 1600;
const CALENDAR = calendarOf(day("2025-01-01"), 365);

/** 400 separate years from 1 January. */
function generatedYears(normals: readonly MonthlyNormal[], seed: number, count = YEARS): { tmaxC: Float64Array; tminC: Float64Array }[] {
  const maker = weatherMaker(normals);
  return Array.from({ length: count }, (_, i) => maker.days(CALENDAR.slot, seededRandom(seed + i)));
}

describe("a smooth year through twelve months", () => {
  it("averages to each month's figure and has no step above three quarters of a degree where months meet", () => {
    const monthly = normalsAt("milwaukee_1991-2020").map((normal) => normal.tmaxC);
    const days = dailyMeans(monthly);
    monthly.forEach((mean, m) => {
      const part = days.subarray(MONTH_SLOTS[m], MONTH_SLOTS[m + 1]);
      expect(part.reduce((a, b) => a + b, 0) / part.length).toBeCloseTo(mean, 9);
    });
    for (let d = 1; d < 366; d++) expect(Math.abs((days[d] as number) - (days[d - 1] as number))).toBeLessThan(0.75);
  });

  it("runs on straight lines between the middles of months, over the turn of the year too", () => {
    const days = dailyByStraightLines([10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 20]);
    expect(days[0]).toBeCloseTo(15, 0);
    expect(days[365]).toBeCloseTo(15, 0);
    expect(days[100]).toBe(10);
    expect(Math.max(...days)).toBeCloseTo(20, 0);
  });
});

describe.each([
  ["De Bilt", normalsAt("de_bilt_1981-2010"), MARITIME],
  ["Milwaukee", normalsAt("milwaukee_1991-2020"), CONTINENTAL],
] as const)("generated years at %s, 400 with a fixed seed", (_, normals, climate) => {
  const years = generatedYears(normals, 1);

  it("is the climate that the range from January to July says", () => {
    expect(climateOf(normals)).toBe(climate);
  });

  it("has the monthly means it was given, within 0.3 °C", () => {
    const many = generatedYears(normals, 10_000, YEARS_FOR_MEANS);
    for (const { month, tmaxC, tminC } of normals) {
      const span = [MONTH_SLOTS[month - 1] as number, MONTH_SLOTS[month] as number] as const;
      const meanOf = (of: "tmaxC" | "tminC"): number => {
        let sum = 0;
        let n = 0;
        for (const year of many)
          for (let d = 0; d < 365; d++)
            if ((CALENDAR.slot[d] as number) >= span[0] && (CALENDAR.slot[d] as number) < span[1]) {
              sum += year[of][d] as number;
              n++;
            }
        return sum / n;
      };
      expect(Math.abs(meanOf("tmaxC") - tmaxC), `maximum, month ${month}`).toBeLessThan(0.3);
      expect(Math.abs(meanOf("tminC") - tminC), `minimum, month ${month}`).toBeLessThan(0.3);
    }
  });

  it("never has the minimum above the maximum, and keeps one decimal", () => {
    const tenths = (value: number): boolean => Math.abs(value * 10 - Math.round(value * 10)) < 1e-6;
    let days = 0;
    for (const { tmaxC, tminC } of years)
      for (let d = 0; d < 365; d++) if ((tmaxC[d] as number) >= (tminC[d] as number) && tenths(tmaxC[d] as number) && tenths(tminC[d] as number)) days++;
    expect(days).toBe(YEARS * 365);
  });

  it("gives the same bytes for the same seed and other days for another", () => {
    const again = generatedYears(normals, 1);
    expect(Buffer.from((again[7] as { tmaxC: Float64Array }).tmaxC.buffer).equals(Buffer.from((years[7] as { tmaxC: Float64Array }).tmaxC.buffer))).toBe(true);
    expect(generatedYears(normals, 5_000)[7]).not.toEqual(years[7]);
  });
});

describe("standardised residuals", () => {
  // lag-1 of maximum and minimum, and same-day correlation, fitted to De Bilt 1981–2010 and Milwaukee 1991–2020
  it.each([
    ["maritime", MARITIME, 0.748, 0.689, 0.635],
    ["continental", CONTINENTAL, 0.605, 0.68, 0.763],
  ] as const)("%s: persistence within 0.03, and same-day correlation within 0.04", (_, climate, lagMax, lagMin, together) => {
    const next = residuals(climate, seededRandom(3));
    const pairs = Array.from({ length: 146_000 }, () => next());
    const correlation = (f: (i: number) => number, g: (i: number) => number): number => {
      const n = pairs.length - 1;
      let [sf, sg, sff, sgg, sfg] = [0, 0, 0, 0, 0];
      for (let i = 1; i <= n; i++) {
        const [a, b] = [f(i), g(i)];
        [sf, sg, sff, sgg, sfg] = [sf + a, sg + b, sff + a * a, sgg + b * b, sfg + a * b];
      }
      return (sfg / n - (sf / n) * (sg / n)) / Math.sqrt((sff / n - (sf / n) ** 2) * (sgg / n - (sg / n) ** 2));
    };
    const of = (i: number, k: 0 | 1): number => (pairs[i] as readonly [number, number])[k];
    expect(Math.abs(correlation((i) => of(i, 0), (i) => of(i - 1, 0)) - lagMax)).toBeLessThan(0.03);
    expect(Math.abs(correlation((i) => of(i, 1), (i) => of(i - 1, 1)) - lagMin)).toBeLessThan(0.03);
    expect(Math.abs(correlation((i) => of(i, 0), (i) => of(i, 1)) - together)).toBeLessThan(0.04);
    const scatter = Math.sqrt(pairs.reduce((sum, [a]) => sum + a * a, 0) / pairs.length);
    expect(Math.abs(scatter - 1)).toBeLessThan(0.05);
  });
});

describe("bad monthly means", () => {
  it("are refused when a month is missing or there twice", () => {
    const normals = normalsAt("de_bilt_1981-2010");
    expect(() => weatherMaker(normals.slice(1))).toThrow(RangeError);
    expect(() => weatherMaker([...normals.slice(1), normals[3] as MonthlyNormal])).toThrow(RangeError);
  });
});

describe.runIf(longRecordsAtHand)(`generated years against the records (${NEEDS_RECORDS})`, () => {
  interface Season {
    readonly warmth: number;
    readonly daysTo700: number;
    readonly lastFrost: number;
    readonly firstFrost: number;
  }

  /** Warmth above 10 °C from 1 May to 30 September, days from 21 May until 700 of it, last and first frost as days of the year. */
  function seasonOf(tmaxC: ArrayLike<number>, tminC: ArrayLike<number>, newYear: number): Season {
    const gained = (j: number): number => simpleAverage(tmaxC[newYear + j - 1] as number, tminC[newYear + j - 1] as number, 10);
    const on = (date: string): number => dayOfYear(`2025-${date}`);
    let warmth = 0;
    for (let j = on("05-01"); j <= on("09-30"); j++) warmth += gained(j);
    let daysTo700 = 0;
    for (let sum = gained(on("05-21")); sum < 700 && daysTo700 < 200; sum += gained(on("05-21") + daysTo700)) daysTo700++;
    let lastFrost = on("06-30");
    while (lastFrost > 1 && (tminC[newYear + lastFrost - 1] as number) > 0) lastFrost--;
    let firstFrost = on("07-01");
    while (firstFrost < 365 && (tminC[newYear + firstFrost - 1] as number) > 0) firstFrost++;
    return { warmth, daysTo700, lastFrost, firstFrost };
  }

  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const scatter = (values: readonly number[]): number => Math.sqrt(mean(values.map((v) => (v - mean(values)) ** 2)));

  it.each([
    ["De Bilt", 1981, normalsAt("de_bilt_1981-2010"), 111.6],
    ["Milwaukee", 1991, normalsAt("milwaukee_1991-2020"), 69.4],
  ] as const)("%s, thirty years from %d: scatter of season warmth within 15 percent, mean days to 700 within 2, frosts within 8 days", (place, firstYear, normals, printed) => {
    const record = dailyRecordOf(place === "De Bilt" ? DE_BILT : MILWAUKEE);
    const real = Array.from({ length: 30 }, (_, i) => seasonOf(record.tmaxC, record.tminC, day(`${firstYear + i}-01-01`) - record.firstDay));
    const made = generatedYears(normals, 1).map((year) => seasonOf(year.tmaxC, year.tminC, 0));
    const each = (seasons: readonly Season[], of: keyof Season): number[] => seasons.map((season) => season[of]).sort((a, b) => a - b);
    expect(Math.abs(mean(each(real, "daysTo700")) - printed)).toBeLessThan(0.6);
    expect(Math.abs(mean(each(made, "daysTo700")) - mean(each(real, "daysTo700")))).toBeLessThan(2.5);
    expect(Math.abs(scatter(each(made, "warmth")) / scatter(each(real, "warmth")) - 1)).toBeLessThan(0.15);
    for (const frost of ["lastFrost", "firstFrost"] as const)
      for (const p of [0.1, 0.5, 0.9])
        expect(Math.abs(quantile(each(made, frost), p) - quantile(each(real, frost), p)), `${frost} ${p}`).toBeLessThanOrEqual(9);
  });
});
