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
  const count = new Uint32Array(supply.weeks.length);
  for (const flags of supply.inHarvest) for (let w = 0; w < count.length; w++) count[w] = (count[w] as number) + (flags[w] as number);
  return Array.from(count, (n) => n / Math.max(1, supply.inHarvest.length));
}

/** Adds supplies of one crop scenario by scenario; percentiles are taken afterwards, never added. */
export function addSupplies(crop: string, parts: readonly CropSupply[]): CropSupply {
  const first = parts[0];
  if (!first) throw new RangeError("nothing to add");
  const scenarios = first.scenarios.map((grams) => new Float64Array(grams));
  const inHarvest = first.inHarvest.map((flags) => new Uint8Array(flags));
  for (const part of parts.slice(1)) {
    if (part.scenarios.length !== scenarios.length || part.weeks.length !== first.weeks.length) throw new RangeError("supplies of different shape");
    for (let s = 0; s < scenarios.length; s++) addScenario(scenarios[s] as Float64Array, inHarvest[s] as Uint8Array, part.scenarios[s] as Float64Array, part.inHarvest[s] as Uint8Array);
  }
  return { crop, weeks: first.weeks, scenarios, inHarvest };
}

/** Into the sum in place: the calendar adds some hundred scenarios of every planting, so nothing is made anew here. */
function addScenario(sum: Float64Array, anyFlag: Uint8Array, grams: Float64Array, flags: Uint8Array): void {
  for (let w = 0; w < sum.length; w++) {
    sum[w] = (sum[w] as number) + (grams[w] as number);
    anyFlag[w] = (anyFlag[w] as number) | (flags[w] as number);
  }
}
