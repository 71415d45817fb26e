/**
 * Soil temperature of a seedbed from air temperature, and emergence from soil temperature, °C.
 * Soil: S = max(0, S of the day before + 0.2 · (mean air − S of the day before)), about a nine-day running mean (common practice for a
 * seedbed; Zheng, Hunt & Running 1993 use 11 days at 10 cm, from memory). Emergence: 1/days is linear in soil temperature between
 * about 5 and 25 °C, fitted to Harrington & Minges 1954, so warmth above a base adds up to a constant.
 */
const FOLLOWS = 0.2;
/** Warmer soil does not hasten emergence further, °C (Harrington & Minges 1954: most crops level off between 25 and 30). */
const NO_FASTER_ABOVE_C = 28;

/** Starts at the first day's mean; give at least fifteen days before the day that matters. Days without a reading keep the day before's. */
export function soilFromAir(tmaxC: Float64Array, tminC: Float64Array): Float64Array {
  const soil = new Float64Array(tmaxC.length);
  let last = NaN;
  for (let d = 0; d < soil.length; d++) {
    const mean = ((tmaxC[d] as number) + (tminC[d] as number)) / 2;
    if (!Number.isNaN(mean)) last = Number.isNaN(last) ? Math.max(0, mean) : nextSoil(last, mean);
    soil[d] = last;
  }
  return soil;
}

/** One day's step. */
export function nextSoil(yesterdayC: number, meanAirC: number): number {
  return Math.max(0, yesterdayC + FOLLOWS * (meanAirC - yesterdayC));
}

/**
 * Nothing comes up below this, even of crops whose least temperature is given higher: Harrington & Minges 1954 have beans and cucumber not
 * germinating at 10 °C but up in 16 and 13 days at 15 °C, while the 15.6 °C (60 °F) of UC ANR 3382 is advice on when to sow.
 */
const NOTHING_BELOW_C = 10;

/** What one day at a soil temperature adds towards emergence, °C d; nothing below the least temperature at which the seed germinates. */
export function emergenceUnits(soilC: number, baseC: number, germinationMinC: number): number {
  return soilC >= Math.min(germinationMinC, NOTHING_BELOW_C) ? Math.max(0, Math.min(soilC, NO_FASTER_ABOVE_C) - baseC) : 0;
}
