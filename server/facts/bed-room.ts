/** What stands in the beds, as far as it was written down. */
import { freeM2, squareMetresOf, type Occupant } from "#shared/engines/bed-space/index.ts";
import { dayNumber } from "#shared/kernel/local-date.ts";
import type { GardenFacts } from "#shared/planning/facts.ts";

/** Square metres free on the day of the facts, by bed. A sowing stands until it is seen to be finished. */
export function freeByBed(garden: GardenFacts): Map<string, number> {
  const today = dayNumber(garden.asOf);
  return new Map(
    garden.beds.map((bed) => {
      const occupants = garden.plantings.filter((planting) => planting.bedId === bed.id).map((planting): Occupant => ({
        m2: squareMetresOf(planting, planting.crop.spacingCm ?? null) ?? 0,
        fromDay: planting.plantedOutOn ?? planting.sownOn ?? -Infinity,
        untilDay: planting.sightings.find((sighting) => sighting.stage === "finished")?.day ?? null,
      }));
      return [bed.id, freeM2(bed.lengthM * bed.widthM, occupants, today)];
    }),
  );
}
