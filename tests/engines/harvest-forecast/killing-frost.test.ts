/** Frost in made weather: what it takes, what it leaves, and potatoes whose tops it has killed. Worked on paper. */
import { describe, expect, it } from "vitest";
import { summarise } from "#shared/engines/harvest-forecast/index.ts";
import { day, forecastOf, notesOf, plantingOf, weatherFrom } from "./plantings.ts";
import { cropOf } from "./records.ts";

describe("frost", () => {
  const frostOn = (date: string) => weatherFrom(day("2027-01-01"), 700, 30, (d) => (d === day(date) ? [10, -0.5] : [22, 12]));

  it("before the first pick takes a tender crop, and says in how many seasons", () => {
    const planting = plantingOf("courgette", { plantedOutOn: day("2027-05-20") });
    const found = summarise(forecastOf(planting, frostOn("2027-06-10")));
    expect(found).toMatchObject({ chanceOfPick: 0, firstPick: null, lastPick: null, totalGrams: { low: 0, likely: 0, high: 0 }, dots: [], weeks: [] });
    expect(notesOf(planting, frostOn("2027-06-10"))).toMatch(/In all reckoned seasons frost comes before the first pick/);
  });

  it("on a day before planting out does not count", () => {
    expect(summarise(forecastOf(plantingOf("courgette", { plantedOutOn: day("2027-05-20") }), frostOn("2027-05-19"))).chanceOfPick).toBe(1);
  });

  it("is kept off by a fleece's degree", () => {
    const planting = plantingOf("courgette", { plantedOutOn: day("2027-05-20"), cover: "fleece" });
    expect(summarise(forecastOf(planting, frostOn("2027-06-10"))).chanceOfPick).toBe(1);
  });

  it("does not take what was seen alive after it", () => {
    const planting = plantingOf("courgette", { plantedOutOn: day("2027-05-20"), sightings: [{ stage: "flowering", day: day("2027-06-20") }] });
    expect(summarise(forecastOf(planting, frostOn("2027-06-10"), { asOf: day("2027-06-20") })).chanceOfPick).toBe(1);
  });

  it("ends the picking that day and cuts the amount", () => {
    const planting = plantingOf("courgette", { plantedOutOn: day("2027-05-20"), plants: 1 });
    const cut = summarise(forecastOf(planting, frostOn("2027-08-20")));
    const whole = summarise(forecastOf(planting, frostOn("2027-05-01")));
    expect(cut.lastPick?.high).toBe(day("2027-08-19"));
    expect(cut.totalGrams.likely).toBeLessThan(0.9 * whole.totalGrams.likely);
  });

  it("leaves hardy crops, and what is lifted before it loses nothing", () => {
    expect(summarise(forecastOf(plantingOf("pea", { sownOn: day("2027-04-01") }), frostOn("2027-05-10"))).chanceOfPick).toBe(1);
    const hard = (date: string, nightC = -5) => weatherFrom(day("2027-01-01"), 700, 30, (d) => (d === day(date) ? [6, nightC] : [22, 12]));
    const potato = plantingOf("potato", { sownOn: day("2027-04-01"), plants: 10, crop: { ...cropOf("potato"), sigmaLn: 0.05 } });
    expect(summarise(forecastOf(potato, hard("2027-09-01"))).totalGrams.likely).toBeCloseTo(summarise(forecastOf(potato, hard("2027-02-01"))).totalGrams.likely, 6);
    expect(summarise(forecastOf(potato, hard("2027-09-01"))).lastPick?.high).toBe(day("2027-08-31"));
    expect(notesOf(potato, hard("2027-09-01"))).toMatch(/Lift before the frost/);
    // −3 °C takes the tops of a ripe row and leaves the tubers where they are
    expect(summarise(forecastOf(potato, hard("2027-09-01", -3))).lastPick?.high).toBeGreaterThan(day("2027-09-07"));
  });
});

describe("potatoes under tops that frost has killed", () => {
  // planted 1 May, 17 °C above base 2 °C: 15 °C d a day; 1,445 °C d are 96 days, 5 August
  const killedOn = (date: string, planted = "2027-05-01") => {
    const weather = weatherFrom(day("2027-01-01"), 700, 30, (d) => (d === day(date) ? [6, -2] : [22, 12]));
    return forecastOf(plantingOf("potato", { sownOn: day(planted), plants: 10, crop: { ...cropOf("potato"), sigmaLn: 0.01 } }), weather);
  };
  const whole = summarise(killedOn("2027-04-01")).totalGrams.likely;

  it("are lifted two weeks later, and are less: 70 of 96 days had, 0.54 of the yield", () => {
    const found = summarise(killedOn("2027-07-10"));
    expect(found.firstPick?.likely).toBe(day("2027-07-24"));
    expect(Math.abs(found.totalGrams.likely / whole - ((70 * 15) / 1445 - 0.4) / 0.6)).toBeLessThan(0.02);
  });

  it("are lost where hardly any had formed, and stand the frosts before midsummer", () => {
    expect(summarise(killedOn("2027-07-02", "2027-05-20")).chanceOfPick).toBe(0);
    expect(summarise(killedOn("2027-06-25")).totalGrams.likely).toBe(whole);
  });

  it("are no fewer for a frost in the last two weeks before they are ready", () => {
    const found = summarise(killedOn("2027-08-02"));
    expect(found.firstPick?.likely).toBeLessThanOrEqual(day("2027-08-08"));
    // 93 of 96 days had: (0.965 − 0.4) / 0.6 = 0.94 in the middle, less where more is needed
    expect(found.totalGrams.likely / whole).toBeGreaterThan(0.87);
    expect(found.totalGrams.likely).toBeLessThan(whole);
  });
});
