/** Amounts by crop, scenario and week: what the forecast hands to the glut reckoning. */
import type { IsoWeek } from "./iso-week.ts";

export interface CropSupply {
  readonly crop: string;
  readonly weeks: readonly IsoWeek[];
  /** One array of weekly grams for each scenario; scenario s is the same weather year in every crop. */
  readonly scenarios: readonly Float64Array[];
  /** 1 where the crop is in harvest in that scenario and week, else 0. */
  readonly inHarvest: readonly Uint8Array[];
}

/** Share of scenarios with the crop in harvest, by week, 0–1. */
export function chanceInHarvest(supply: CropSupply): number[] {
  return supply.weeks.map((_, w) => supply.inHarvest.reduce((n, flags) => n + (flags[w] as number), 0) / Math.max(1, supply.inHarvest.length));
}

/** Adds supplies of one crop scenario by scenario; percentiles are taken afterwards, never added. */
export function addSupplies(crop: string, parts: readonly CropSupply[]): CropSupply {
  const first = parts[0];
  if (!first) throw new RangeError("nothing to add");
  const scenarios = first.scenarios.map((_, s) => {
    const sum = new Float64Array(first.weeks.length);
    for (const part of parts) {
      const grams = part.scenarios[s];
      if (!grams || grams.length !== sum.length) throw new RangeError("supplies of different shape");
      for (let w = 0; w < sum.length; w++) sum[w] = (sum[w] as number) + (grams[w] as number);
    }
    return sum;
  });
  const inHarvest = first.inHarvest.map((_, s) => Uint8Array.from(first.weeks, (_, w) => (parts.some((part) => part.inHarvest[s]?.[w] === 1) ? 1 : 0)));
  return { crop, weeks: first.weeks, scenarios, inHarvest };
}
