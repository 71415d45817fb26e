/**
 * From which day warmth counts for a planting, how much of it the first pick needs, and how sure that is. Thermal time °C d.
 * Book figures: seed-data/crops.csv. Where the crop is grown by another way than its figure was counted for, common practice bridges the two.
 */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import { monthStart } from "./calendar-days.ts";
import { waitFrom } from "./flowering.ts";
import type { KnownFacts } from "./known-facts.ts";
import { likelyPlantingOut } from "./planting-out.ts";
import type { CoveredWeather } from "./thermal-time.ts";
import type { ForecastQuestion } from "./types.ts";

export interface Clock {
  readonly startDay: DayNumber;
  /** Warmth counts only from emergence, which is reckoned from the start day by the warmth of the soil. */
  readonly emerges: boolean;
  readonly likelyCd: number;
  readonly sigmaLn: number;
  /** Nobody has said when it was planted out. */
  readonly guessedDay?: boolean;
  readonly restsOn: "book" | "planted-out" | "emerged" | "flowering" | "fruit-set";
  readonly notes: readonly string[];
}

/** A crop counted from sowing but planted as a plant of three to four weeks is so many days ahead (common practice). */
export const PLANT_AHEAD_DAYS = 14;
/** A crop counted from transplanting but sown in place needs so many days more, after emergence (common practice). */
export const SOWN_BEHIND_DAYS = 25;
/** Days from planting to the first shoots above ground, by what is planted (common practice). */
const SHOOTS_AFTER_DAYS: Readonly<Record<string, number>> = { sets: 14, tuber: 25, cloves: 30 };

/** The clock by the book alone, or by the latest sighting that sets it. Null where nothing says when the planting began. */
export function clockOf(q: ForecastQuestion, facts: KnownFacts, weather: CoveredWeather, bySighting: boolean): Clock | null {
  const book = bookClock(q, facts, weather, bySighting);
  if (!bySighting) return book;
  for (const stage of ["fruit-set", "flowering"] as const) {
    const day = facts.seen.get(stage);
    const wait = day === undefined ? null : waitFrom(stage, q.planting.crop);
    if (day !== undefined && wait) return { startDay: day, emerges: false, ...wait, restsOn: stage, notes: [] };
  }
  const emerged = facts.seen.get("emerged");
  if (book && emerged !== undefined && !facts.season) return emergedClock(q.planting, book, emerged) ?? book;
  return book;
}

/** What is left after coming up. Null where it says nothing about the bed: in a seed tray, or of plants already in leaf. */
function emergedClock({ crop, method }: ForecastQuestion["planting"], book: Clock, emerged: DayNumber): Clock | null {
  const seen = { ...book, startDay: emerged, emerges: false, restsOn: "emerged" as const };
  if (crop.daysToMaturity?.from === "planting") {
    const shoots = SHOOTS_AFTER_DAYS[crop.usualMethod];
    return shoots === undefined ? null : { ...seen, likelyCd: book.likelyCd - shoots * warmthADay(crop) };
  }
  return method === "direct" && (book.emerges || crop.daysToMaturity?.from === "transplanting") ? seen : null;
}

function bookClock(q: ForecastQuestion, facts: KnownFacts, weather: CoveredWeather, bySighting: boolean): Clock | null {
  const { planting } = q;
  const { crop } = planting;
  if (facts.season) return crop.perennial ? establishedClock(q, facts.season.name) : null;
  if (planting.method === "transplant") return transplantClock(q, facts, weather, bySighting);
  if (planting.sownOn === null) return null;
  return { startDay: planting.sownOn, sigmaLn: crop.sigmaLn, restsOn: "book", ...sownRequirement(crop) };
}

/** From 1 February (1 August in the south), or from planting where that was later in the same season. */
function establishedClock({ planting, southern }: ForecastQuestion, season: number): Clock {
  const { crop } = planting;
  const begins = monthStart(season, 2, southern);
  const set = planting.plantedOutOn ?? planting.sownOn ?? begins;
  return { startDay: Math.max(begins, set), emerges: false, likelyCd: crop.thermal.likely, sigmaLn: crop.sigmaLn, restsOn: "book", notes: [] };
}

function transplantClock(q: ForecastQuestion, facts: KnownFacts, weather: CoveredWeather, bySighting: boolean): Clock | null {
  const { crop, sownOn, plantedOutOn } = q.planting;
  const seen = bySighting ? facts.seen.get("planted-out") : undefined;
  const given = seen ?? plantedOutOn;
  if (given === null && sownOn === null) return null;
  const startDay = given ?? likelyPlantingOut(sownOn as DayNumber, crop, weather, q.weather.firstDay, q.southern);
  const notes = given === null ? ["The day of planting out is not known; a usual one is taken."] : [];
  const ahead = crop.daysToMaturity?.from === "sowing" ? PLANT_AHEAD_DAYS * warmthADay(crop) : 0;
  if (ahead > 0) notes.push("The book counts this crop from sowing; a plant of three to four weeks is taken as two weeks ahead.");
  const restsOn = seen === undefined ? "book" : "planted-out";
  return { startDay, emerges: false, likelyCd: crop.thermal.likely - ahead, sigmaLn: crop.sigmaLn, guessedDay: given === null, restsOn, notes };
}

function sownRequirement(crop: CropFacts): Pick<Clock, "emerges" | "likelyCd" | "notes"> {
  const emerges = crop.emergence !== null;
  const from = crop.daysToMaturity?.from;
  if (from === "transplanting") {
    const notes = ["The book counts this crop from planting out; sown in place it is taken as 25 days behind."];
    return { emerges, likelyCd: crop.thermal.likely + SOWN_BEHIND_DAYS * warmthADay(crop), notes };
  }
  // sets, tubers and cloves count from planting, shoots or not
  if (from === "planting" || !emerges || crop.thermalAfterEmergence === null) return { emerges: false, likelyCd: crop.thermal.likely, notes: [] };
  return { emerges, likelyCd: crop.thermalAfterEmergence, notes: [] };
}

/** °C d in a day of the season that the crop's days were quoted for. */
function warmthADay(crop: CropFacts): number {
  return crop.quotedMeanC === null ? 0 : crop.quotedMeanC - crop.baseC;
}
