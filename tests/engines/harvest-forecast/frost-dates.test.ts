/** Frost dates: by hand on made weather, and the quantiles of two public records (minimum at or below 0 °C, linear quantiles). */
import { describe, expect, it } from "vitest";
import { frostDates, weatherYears } from "#shared/engines/harvest-forecast/index.ts";
import { dateOf } from "#shared/kernel/local-date.ts";
import { day, steadyWeather, weatherFrom } from "./plantings.ts";
import { dailyRecordOf, DE_BILT, longRecordsAtHand, MILWAUKEE, NEEDS_RECORDS } from "./records.ts";

describe("frost dates", () => {
  it("are the last frost before July and the first after, in each year", () => {
    const frosts = [new Set(["2027-04-10", "2027-05-01", "2027-10-20", "2027-11-01"].map(day)), new Set(["2027-04-20", "2027-10-30"].map(day))];
    const weather = weatherFrom(day("2027-01-01"), 365, 2, (d, y) => [12, frosts[y]?.has(d) ? 0 : 5]);
    const found = frostDates(weather, 2027, false);
    // linear between 20 April and 1 May: 10 % 21.1 April, 90 % 29.9 April, rounded outwards
    expect(found.lastSpring).toEqual({ low: day("2027-04-21"), likely: day("2027-04-26"), high: day("2027-04-30") });
    expect(found.firstAutumn).toEqual({ low: day("2027-10-21"), likely: day("2027-10-25"), high: day("2027-10-29") });
  });

  it("are null where there is no frost", () => {
    expect(frostDates(steadyWeather(20, 10, day("2027-01-01"), 365), 2027, false)).toEqual({ lastSpring: null, firstAutumn: null });
  });

  it("move by six months south of the equator, where the season is named by the year it ends in", () => {
    const frosts = new Set(["2026-09-15", "2027-05-20"].map(day));
    const weather = weatherFrom(day("2026-07-01"), 365, 2, (d) => [12, frosts.has(d) ? -1 : 5]);
    const found = frostDates(weather, 2027, true);
    expect([found.lastSpring?.likely, found.firstAutumn?.likely]).toEqual([day("2026-09-15"), day("2027-05-20")]);
  });
});

describe.runIf(longRecordsAtHand)(`frost dates of thirty years (${NEEDS_RECORDS})`, () => {
  it.each([
    ["Milwaukee", 2020, ["04-10", "04-23", "05-05"], ["10-06", "10-23", "11-08"]],
    ["De Bilt", 2010, ["03-31", "04-19", "05-07"], ["10-17", "11-02", "11-29"]],
  ] as const)("%s to %d, 10 / 50 / 90 %%, within a day", (place, lastYear, spring, autumn) => {
    const record = dailyRecordOf(place === "De Bilt" ? DE_BILT : MILWAUKEE);
    const season = lastYear + 1;
    const asOf = day(`${lastYear}-12-31`);
    const weather = weatherYears({ record, normals: null, asOf, from: asOf + 1, until: asOf + 365, seed: 1 }).value;
    const found = frostDates(weather, season, false);
    for (const [band, printed] of [
      [found.lastSpring, spring],
      [found.firstAutumn, autumn],
    ] as const)
      [band?.low, band?.likely, band?.high].forEach((d, i) => {
        expect(Math.abs((d as number) - day(`${season}-${printed[i]}`)), `${dateOf(d as number)} against ${printed[i]}`).toBeLessThanOrEqual(1);
      });
  });
});
