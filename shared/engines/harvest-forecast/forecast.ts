/** From one planting and the weather of the scenario years to first pick, last pick and grams, scenario by scenario. */
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import type { Outcome } from "../../kernel/outcome.ts";
import { seasonYield, withOwnYield } from "./amounts.ts";
import { bearingOf, setInSeason } from "./bearing.ts";
import type { Bearing } from "./bearing.ts";
import { clockOf } from "./clock.ts";
import type { Clock } from "./clock.ts";
import { explanation } from "./explanation.ts";
import { firstPicks, UNNOTICED_DAYS } from "./first-picks.ts";
import type { FirstPicks } from "./first-picks.ts";
import { dayBandOf } from "./frost-dates.ts";
import { harvestCurve, seasonGrams } from "./grams.ts";
import { knownFacts } from "./known-facts.ts";
import type { KnownFacts } from "./known-facts.ts";
import { learnedYield } from "./learned.ts";
import { liftingDays } from "./lifting.ts";
import { basisOf, coldSoilNotes, restNotes, seasonNotes, WORTH_SAYING } from "./notes.ts";
import { byPacket } from "./packet-days.ts";
import { requirementOf } from "./requirement.ts";
import type { Requirement } from "./requirement.ts";
import { dealFor, quantilesAYear } from "./scenario-deal.ts";
import type { Deal } from "./scenario-deal.ts";
import { seasonsOf } from "./seasons.ts";
import { covered } from "./thermal-time.ts";
import type { CoveredWeather } from "./thermal-time.ts";
import type { ForecastQuestion, PlantingForecast } from "./types.ts";
import { shapeOf } from "./yield-curve.ts";

/** What every step of one planting's forecast works from. */
interface Reckoning {
  readonly q: ForecastQuestion;
  readonly facts: KnownFacts;
  readonly air: CoveredWeather;
  readonly deal: Deal;
  readonly perYear: number;
}

/** Degrades with a note: no weather, no start day or an unripe season give scenarios without a pick, never an exception. */
export function forecastPlanting(asked: ForecastQuestion): Outcome<PlantingForecast> {
  const q = byPacket(asked);
  const { planting, weather, asOf } = q;
  const { crop } = planting;
  const perYear = quantilesAYear(weather.years.length);
  const deal = dealFor(planting.id, weather.years.length, perYear);
  const reckoning: Reckoning = { q, facts: knownFacts(q), air: covered(weather, planting.cover), deal, perYear };
  const { facts, air } = reckoning;
  const clock = clockOf(q, facts, air, true);
  const bearing = bearingOf(crop, setInSeason(planting, q.southern), facts.season?.name ?? 0);
  const { ready, need, notes, over } = readyDays(reckoning, clock, bearing);
  const beganOn = clockOf(q, facts, air, false)?.startDay ?? facts.firstPick ?? asOf;
  const shape = shapeOf(crop);
  const waits = waitsForTheGrower(crop);
  const seasons = seasonsOf(q, facts, air, { beganOn, pickWeeks: bearing.pickWeeks, ready, deal, perYear, shape });
  const amount = learnedYield(q.ownSowings ?? []);
  const yields = withOwnYield(seasonYield(planting, bearing.share), amount);
  const curve = harvestCurve(seasons, yields, facts, deal, shape, waits, asOf);
  const lifting = liftingDays(q, air, seasons, perYear);
  const ripens = clock && bearing.share > 0 && !over ? seasonNotes(q, facts, seasons) : [];
  return {
    value: {
      plantingId: planting.id,
      crop: crop.slug,
      asOf,
      perYear,
      firstPickDay: seasons.first,
      lastPickDay: seasons.until.map((day) => (day < 0 ? -1 : day - 1)),
      totalGrams: seasonGrams(curve),
      curve,
      waits,
      own: { requirement: need?.own ?? null, amount },
      ...(lifting ? { lifting } : {}),
    },
    basis: basisOf(q, facts),
    notes: [explanation(q, facts, clock, need), ...restNotes(q, facts, clock, seasons, lifting), ...notes, ...ripens, ...yields.notes],
  };
}

/** First picks before frost, what should be said about the start and the sightings, and whether the season went by without a pick. */
function readyDays(reckoning: Reckoning, clock: Clock | null, bearing: Bearing): { ready: FirstPicks; need: Requirement | null; notes: string[]; over: boolean } {
  const { q, facts, air, deal, perYear } = reckoning;
  const none = { upFrom: new Int32Array(air.years.length).fill(-1), days: new Int32Array(air.years.length * perYear).fill(-1), ruledOut: 0, ripenessBy: () => 0 };
  if (!clock) return { ready: none, need: null, notes: [noStart(q)], over: false };
  const notes = [...clock.notes];
  if (bearing.share === 0) return { ready: none, need: null, notes: [...notes, "Too young to be picked this season."], over: false };
  if (clock.startDay < q.weather.firstDay) notes.push("The weather given begins after this planting did; its first days are not counted.");
  const need = requirementOf(q, clock);
  notes.push(...need.notes, ...coldSoilNotes(q, air, clock));
  const notBefore = notYet(q, facts);
  if (notBefore !== null && wentBy(q, firstPicks(q, air, clock, need, perYear, deal.step, null), bearing)) {
    return { ready: none, need, notes: [...notes, "The season is over; nothing was written down."], over: true };
  }
  const ready = firstPicks(q, air, clock, need, perYear, deal.step, notBefore);
  if (ready.ruledOut >= WORTH_SAYING) notes.push("Nothing has been picked yet, so earlier dates are ruled out.");
  if (clock.restsOn !== "book") notes.push(...disagreement(reckoning, ready));
  return { ready, need, notes, over: false };
}

/** The day before which nobody can have picked: only where picks are written down, and the crop does not wait. */
function notYet(q: ForecastQuestion, facts: KnownFacts): DayNumber | null {
  const says = q.logsPicks === true && facts.firstPick === null && facts.finishedOn === null && !waitsForTheGrower(q.planting.crop);
  return says ? q.asOf - UNNOTICED_DAYS : null;
}

/** The longest usual picking, after the likely first pick reckoned without the household's silence, has passed by the day asked about. */
function wentBy(q: ForecastQuestion, reckoned: FirstPicks, { pickWeeks }: Bearing): boolean {
  const first = dayBandOf(reckoned.days.filter((day) => day >= 0));
  return first !== null && q.weather.firstDay + first.likely + 7 * pickWeeks.high <= q.asOf;
}

/** A sighting that moves the likely day out of the book's span is believed, and said. */
function disagreement({ q, facts, air, deal, perYear }: Reckoning, ready: FirstPicks): string[] {
  const book = clockOf(q, facts, air, false);
  if (!book) return [];
  const byBook = firstPicks(q, air, book, requirementOf(q, book), perYear, deal.step, null);
  const expected = dayBandOf(byBook.days.filter((day) => day >= 0));
  const now = dayBandOf(ready.days.filter((day) => day >= 0));
  if (!expected || !now || (now.likely >= expected.low && now.likely <= expected.high)) return [];
  return [`What you saw puts it ${now.likely < expected.low ? "earlier" : "later"} than the book's span; your sighting is believed.`];
}

function noStart({ planting }: ForecastQuestion): string {
  return planting.crop.perennial ? "The season asked for is not known." : "This crop is sown every year: give the day it was sown or planted out.";
}
