/** One planting's forecast as spans: dates over the scenarios that come to a pick, grams over all of them. */
import { bandOf, quantile } from "../../kernel/band.ts";
import type { Band } from "../../kernel/band.ts";
import type { IsoWeek } from "../../kernel/iso-week.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import { chanceInHarvest } from "../../kernel/supply.ts";
import { dayBandOf } from "./frost-dates.ts";
import type { DayBand, PlantingForecast } from "./types.ts";
import { harvestWeeks, weeklySupply } from "./weekly-supply.ts";

export interface ForecastSummary {
  readonly firstPick: DayBand | null;
  readonly lastPick: DayBand | null;
  readonly totalGrams: Band;
  /** First-pick days at twenty equal steps of chance, earliest first; fewer where some seasons bring no pick. */
  readonly dots: readonly DayNumber[];
  /** Share of scenarios that come to a pick, 0–1. */
  readonly chanceOfPick: number;
  /** Of what waits for the grower and comes to a pick in some season; else null. */
  readonly lifting: { readonly ready: DayBand; readonly bestFrom: DayBand; readonly bestUntil: DayBand; readonly outBy: DayBand } | null;
  readonly weeks: readonly { readonly week: IsoWeek; readonly grams: Band; readonly chanceInHarvest: number }[];
}

const DOTS = 20;

export function summarise(forecast: PlantingForecast): ForecastSummary {
  const first = forecast.firstPickDay.filter((day) => day >= 0).sort();
  const last = forecast.lastPickDay.filter((day) => day >= 0);
  const chanceOfPick = forecast.firstPickDay.length === 0 ? 0 : first.length / forecast.firstPickDay.length;
  const grid = harvestWeeks(forecast);
  return {
    firstPick: dayBandOf(first),
    lastPick: dayBandOf(last),
    totalGrams: forecast.totalGrams.length === 0 ? { low: 0, likely: 0, high: 0 } : bandOf(forecast.totalGrams),
    dots: dotsOf(first, chanceOfPick),
    chanceOfPick,
    lifting: liftingOf(forecast),
    weeks: grid ? weekBands(forecast, grid) : [],
  };
}

function liftingOf({ firstPickDay, lifting }: PlantingForecast): ForecastSummary["lifting"] {
  if (!lifting) return null;
  const [ready, bestFrom, bestUntil, outBy] = [firstPickDay, lifting.bestFrom, lifting.bestUntil, lifting.outBy].map((days) => dayBandOf(days.filter((day) => day >= 0)));
  return ready && bestFrom && bestUntil && outBy ? { ready, bestFrom, bestUntil, outBy } : null;
}

/** The quantile at each step of chance, of all scenarios; steps beyond those that come to a pick have no day. */
function dotsOf(first: Int32Array, chanceOfPick: number): DayNumber[] {
  const steps = Array.from({ length: DOTS }, (_, i) => (i + 0.5) / DOTS).filter((p) => p < chanceOfPick);
  return steps.map((p) => Math.round(quantile(first, p / chanceOfPick)));
}

function weekBands(forecast: PlantingForecast, grid: NonNullable<ReturnType<typeof harvestWeeks>>): ForecastSummary["weeks"] {
  const supply = weeklySupply(forecast, grid);
  const chance = chanceInHarvest(supply);
  return supply.weeks.map((week, w) => ({
    week,
    grams: bandOf(supply.scenarios.map((grams) => grams[w] as number)),
    chanceInHarvest: chance[w] as number,
  }));
}
