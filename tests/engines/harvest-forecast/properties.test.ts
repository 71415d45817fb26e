/** What must hold for any planting in any weather. Each property counts the cases that reached its assertion and fails on too few. */
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { forecastPlanting, summarise, weatherYears, weeklySupply } from "#shared/engines/harvest-forecast/index.ts";
import type { ForecastQuestion, Planting, PlantingForecast, WeatherYears } from "#shared/engines/harvest-forecast/index.ts";
import { bearsUnderground, diesUnripe } from "#shared/engines/harvest-forecast/season-limits.ts";
import { coldNeedOf, endsBy, restsInWinter } from "#shared/engines/harvest-forecast/winter.ts";
import { weekOf, weeksFrom, weekStart } from "#shared/kernel/iso-week.ts";
import { dateOf } from "#shared/kernel/local-date.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { day, plantingOf, questionOf } from "./plantings.ts";
import { allCrops, normalsAt } from "./records.ts";

const NEW_YEAR = day("2027-01-01");
const sown = allCrops().filter((crop) => !crop.perennial);
/** Cases that must reach the assertion of each relation. */
const LEAST = 500;
const RUNS = 560;

const EARLY_BY_THE_SEA = new Set(["sweetcorn", "pumpkin", "butternut-squash", "leek"]);
const POOL = 8;
const WEATHERS = new Map<string, WeatherYears>();

/** Ten generated years of one of two towns, warmer by `plusC`; one of a few, so that their sums are reckoned once. */
function weatherOf(seed: number, plusC = 0): WeatherYears {
  const key = `${seed % POOL} ${plusC}`;
  const known = WEATHERS.get(key);
  if (known) return known;
  const normals = normalsAt(seed % 2 === 0 ? "de_bilt_1981-2010" : "milwaukee_1991-2020");
  const { value } = weatherYears({ record: null, normals, asOf: NEW_YEAR - 1, from: NEW_YEAR - 30, until: NEW_YEAR + 500, seed: seed % POOL });
  const shift = (series: Float64Array): Float64Array => series.map((t) => t + plusC);
  const made = { ...value, years: value.years.slice(0, 10).map((year) => ({ ...year, tmaxC: shift(year.tmaxC), tminC: shift(year.tminC) })) };
  WEATHERS.set(key, made);
  return made;
}

/** Largest difference between two runs of numbers, of the second's size at least one. */
const apart = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Array.from(a).reduce((worst, value, i) => Math.max(worst, Math.abs(value - (b[i] as number)) / Math.max(1, Math.abs(b[i] as number))), 0);

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
        expect(apart(two.totalGrams, one.totalGrams.map((grams) => 2 * grams))).toBeLessThan(1e-9);
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
      { numRuns: 3 * RUNS },
    );
  });

  it("warmer days never bring a later middle first pick", () => {
    fc.assert(
      fc.property(crops, starts, seeds, fc.constantFrom(0.3, 1, 2, 4), (crop, start, seed, plusC) => {
        // what needs the cold of a winter may have less of it in a warmer one
        if (coldNeedOf(crop)) return;
        // and what comes up earlier for it can be taken by a spring frost
        if (diesUnripe(crop) && start < NEW_YEAR + 140) return;
        // and a frost that kills the tops of potatoes brings their lifting forward
        if (bearsUnderground(crop)) return;
        // a sea climate grown colder or warmer stays one, so early varieties are taken in both or neither
        const cool = forecastOf(planted(crop, start), weatherOf(seed));
        const warm = forecastOf(planted(crop, start), weatherOf(seed, plusC));
        expect(middle(warm.firstPickDay)).toBeLessThanOrEqual(middle(cool.firstPickDay));
        if (middle(cool.firstPickDay) < Infinity) reached("warmer");
      }),
      { numRuns: 3 * RUNS },
    );
  });

  it("the weeks of a scenario sum to its season, and no week is negative", () => {
    const grid = gridOf();
    fc.assert(
      fc.property(crops, starts, seeds, covers, fc.boolean(), (crop, start, seed, cover, picked) => {
        const asOf = picked ? start + 100 : NEW_YEAR - 1;
        const picks = picked ? [start + 80, start + 90, start + 97].map((d, i) => ({ day: d, grams: 150 * (i + 1) })) : [];
        const forecast = forecastOf(planted(crop, start, { cover, picks }), weatherOf(seed), { asOf });
        const supply = weeklySupply(forecast, grid);
        expect(apart(supply.scenarios.map((weeks) => weeks.reduce((a, b) => a + b, 0)), forecast.totalGrams)).toBeLessThan(1e-6);
        expect(supply.scenarios.reduce((least, weeks) => weeks.reduce((a, b) => Math.min(a, b), least), 0)).toBeGreaterThanOrEqual(-1e-9);
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
        const firstDay = day("2015-01-01");
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
      { numRuns: 1.2 * RUNS },
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
        const weather = weatherOf(seed);
        const with_ = (...parts: number[]): PlantingForecast =>
          forecastOf(planted(crop, start, { picks: parts.map((part) => ({ day: start + 95, grams: part })) }), weather, { asOf });
        const [one, two] = [with_(grams), with_(1, grams - 1)];
        expect(two.firstPickDay).toEqual(one.firstPickDay);
        expect(apart(two.totalGrams, one.totalGrams)).toBeLessThan(1e-9);
        if (one.firstPickDay[0] === start + 95) reached("split");
      }),
      { numRuns: RUNS },
    );
  });

  it("all dates and all weather moved by so many days move the answer by as many", () => {
    fc.assert(
      fc.property(crops, starts, seeds, covers, fc.integer({ min: 1, max: 400 }), (crop, start, seed, cover, later) => {
        // what is tied to the calendar does not move: the winter's rules, the end of April for what was sown in the year before, and what July and January say of the climate
        if (coldNeedOf(crop) || restsInWinter(crop, start + later, false) || EARLY_BY_THE_SEA.has(crop.slug)) return;
        const weather = weatherOf(seed);
        const moved = { ...weather, firstDay: weather.firstDay + later };
        const ask = (on: number, years: WeatherYears): PlantingForecast => forecastPlanting(questionOf(planted(crop, on, { cover }), years, { asOf: on - 1 })).value;
        const [one, two] = [ask(start, weather), ask(start + later, moved)];
        const closes = Math.min(endsBy(crop, start, false), endsBy(crop, start + later, false) - later);
        const tied = crop.frostClass === "foliage tender" || one.lastPickDay.some((last) => last + 1 >= closes) || two.lastPickDay.some((last) => last - later + 1 >= closes) || one.firstPickDay.some((first) => first < 0);
        if (tied) return;
        expect(two.firstPickDay.map((first) => first - later)).toEqual(one.firstPickDay);
        expect(two.lastPickDay.map((last) => last - later)).toEqual(one.lastPickDay);
        expect(apart(two.totalGrams, one.totalGrams)).toBeLessThan(1e-9);
        reached("moved");
      }),
      { numRuns: 4 * RUNS },
    );
  });

  afterAll(() => {
    for (const property of ["twice", "later", "warmer", "weeks", "order", "poison", "bytes", "split", "moved"])
      expect(counts.get(property) ?? 0, `cases that reached "${property}"`).toBeGreaterThanOrEqual(LEAST);
  });
});
