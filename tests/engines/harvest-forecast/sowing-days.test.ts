/** Planning back: sowings spaced by warmth. The spring that warms evenly and its days were worked outside the project, by adding up by hand. */
import { describe, expect, it } from "vitest";
import { forecastPlanting, picksBySowingDay, sowingDayFor, sowingServes, summarise } from "#shared/engines/harvest-forecast/index.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import { dateOf } from "#shared/kernel/local-date.ts";
import { day, plantingOf, questionOf, steadyWeather, weatherFrom } from "./plantings.ts";
import { cropOf } from "./records.ts";

/** Mean 8 °C on 1 March rising evenly to 18 °C on 29 June. */
const meanOn = (d: number): number => 8 + (10 * Math.min(Math.max(d - day("2027-03-01"), 0), 120)) / 120;
const spring = weatherFrom(day("2027-01-01"), 400, 3, (d) => [meanOn(d), meanOn(d)]);
/** Base 4 °C, needs 500 °C d from sowing. */
const crop: CropFacts = { ...cropOf("lettuce-head"), baseC: 4, upperC: 30, thermal: { low: 500, likely: 500, high: 500 }, thermalAfterEmergence: null, emergence: null, sigmaLn: 0 };
const question = questionOf(plantingOf("lettuce-head", { crop }), spring);
const near = (found: number | undefined, date: string): void => expect(Math.abs((found ?? 0) - day(date)), `${dateOf(found ?? 0)} against ${date}`).toBeLessThanOrEqual(1);

describe("a spring that warms evenly", () => {
  const days = picksBySowingDay(question, day("2027-03-01"), day("2027-06-01"));

  it("sowings 14 days apart are picked 7, 7 and 8 days apart", () => {
    const sown = ["2027-03-01", "2027-03-15", "2027-03-29", "2027-04-12"];
    ["2027-05-12", "2027-05-19", "2027-05-26", "2027-06-03"].forEach((date, i) => near(days.likelyPick[day(sown[i] as string) - days.from], date));
  });

  it("picks 14 days apart want sowings on 1 and 29 March, 20 April and 10 May", () => {
    const firstPick = days.likelyPick[0] as number;
    ["2027-03-01", "2027-03-29", "2027-04-20", "2027-05-10"].forEach((date, i) => near(sowingDayFor(days, firstPick + 14 * i)?.sowOn, date));
  });

  it("agree with the forecast of the same sowing", () => {
    for (const date of ["2027-03-10", "2027-04-30"]) {
      const whole = summarise(forecastPlanting(questionOf(plantingOf("lettuce-head", { crop, sownOn: day(date) }), spring)).value);
      expect(days.likelyPick[day(date) - days.from]).toBe(whole.firstPick?.likely);
    }
  });
});

describe("the day to sow", () => {
  it("is not one whose crop the frost takes, or that never ripens", () => {
    const frosty = weatherFrom(day("2027-01-01"), 500, 10, (d, y) => (d === day("2027-05-20") && y < 4 ? [8, -1] : d > day("2027-10-10") ? [6, -2] : [22, 12]));
    const days = picksBySowingDay(questionOf(plantingOf("courgette", { plantedOutOn: day("2027-01-01") }), frosty), day("2027-05-01"), day("2027-10-01"));
    // before the night of 20 May four years of ten lose it; from then on none does
    expect(days.chance[day("2027-05-10") - days.from]).toBeCloseTo(0.6, 9);
    expect(days.chance[day("2027-05-21") - days.from]).toBe(1);
    expect(sowingDayFor(days, day("2027-06-20"))?.sowOn).toBeGreaterThan(day("2027-05-20"));
    expect(days.likelyPick[day("2027-09-20") - days.from]).toBe(-1);
    expect(sowingDayFor({ ...days, chance: days.chance.map(() => 0.6) }, day("2027-07-20"))).toBeNull();
  });

  it("is the latest of those picked on one day: what stands still in the cold gains nothing by an early start", () => {
    const winter = weatherFrom(day("2027-01-01"), 400, 3, (d) => (d < day("2027-04-01") ? [0, 0] : [14, 14]));
    const days = picksBySowingDay(questionOf(plantingOf("lettuce-head", { crop }), winter), day("2027-01-10"), day("2027-05-01"));
    expect(sowingDayFor(days, days.likelyPick[0] as number)?.sowOn).toBe(day("2027-04-01"));
  });
});

describe("how long one sowing serves", () => {
  const mild = steadyWeather(18, 8, day("2027-01-01"), 400);
  it("is the weeks that bring 85 % of it: a burst of three weeks brings 0.456, 0.430 and 0.114, so two", () => {
    // three weeks of Beta(1.6, 2.6), worked by numerical integration outside the project
    expect(questionOf(plantingOf("french-bean"), mild).planting.crop.pickWeeks).toEqual({ low: 2, high: 4 });
    expect(sowingServes(plantingOf("french-bean"))).toEqual({ weeks: 2, gramsPerRowM: 1_790 });
    expect(sowingServes(plantingOf("tomato")).weeks).toBeGreaterThanOrEqual(6);
    expect(sowingServes(plantingOf("sweetcorn")).weeks).toBeLessThanOrEqual(2);
  });
});
