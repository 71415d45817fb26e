/**
 * Daily weather from twelve monthly means, where no long record is at hand. Richardson 1981, Water Resources Research 17:182–190, in the form of
 * SWAT+ theory 1:3.4: z(t) = A z(t−1) + B ε(t) for the standardised maximum and minimum, with a slow part added because such years come out
 * too alike (Wilks & Wilby 1999). Figures: fitted to the daily records of Milwaukee (NOAA) 1991–2020 (continental) and De Bilt (KNMI) 1981–2010 (maritime).
 */
import type { Random } from "../../kernel/seeded-random.ts";
import { normalProbability } from "./normal-quantile.ts";
import { dailyByStraightLines, dailyMeans } from "./seasonal-mean.ts";
import type { MonthlyNormal } from "./types.ts";

/** Parameters of one kind of climate; spreads are standard deviations of daily values by month from January (north), °C. */
interface Climate {
  readonly a: readonly [number, number, number, number];
  readonly b: readonly [number, number, number];
  /** Same-day correlation of the two residuals. */
  readonly together: number;
  readonly spreadMaxC: readonly number[];
  readonly spreadMinC: readonly number[];
  /** Share of the variance that changes slowly (half-life 30 days). */
  readonly slowShare: number;
}

export const CONTINENTAL: Climate = {
  a: [0.494, 0.145, 0.33, 0.428],
  b: [0.791, 0.43, 0.554],
  together: 0.763,
  spreadMaxC: [5.9, 6.0, 6.1, 6.3, 6.1, 5.1, 4.0, 3.7, 4.5, 5.1, 5.4, 5.6],
  spreadMinC: [6.7, 6.2, 4.8, 3.5, 3.7, 3.8, 3.1, 2.9, 3.7, 4.2, 4.7, 5.9],
  slowShare: 0.06,
};

export const MARITIME: Climate = {
  a: [0.732, 0.026, 0.33, 0.48],
  b: [0.663, 0.23, 0.638],
  together: 0.635,
  spreadMaxC: [4.4, 3.9, 3.6, 4.1, 4.5, 4.4, 4.0, 3.7, 3.1, 2.7, 3.3, 4.2],
  spreadMinC: [4.9, 4.5, 3.8, 3.3, 3.2, 3.0, 2.6, 2.6, 3.1, 3.5, 3.9, 4.6],
  slowShare: 0.02,
};

/** Continental where July and January differ by more than this, °C (common practice). */
export const CONTINENTAL_RANGE_C = 20;
const SLOW_KEEPS = 0.5 ** (1 / 30);
/** Steps run before the first day, so that it is as free as any other. */
const RUN_IN_DAYS = 90;

/** Range given to a day whose minimum came out above its maximum, °C. */
const CROSSED_C = 1;

export interface DailyMaker {
  /** Maxima and minima of a stretch of days given by their slots, °C with one decimal. */
  days(slots: Int16Array, random: Random): { tmaxC: Float64Array; tminC: Float64Array };
}

export function climateOf(normals: readonly MonthlyNormal[]): Climate {
  return Math.abs(monthMean(normals, 7) - monthMean(normals, 1)) > CONTINENTAL_RANGE_C ? CONTINENTAL : MARITIME;
}

/** Weather with the given monthly means. Throws RangeError unless each of the twelve months is there once. */
export function weatherMaker(normals: readonly MonthlyNormal[], climate: Climate = climateOf(normals)): DailyMaker {
  const byMonth = [...normals].sort((p, q) => p.month - q.month);
  if (byMonth.length !== 12 || byMonth.some((normal, i) => normal.month !== i + 1)) throw new RangeError("monthly means need each of the twelve months once");
  const southern = monthMean(normals, 1) > monthMean(normals, 7);
  const inSeason = (spread: readonly number[]): readonly number[] => (southern ? [...spread.slice(6), ...spread.slice(0, 6)] : spread);
  const meanMax = dailyMeans(byMonth.map((normal) => normal.tmaxC));
  const meanMin = dailyMeans(byMonth.map((normal) => normal.tminC));
  const spreadMax = dailyByStraightLines(inSeason(climate.spreadMaxC));
  const spreadMin = dailyByStraightLines(inSeason(climate.spreadMinC));
  // mending crossed days draws the two apart; half of that is taken off each, so that the means stay as given
  const apart = meanMax.map((max, d) => widening(max - (meanMin[d] as number), spreadMax[d] as number, spreadMin[d] as number, climate) / 2);
  return {
    days: (slots, random) => {
      const next = residuals(climate, random);
      for (let d = 0; d < RUN_IN_DAYS; d++) next();
      const tmaxC = new Float64Array(slots.length);
      const tminC = new Float64Array(slots.length);
      for (let d = 0; d < slots.length; d++) {
        const slot = slots[d] as number;
        const [zMax, zMin] = next();
        let max = (meanMax[slot] as number) - (apart[slot] as number) + (spreadMax[slot] as number) * zMax;
        let min = (meanMin[slot] as number) + (apart[slot] as number) + (spreadMin[slot] as number) * zMin;
        if (min >= max) [max, min] = [(max + min) / 2 + CROSSED_C / 2, (max + min) / 2 - CROSSED_C / 2];
        tmaxC[d] = tenths(max);
        tminC[d] = tenths(min);
      }
      return { tmaxC, tminC };
    },
  };
}

/** How much wider, on average, the daily range becomes by mending crossed days: E[(1 − D) · (D ≤ 0)] for a normal range D, °C. */
function widening(rangeC: number, spreadMaxC: number, spreadMinC: number, climate: Climate): number {
  const together = climate.together * (1 - climate.slowShare) + climate.slowShare;
  const spread = Math.sqrt(spreadMaxC ** 2 + spreadMinC ** 2 - 2 * together * spreadMaxC * spreadMinC);
  const density = Math.exp(-((rangeC / spread) ** 2) / 2) / Math.sqrt(2 * Math.PI);
  return (CROSSED_C - rangeC) * normalProbability(-rangeC / spread) + spread * density;
}

/** Standardised residuals of maximum and minimum, a pair a day. */
export function residuals(climate: Climate, random: Random): () => readonly [number, number] {
  const [a11, a12, a21, a22] = climate.a;
  const [b11, b21, b22] = climate.b;
  const slow = Math.sqrt(climate.slowShare);
  const quick = Math.sqrt(1 - climate.slowShare);
  const kick = Math.sqrt(1 - SLOW_KEEPS ** 2);
  let max = 0;
  let min = 0;
  let drift = random.normal();
  return () => {
    const e1 = random.normal();
    const e2 = random.normal();
    [max, min] = [a11 * max + a12 * min + b11 * e1, a21 * max + a22 * min + b21 * e1 + b22 * e2];
    drift = SLOW_KEEPS * drift + kick * random.normal();
    return [quick * max + slow * drift, quick * min + slow * drift];
  };
}

function monthMean(normals: readonly MonthlyNormal[], month: number): number {
  const normal = normals.find((n) => n.month === month);
  return normal ? (normal.tmaxC + normal.tminC) / 2 : NaN;
}

/** One decimal, as thermometers are read; it also makes the bytes the same on every machine. */
const tenths = (value: number): number => Math.round(value * 10) / 10;
