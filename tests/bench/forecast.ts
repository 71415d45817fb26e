/**
 * How many sowings a second the forecast carries through how many weather years, in one thread. One sowing through one weather year with all its
 * requirement quantiles is one sowing-year; the clock runs from the record in memory to weekly grams, degree-days and weather years included.
 */
import { existsSync } from "node:fs";
import { parseArgs } from "node:util";
import { forecastPlanting, weatherYears, weeklySupply } from "#shared/engines/harvest-forecast/index.ts";
import type { DailyRecord, Planting } from "#shared/engines/harvest-forecast/index.ts";
import { weeksFrom, weekOf, weekStart } from "#shared/kernel/iso-week.ts";
import { dateOf, dayNumber } from "#shared/kernel/local-date.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { allCrops, dailyRecordOf, DE_BILT, DEMO_WEATHER, MILWAUKEE } from "#tests/engines/harvest-forecast/records.ts";

interface Timing {
  readonly sowings: number;
  readonly scenarioYears: number;
  readonly ms: number;
  readonly sowingYearsPerSecond: number;
}

export async function run(args: string[]): Promise<Record<string, unknown>> {
  const { values } = parseArgs({
    args,
    options: {
      weather: { type: "string" },
      sowings: { type: "string", default: "2000" },
      years: { type: "string", default: "30" },
      seed: { type: "string", default: "1" },
    },
  });
  const file = values.weather ?? [DE_BILT, MILWAUKEE, DEMO_WEATHER].find(existsSync);
  if (!file) throw new Error("no weather file: give one with --weather F.csv (columns date, tmax_c, tmin_c)");
  const record = dailyRecordOf(file);
  const [sowings, years, seed] = [Number(values.sowings), Number(values.years), Number(values.seed)];
  // the first calls run before the machine has compiled anything, which is not what a service that is up answers with
  timed(record, 60, years, seed + 1);
  const timing = timed(record, sowings, years, seed);
  const calendar = timed(record, 60, 40, seed + 2);
  process.stderr.write(`${sowings} sowings × ${timing.scenarioYears} years in ${timing.ms} ms: ${timing.sowingYearsPerSecond} sowing-years a second\n`);
  process.stderr.write(`a calendar of ${calendar.sowings} sowings × ${calendar.scenarioYears} years: ${calendar.ms} ms\n`);
  return { ...timing, rssMb: Math.round(process.memoryUsage().rss / 1_048_576), calendarMs: calendar.ms, calendarYears: calendar.scenarioYears };
}

function timed(record: DailyRecord, sowings: number, years: number, seed: number): Timing {
  const asOf = dayNumber(`${Number(dateOf(record.firstDay + record.tmaxC.length).slice(0, 4))}-01-01`) - 1;
  const plantings = inventedPlantings(sowings, asOf + 1, seed);
  const firstWeek = weekOf(dateOf(asOf + 1));
  const grid = { weeks: weeksFrom(firstWeek, 60), firstMonday: dayNumber(weekStart(firstWeek)) };
  const began = performance.now();
  const weather = weatherYears({ record, normals: null, asOf, from: asOf - 30, until: asOf + 480, seed, maxYears: years }).value;
  for (const planting of plantings) {
    const { value } = forecastPlanting({ planting, weather, asOf, southern: false, latitudeDeg: 52.1 });
    weeklySupply(value, grid);
  }
  const ms = performance.now() - began;
  const scenarioYears = weather.years.length;
  return { sowings, scenarioYears, ms: Math.round(ms * 10) / 10, sowingYearsPerSecond: Math.round((sowings * scenarioYears * 1000) / ms) };
}

/** Any crop, sown or planted on any day from March to July, under any of three covers. */
function inventedPlantings(count: number, newYear: number, seed: number): Planting[] {
  const crops = allCrops();
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    const crop = crops[random.below(crops.length)] as (typeof crops)[number];
    const day = newYear + 60 + random.below(150);
    const method = crop.perennial ? "established" : crop.usualMethod === "transplant" || crop.usualMethod === "slips" ? "transplant" : "direct";
    return {
      id: `bench ${seed} ${i}`,
      crop,
      method,
      sownOn: method === "direct" ? day : null,
      plantedOutOn: method === "transplant" ? day : null,
      rowM: 3,
      plants: null,
      areaM2: null,
      standsSince: null,
      season: null,
      cover: (["open", "open", "fleece", "polytunnel"] as const)[random.below(4)] ?? "open",
      sightings: [],
      picks: [],
    };
  });
}
