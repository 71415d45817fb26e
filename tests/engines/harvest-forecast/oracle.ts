/**
 * The forecast of a plain planting once more, day by day and without any running sums, tables or searches: slow, short, and written from the
 * description in the engine's README. Shares with the engine only the published single sine (checked on its own) and the dealing of chances.
 */
import { singleSine } from "#shared/engines/harvest-forecast/index.ts";
import type { CurveShape, ForecastQuestion } from "#shared/engines/harvest-forecast/index.ts";
import { normalQuantile } from "#shared/engines/harvest-forecast/normal-quantile.ts";
import type { Deal } from "#shared/engines/harvest-forecast/scenario-deal.ts";

export interface PlainSeason {
  readonly first: number;
  readonly last: number;
  readonly gramsByDay: ReadonlyMap<number, number>;
}

interface Rules {
  readonly startDay: number;
  readonly emerges: boolean;
  readonly likelyCd: number;
  readonly sigmaLn: number;
  readonly likelyGrams: number;
  readonly shape: CurveShape;
  readonly waits: boolean;
  /** First day that counts for nothing any more. */
  readonly closesOn: number;
}

/** Scenario `s` of a planting in the open that nobody has seen or picked. */
export function plainSeason(q: ForecastQuestion, rules: Rules, deal: Deal, perYear: number, s: number): PlainSeason | null {
  const { crop } = q.planting;
  const years = q.weather.years.length;
  const y = Math.floor(s / perYear);
  const year = q.weather.years[y];
  if (!year) throw new RangeError("no such year");
  const chance = ((deal.part[s] as number) * years + (deal.step[y] as number) + 0.5) / (years * perYear);
  const needs = rules.likelyCd * Math.exp(rules.sigmaLn * normalQuantile(chance));
  const kills = (day: number): boolean => crop.killC !== null && (year.tminC[day - q.weather.firstDay] as number) <= crop.killC;
  let soil = NaN;
  let soaked = 0;
  let warmth = 0;
  let up = !rules.emerges;
  let first = -1;
  const end = q.weather.firstDay + q.weather.days;
  for (let day = q.weather.firstDay; day < end; day++) {
    const [max, min] = [year.tmaxC[day - q.weather.firstDay] as number, year.tminC[day - q.weather.firstDay] as number];
    // the morning: what the days before have brought
    if (day >= rules.startDay && !up && crop.emergence && soaked >= crop.emergence.thetaCd) up = true;
    if (day >= rules.startDay && up && warmth >= needs) {
      first = day;
      break;
    }
    if (day >= rules.closesOn) return null;
    if (day >= rules.startDay && up && kills(day) && (crop.frostClass === "tender" || crop.frostClass === "half-hardy")) return null;
    const mean = (max + min) / 2;
    soil = Number.isNaN(soil) ? Math.max(0, mean) : Math.max(0, soil + 0.2 * (mean - soil));
    if (day < rules.startDay) continue;
    if (up) warmth += singleSine(max, min, crop.baseC, crop.upperC);
    else if (crop.emergence && soil >= Math.min(10, crop.germinationMinC ?? 10)) soaked += Math.max(0, Math.min(28, soil) - crop.emergence.baseC);
  }
  if (first < 0 || first >= rules.closesOn) return null;
  if (kills(first) && (crop.frostClass === "tender" || crop.frostClass === "half-hardy")) return null;
  return pickedFrom(first, q, rules, deal, s, kills);
}

function pickedFrom(first: number, q: ForecastQuestion, rules: Rules, deal: Deal, s: number, kills: (day: number) => boolean): PlainSeason {
  const { pickWeeks, gramsPerRowM } = q.planting.crop;
  const weeks = pickWeeks.low + (pickWeeks.high - pickWeeks.low) * (deal.length[s] as number);
  let span = Math.max(1, Math.round(7 * weeks));
  if (rules.shape === "one-cut") span = Math.min(span, Math.max(7, Math.round(0.2 * (first - rules.startDay))));
  let until = first + 1;
  while (until < first + span && until < rules.closesOn && !kills(until)) until++;
  // a frost on the very first day leaves that day
  if (rules.waits) span = until - first;
  const gramsByDay = new Map<number, number>();
  if (!gramsPerRowM) return { first, last: until - 1, gramsByDay };
  const sigma = Math.log(gramsPerRowM.high / gramsPerRowM.low) / 2.563;
  const whole = rules.likelyGrams * Math.exp(sigma * (deal.yieldZ[s] as number));
  for (let day = first; day < until; day++) gramsByDay.set(day, whole * (shareByHand(rules.shape, day + 1 - first, span) - shareByHand(rules.shape, day - first, span)));
  return { first, last: until - 1, gramsByDay };
}

const BETA: Partial<Record<CurveShape, readonly [number, number]>> = { repeat: [2, 2.5], concentrated: [1.6, 2.6], "cut-again": [1.5, 1.5], "one-cut": [2, 2] };

/** The same shapes by adding up the density in thousands of slices. */
function shareByHand(shape: CurveShape, days: number, span: number): number {
  if (days <= 0) return 0;
  if (days >= span) return 1;
  if (shape === "even") return days / span;
  if (shape === "head+shoots") return days <= 10 ? 0.06 * days : 0.6 + (0.4 * (days - 10)) / (span - 10);
  const [a, b] = BETA[shape] as readonly [number, number];
  const key = `${shape} ${days / span}`;
  const known = SHARES.get(key);
  if (known !== undefined) return known;
  let part = 0;
  let whole = 0;
  for (let i = 0; i < SLICES; i++) {
    const t = (i + 0.5) / SLICES;
    const density = t ** (a - 1) * (1 - t) ** (b - 1);
    whole += density;
    if (t < days / span) part += density;
  }
  SHARES.set(key, part / whole);
  return part / whole;
}

const SLICES = 16_000;
const SHARES = new Map<string, number>();
