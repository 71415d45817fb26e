/** The fast forecast against a plain day-by-day one: the same days exactly, the same grams within a thousandth. */
import { describe, expect, it } from "vitest";
import { endsBy } from "#shared/engines/harvest-forecast/winter.ts";
import { forecastPlanting, weatherYears, weeklySupply } from "#shared/engines/harvest-forecast/index.ts";
import { dealFor } from "#shared/engines/harvest-forecast/scenario-deal.ts";
import { shapeOf } from "#shared/engines/harvest-forecast/yield-curve.ts";
import { waitsForTheGrower } from "#shared/kernel/crop-facts.ts";
import { weekOf, weeksFrom, weekStart } from "#shared/kernel/iso-week.ts";
import { dateOf } from "#shared/kernel/local-date.ts";
import { plainSeason } from "./oracle.ts";
import { day, plantingOf, questionOf } from "./plantings.ts";
import { normalsAt } from "./records.ts";

describe("day by day", () => {
  const asOf = day("2026-12-31");
  const weather = weatherYears({ record: null, normals: normalsAt("de_bilt_1981-2010"), asOf, from: day("2027-02-01"), until: day("2028-06-30"), seed: 7 }).value;

  it.each([
    ["french-bean", "2027-04-15"],
    ["french-bean", "2027-06-20"],
    ["courgette", "2027-05-01"],
    ["pea", "2027-03-10"],
    ["beetroot", "2027-07-25"],
    ["carrot", "2027-04-15"],
    ["turnip", "2027-08-10"],
    ["cabbage", "2027-06-25"],
    ["broccoli", "2027-07-01"],
    ["onion", "2027-04-05"],
    ["tomato", "2027-06-01"],
    ["cherry-tomato", "2027-05-10"],
  ])("%s of %s", (slug, start) => {
    const startDay = day(start);
    const planted = ["cabbage", "broccoli", "tomato", "cherry-tomato"].includes(slug);
    const planting = plantingOf(slug, planted ? { plantedOutOn: startDay } : { sownOn: startDay });
    const { crop } = planting;
    const q = questionOf({ ...planting, rowM: 5 }, weather, { asOf });
    const forecast = forecastPlanting(q).value;
    const deal = dealFor(planting.id, weather.years.length, forecast.perYear);
    const perRow = crop.gramsPerRowM ?? { low: 1, likely: NaN, high: 1 };
    const emerges = !planted && crop.thermalAfterEmergence !== null;
    const before = emerges ? 1 - (crop.thermalAfterEmergence) / crop.thermal.likely : 0;
    const rules = {
      startDay,
      emerges,
      // what is picked again and again begins with the first fruit, at 0.95 of the book's figure give or take 0.03; the book's spread, a degree between garden and station, and a quarter of the time before it comes up
      sigmaLn: Math.sqrt(crop.sigmaLn ** 2 + (1 / ((crop.quotedMeanC as number) - crop.baseC)) ** 2 + (0.25 * before) ** 2 + (crop.habit === "repeat" ? 0.03 : 0) ** 2),
      likelyCd: (planted ? crop.thermal.likely : (crop.thermalAfterEmergence ?? crop.thermal.likely)) * (crop.habit === "repeat" ? 0.95 : 1),
      likelyGrams: 5 * perRow.likely,
      shape: shapeOf(crop),
      waits: waitsForTheGrower(crop),
      closesOn: endsBy(crop, startDay, false),
    };
    const firstWeek = weekOf(dateOf(weather.firstDay));
    const grid = { weeks: weeksFrom(firstWeek, 90), firstMonday: day(weekStart(firstWeek)) };
    const supply = weeklySupply(forecast, grid);
    let picks = 0;
    for (let s = 0; s < forecast.firstPickDay.length; s++) {
      const plain = plainSeason(q, rules, deal, forecast.perYear, s);
      expect([forecast.firstPickDay[s], forecast.lastPickDay[s]], `scenario ${s}`).toEqual(plain ? [plain.first, plain.last] : [-1, -1]);
      if (!plain || !crop.gramsPerRowM) continue;
      picks++;
      const byWeek = new Float64Array(90);
      for (const [d, grams] of plain.gramsByDay) {
        const w = Math.floor((d - grid.firstMonday) / 7);
        if (w < 90) byWeek[w] = (byWeek[w] as number) + grams;
      }
      const largest = Math.max(...byWeek);
      byWeek.forEach((grams, w) => {
        if (Math.abs((supply.scenarios[s]?.[w] as number) - grams) > largest / 1_000) expect.fail(`scenario ${s}, week ${w}: ${supply.scenarios[s]?.[w]} and ${grams}`);
      });
    }
    expect(forecast.firstPickDay.length).toBe(360);
    if (crop.gramsPerRowM) expect(picks).toBeGreaterThan(30);
  });
});
