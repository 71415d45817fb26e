/**
 * The warmth a planting has had, against what it has usually had by the same day. Counted as its first pick is: from its start, or from coming up, above
 * the crop's base, under its cover. "Usual" are the same weather years without what was observed since. °C d, days as day numbers.
 */
import { bandOf } from "../../kernel/band.ts";
import type { Band } from "../../kernel/band.ts";
import type { DayNumber } from "../../kernel/local-date.ts";
import { clockOf } from "./clock.ts";
import type { Clock } from "./clock.ts";
import { emergenceDays, warmthFor } from "./first-picks.ts";
import { knownFacts } from "./known-facts.ts";
import { byPacket } from "./packet-days.ts";
import { requirementOf } from "./requirement.ts";
import { covered } from "./thermal-time.ts";
import type { ForecastQuestion, WeatherYears } from "./types.ts";

export interface WarmthSoFar {
  /** First day that counts, and what happened on it. */
  readonly since: DayNumber;
  readonly from: Clock["restsOn"] | "coming-up";
  readonly baseC: number;
  /** By the morning of the day asked about. */
  readonly gainedCd: number;
  readonly usualCd: Band;
  /** What the first pick likely needs, counted the same way. */
  readonly needsCd: number;
  /** Days by which the season is ahead of the usual one, whole; below zero behind. */
  readonly daysAhead: number;
  /** A point a week from the first day on, the last where the usual season has what is needed. */
  readonly points: readonly WarmthPoint[];
}

export interface WarmthPoint {
  readonly day: DayNumber;
  /** Null for days to come. */
  readonly gainedCd: number | null;
  readonly usualCd: Band;
}

const MOST_POINTS = 60;

/** `usualWeather` gives the weather years of the same stretch with `usual: true`. Null before it counts, once it has been picked, and without weather. */
export function warmthSoFar(asked: ForecastQuestion, usualWeather: () => WeatherYears): WarmthSoFar | null {
  const q = byPacket(asked);
  const facts = knownFacts(q);
  const air = covered(q.weather, q.planting.cover);
  const clock = clockOf(q, facts, air, true);
  const none = q.weather.restsOn === "nothing" || !clock || facts.firstPick !== null || facts.finishedOn !== null;
  if (none || clock.startDay < q.weather.firstDay || clock.startDay >= q.asOf) return null;
  const had = gainsOf(q, q.weather, clock);
  const since = had.upFrom[0] as number;
  if (since < 0 || q.weather.firstDay + since >= q.asOf) return null;
  const usual = usualWeather();
  const normally = gainsOf(q, usual, clock);
  const gainedCd = bandOf(had.by(q.asOf)).likely;
  const needsCd = requirementOf(q, clock).likelyCd;
  const first = q.weather.firstDay + since;
  return {
    since: first,
    from: clock.emerges ? "coming-up" : clock.restsOn,
    baseC: q.planting.crop.baseC,
    gainedCd,
    usualCd: bandOf(normally.by(q.asOf)),
    needsCd,
    daysAhead: daysAhead((day) => bandOf(normally.by(day)).likely, gainedCd, q.asOf, first, usual.firstDay + usual.days - 1),
    points: pointsOf(first, q.asOf, needsCd, (day) => bandOf(had.by(day)).likely, (day) => bandOf(normally.by(day))),
  };
}

interface Gains {
  /** By year, as an index into the weather; −1 where it does not come up. */
  readonly upFrom: Int32Array;
  /** Warmth of every year by the morning of a day; nothing before it is up. */
  readonly by: (day: DayNumber) => Float64Array;
}

function gainsOf(q: ForecastQuestion, weather: WeatherYears, clock: Clock): Gains {
  const asked = { ...q, weather };
  const air = covered(weather, q.planting.cover);
  const { values, stride } = warmthFor(asked, air, clock);
  const upFrom = emergenceDays(asked, air, clock);
  const by = (day: DayNumber): Float64Array => {
    const at = Math.min(stride - 1, day - weather.firstDay);
    return Float64Array.from(upFrom, (from, y) => (from < 0 || at <= from ? 0 : (values[y * stride + at] as number) - (values[y * stride + from] as number)));
  };
  return { upFrom, by };
}

/** How much later the usual season comes to the same warmth; in a stretch that brings none, the day itself will do. */
function daysAhead(usualBy: (day: DayNumber) => number, gainedCd: number, asOf: DayNumber, first: DayNumber, last: DayNumber): number {
  if (usualBy(asOf) === gainedCd) return 0;
  const step = usualBy(asOf) < gainedCd ? 1 : -1;
  let day = asOf;
  while (day > first && day < last && (step > 0 ? usualBy(day) < gainedCd : usualBy(day) > gainedCd)) day += step;
  const [here, before] = [usualBy(day), usualBy(day - step)];
  const part = here === before ? 0 : Math.min(1, Math.max(0, (here - gainedCd) / (here - before)));
  return Math.round(day - step * part - asOf);
}

function pointsOf(first: DayNumber, asOf: DayNumber, needsCd: number, gainedBy: (day: DayNumber) => number, usualBy: (day: DayNumber) => Band): WarmthPoint[] {
  const points: WarmthPoint[] = [];
  const add = (day: DayNumber): void => void points.push({ day, gainedCd: day <= asOf ? gainedBy(day) : null, usualCd: usualBy(day) });
  for (let day = first; points.length < MOST_POINTS; day += 7) {
    add(day);
    // the day itself stands among its weeks
    if (day < asOf && day + 7 > asOf) add(asOf);
    if (day >= asOf && (points[points.length - 1] as WarmthPoint).usualCd.likely >= needsCd) break;
  }
  return points;
}
