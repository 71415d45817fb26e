/** One input moved at a time, in made weather, against a case worked by hand: the direction, the size, and nothing else. */
import { describe, expect, it } from "vitest";
import { forecastPlanting, summarise, weeklySupply } from "#shared/engines/harvest-forecast/index.ts";
import type { ForecastQuestion, ForecastSummary, Planting, WeatherYears } from "#shared/engines/harvest-forecast/index.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import { weeksFrom } from "#shared/kernel/iso-week.ts";
import { day, plantingOf, questionOf, steadyWeather } from "./plantings.ts";
import { cropOf } from "./records.ts";

const FROM = day("2027-01-01");
/** 12 °C at night and 20 °C by day: above a base of 6 °C a day brings 10 °C d. */
const steady = steadyWeather(20, 12, FROM, 700, 30);
const weatherOf = (maxC: number, minC: number): WeatherYears => steadyWeather(maxC, minC, FROM, 700, 30);
/** The first fruit of a crop that is picked again and again comes at so much of its figure, give or take 0.03 (common practice). */
const FIRST_FRUIT = 0.95;
/** Base 6 °C, 600 °C d from planting out to the first fruit with a log spread of 0.2, picked for exactly eight weeks, 1,000 g a metre give or take a half; no site term. */
const crop: CropFacts = {
  ...cropOf("courgette"),
  baseC: 6,
  upperC: 30,
  daysToMaturity: { low: 60, high: 60, from: "transplanting" },
  quotedMeanC: Infinity,
  thermal: { low: 600 / FIRST_FRUIT, likely: 600 / FIRST_FRUIT, high: 600 / FIRST_FRUIT },
  sigmaLn: Math.sqrt(0.2 ** 2 - 0.03 ** 2),
  killC: null,
  pickWeeks: { low: 8, high: 8 },
  gramsPerPlant: null,
  gramsPerM2: null,
  gramsPerRowM: { low: 1000 * Math.exp(-0.64075), likely: 1000, high: 1000 * Math.exp(0.64075) },
};
const OUT = day("2027-05-01");
const ask = (change: Partial<Planting> = {}, weather = steady, more: Partial<ForecastQuestion> = {}): ForecastSummary =>
  summarise(forecastPlanting(questionOf(plantingOf("courgette", { crop, plantedOutOn: OUT, rowM: 10, ...change }), weather, more)).value);
const width = ({ firstPick }: ForecastSummary): number => (firstPick?.high ?? 0) - (firstPick?.low ?? 0);
const days = ({ firstPick }: ForecastSummary): number => (firstPick?.likely ?? 0) - OUT;
const near = (found: number, worked: number, by = 1): void => expect(Math.abs(found - worked), `${found} against ${worked}`).toBeLessThanOrEqual(by);

describe("one input at a time", () => {
  const base = ask();

  it("the case itself: 60 days, 46.4 to 77.5, 10 kg between 5.3 and 19.0", () => {
    near(days(base), 60);
    near((base.firstPick?.low ?? 0) - OUT, 60 * Math.exp(-0.2563));
    near((base.firstPick?.high ?? 0) - OUT, 60 * Math.exp(0.2563), 2);
    near(base.totalGrams.likely, 10_000, 150);
    near(base.totalGrams.low, 10_000 * Math.exp(-0.64075), 200);
    near(base.totalGrams.high, 10_000 * Math.exp(0.64075), 600);
  });

  it("weather two degrees warmer: 12 °C d a day, 50 days, the width in proportion; the amount stays", () => {
    const warm = ask({}, weatherOf(22, 14));
    near(days(warm), 50);
    near(width(warm), (width(base) * 10) / 12, 2);
    expect(warm.totalGrams).toEqual(base.totalGrams);
  });

  it("a polytunnel, +1.3 °C at night and +4.2 °C by day (Savage 1980): 10 + 2.75 °C d a day, 47 days", () => {
    near(days(ask({ cover: "polytunnel" })), 600 / 12.75);
    expect(ask({ cover: "polytunnel" }).totalGrams).toEqual(base.totalGrams);
  });

  it("a variety of 45 days where the book's 60 were quoted at 16 °C: 45 × 10 °C d, the first fruit after 0.95 of 45 days, and a spread of 0.12 and 0.08", () => {
    const quoted = { ...crop, quotedMeanC: 16 };
    const variety = ask({ crop: quoted, varietyDays: { low: 45, high: 45 } });
    near(days(variety), FIRST_FRUIT * 45);
    // with a tenth between garden and station: 1 / (16 − 6)
    const sigma = Math.sqrt(0.12 ** 2 + 0.08 ** 2 + 0.1 ** 2 + 0.03 ** 2);
    near(width(variety), FIRST_FRUIT * 45 * (Math.exp(1.2816 * sigma) - Math.exp(-1.2816 * sigma)), 2);
  });

  it("flowers seen on 10 June: 3–7 days of 10 °C d at 16 °C, spread 0.15", () => {
    const seen = ask({ crop: { ...crop, quotedMeanC: 16 }, sightings: [{ stage: "flowering", day: day("2027-06-10") }] }, steady, { asOf: day("2027-06-10") });
    near(days(seen), 40 + 5);
    expect(width(seen)).toBeLessThanOrEqual(3);
  });

  it("a fortnight later planted is a fortnight later picked", () => {
    expect((ask({ plantedOutOn: OUT + 14 }).firstPick?.likely ?? 0) - (base.firstPick?.likely ?? 0)).toBe(14);
  });
});

describe("ten picks", () => {
  const FIRST = day("2027-06-30");
  /** Twice a week from the first pick on, the last on day 33, of so many grams each; a season of 56 days, Beta(2, 2.5). */
  const tenPicks = (grams: number): Planting["picks"] => Array.from({ length: 10 }, (_, i) => ({ day: FIRST + Math.round(i * 3.6667), grams }));
  const asOf = FIRST + 33;
  const after = (grams: number, on = asOf): ForecastSummary => ask({ picks: tenPicks(grams) }, steady, { asOf: on });
  /** Share of Beta(2, 2.5) by t: 1 − (1 − t)^2.5 · (1 + 2.5 t). */
  const shareBy = (t: number): number => 1 - (1 - t) ** 2.5 * (1 + 2.5 * t);
  const q = shareBy(34 / 56);
  const B = 0.25 / (0.25 + 0.35 ** 2 / (34 / 7));

  it("of what was planned leave the middle, and narrow the rest to √(1 − B)", () => {
    const planned = after((10_000 * q) / 10);
    near(planned.totalGrams.likely, 10_000, 60);
    const rest = 10_000 * (1 - q);
    near(planned.totalGrams.high - planned.totalGrams.likely, rest * (Math.exp(1.2816 * 0.5 * Math.sqrt(1 - B)) - 1), 60);
  });

  it("of half of it make the rest exp(B ln ½)", () => {
    const poor = after((5_000 * q) / 10);
    near(poor.totalGrams.likely, 5_000 * q + 10_000 * (1 - q) * Math.exp(B * Math.log(0.5)), 60);
  });

  it("made less often than it ripens: a week after the last, the picks still answer for what had ripened by then, and the week's fruit hangs", () => {
    const late = after((10_000 * q) / 10, asOf + 7);
    near(late.totalGrams.likely, 10_000, 60);
    // after three weeks only the last of them still hangs; what ripened in the two before has gone over
    const longAfter = after((10_000 * q) / 10, asOf + 21);
    near(longAfter.totalGrams.likely, 10_000 * (1 - (shareBy(48 / 56) - q)), 60);
  });

  it("leave the fruit that hangs to the day after: it comes in the week of it", () => {
    const on = day("2027-08-09");
    const { value } = forecastPlanting(questionOf(plantingOf("courgette", { crop, plantedOutOn: OUT, rowM: 10, picks: tenPicks((10_000 * q) / 10) }), steady, { asOf: on }));
    const week = weeklySupply(value, { weeks: weeksFrom("2027-W32", 1), firstMonday: day("2027-08-09") });
    const likely = [...week.scenarios.map((grams) => grams[0] as number)].sort((a, b) => a - b)[Math.floor(week.scenarios.length / 2)] as number;
    // from the day after the last pick, 3 August, to Sunday 15 August
    near(likely, 10_000 * (shareBy(47 / 56) - q), 60);
  });
});
