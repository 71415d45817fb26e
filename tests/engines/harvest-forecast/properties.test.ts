/** What must hold for any planting in any weather. Each property counts the cases that reached its assertion and fails on too few. */
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { forecastPlanting, summarise, weatherYears, weeklySupply } from "#shared/engines/harvest-forecast/index.ts";
import type { ForecastQuestion, Planting, PlantingForecast, WeatherYears } from "#shared/engines/harvest-forecast/index.ts";
import { diesUnripe } from "#shared/engines/harvest-forecast/season-limits.ts";
import { coldNeedOf } from "#shared/engines/harvest-forecast/winter.ts";
import { weekOf, weeksFrom, weekStart } from "#shared/kernel/iso-week.ts";
import { dateOf } from "#shared/kernel/local-date.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { day, plantingOf, questionOf } from "./plantings.ts";
import { allCrops, normalsAt } from "./records.ts";

const NEW_YEAR = day("2027-01-01");
const sown = allCrops().filter((crop) => !crop.perennial);
const RUNS = 40;

/** Ten generated years of one of two towns, warmer by `plusC`. */
function weatherOf(seed: number, plusC = 0, asOf = NEW_YEAR - 1): WeatherYears {
  const normals = normalsAt(seed % 2 === 0 ? "de_bilt_1981-2010" : "milwaukee_1991-2020");
  const { value } = weatherYears({ record: null, normals, asOf, from: NEW_YEAR - 30, until: NEW_YEAR + 500, seed });
  const shift = (series: Float64Array): Float64Array => series.map((t) => t + plusC);
  return { ...value, years: value.years.slice(0, 10).map((year) => ({ ...year, tmaxC: shift(year.tmaxC), tminC: shift(year.tminC) })) };
}

const crops = fc.constantFrom(...sown);
const starts = fc.integer({ min: 60, max: 210 }).map((n) => NEW_YEAR + n);
const seeds = fc.integer({ min: 0, max: 1_000 });
const covers = fc.constantFrom("open", "open", "fleece", "polytunnel") as fc.Arbitrary<Planting["cover"]>;

function planted(crop: (typeof sown)[number], start: number, change: Partial<Planting> = {}): Planting {
  const out = crop.usualMethod === "transplant" || crop.usualMethod === "slips";
  return plantingOf(crop.slug, { ...(out ? { plantedOutOn: start } : { sownOn: start }), rowM: null, plants: 6, ...change });
}

const forecastOf = (planting: Planting, weather: WeatherYears, change: Partial<ForecastQuestion> = {}): PlantingForecast =>
  forecastPlanting(questionOf(planting, weather, { latitudeDeg: 50, ...change })).value;

/** Middle of all scenarios, those without a pick standing last. */
function middle(days: Int32Array): number {
  const sorted = Array.from(days, (d) => (d < 0 ? Infinity : d)).sort((p, q) => (p === q ? 0 : p - q));
  return sorted[Math.floor(sorted.length / 2)] as number;
}

const counts = new Map<string, number>();
const reached = (property: string): void => void counts.set(property, (counts.get(property) ?? 0) + 1);

function gridOf(): { weeks: string[]; firstMonday: number } {
  const first = weekOf(dateOf(NEW_YEAR - 30));
  return { weeks: weeksFrom(first, 120), firstMonday: day(weekStart(first)) };
}

describe("for any planting and weather", () => {
  it("twice the plants bring twice the amount on the same days", () => {
    fc.assert(
      fc.property(crops, starts, seeds, covers, (crop, start, seed, cover) => {
        const weather = weatherOf(seed);
        const one = forecastOf(planted(crop, start, { cover }), weather);
        const two = forecastOf(planted(crop, start, { cover, plants: 12 }), weather);
        expect(two.firstPickDay).toEqual(one.firstPickDay);
        expect(two.lastPickDay).toEqual(one.lastPickDay);
        two.totalGrams.forEach((grams, s) => expect(grams).toBeCloseTo(2 * (one.totalGrams[s] as number), 6));
        if (one.totalGrams.some((grams) => grams > 0)) reached("twice");
      }),
      { numRuns: RUNS },
    );
  });

  it("a later sowing never has an earlier middle first pick", () => {
    fc.assert(
      fc.property(crops, starts, fc.integer({ min: 1, max: 60 }), seeds, (crop, start, later, seed) => {
        // a late frost can take the earlier of two tender sowings only; and the two must count towards the same season
        if (diesUnripe(crop) || start + later >= NEW_YEAR + 240) return;
        const weather = weatherOf(seed);
        const first = middle(forecastOf(planted(crop, start), weather).firstPickDay);
        const second = middle(forecastOf(planted(crop, start + later), weather).firstPickDay);
        expect(second).toBeGreaterThanOrEqual(first);
        if (first < Infinity) reached("later");
      }),
      { numRuns: 2 * RUNS },
    );
  });

  it("warmer days never bring a later middle first pick", () => {
    fc.assert(
      fc.property(crops, starts, seeds, fc.double({ min: 0.1, max: 4, noNaN: true }), (crop, start, seed, plusC) => {
        // what needs the cold of a winter may have less of it in a warmer one
        if (coldNeedOf(crop)) return;
        // a sea climate grown colder or warmer stays one, so early varieties are taken in both or neither
        const cool = forecastOf(planted(crop, start), weatherOf(seed));
        const warm = forecastOf(planted(crop, start), weatherOf(seed, plusC));
        expect(middle(warm.firstPickDay)).toBeLessThanOrEqual(middle(cool.firstPickDay));
        if (middle(cool.firstPickDay) < Infinity) reached("warmer");
      }),
      { numRuns: RUNS },
    );
  });

  it("the weeks of a scenario sum to its season, and no week is negative", () => {
    const grid = gridOf();
    fc.assert(
      fc.property(crops, starts, seeds, covers, fc.boolean(), (crop, start, seed, cover, picked) => {
        const asOf = picked ? start + 100 : NEW_YEAR - 1;
        const picks = picked ? [start + 80, start + 90, start + 97].map((d, i) => ({ day: d, grams: 150 * (i + 1) })) : [];
        const forecast = forecastOf(planted(crop, start, { cover, picks }), weatherOf(seed, 0, asOf), { asOf });
        const supply = weeklySupply(forecast, grid);
        supply.scenarios.forEach((weeks, s) => {
          const total = forecast.totalGrams[s] as number;
          expect(Math.abs(weeks.reduce((a, b) => a + b, 0) - total)).toBeLessThan(1e-6 * Math.max(1, total));
          expect(Math.min(...weeks)).toBeGreaterThanOrEqual(-1e-9);
        });
        if (forecast.totalGrams.some((grams) => grams > 0)) reached("weeks");
      }),
      { numRuns: RUNS },
    );
  });

  it("quantiles are in order and chances lie between 0 and 1", () => {
    fc.assert(
      fc.property(crops, starts, seeds, covers, (crop, start, seed, cover) => {
        const found = summarise(forecastOf(planted(crop, start, { cover }), weatherOf(seed)));
        for (const band of [found.firstPick, found.lastPick, found.totalGrams, ...found.weeks.map((week) => week.grams)])
          if (band) expect(band.low <= band.likely && band.likely <= band.high).toBe(true);
        for (const chance of [found.chanceOfPick, ...found.weeks.map((week) => week.chanceInHarvest)]) expect(chance >= 0 && chance <= 1).toBe(true);
        if (found.firstPick && found.lastPick) {
          expect(found.firstPick.likely).toBeGreaterThanOrEqual(start);
          expect(found.lastPick.likely).toBeGreaterThanOrEqual(found.firstPick.likely);
          expect(Math.abs(found.dots.length - 20 * found.chanceOfPick)).toBeLessThanOrEqual(0.5 + 1e-9);
          reached("order");
        }
      }),
      { numRuns: RUNS },
    );
  });

  it("what is dated after the day asked about changes nothing: weather, sightings, picks", () => {
    fc.assert(
      fc.property(crops, starts, seeds, fc.integer({ min: 0, max: 120 }), (crop, start, seed, after) => {
        const asOf = start + after;
        const random = seededRandom(seed);
        const firstDay = day("2010-01-01");
        const tmaxC = Float64Array.from({ length: NEW_YEAR + 400 - firstDay }, (_, d) => 14 + 9 * Math.sin((d / 365.25) * 2 * Math.PI - 1.9) + 3 * random.normal());
        const record = { firstDay, tmaxC, tminC: tmaxC.map((t) => t - 8) };
        const poison = (series: Float64Array): Float64Array => series.map((t, d) => (firstDay + d > asOf ? 35 - t : t));
        const poisoned = { ...record, tmaxC: poison(record.tmaxC), tminC: poison(record.tminC) };
        const ask = { normals: null, asOf, from: NEW_YEAR - 30, until: NEW_YEAR + 500, seed };
        const honest = planted(crop, start);
        const later = { ...honest, sightings: [{ stage: "flowering" as const, day: asOf + 1 }], picks: [{ day: asOf + 3, grams: 900 }] };
        const one = forecastPlanting(questionOf(honest, weatherYears({ record, ...ask }).value, { asOf }));
        const two = forecastPlanting(questionOf(later, weatherYears({ record: poisoned, ...ask }).value, { asOf }));
        expect(JSON.stringify(two)).toBe(JSON.stringify(one));
        if (one.value.firstPickDay.some((first) => first > asOf)) reached("poison");
      }),
      { numRuns: RUNS },
    );
  });

  it("the same question has the same answer, byte for byte, and another id another deal", () => {
    fc.assert(
      fc.property(crops, starts, seeds, covers, (crop, start, seed, cover) => {
        const ask = (id: string): string => JSON.stringify(forecastPlanting(questionOf(planted(crop, start, { cover, id }), weatherOf(seed))));
        expect(ask("one")).toBe(ask("one"));
        if (ask("one") !== ask("two").replaceAll("two", "one")) reached("bytes");
      }),
      { numRuns: RUNS },
    );
  });

  it("one pick entered as two of the same day is the same", () => {
    fc.assert(
      fc.property(crops, starts, seeds, fc.integer({ min: 2, max: 4_000 }), (crop, start, seed, grams) => {
        const asOf = start + 110;
        const weather = weatherOf(seed, 0, asOf);
        const with_ = (...parts: number[]): PlantingForecast =>
          forecastOf(planted(crop, start, { picks: parts.map((part) => ({ day: start + 95, grams: part })) }), weather, { asOf });
        const [one, two] = [with_(grams), with_(1, grams - 1)];
        expect(two.firstPickDay).toEqual(one.firstPickDay);
        two.totalGrams.forEach((total, s) => expect(total).toBeCloseTo(one.totalGrams[s] as number, 6));
        if (one.firstPickDay[0] === start + 95) reached("split");
      }),
      { numRuns: RUNS },
    );
  });

  afterAll(() => {
    for (const [property, least] of Object.entries({ twice: 25, later: 20, warmer: 20, weeks: 25, order: 25, poison: 15, bytes: 25, split: 25 }))
      expect(counts.get(property) ?? 0, `cases that reached "${property}"`).toBeGreaterThanOrEqual(least);
  });
});
