/**
 * The weather of a stretch of days, once for each scenario year: what was observed up to `asOf`, then one past year of the record each
 * (at least ten whole years), or else thirty or more years generated from monthly means. Temperatures °C.
 */
import type { Outcome, SourceRef } from "../../kernel/outcome.ts";
import { seededRandom } from "../../kernel/seeded-random.ts";
import { calendarOf } from "./calendar-days.ts";
import { weatherMaker } from "./generated-weather.ts";
import { LONGEST_BRIDGE_DAYS, normalsOfRecord, sortedYears, unread } from "./past-years.ts";
import type { SlotYear } from "./past-years.ts";
import type { MonthlyNormal, WeatherQuestion, WeatherYears } from "./types.ts";

/** Fewer past years than this say too little about the spread (product rule). */
export const FEWEST_YEARS = 10;
/**
 * The last thirty whole years: the length of a climate normal (WMO), and recent enough that warming shifts it by a few tenths of a degree
 * at most; a longer window would be colder than what is to come.
 */
export const WINDOW_YEARS = 30;

type ScenarioYear = WeatherYears["years"][number];

export function weatherYears(q: WeatherQuestion): Outcome<WeatherYears> {
  const asked = q.maxYears ?? WINDOW_YEARS;
  const { whole, leftOut } = q.record ? sortedYears(q.record, q.asOf) : { whole: [], leftOut: [] };
  const observed = q.usual ? NOTHING_OBSERVED : observedDays(q);
  if (whole.length >= FEWEST_YEARS) {
    const past = whole.slice(-asked);
    const calendar = calendarOf(q.from, q.until - q.from + 1);
    const years = past.map((_, i) => stitched(q, calendar, observed, past, i));
    const text = `${years.length} seasons of daily weather, ${past[0]?.label}–${past[past.length - 1]?.label}`;
    const gaps = leftOut.filter((year) => year >= (past[0]?.label ?? ""));
    return answer(q, years, "record", [{ id: "household", text }], gapNotes(gaps, observed.bridged), observed.unread);
  }
  const fromRecord = q.normals ? null : q.record && normalsOfRecord(q.record, q.asOf);
  const normals = q.normals ?? fromRecord;
  if (normals) {
    const few = whole.length > 0 || fromRecord ? [`The record has ${whole.length} whole years; ${FEWEST_YEARS} are needed before it can stand for the years to come.`] : [];
    const basis: SourceRef[] = [
      { id: "household", text: fromRecord ? "Monthly means of the short record" : "Monthly means typed in" },
      { id: "R81", text: "Daily weather made from monthly means" },
      { id: "WW", text: "A slow part added, because made years are too alike" },
    ];
    return answer(q, generated(q, observed, normals, Math.max(WINDOW_YEARS, asked)), "normals", basis, few, observed.unread);
  }
  const blank = new Float64Array(q.until - q.from + 1).fill(NaN);
  const empty = { label: "no weather", tmaxC: overlay(blank, observed.tmaxC), tminC: overlay(blank, observed.tminC) };
  return answer(q, [empty], "nothing", [], ["There is no weather yet: twelve monthly means are enough to begin."]);
}

function answer(q: WeatherQuestion, years: ScenarioYear[], restsOn: WeatherYears["restsOn"], basis: SourceRef[], notes: string[], unreadDays: readonly number[] = []): Outcome<WeatherYears> {
  return { value: { firstDay: q.from, days: q.until - q.from + 1, asOf: q.asOf, years, restsOn, unreadDays }, basis, notes };
}

function gapNotes(leftOut: readonly string[], bridgedDays: number): string[] {
  const notes: string[] = [];
  if (leftOut.length > 0) notes.push(`The record of ${leftOut.join(", ")} has a gap of more than ${LONGEST_BRIDGE_DAYS} days, so ${leftOut.length === 1 ? "that year is" : "those years are"} left out.`);
  if (bridgedDays > 0) notes.push(`${bridgedDays === 1 ? "1 past day" : `${bridgedDays} past days`} without a reading ${bridgedDays === 1 ? "was" : "were"} bridged by a straight line.`);
  return notes;
}

interface Observed {
  readonly tmaxC: Float64Array;
  readonly tminC: Float64Array;
  /** Days before `asOf` without a reading, short gaps apart; the reading of the day itself comes only with its evening. */
  readonly unread: readonly number[];
  readonly bridged: number;
}

const NOTHING_OBSERVED: Observed = { tmaxC: new Float64Array(0), tminC: new Float64Array(0), unread: [], bridged: 0 };

/** Readings from `from` to `asOf` or `until`, short gaps bridged, NaN where there is none. */
function observedDays(q: WeatherQuestion): Observed {
  const days = Math.max(0, Math.min(q.asOf, q.until) - q.from + 1);
  const tmaxC = new Float64Array(days).fill(NaN);
  const tminC = new Float64Array(days).fill(NaN);
  if (!q.record) return { tmaxC, tminC, unread: [], bridged: 0 };
  const missing: number[] = [];
  let bridged = 0;
  for (let d = 0, gap = 0; d < days; d++) {
    const at = q.from + d - q.record.firstDay;
    const [max, min] = [q.record.tmaxC[at], q.record.tminC[at]];
    if (unread(max, min)) {
      gap++;
      missing.push(q.from + d);
      continue;
    }
    [tmaxC[d], tminC[d]] = [max as number, min as number];
    if (gap > 0 && gap <= LONGEST_BRIDGE_DAYS && d > gap) {
      for (const series of [tmaxC, tminC]) bridge(series, d - gap, d);
      missing.splice(-gap);
      bridged += gap;
    }
    gap = 0;
  }
  return { tmaxC, tminC, unread: missing.filter((day) => day < q.asOf), bridged };
}

/** A straight line over days `from` … `until` − 1, between readings on both sides. */
function bridge(series: Float64Array, from: number, until: number): void {
  const before = series[from - 1] as number;
  const step = ((series[until] as number) - before) / (until - from + 1);
  for (let d = from; d < until; d++) series[d] = before + step * (d - from + 1);
}

/**
 * Scenario `i`: the year of `asOf` takes past year `i`, the year after it the one that followed it (the last is followed by the first),
 * so that a winter stays in one piece.
 */
function stitched(q: WeatherQuestion, { year, slot }: ReturnType<typeof calendarOf>, observed: Observed, past: readonly SlotYear[], i: number): ScenarioYear {
  const [thisYear = 0] = calendarOf(q.asOf, 1).year;
  const tmaxC = new Float64Array(year.length);
  const tminC = new Float64Array(year.length);
  for (let d = 0; d < year.length; d++) {
    const n = past.length;
    const source = past[(((i + (year[d] as number) - thisYear) % n) + n) % n] as SlotYear;
    tmaxC[d] = source.tmaxC[slot[d] as number] as number;
    tminC[d] = source.tminC[slot[d] as number] as number;
  }
  return { label: past[i]?.label ?? "", tmaxC: overlay(tmaxC, observed.tmaxC), tminC: overlay(tminC, observed.tminC) };
}

function generated(q: WeatherQuestion, observed: Observed, normals: readonly MonthlyNormal[], count: number): ScenarioYear[] {
  const maker = weatherMaker(normals);
  const { slot } = calendarOf(q.from, q.until - q.from + 1);
  return Array.from({ length: count }, (_, i) => {
    const made = maker.days(slot, seededRandom((q.seed + Math.imul(i + 1, 0x9e3779b1)) >>> 0));
    return { label: `made ${i + 1}`, tmaxC: overlay(made.tmaxC, observed.tmaxC), tminC: overlay(made.tminC, observed.tminC) };
  });
}

/** What was observed, over what was made. */
function overlay(made: Float64Array, observed: Float64Array): Float64Array {
  const days = Float64Array.from(made);
  for (let d = 0; d < observed.length; d++) if (!Number.isNaN(observed[d])) days[d] = observed[d] as number;
  return days;
}
