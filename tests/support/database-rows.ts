/** One row in each table of a household, invented, so that a test of the wall has something behind it. */
import { randomUUID } from "node:crypto";
import { getTableColumns, getTableName, is, type InferInsertModel } from "drizzle-orm";
import { type PgColumn, PgTable } from "drizzle-orm/pg-core";
import type { Tx } from "#db/client.ts";
import * as schema from "#db/schema/index.ts";

export const householdTables: readonly { readonly name: string; readonly table: PgTable; readonly householdId: PgColumn }[] = Object.values(schema)
  .filter((table) => is(table, PgTable))
  .flatMap((table) => {
    const { householdId } = getTableColumns(table) as Record<string, PgColumn>;
    return householdId === undefined ? [] : [{ name: getTableName(table), table, householdId }];
  })
  .sort((a, b) => (a.name < b.name ? -1 : 1));

export interface HouseholdRows {
  readonly bedId: string;
  readonly sowingId: string;
  readonly pickId: string;
  readonly recipeId: string;
  readonly partId: string;
  readonly placeId: string;
  readonly lotId: string;
  readonly movementId: string;
  readonly cookDayId: string;
}

/** The household itself is there already (makeHousehold). `ids` lets two households hold things of the same id. */
export async function fillHousehold(tx: Tx, householdId: string, ids: HouseholdRows = newIds()): Promise<HouseholdRows> {
  const { bedId, sowingId, pickId, recipeId, partId, placeId, lotId, movementId, cookDayId } = ids;
  const recipe = (id: string, title: string): InferInsertModel<typeof schema.recipes> => ({ householdId, id, title, way: "cook", makesAmount: 4, makesUnit: "portions", body: {} });
  await tx.insert(schema.weatherDays).values({ householdId, day: "2027-07-01", tmaxTenths: 231, tminTenths: 118 });
  await tx.insert(schema.beds).values({ householdId, id: bedId, name: "By the wall", lengthM: 4, widthM: 1.2, cover: "open" });
  await tx.insert(schema.sowings).values({ householdId, id: sowingId, bedId, crop: "tomato", method: "transplant", plantedOutOn: "2027-05-20", plants: 6 });
  await tx.insert(schema.sightings).values({ householdId, id: randomUUID(), sowingId, stage: "flowering", seenOn: "2027-06-20" });
  await tx.insert(schema.picks).values({ householdId, id: pickId, sowingId, pickedOn: "2027-07-20", grams: 450 });
  await tx.insert(schema.recipes).values([recipe(recipeId, "Soup of the day"), recipe(partId, "Stock for it")]);
  await tx.insert(schema.recipeParts).values({ householdId, recipeId, partId });
  await tx.insert(schema.planLines).values({ householdId, id: randomUUID(), week: "2027-W30", recipeId, batches: 2 });
  await tx.insert(schema.cookDays).values({ householdId, id: cookDayId, on: "2027-07-31", startsAt: "09:00", cooks: 1, kitchen: { ovens: [], burners: 4 }, unavailable: [] });
  await tx.insert(schema.cookDayDishes).values({ householdId, cookDayId, position: 0, recipeId, batches: 1 });
  const atTen = "2027-07-31T08:00:00Z";
  await tx.insert(schema.dayPlans).values({ householdId, id: randomUUID(), cookDayId, position: 1, said: { kind: "agree" }, at: atTen, dayVersion: 1, day: {}, steps: [], brokenOff: [], told: {} });
  await tx.insert(schema.dayMarks).values({ householdId, id: randomUUID(), cookDayId, kind: "begun", at: atTen, atSaid: false });
  await tx.insert(schema.timers).values({ householdId, id: randomUUID(), cookDayId, label: "Turn the tray", minutes: 20, endsAt: "2027-07-31T08:20:00Z" });
  await tx.insert(schema.batches).values({ householdId, id: randomUUID(), cookDayId, recipeId, on: "2027-07-31", at: atTen, said: {}, portions: 4, lossGrams: 0, eatenPortions: 1, givenPortions: 0 });
  await tx.insert(schema.places).values({ householdId, id: placeId, name: "Top drawer", kind: "freezer", litres: 45.5 });
  await tx.insert(schema.lots).values({ householdId, id: lotId, title: "Tomatoes", crop: "tomato", placeId, madeOn: "2027-07-20" });
  await tx.insert(schema.movements).values({ householdId, id: movementId, lotId, kind: "put", on: "2027-07-20", grams: 450, amount: 450, countedIn: "grams" });
  await tx.insert(schema.wishes).values({ householdId, id: randomUUID(), recipeId, portions: 4, by: "2027-08-14" });
  await tx.insert(schema.stockTargets).values({ householdId, id: randomUUID(), recipeId, portions: 40, by: "2027-11-01" });
  await tx.insert(schema.tastes).values({ householdId, recipeId, liking: "loved" });
  await tx.insert(schema.supplies).values({ householdId, id: randomUUID(), kind: "jar", name: "Jars", amount: 9, unit: "pieces", holdsMl: 500 });
  return ids;
}

export const newIds = (): HouseholdRows => ({
  bedId: randomUUID(),
  sowingId: randomUUID(),
  pickId: randomUUID(),
  recipeId: randomUUID(),
  partId: randomUUID(),
  placeId: randomUUID(),
  lotId: randomUUID(),
  movementId: randomUUID(),
  cookDayId: randomUUID(),
});
