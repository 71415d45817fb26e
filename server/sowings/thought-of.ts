import type { NewSowing } from "#shared/contracts/sowings.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import type { BedFacts } from "#shared/planning/facts.ts";
import { plantingOf, type KnownGarden, type KnownPlanting } from "../facts/garden.ts";

/** The id of a sowing that has none yet: the same thought twice gives the same forecast. */
const NO_ID = "00000000-0000-0000-0000-000000000000";

/** A sowing that is only being thought of, in the garden as it is; its bed and crop have been looked up. */
export function thoughtOf(body: NewSowing, garden: KnownGarden): KnownPlanting {
  const { bedId, crop, method, variety = null, varietyDays = null, sownOn = null, plantedOutOn = null, rowM = null, plants = null, areaM2 = null, standsSince = null } = body;
  const row = { id: NO_ID, bedId, crop, method, variety, varietyDays, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince };
  const bed = garden.beds.find((one) => one.id === bedId) as BedFacts;
  return plantingOf(row, garden.crops.get(crop) as CropFacts, bed, { sightings: [], picks: [] });
}
