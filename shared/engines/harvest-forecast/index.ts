/**
 * The harvest forecast: when will this planting be picked, how much comes in which week, and how sure is that?
 * Temperatures °C, days as day numbers, amounts grams as picked. See README.md beside this file.
 */
export { simpleAverage, simpleAverageClipped, singleSine, singleTriangle } from "./degree-days.ts";
export type { CutOff } from "./degree-days.ts";
export { dayLengthHours } from "./day-length.ts";
export { weatherYears } from "./weather-years.ts";
export { frostDates } from "./frost-dates.ts";
export { coverShift } from "./cover.ts";
export { forecastPlanting } from "./forecast.ts";
export { weeklySupply } from "./weekly-supply.ts";
export { summarise } from "./summary.ts";
export type { ForecastSummary } from "./summary.ts";
export { warmthSoFar } from "./warmth-so-far.ts";
export type { WarmthPoint, WarmthSoFar } from "./warmth-so-far.ts";
export type { Learned } from "./learned.ts";
export { finishedSowingOf } from "./finished-sowing.ts";
export { picksBySowingDay, sowingDayFor, sowingServes } from "./sowing-days.ts";
export type { SowingDays } from "./sowing-days.ts";
export { raisingDays } from "./planting-out.ts";
export { daysInName } from "./packet-days.ts";
export type * from "./types.ts";
