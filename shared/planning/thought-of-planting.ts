/** A planting that nobody has made yet, for advice: a metre of row, sown on no day. */
import type { CropFacts, Method } from "../kernel/crop-facts.ts";
import type { Cover } from "../kernel/way.ts";
import type { GardenPlanting } from "./facts.ts";

export function thoughtOfPlanting(crop: CropFacts, method: Method, cover: Cover, variety: string | null = null): GardenPlanting {
  return {
    id: `thought of ${crop.slug}`,
    bedId: "",
    bedName: "",
    variety,
    crop,
    method,
    sownOn: null,
    plantedOutOn: null,
    rowM: 1,
    plants: null,
    areaM2: null,
    standsSince: null,
    season: null,
    cover,
    sightings: [],
    picks: [],
  };
}

/** Tubers, sets and cloves go into their place; slips are plants. */
export function usualMethodOf(crop: CropFacts): Method {
  if (crop.perennial) return "established";
  return crop.usualMethod === "transplant" || crop.usualMethod === "slips" ? "transplant" : "direct";
}
