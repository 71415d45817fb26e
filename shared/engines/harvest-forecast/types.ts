/** Input and output of the harvest forecast, as plain readonly data. Days are day numbers, temperatures °C, amounts grams. */
import type { CropFacts, Method, VarietyDays } from "../../kernel/crop-facts.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import type { IsoWeek } from "../../kernel/iso-week.ts";
import type { Cover, Stage } from "../../kernel/way.ts";
import type { Learned } from "./learned.ts";

/** Daily maxima and minima in a row; NaN where the record has a gap. */
export interface DailyRecord {
  readonly firstDay: DayNumber;
  readonly tmaxC: Float64Array;
  readonly tminC: Float64Array;
}

/** Twelve monthly means of daily maximum and minimum. */
export interface MonthlyNormal {
  readonly month: number;
  readonly tmaxC: number;
  readonly tminC: number;
}

export interface WeatherQuestion {
  readonly record: DailyRecord | null;
  readonly normals: readonly MonthlyNormal[] | null;
  /** The last day whose weather may be known; nothing later is read. */
  readonly asOf: DayNumber;
  /** First and last day wanted, both included. */
  readonly from: DayNumber;
  readonly until: DayNumber;
  readonly seed: number;
  /** At most so many past (or generated) years; left out = 30. */
  readonly maxYears?: number;
  /** Every day as in the past years, also those already observed: the usual, against which a season is held. */
  readonly usual?: boolean;
}

/** The same stretch of days once for each scenario year: observed up to `asOf`, then one past (or generated) year each. */
export interface WeatherYears {
  readonly firstDay: DayNumber;
  readonly days: number;
  readonly asOf: DayNumber;
  readonly years: readonly { readonly label: string; readonly tmaxC: Float64Array; readonly tminC: Float64Array }[];
  readonly restsOn: "record" | "normals" | "nothing";
  /** Days before `asOf` that the record has no reading of, earliest first; none where there is no record. */
  readonly unreadDays?: readonly DayNumber[];
}

/** Days at the 10th, 50th and 90th percentile. */
export interface DayBand {
  readonly low: DayNumber;
  readonly likely: DayNumber;
  readonly high: DayNumber;
}

export interface FrostDates {
  readonly lastSpring: DayBand | null;
  readonly firstAutumn: DayBand | null;
}

/** A sowing or an established planting, with what was seen and picked. */
export interface Planting {
  readonly id: string;
  readonly crop: CropFacts;
  readonly method: Method;
  readonly sownOn: DayNumber | null;
  readonly plantedOutOn: DayNumber | null;
  /** Exactly one of the three is not null. */
  readonly rowM: number | null;
  readonly plants: number | null;
  readonly areaM2: number | null;
  /** Year an established planting was set; null = full bearing. */
  readonly standsSince: number | null;
  /** Season of an established planting: the calendar year, or south of the equator the year it ends in. */
  readonly season: number | null;
  readonly cover: Cover;
  /** Days to maturity printed for its variety; left out or null = not known. */
  readonly varietyDays?: VarietyDays | null;
  readonly sightings: readonly { readonly stage: Stage; readonly day: DayNumber }[];
  readonly picks: readonly { readonly day: DayNumber; readonly grams: number }[];
}

export interface ForecastQuestion {
  readonly planting: Planting;
  readonly weather: WeatherYears;
  readonly asOf: DayNumber;
  /** South of the equator: calendar days of the tables move by six months. */
  readonly southern: boolean;
  /** North positive. Without it day length is left out of the reckoning, and a note says so where it would matter. */
  readonly latitudeDeg?: number | null;
  /** True where the household writes its picks down, so that no pick by `asOf` means "not yet"; left out = false. */
  readonly logsPicks?: boolean;
  /** The household's own finished sowings of this crop, as `finishedSowingOf` reads them. */
  readonly ownSowings?: readonly FinishedSowing[];
}

/** What one finished sowing of the household teaches. */
export interface FinishedSowing {
  /** ln(thermal time it took to the first pick / book requirement); null where the pick says nothing about ripeness. */
  readonly lnRequirementRatio: number | null;
  /** ln(grams of its whole season / book yield of its size); left out or null where the season is not over, or failed. */
  readonly lnYieldRatio?: number | null;
  /** Of the same variety as the planting in question. */
  readonly sameVariety: boolean;
}

/** Weekly grams are integrals of a shape over these spans; one entry for each scenario. */
export interface HarvestCurve {
  readonly shape: CurveShape;
  /** First day of the shape, and the days it takes from 0 to 1. */
  readonly startDay: Int32Array;
  readonly spanDays: Float64Array;
  /** First day that brings nothing more: end of the shape, frost, bolting or clearing. */
  readonly untilDay: Int32Array;
  /** Grams under the whole shape. */
  readonly wholeGrams: Float64Array;
  /** Days before this one are history: what was logged counts, not the shape. */
  readonly openFrom: DayNumber;
  /** What ripened from this day on and was not picked still hangs, and comes on `openFrom`; never after it. */
  readonly hangsFrom: DayNumber;
  readonly picks: readonly { readonly day: DayNumber; readonly grams: number }[];
}

export type CurveShape = "repeat" | "concentrated" | "cut-again" | "head+shoots" | "one-cut" | "even";

/**
 * Raw answer, one entry for each scenario. Scenario s = weather year ⌊s / perYear⌋ with one quantile of the requirement and one yield
 * factor, dealt by the planting's id: scenario s is the same weather year in every planting, so plantings add up scenario by scenario.
 */
export interface PlantingForecast {
  readonly plantingId: string;
  readonly crop: string;
  readonly asOf: DayNumber;
  readonly perYear: number;
  /** −1 where no pick comes. */
  readonly firstPickDay: Int32Array;
  readonly lastPickDay: Int32Array;
  /** Whole season, picked so far and still to come. */
  readonly totalGrams: Float64Array;
  /** How the grams lie over the days; `weeklySupply` integrates it. */
  readonly curve: HarvestCurve;
  /** Whether the grower chooses the day. */
  readonly waits: boolean;
  /** What the household's own sowings moved the warmth needed, and the amount, by; null where they did not. */
  readonly own: { readonly requirement: Learned | null; readonly amount: Learned | null };
  /** Of what waits: from `firstPickDay` it is ready; left out for what must be picked when it ripens. */
  readonly lifting?: LiftingDays;
}

/** One entry for each scenario, −1 where no pick comes. */
export interface LiftingDays {
  /** At its best from, and to, these days, both included. */
  readonly bestFrom: Int32Array;
  readonly bestUntil: Int32Array;
  /** Last day before frost, seeding or age spoils it. */
  readonly outBy: Int32Array;
}

/** Weeks in a row. */
export interface WeekGrid {
  readonly weeks: readonly IsoWeek[];
  readonly firstMonday: DayNumber;
}
