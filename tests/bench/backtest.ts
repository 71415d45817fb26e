/**
 * Each year of a weather file forecast from the years before it, weather uncertainty only: the requirement is taken as exact, the truth is the day on
 * which that year's weather reaches it, the forecast is made on the start day. Beside it the plain calendar: start day + middle of the days to maturity.
 */
import { existsSync } from "node:fs";
import { basename } from "node:path";
import { parseArgs } from "node:util";
import type { Clock } from "#shared/engines/harvest-forecast/clock.ts";
import { clockOf } from "#shared/engines/harvest-forecast/clock.ts";
import { firstPicks } from "#shared/engines/harvest-forecast/first-picks.ts";
import { dayBandOf } from "#shared/engines/harvest-forecast/frost-dates.ts";
import type { DailyRecord, ForecastQuestion, WeatherYears } from "#shared/engines/harvest-forecast/index.ts";
import { weatherYears } from "#shared/engines/harvest-forecast/index.ts";
import { knownFacts } from "#shared/engines/harvest-forecast/known-facts.ts";
import { wholeYears } from "#shared/engines/harvest-forecast/past-years.ts";
import { covered } from "#shared/engines/harvest-forecast/thermal-time.ts";
import { dayNumber } from "#shared/kernel/local-date.ts";
import type { DayNumber } from "#shared/kernel/local-date.ts";
import { BACKTEST_CASES, plantingOn } from "#tests/engines/harvest-forecast/backtest-cases.ts";
import type { BacktestCase } from "#tests/engines/harvest-forecast/backtest-cases.ts";
import { dailyRecordOf, DE_BILT, DEMO_WEATHER, MILWAUKEE } from "#tests/engines/harvest-forecast/records.ts";

interface Scored {
  readonly year: number;
  readonly inside: boolean;
  readonly absDays: number;
  readonly calendarAbsDays: number;
}

/** Without --first-year: the first year that has so many whole years before it. */
const YEARS_BEFORE = 20;
/** From the start day on, a crop that has not ripened within so many days is no case. */
const WITHIN_DAYS = 300;

export async function run(args: string[]): Promise<Record<string, unknown>> {
  const { values } = parseArgs({ args, options: { weather: { type: "string" }, "first-year": { type: "string" } } });
  const files = values.weather ? [values.weather] : [DE_BILT, MILWAUKEE].filter(existsSync);
  if (files.length === 0 && existsSync(DEMO_WEATHER)) files.push(DEMO_WEATHER);
  if (files.length === 0) throw new Error("no weather file: give one with --weather F.csv (columns date, tmax_c, tmin_c)");
  const sets = files.map((file) => ({ name: basename(file, ".csv"), scored: backtest(dailyRecordOf(file), Number(values["first-year"] ?? NaN)) }));
  const bySet = Object.fromEntries(sets.map(({ name, scored }) => [name, figures(scored)]));
  for (const [name, set] of Object.entries(bySet)) process.stderr.write(`${name}: ${JSON.stringify(set)}\n`);
  return { ...figures(sets.flatMap((set) => set.scored)), bySet };
}

function backtest(record: DailyRecord, firstYear: number): Scored[] {
  const whole = wholeYears(record, record.firstDay + record.tmaxC.length - 1).map((year) => Number(year.label));
  const from = Number.isNaN(firstYear) ? (whole[YEARS_BEFORE] ?? Infinity) : firstYear;
  return whole.filter((year) => year >= from).flatMap((year) => BACKTEST_CASES.flatMap((test) => scoreOf(record, year, test)));
}

/** No entry where the crop does not ripen in that year, or where too few years lie before it. */
function scoreOf(record: DailyRecord, year: number, test: BacktestCase): Scored[] {
  const start = dayNumber(`${year}-${test.start}`);
  const weather = weatherYears({ record, normals: null, asOf: start, from: start - 30, until: start + WITHIN_DAYS, seed: 1 }).value;
  const truth = ripeDays(asItCame(record, weather), start, test)[0];
  const days = test.crop.daysToMaturity;
  if (weather.restsOn !== "record" || truth === undefined || !days) return [];
  const band = dayBandOf(ripeDays(weather, start, test));
  if (!band) return [];
  return [
    {
      year,
      inside: truth >= band.low && truth <= band.high,
      absDays: Math.abs(band.likely - truth),
      calendarAbsDays: Math.abs(start + (days.low + days.high) / 2 - truth),
    },
  ];
}

/** The day on which each year of the weather reaches the book's requirement. */
function ripeDays(weather: WeatherYears, start: DayNumber, test: BacktestCase): DayNumber[] {
  const q: ForecastQuestion = { planting: plantingOn(start, test), weather, asOf: weather.asOf, southern: false };
  const air = covered(weather, "open");
  const clock = clockOf(q, knownFacts(q), air, true) as Clock;
  const { days } = firstPicks(q, air, clock, { likelyCd: clock.likelyCd, sigmaLn: 0, own: null, notes: [] }, 1, new Int32Array(air.years.length), null);
  return [...days].filter((day) => day >= 0).map((day) => weather.firstDay + day);
}

/** The same days as the record has them: one year, no scenarios. */
function asItCame(record: DailyRecord, like: WeatherYears): WeatherYears {
  const from = like.firstDay - record.firstDay;
  const part = (series: Float64Array): Float64Array => Float64Array.from({ length: like.days }, (_, d) => series[from + d] ?? NaN);
  return { ...like, years: [{ label: "observed", tmaxC: part(record.tmaxC), tminC: part(record.tminC) }] };
}

/** Means, and their standard errors from the scatter of whole years: the cases of one year share its weather. */
function figures(scored: readonly Scored[]): Record<string, number> {
  const years = [...new Set(scored.map((s) => s.year))].map((year) => scored.filter((s) => s.year === year));
  const error = (of: (s: Scored) => number): number => {
    const means = years.map((cases) => mean(cases.map(of)));
    return Math.sqrt(mean(means.map((m) => (m - mean(means)) ** 2)) / Math.max(1, years.length - 1));
  };
  const round = (value: number, digits: number): number => Number(value.toFixed(digits));
  return {
    cases: scored.length,
    years: years.length,
    coverage80: round(mean(scored.map((s) => Number(s.inside))), 3),
    coverage80StandardError: round(error((s) => Number(s.inside)), 3),
    meanAbsDays: round(mean(scored.map((s) => s.absDays)), 2),
    meanAbsDaysStandardError: round(error((s) => s.absDays), 2),
    calendarMeanAbsDays: round(mean(scored.map((s) => s.calendarAbsDays)), 2),
    calendarMeanAbsDaysStandardError: round(error((s) => s.calendarAbsDays), 2),
  };
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
