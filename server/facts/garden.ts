/** Loads what is known of a garden, in four questions and the household's row, whatever its size. Nothing is computed here. */
import { asc, isNull, lte, sql } from "drizzle-orm";
import { beds, picks, sightings, sowings } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import { dayNumber, type DayNumber, type LocalDate } from "#shared/kernel/local-date.ts";
import { seedOf } from "#shared/kernel/seeded-random.ts";
import type { CropFacts, Method } from "#shared/kernel/crop-facts.ts";
import type { Cover, Stage } from "#shared/kernel/way.ts";
import type { BedFacts, GardenFacts, GardenPlanting } from "#shared/planning/facts.ts";
import { rememberedBy } from "./forecast-memory.ts";
import type { House } from "./house.ts";
import type { Reference } from "./reference.ts";
import { loadRecord } from "./weather-record.ts";

/** A sowing as its table has it; also one that is only being thought of. */
export type Sown = Pick<typeof sowings.$inferSelect, "id" | "bedId" | "crop" | "variety" | "varietyDays" | "method" | "sownOn" | "plantedOutOn" | "rowM" | "plants" | "areaM2" | "standsSince">;

/** A planting with the ids of its sightings, which planning does not need and the pages do. */
export interface KnownPlanting extends GardenPlanting {
  readonly sightings: readonly { readonly id: string; readonly stage: Stage; readonly day: DayNumber }[];
}

export interface KnownGarden extends GardenFacts {
  readonly plantings: readonly KnownPlanting[];
}

/** Facts dated after `asOf` stay out by the date of the fact; a sowing dated later is a plan and stays in. */
export async function loadGarden(tx: Tx, house: House, book: Reference, asOf: LocalDate): Promise<KnownGarden> {
  const bedRows = await tx.select().from(beds).orderBy(asc(beds.name), asc(beds.id));
  const sowingRows = await tx.select().from(sowings).orderBy(asc(sowings.recordedAt), asc(sowings.id));
  const seen = await tx.select({ of: sightings.sowingId, id: sightings.id, stage: sightings.stage, day: sightings.seenOn }).from(sightings).where(lte(sightings.seenOn, asOf)).orderBy(asc(sightings.seenOn), asc(sightings.id));
  const picked = await tx
    .select({ of: picks.sowingId, day: picks.pickedOn, grams: picks.grams })
    .from(picks)
    .where(sql`${lte(picks.pickedOn, asOf)} and ${isNull(picks.undoneAt)}`)
    .orderBy(asc(picks.pickedOn), asc(picks.id));
  const record = await loadRecord(tx, house, asOf);

  const bedsById = new Map(bedRows.map((bed): [string, BedFacts] => [bed.id, { id: bed.id, name: bed.name, lengthM: bed.lengthM, widthM: bed.widthM, cover: bed.cover as Cover }]));
  const seenOf = groupBy(seen);
  const pickedOf = groupBy(picked);
  return {
    asOf,
    placed: house.placed,
    latitude: house.latitude,
    record,
    normals: house.normals,
    weatherAttribution: house.weatherAttribution,
    seed: seedOf(house.householdId),
    crops: book.crops,
    ...rememberedBy(house, book),
    beds: [...bedsById.values()],
    plantings: sowingRows.map((row) =>
      plantingOf(row, cropOf(book, row.crop), bedsById.get(row.bedId) as BedFacts, {
        sightings: (seenOf.get(row.id) ?? []).map(({ id, stage, day }) => ({ id, stage: stage as Stage, day: dayNumber(day) })),
        picks: (pickedOf.get(row.id) ?? []).map(({ day, grams }) => ({ day: dayNumber(day), grams })),
      }),
    ),
  };
}

/** One sowing in the words of planning. */
export function plantingOf(row: Sown, crop: CropFacts, bed: BedFacts, known: Pick<KnownPlanting, "sightings" | "picks">): KnownPlanting {
  const { id, bedId, variety, varietyDays, rowM, plants, areaM2, standsSince } = row;
  return {
    id,
    bedId,
    bedName: bed.name,
    variety,
    ...(varietyDays === null ? {} : { varietyDays }),
    crop,
    method: row.method as Method,
    sownOn: row.sownOn === null ? null : dayNumber(row.sownOn),
    plantedOutOn: row.plantedOutOn === null ? null : dayNumber(row.plantedOutOn),
    rowM,
    plants,
    areaM2,
    standsSince,
    season: null,
    cover: bed.cover,
    ...known,
  };
}

function cropOf(book: Reference, slug: string): CropFacts {
  const crop = book.crops.get(slug);
  // the foreign key says that it was in the book when the sowing was stored
  if (!crop) throw new Error(`the book has lost the crop ${slug}`);
  return crop;
}

function groupBy<Row extends { readonly of: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(row.of);
    if (group) group.push(row);
    else groups.set(row.of, [row]);
  }
  return groups;
}
