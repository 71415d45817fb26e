/** Day length against worked examples: FAO Irrigation and Drainage Paper 56, example 9; Harwell 2012; almanac values of the CBM formula (Forsythe et al. 1995). */
import { describe, expect, it } from "vitest";
import { dayLengthHours } from "#shared/engines/harvest-forecast/index.ts";
import { shortDayPace, covered } from "#shared/engines/harvest-forecast/thermal-time.ts";
import { dayOfYear } from "#shared/kernel/local-date.ts";
import { day, steadyWeather } from "./plantings.ts";

const CENTRE = 0;

describe("day length, hours", () => {
  it("FAO-56: 20° south on 3 September has 11.7 hours, sun's centre", () => {
    expect(Math.abs(dayLengthHours(-20, 246, CENTRE) - 11.7)).toBeLessThan(0.15);
  });

  it("30° north on 15 April has 12.7 hours within 0.1 (worked value of Harwell 2012)", () => {
    expect(Math.abs(dayLengthHours(30, 106, CENTRE) - 12.7)).toBeLessThan(0.1);
  });

  it.each([
    [52.1, "2027-06-21", 16.75],
    [52.1, "2027-12-21", 7.72],
    [52.1, "2027-03-21", 12.17],
    [52.1, "2027-04-15", 13.84],
    [52.1, "2027-08-15", 14.75],
    [42.95, "2027-06-21", 15.36],
    [42.95, "2027-12-21", 9.01],
  ])("%d° on %s, sunrise to sunset with refraction: %d", (latitude, date, hours) => {
    expect(Math.abs(dayLengthHours(latitude, dayOfYear(date)) - hours)).toBeLessThan(0.02);
  });

  it("13.75 hours and more last from 14 April to 30 August at 52.1°, 24 April to 20 August at 42.95°", () => {
    const long = (latitude: number): number[] => Array.from({ length: 365 }, (_, i) => i + 1).filter((j) => dayLengthHours(latitude, j) >= 13.75);
    for (const [latitude, first, last] of [
      [52.1, "2027-04-14", "2027-08-30"],
      [42.95, "2027-04-24", "2027-08-20"],
    ] as const) {
      const days = long(latitude);
      expect(Math.abs((days[0] as number) - dayOfYear(first))).toBeLessThanOrEqual(1);
      expect(Math.abs((days[days.length - 1] as number) - dayOfYear(last))).toBeLessThanOrEqual(1);
    }
  });

  it("agrees all year with the almanac's low-precision sun (Astronomical Almanac, section C, from memory) within 0.1 h", () => {
    const almanac = (latitudeDeg: number, j: number): number => {
      const rad = Math.PI / 180;
      // days from noon of 1 January 2000 to noon of day j of 2027
      const n = 9861 + j;
      const g = (357.528 + 0.9856003 * n) * rad;
      const longitude = (280.46 + 0.9856474 * n + 1.915 * Math.sin(g) + 0.02 * Math.sin(2 * g)) * rad;
      const declination = Math.asin(Math.sin(23.439 * rad) * Math.sin(longitude));
      return (24 / Math.PI) * Math.acos(-Math.tan(latitudeDeg * rad) * Math.tan(declination));
    };
    for (const latitude of [52.1, 42.95, 20, -20, -45])
      for (let j = 1; j <= 365; j++) expect(Math.abs(dayLengthHours(latitude, j, CENTRE) - almanac(latitude, j)), `day ${j}`).toBeLessThan(0.1);
  });

  it("agrees with FAO-56 equations 24, 25 and 34 within 0.15 h around midsummer and midwinter, where those are closest", () => {
    const fao = (latitudeDeg: number, j: number): number => {
      const declination = 0.409 * Math.sin((2 * Math.PI * j) / 365 - 1.39);
      return (24 / Math.PI) * Math.acos(-Math.tan((latitudeDeg * Math.PI) / 180) * Math.tan(declination));
    };
    for (const latitude of [52.1, 42.95, 20, -20])
      for (const j of [80, 160, 172, 185, 340, 355]) expect(Math.abs(dayLengthHours(latitude, j, CENTRE) - fao(latitude, j)), `day ${j}`).toBeLessThan(0.15);
  });

  it("has no night beyond the polar circle in June and no day in December", () => {
    expect(dayLengthHours(75, 172)).toBe(24);
    expect(dayLengthHours(75, 355)).toBe(0);
  });
});

describe("pace of leaf crops in short days (common practice, no source)", () => {
  const weather = covered(steadyWeather(10, 10, day("2027-01-01"), 365), "open");
  const paceOn = (latitude: number, date: string): number => shortDayPace(weather, latitude)[day(date) - day("2027-01-01")] as number;

  it("is clip((hours − 8) / 4, 0.1, 1) from September to February and full in summer", () => {
    expect(paceOn(52.1, "2027-12-21")).toBe(0.1);
    expect(paceOn(52.1, "2027-10-27")).toBeCloseTo(0.5, 1);
    expect(paceOn(52.1, "2027-06-21")).toBe(1);
    expect(paceOn(52.1, "2027-03-01")).toBe(1);
  });

  it("moves by six months south of the equator", () => {
    expect(paceOn(-43, "2027-06-21")).toBeLessThan(0.35);
    expect(paceOn(-43, "2027-12-21")).toBe(1);
  });
});
