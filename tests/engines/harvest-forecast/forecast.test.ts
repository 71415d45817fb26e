/** One planting through made weather in which the answer can be worked on paper. */
import { describe, expect, it } from "vitest";
import { summarise, weeklySupply } from "#shared/engines/harvest-forecast/index.ts";
import type { Planting, PlantingForecast, WeatherYears } from "#shared/engines/harvest-forecast/index.ts";
import { covered } from "#shared/engines/harvest-forecast/thermal-time.ts";
import { firstPicks } from "#shared/engines/harvest-forecast/first-picks.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import { weeksFrom } from "#shared/kernel/iso-week.ts";
import { day, forecastOf, notesOf, plantingOf, questionOf, steadyWeather, weatherFrom } from "./plantings.ts";
import { cropOf } from "./records.ts";

const steady = steadyWeather(15, 15, day("2027-01-01"), 700, 30);

/** Base 5 °C, needs 600 °C d from sowing, no spread; and no degree between garden and station. */
const plain: CropFacts = {
  ...cropOf("lettuce-head"),
  baseC: 5,
  upperC: 30,
  thermal: { low: 600, likely: 600, high: 600 },
  thermalAfterEmergence: null,
  emergence: null,
  quotedMeanC: Infinity,
  sigmaLn: 0,
};

describe("dates under steady warmth", () => {
  it("600 °C d above 5 °C at a constant 15 °C from 1 May 2027 are reached on 30 June, give or take a day", () => {
    const first = summarise(forecastOf(plantingOf("lettuce-head", { crop: plain, sownOn: day("2027-05-01") }), steady)).firstPick;
    expect(first?.low).toBe(first?.high);
    expect(Math.abs((first?.likely ?? 0) - day("2027-06-30"))).toBeLessThanOrEqual(1);
  });

  it("the spread of the requirement is a spread of dates: 10 and 90 % at e^∓1.2816σ", () => {
    const spread = { ...plain, sigmaLn: 0.2 };
    const first = summarise(forecastOf(plantingOf("lettuce-head", { crop: spread, sownOn: day("2027-05-01") }), steady)).firstPick;
    const sown = day("2027-05-01");
    // 46.4, 60 and 77.5 days; a pick waits for the morning after, so a day may be added
    [first?.low, first?.likely, first?.high].forEach((d, i) => expect(Math.abs((d ?? 0) - sown - ([46.4, 60, 77.5][i] as number))).toBeLessThanOrEqual(1.1));
  });

  it("indoors neither frost nor summer counts: 16 to 20 °C", () => {
    const frosty = weatherFrom(day("2027-01-01"), 400, 10, () => [-5, -10]);
    const basil = summarise(forecastOf(plantingOf("basil", { sownOn: day("2027-01-10"), cover: "indoors" }), frosty));
    expect(basil.chanceOfPick).toBe(1);
    // basil: up at 75 °C d above 11 °C in soil of 18 °C, then 0.82 of 510 °C d above 10 °C at 8 °C d a day: leaves are cut before full growth
    expect(Math.abs((basil.firstPick?.likely ?? 0) - (day("2027-01-10") + Math.ceil(75 / 7) + Math.ceil((0.82 * 510) / 8)))).toBeLessThanOrEqual(2);
  });

  it("is earlier under a polytunnel and in a warmer year", () => {
    const open = summarise(forecastOf(plantingOf("carrot", { sownOn: day("2027-04-01") }), steady)).firstPick;
    const tunnel = summarise(forecastOf(plantingOf("carrot", { sownOn: day("2027-04-01"), cover: "polytunnel" }), steady)).firstPick;
    expect(tunnel?.likely).toBeLessThan(open?.likely ?? 0);
    expect(notesOf(plantingOf("carrot", { sownOn: day("2027-04-01"), cover: "polytunnel" }), steady)).toMatch(/polytunnel is taken to add 1.3 °C by night and 4.2 °C by day, give or take 0.65 and 2.1 °C/);
  });
});

describe("what is known by the day", () => {
  const bean = (change: Partial<Planting>): Planting => plantingOf("french-bean", { sownOn: day("2027-05-10"), ...change });
  const warm = steadyWeather(24, 14, day("2027-01-01"), 600, 30);

  it("a first pick fixes the first day; the first logged pick is one", () => {
    const seen = forecastOf(bean({ sightings: [{ stage: "first-pick", day: day("2027-07-15") }] }), warm, { asOf: day("2027-07-20") });
    const logged = forecastOf(bean({ picks: [{ day: day("2027-07-15"), grams: 200 }] }), warm, { asOf: day("2027-07-20") });
    for (const forecast of [seen, logged]) expect(new Set(forecast.firstPickDay)).toEqual(new Set([day("2027-07-15")]));
  });

  it("picks are the past, and twice the planned picks raise what is to come", () => {
    const asOf = day("2027-07-25");
    const book = summarise(forecastOf(bean({}), warm));
    const picks = (grams: number) => [day("2027-07-12"), day("2027-07-16"), day("2027-07-20"), day("2027-07-24")].map((d) => ({ day: d, grams }));
    const rich = forecastOf(bean({ picks: picks(3_000) }), warm, { asOf });
    const poor = forecastOf(bean({ picks: picks(300) }), warm, { asOf });
    expect(book.firstPick?.likely).toBeLessThan(asOf);
    const still = (forecast: PlantingForecast): number => summarise(forecast).totalGrams.likely - forecast.curve.picks.reduce((sum, pick) => sum + pick.grams, 0);
    expect(still(rich)).toBeGreaterThan(2 * still(poor));
    expect(still(poor)).toBeGreaterThan(0);
    const w = weeklySupply(rich, { weeks: weeksFrom("2027-W28", 2), firstMonday: day("2027-07-12") });
    expect([...(w.scenarios[5] as Float64Array)]).toEqual([6_000, 6_000 + (w.scenarios[5]?.[1] as number) - 6_000]);
  });

  it("finished closes the season", () => {
    const done = forecastOf(bean({ picks: [{ day: day("2027-07-15"), grams: 900 }], sightings: [{ stage: "finished", day: day("2027-07-20") }] }), warm, { asOf: day("2027-07-22") });
    expect(summarise(done)).toMatchObject({ lastPick: { low: day("2027-07-20"), high: day("2027-07-20") }, totalGrams: { low: 900, likely: 900, high: 900 } });
  });

  it("no pick yet, where picks are written down, rules out the days that have gone", () => {
    const asOf = day("2027-07-20");
    const silent = forecastOf(bean({}), warm, { asOf, logsPicks: false });
    const waiting = forecastOf(bean({}), warm, { asOf, logsPicks: true });
    expect(Math.min(...silent.firstPickDay)).toBeLessThan(asOf - 3);
    expect(Math.min(...waiting.firstPickDay)).toBeGreaterThanOrEqual(asOf - 3);
    expect(notesOf(bean({}), warm, { asOf, logsPicks: true })).toMatch(/Nothing has been picked yet/);
    // later than nearly all the book's days but within the usual weeks of picking, it is due, and its days are still a spread
    const late = summarise(forecastOf(bean({}), warm, { asOf: day("2027-08-01"), logsPicks: true }));
    expect(late.chanceOfPick).toBe(1);
    expect(late.firstPick?.low).toBeGreaterThanOrEqual(day("2027-07-29"));
    expect(late.firstPick?.high).toBeGreaterThan((late.firstPick?.low ?? 0) + 3);
  });

  it.each(["asparagus", "rhubarb", "gooseberry"])("%s of which nothing was written down is over when its usual weeks have passed", (slug) => {
    const planting = plantingOf(slug, { season: 2027 });
    const reckoned = summarise(forecastOf(planting, steady));
    const asOf = (reckoned.firstPick?.likely ?? 0) + 7 * planting.crop.pickWeeks.high;
    const over = { asOf, logsPicks: true };
    expect(summarise(forecastOf(planting, steady, over))).toMatchObject({ firstPick: null, chanceOfPick: 0, totalGrams: { low: 0, high: 0 } });
    expect(notesOf(planting, steady, over)).toMatch(/The season is over; nothing was written down/);
    expect(notesOf(planting, steady, over)).not.toMatch(/ripen in time/);
    expect(summarise(forecastOf(planting, steady, { ...over, asOf: asOf - 1 })).chanceOfPick).toBe(1);
    expect(summarise(forecastOf(planting, steady, { asOf })).firstPick).toEqual(reckoned.firstPick);
  });

  it("a planting that is finished is said to be over, and not to ripen too late", () => {
    const finished = { stage: "finished", day: day("2027-06-20") } as const;
    expect(notesOf(bean({ sightings: [finished] }), warm, { asOf: day("2027-06-25") })).not.toMatch(/ripen in time/);
    const picked = bean({ picks: [{ day: day("2027-06-18"), grams: 100 }], sightings: [finished] });
    expect(notesOf(picked, warm, { asOf: day("2027-06-25") })).toMatch(/First picked on 18\sJune; the picking is over/);
    expect(notesOf({ ...picked, sightings: [] }, warm, { asOf: day("2027-06-25") })).toMatch(/only the amount and the end are still open/);
  });

  it("days without a reading are counted in the planting's own season only", () => {
    const asOf = day("2027-06-25");
    const holes = (...dates: string[]): WeatherYears => ({ ...warm, unreadDays: dates.map(day) });
    expect(notesOf(bean({}), holes("2027-04-01", "2027-05-20"), { asOf })).toMatch(/1 past day has no reading; each season fills it/);
    expect(notesOf(bean({}), holes("2027-05-20", "2027-05-21"), { asOf })).toMatch(/2 past days have no reading/);
    expect(notesOf(bean({}), holes("2027-04-01"), { asOf })).not.toMatch(/no reading/);
  });

  it("a sighting outside the book's span is believed, and said", () => {
    const flowers = bean({ sightings: [{ stage: "flowering", day: day("2027-08-20") }] });
    const found = forecastOf(flowers, warm, { asOf: day("2027-08-20") });
    expect(Math.min(...found.firstPickDay)).toBeGreaterThan(day("2027-08-20"));
    expect(notesOf(flowers, warm, { asOf: day("2027-08-20") })).toMatch(/later than the book's span; your sighting is believed/);
  });

  it("a pick after the book's last day is still a pick", () => {
    const late = plantingOf("leek", { plantedOutOn: day("2027-06-10"), picks: [{ day: day("2028-05-20"), grams: 700 }] });
    const found = summarise(forecastOf(late, steadyWeather(16, 6, day("2027-01-01"), 600, 5), { asOf: day("2028-05-21") }));
    expect([found.firstPick?.likely, found.chanceOfPick, found.totalGrams.likely]).toEqual([day("2028-05-20"), 1, 700]);
  });

  it("what waits is a stock: what was taken is gone from it", () => {
    const leeks = (picks: Planting["picks"]) => plantingOf("leek", { plantedOutOn: day("2027-04-10"), rowM: 5, picks });
    const asOf = day("2027-10-01");
    const whole = forecastOf(leeks([]), warm, { asOf });
    const part = forecastOf(leeks([{ day: day("2027-09-20"), grams: 2_000 }]), warm, { asOf });
    expect(part.waits).toBe(true);
    // same book amount, whether some of it is already in the kitchen or not; poor scenarios had less than was taken
    expect(summarise(part).totalGrams.likely).toBeCloseTo(summarise(whole).totalGrams.likely, -1);
  });
});

describe("short days, onions, bolting", () => {
  const mild = steadyWeather(16, 8, day("2027-07-01"), 500, 30);

  it("a leaf crop of September grows slower at 52° than where no place is known, and a note says so", () => {
    const spinach = plantingOf("spinach", { sownOn: day("2027-09-10") });
    const here = summarise(forecastOf(spinach, mild, { latitudeDeg: 52.1 })).firstPick;
    const nowhere = summarise(forecastOf(spinach, mild)).firstPick;
    expect(here?.likely).toBeGreaterThan((nowhere?.likely ?? Infinity) + 10);
    expect(notesOf(spinach, mild)).toMatch(/short days are left out/);
  });

  it("onion bulbs wait for days of 13.75 hours (Lancaster et al. 1996): warmth in winter does not ripen them", () => {
    const warmWinter = steadyWeather(30, 20, day("2026-10-01"), 500, 5);
    const onion = plantingOf("onion", { sownOn: day("2026-10-10") });
    // 14 April is the first day of that length at 52.1° north
    expect(Math.min(...forecastOf(onion, warmWinter, { latitudeDeg: 52.1 }).firstPickDay)).toBeGreaterThanOrEqual(day("2027-04-13"));
    expect(Math.min(...forecastOf(onion, warmWinter, { latitudeDeg: 20 }).firstPickDay)).toBeLessThan(day("2027-02-15"));
  });

  it("spinach runs to seed in long warm days, after a week of picking", () => {
    const hot = steadyWeather(26, 16, day("2027-01-01"), 500, 5);
    const spinach = plantingOf("spinach", { sownOn: day("2027-05-01") });
    const found = forecastOf(spinach, hot, { latitudeDeg: 52.1 });
    found.firstPickDay.forEach((first, s) => expect((found.lastPickDay[s] as number) - first).toBe(6));
    expect(notesOf(spinach, hot, { latitudeDeg: 52.1 })).toMatch(/runs to seed/);
  });
});

describe("thin data", () => {
  const none: WeatherYears = { firstDay: day("2027-01-01"), days: 400, asOf: day("2027-03-01"), years: [{ label: "no weather", tmaxC: new Float64Array(400).fill(NaN), tminC: new Float64Array(400).fill(NaN) }], restsOn: "nothing" };

  it("no weather gives no date, no exception, and a note", () => {
    const found = summarise(forecastOf(plantingOf("pea", { sownOn: day("2027-04-01") }), none));
    expect([found.firstPick, found.chanceOfPick]).toEqual([null, 0]);
    expect(notesOf(plantingOf("pea", { sownOn: day("2027-04-01") }), none)).toMatch(/Rests on no weather/);
    expect(notesOf(plantingOf("pea", { sownOn: day("2027-04-01") }), none)).not.toMatch(/ripen in time/);
  });

  it("no day of sowing gives none either", () => {
    expect(notesOf(plantingOf("pea", { method: "transplant" }), steady)).toMatch(/give the day it was sown/);
  });

  it("a planting from before the weather begins is counted from its first day, and that is said", () => {
    expect(notesOf(plantingOf("pea", { sownOn: day("2026-12-01") }), steady)).toMatch(/begins after this planting did/);
  });

  it("warns where the soil is too cold for the seed", () => {
    const cold = steadyWeather(11, 7, day("2027-01-01"), 500, 5);
    expect(notesOf(plantingOf("french-bean", { sownOn: day("2027-04-10") }), cold)).toMatch(/below 15.6 °C for ten days .* seed may rot/);
    expect(notesOf(plantingOf("pea", { sownOn: day("2027-04-10") }), cold)).not.toMatch(/rot/);
  });
});

describe("scenarios", () => {
  it("belong to weather year ⌊s / perYear⌋, each year with every quantile once", () => {
    const byYear = weatherFrom(day("2027-01-01"), 500, 30, (_, y) => [12 + y / 5, 12 + y / 5]);
    const planting = plantingOf("lettuce-head", { crop: plain, sownOn: day("2027-05-01") });
    const found = forecastOf(planting, byYear);
    expect([found.perYear, found.firstPickDay.length]).toEqual([12, 360]);
    const q = questionOf(planting, byYear);
    const clock = { startDay: day("2027-05-01"), emerges: false, likelyCd: 600, sigmaLn: 0, restsOn: "book", notes: [] } as const;
    const ready = firstPicks(q, covered(byYear, "open"), clock, { likelyCd: 600, sigmaLn: 0, own: null, notes: [] }, 1, new Int32Array(30), null).days;
    found.firstPickDay.forEach((first, s) => expect(first).toBe(byYear.firstDay + (ready[Math.floor(s / 12)] as number)));
  });

  it("of two plantings share the good or poor year: yields correlate by about 0.5 (common practice)", () => {
    const totals = ["one", "two"].map((id) => forecastOf(plantingOf("french-bean", { id, sownOn: day("2027-05-10") }), steady).totalGrams);
    const [a, b] = totals.map((grams) => grams.map(Math.log)) as [Float64Array, Float64Array];
    const mean = (v: Float64Array): number => v.reduce((x, y) => x + y, 0) / v.length;
    const covariance = (v: Float64Array, w: Float64Array): number => mean(v.map((x, i) => (x - mean(v)) * ((w[i] as number) - mean(w))));
    const correlation = covariance(a, b) / Math.sqrt(covariance(a, a) * covariance(b, b));
    expect(Math.abs(correlation - 0.5)).toBeLessThan(0.12);
  });

  it("show as dots at equal steps of chance, fewer where some seasons bring nothing", () => {
    const half = weatherFrom(day("2027-01-01"), 500, 30, (d, y) => (y % 2 === 0 && d === day("2027-06-01") ? [5, -1] : [22, 12]));
    const found = summarise(forecastOf(plantingOf("courgette", { plantedOutOn: day("2027-05-20") }), half));
    expect([found.chanceOfPick, found.dots.length]).toEqual([0.5, 10]);
    expect([...found.dots].sort((p, q) => p - q)).toEqual(found.dots);
  });
});
