/** The warmth of a season against the usual one, in made weather worked by hand: base 6 °C, 10 °C d a day as usual, 12 where it is two degrees warmer. */
import { describe, expect, it } from "vitest";
import { warmthSoFar, weatherYears } from "#shared/engines/harvest-forecast/index.ts";
import type { Planting, WarmthSoFar, WeatherYears } from "#shared/engines/harvest-forecast/index.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import { day, plantingOf, questionOf, steadyWeather, weatherFrom } from "./plantings.ts";
import { cropOf } from "./records.ts";

const FROM = day("2027-01-01");
const OUT = day("2027-05-01");
const AS_OF = day("2027-06-10");
const DAYS_OUT = 40;
const crop: CropFacts = { ...cropOf("courgette"), baseC: 6, upperC: 30, daysToMaturity: { low: 60, high: 60, from: "transplanting" }, quotedMeanC: 16, thermal: { low: 600, likely: 600, high: 600 } };
const usual = steadyWeather(20, 12, FROM, 400, 5);
/** So much warmer or colder than usual since the planting out, as usual from the day asked about on. */
const season = (plusC: number): WeatherYears => ({ ...weatherFrom(FROM, 400, 5, (d) => (d >= OUT && d < AS_OF ? [20 + plusC, 12 + plusC] : [20, 12])), asOf: AS_OF });
const ask = (plusC: number, change: Partial<Planting> = {}): WarmthSoFar | null => warmthSoFar(questionOf(plantingOf("courgette", { crop, plantedOutOn: OUT, ...change }), season(plusC)), () => usual);

describe("warmth so far", () => {
  it("two degrees warmer for 40 days: 480 against 400 °C d, which the usual season has 8 days later", () => {
    expect(ask(2)).toMatchObject({ since: OUT, from: "book", baseC: 6, gainedCd: 12 * DAYS_OUT, usualCd: { low: 400, likely: 400, high: 400 }, daysAhead: 8 });
  });

  it("two degrees colder: 320 °C d, which the usual season had 8 days ago", () => {
    expect(ask(-2)).toMatchObject({ gainedCd: 8 * DAYS_OUT, daysAhead: -8 });
  });

  it("as usual: no days at all", () => {
    expect(ask(0)).toMatchObject({ gainedCd: 400, daysAhead: 0 });
  });

  it("says what the first pick needs: 0.95 of 600 °C d, the first fruit", () => {
    expect(ask(2)?.needsCd).toBeCloseTo(570, 6);
  });

  it("draws a point a week and the day itself, until the usual season has what is needed", () => {
    const points = ask(2)?.points ?? [];
    expect(points.map((point) => point.day - OUT)).toEqual([0, 7, 14, 21, 28, 35, 40, 42, 49, 56, 63]);
    expect(points.map((point) => point.gainedCd)).toEqual([0, 84, 168, 252, 336, 420, 480, null, null, null, null]);
    expect(points[points.length - 1]?.usualCd.likely).toBe(630);
  });

  it("counts from coming up where the crop is sown: the soil at 16 °C brings 103 °C d above 7.5 °C in 13 days", () => {
    const sown: CropFacts = { ...crop, daysToMaturity: { low: 60, high: 60, from: "sowing" }, thermalAfterEmergence: 500, emergence: { thetaCd: 103, baseC: 7.5 }, germinationMinC: 10 };
    const found = ask(0, { crop: sown, method: "direct", sownOn: OUT, plantedOutOn: null });
    expect(found).toMatchObject({ from: "coming-up", since: OUT + Math.ceil(103 / 8.5), daysAhead: 0 });
    expect(found?.gainedCd).toBeCloseTo(10 * (DAYS_OUT - Math.ceil(103 / 8.5)), 6);
  });

  it("counts from a sighting on", () => {
    const seen = ask(2, { sightings: [{ stage: "flowering", day: AS_OF - 10 }] });
    expect(seen).toMatchObject({ since: AS_OF - 10, from: "flowering", gainedCd: 120, usualCd: { likely: 100 }, daysAhead: 2 });
  });

  it("is silent before it begins, once it has been picked, and without weather", () => {
    expect(ask(2, { plantedOutOn: AS_OF + 1 })).toBeNull();
    expect(ask(2, { picks: [{ day: AS_OF - 1, grams: 100 }] })).toBeNull();
    expect(warmthSoFar(questionOf(plantingOf("courgette", { crop, plantedOutOn: OUT }), { ...season(2), restsOn: "nothing" }), () => usual)).toBeNull();
  });
});

describe("the usual weather", () => {
  it("is that of the past years on every day, also on those observed since", () => {
    const [first, days] = [day("2010-01-01"), day("2027-06-10") - day("2010-01-01") + 1];
    const warmNow = Float64Array.from({ length: days }, (_, d) => (first + d >= day("2027-01-01") ? 30 : 10));
    const question = { record: { firstDay: first, tmaxC: warmNow, tminC: warmNow.map((t) => t - 5) }, normals: null, asOf: AS_OF, from: FROM, until: day("2027-12-31"), seed: 1 };
    const years = (usual: boolean) => weatherYears({ ...question, usual }).value.years.map(({ tmaxC }) => tmaxC[AS_OF - FROM]);
    expect(years(true)).toEqual(Array.from({ length: 17 }, () => 10));
    expect(years(false)).toEqual(Array.from({ length: 17 }, () => 30));
  });
});
