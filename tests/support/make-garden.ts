/** Gardens and kitchens made in code for tests of planning. Weather is invented: a smooth year with a seeded wobble, the same in every run. */
import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import type { DailyRecord } from "#shared/engines/harvest-forecast/index.ts";
import { preservationTables } from "#shared/engines/preservation/index.ts";
import { cropFactsOf, type CropFacts } from "#shared/kernel/crop-facts.ts";
import { dayNumber, type LocalDate } from "#shared/kernel/local-date.ts";
import type { RecipeUse } from "#shared/kernel/recipe.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import type { GardenFacts, GardenPlanting, KitchenFacts } from "#shared/planning/facts.ts";
import { seedRows, seedSources } from "./reference-rows.ts";

const table = parse<Record<string, string>>(readFileSync(new URL("../../seed-data/crops.csv", import.meta.url)), { columns: true });
export const CROPS: ReadonlyMap<string, CropFacts> = new Map(table.map(cropFactsOf).map((crop) => [crop.slug, crop]));
export const TABLES = preservationTables(seedRows("preservation"), seedSources("preservation"));

/** Means of a day from 4 °C in January to 19 °C in July, ± 5 °C between night and day, and a wobble of days that hang together. */
export function madeRecord(firstYear: number, lastDay: LocalDate, warmerC = 0): DailyRecord {
  const firstDay = dayNumber(`${firstYear}-01-01`);
  const days = dayNumber(lastDay) - firstDay + 1;
  const random = seededRandom(7);
  const tmaxC = new Float64Array(days);
  const tminC = new Float64Array(days);
  let wobble = 0;
  for (let d = 0; d < days; d++) {
    wobble = 0.7 * wobble + 2 * random.normal();
    const mean = 11.5 - 7.5 * Math.cos((2 * Math.PI * (((firstDay + d) % 365.25) - 20)) / 365.25) + wobble + warmerC;
    tmaxC[d] = Math.round(10 * (mean + 5)) / 10;
    tminC[d] = Math.round(10 * (mean - 5)) / 10;
  }
  return { firstDay, tmaxC, tminC };
}

export interface Sown {
  readonly id: string;
  readonly crop: string;
  readonly sownOn?: LocalDate;
  readonly plantedOutOn?: LocalDate;
  readonly rowM?: number;
  readonly plants?: number;
  readonly areaM2?: number;
  readonly bedId?: string;
  readonly variety?: string;
  readonly picks?: readonly (readonly [LocalDate, number])[];
  readonly sightings?: readonly (readonly [GardenPlanting["sightings"][number]["stage"], LocalDate])[];
}

/** One planting; established where no day is given. */
export function planting(sown: Sown): GardenPlanting {
  const crop = CROPS.get(sown.crop);
  if (!crop) throw new RangeError(`no crop ${sown.crop}`);
  const day = (date: LocalDate | undefined) => (date === undefined ? null : dayNumber(date));
  return {
    id: sown.id,
    crop,
    method: sown.plantedOutOn ? "transplant" : sown.sownOn ? "direct" : "established",
    sownOn: day(sown.sownOn),
    plantedOutOn: day(sown.plantedOutOn),
    rowM: sown.rowM ?? null,
    plants: sown.plants ?? null,
    areaM2: sown.areaM2 ?? null,
    standsSince: null,
    season: null,
    cover: "open",
    sightings: (sown.sightings ?? []).map(([stage, date]) => ({ stage, day: dayNumber(date) })),
    picks: (sown.picks ?? []).map(([date, grams]) => ({ day: dayNumber(date), grams })),
    bedId: sown.bedId ?? "bed-1",
    bedName: "Long bed",
    variety: sown.variety ?? null,
  };
}

const RECORD = madeRecord(2005, "2027-12-31");

export function garden(sown: readonly Sown[], more: Partial<GardenFacts> = {}): GardenFacts {
  return {
    asOf: "2027-07-05",
    placed: true,
    latitude: 52.1,
    record: RECORD,
    normals: null,
    weatherAttribution: null,
    seed: 1,
    crops: CROPS,
    beds: [{ id: "bed-1", name: "Long bed", lengthM: 10, widthM: 1.2, cover: "open" }],
    plantings: sown.map(planting),
    ...more,
  };
}

export function kitchen(eats: Record<string, number>, more: Partial<KitchenFacts> = {}): KitchenFacts {
  return {
    people: 4,
    altitudeM: 5,
    eats: new Map(Object.entries(eats)),
    eatsFrom: "household",
    glutGrams: 1000,
    recipes: [],
    askedFor: [],
    planLines: [],
    cookDays: [],
    preservation: TABLES,
    ...more,
  };
}

export function recipe(id: string, uses: Record<string, number>, more: Partial<RecipeUse> = {}): RecipeUse {
  return {
    id, title: id, way: "freeze", makes: { amount: 2, unit: "bags" }, uses: Object.entries(uses).map(([crop, grams]) => ({ crop, grams })),
    handsOnMin: 20, keeps: [{ place: "freezer", days: 300 }], process: null, ...more,
  };
}
