/** Winter: cold that a crop must have had, what stands until the next year, and frosts that count. Made weather, worked by hand; thirty Dutch years where a source gives days. */
import { describe, expect, it } from "vitest";
import { forecastPlanting, summarise, weatherYears } from "#shared/engines/harvest-forecast/index.ts";
import type { ForecastSummary, Planting, WeatherYears } from "#shared/engines/harvest-forecast/index.ts";
import { endsBy } from "#shared/engines/harvest-forecast/winter.ts";
import { dateOf } from "#shared/kernel/local-date.ts";
import { day, plantingOf, questionOf, weatherFrom } from "./plantings.ts";
import { cropOf, dailyRecordOf, DE_BILT, longRecordsAtHand, NEEDS_RECORDS } from "./records.ts";

const found = (planting: Planting, weather: WeatherYears): ForecastSummary => summarise(forecastPlanting(questionOf(planting, weather, { latitudeDeg: 52.1 })).value);
/** 18 °C until 31 October 2027, so many days of 5 °C, then 14 °C. */
const coldSpell = (days: number): WeatherYears => weatherFrom(day("2027-05-01"), 500, 3, (d) => (d < day("2027-11-01") ? [18, 18] : d < day("2027-11-01") + days ? [5, 5] : [14, 14]));

describe("cold that a crop must have had", () => {
  const broccoli = plantingOf("sprouting-broccoli", { plantedOutOn: day("2027-06-20"), crop: { ...cropOf("sprouting-broccoli"), sigmaLn: 0 } });

  it("sprouting broccoli waits for six weeks below 10 °C and the first warmth after it, however warm the summer was", () => {
    // 42 days of 5 °C from 1 November are over on 12 December; eight more bring 0.6 °C d each, then 14 − 4.4 = 9.6 °C d a day towards 120
    const first = found(broccoli, coldSpell(50)).firstPick;
    const worked = day("2027-11-01") + 50 + Math.ceil((120 - 8 * 0.6) / 9.6);
    expect(Math.abs((first?.likely ?? 0) - worked), dateOf(first?.likely ?? 0)).toBeLessThanOrEqual(1);
    expect(found(broccoli, coldSpell(40)).chanceOfPick).toBe(0);
  });

  it("garlic that has had none makes no cloves; after forty cold days warmth alone counts", () => {
    const garlic = plantingOf("garlic", { sownOn: day("2027-05-02") });
    expect(found(garlic, coldSpell(39)).chanceOfPick).toBe(0);
    expect(found(garlic, coldSpell(45)).chanceOfPick).toBeGreaterThan(0.9);
  });
});

describe("what stands until the next year", () => {
  const ends = (slug: string, date: string, southern = false): string => dateOf(endsBy(cropOf(slug), day(date), southern));
  it("of those sown for this year, or sown in autumn without standing the winter, nothing after April", () => {
    expect([ends("carrot", "2027-07-10"), ends("turnip", "2027-09-20")]).toEqual(["2028-05-01", "2028-05-01"]);
    expect([ends("onion", "2027-10-10"), ends("garlic", "2027-10-20"), ends("spinach", "2027-09-10")]).toEqual(["2028-10-09", "2028-10-19", "2028-09-09"]);
    expect(ends("turnip", "2027-03-20", true)).toBe("2027-11-01");
  });
});

describe("potatoes and frost", () => {
  const nights = (...dates: string[]): WeatherYears => weatherFrom(day("2027-01-01"), 700, 3, (d) => (dates.some((date) => day(date) === d) ? [10, -2] : [22, 12]));
  it("shoot again after a night of May, and are lost to one of autumn before tubers have formed", () => {
    expect(found(plantingOf("potato-early", { sownOn: day("2027-04-01") }), nights("2027-05-10")).chanceOfPick).toBe(1);
    expect(found(plantingOf("potato-early", { sownOn: day("2027-08-10") }), nights("2027-09-01")).chanceOfPick).toBeLessThan(0.01);
  });
});

describe.runIf(longRecordsAtHand)(`autumn sowings through thirty Dutch years (${NEEDS_RECORDS})`, () => {
  const daysTo = (slug: string, start: string, how: "sownOn" | "plantedOutOn"): number => {
    const began = day(start);
    const weather = weatherYears({ record: dailyRecordOf(DE_BILT), normals: null, asOf: began - 1, from: began - 40, until: began + 450, seed: 1 }).value;
    return (found(plantingOf(slug, { [how]: began }), weather).firstPick?.likely ?? 0) - began;
  };
  it("broad beans of 5 November take 200–230 days (a UK grower's page), sprouting broccoli planted in June 250–290 (common practice), within ten", () => {
    const beans = daysTo("broad-bean", "2015-11-05", "sownOn");
    expect(beans).toBeGreaterThanOrEqual(200);
    expect(beans).toBeLessThanOrEqual(230);
    const broccoli = daysTo("sprouting-broccoli", "2015-06-20", "plantedOutOn");
    expect(broccoli).toBeGreaterThanOrEqual(240);
    expect(broccoli).toBeLessThanOrEqual(300);
  });
});
