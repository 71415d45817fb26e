/** Garden and kitchen together, as known on a day: what calendar and today are reckoned from. A fixed number of questions. */
import type { Tx } from "#db/client.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { GardenFacts, KitchenFacts } from "#shared/planning/facts.ts";
import type { Clock } from "../clock.ts";
import { loadGarden } from "./garden.ts";
import { dayAsked, loadHouse } from "./house.ts";
import { loadKitchen } from "./kitchen.ts";
import type { Reference } from "./reference.ts";

export interface Homestead {
  readonly garden: GardenFacts;
  readonly kitchen: KitchenFacts;
}

export async function loadHomestead(tx: Tx, householdId: string, book: Reference, clock: Clock, asOf: LocalDate | undefined): Promise<Homestead> {
  const house = await loadHouse(tx, householdId);
  const day = dayAsked(house, clock, asOf);
  return { garden: await loadGarden(tx, house, book, day), kitchen: await loadKitchen(tx, house, book, day) };
}
