/** Plants that stand for years: each season anew, on either side of the equator, by their age. */
import { describe, expect, it } from "vitest";
import { summarise } from "#shared/engines/harvest-forecast/index.ts";
import { dateOf } from "#shared/kernel/local-date.ts";
import { day, forecastOf, notesOf, plantingOf, steadyWeather, weatherFrom } from "./plantings.ts";

const steady = steadyWeather(15, 15, day("2027-01-01"), 700, 30);

describe("what stands for years", () => {
  it("is picked every season anew, and only that season's picks count", () => {
    const weather = weatherFrom(day("2026-01-01"), 1_100, 30, (d) => {
      const summer = Number(dateOf(d).slice(5, 7));
      return summer >= 4 && summer <= 9 ? [22, 12] : [6, 2];
    });
    const planting = plantingOf("strawberry", { rowM: 4, picks: [{ day: day("2026-06-20"), grams: 5_000 }] });
    for (const season of [2026, 2027, 2028]) {
      const found = summarise(forecastOf({ ...planting, season }, weather, { asOf: day("2027-03-01") }));
      expect(dateOf(found.firstPick?.likely ?? 0).slice(0, 4)).toBe(String(season));
    }
    expect(forecastOf({ ...planting, season: 2027 }, weather, { asOf: day("2027-03-01") }).curve.picks).toEqual([]);
    expect(forecastOf({ ...planting, season: 2026 }, weather, { asOf: day("2027-03-01") }).curve.picks).toHaveLength(1);
  });

  it("south of the equator is picked half a year away, in the season named by the year it ends in", () => {
    const north = (d: number): readonly [number, number] => {
      const summer = Number(dateOf(d).slice(5, 7));
      return summer >= 4 && summer <= 9 ? [22, 12] : [6, 2];
    };
    const here = weatherFrom(day("2026-06-01"), 700, 5, north);
    // the same year, 184 days earlier: 1 August has the weather of 1 February
    const there = weatherFrom(day("2026-06-01"), 700, 5, (d) => north(d + 184));
    const planting = plantingOf("strawberry", { season: 2027 });
    const [first, second] = [summarise(forecastOf(planting, here)), summarise(forecastOf(planting, there, { southern: true }))];
    expect(dateOf(second.firstPick?.likely ?? 0).slice(0, 4)).toBe("2026");
    expect((first.firstPick?.likely ?? 0) - (second.firstPick?.likely ?? 0)).toBe(184);
    expect(second.totalGrams).toEqual(first.totalGrams);
  });

  it("too young, brings nothing and says so", () => {
    const planting = plantingOf("raspberry", { standsSince: 2027, season: 2027 });
    expect(summarise(forecastOf(planting, steady)).chanceOfPick).toBe(0);
    expect(notesOf(planting, steady)).toMatch(/Too young/);
  });

  it("set this spring, bears as one that stands since this year", () => {
    for (const start of [{ sownOn: day("2027-04-10") }, { plantedOutOn: day("2027-04-10") }]) {
      for (const slug of ["asparagus", "raspberry"]) expect(notesOf(plantingOf(slug, { ...start, season: 2027 }), steady)).toMatch(/Too young/);
    }
    const set = summarise(forecastOf(plantingOf("raspberry", { plantedOutOn: day("2027-04-10"), season: 2028 }), steady)).totalGrams;
    expect(set).toEqual(summarise(forecastOf(plantingOf("raspberry", { standsSince: 2027, season: 2028 }), steady)).totalGrams);
    expect(set.likely).toBeGreaterThan(0);
  });

  it("a spring frost does not end a season that has not begun", () => {
    const weather = weatherFrom(day("2027-01-01"), 400, 30, (d) => (d === day("2027-06-01") ? [12, -2] : [20, 10]));
    const asparagus = summarise(forecastOf(plantingOf("asparagus", { season: 2027 }), weather));
    expect(asparagus.chanceOfPick).toBe(1);
  });
});
