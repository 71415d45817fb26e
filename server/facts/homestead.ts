/** Garden and kitchen together, as known on a day: what calendar and today are reckoned from. A fixed number of questions. */
import type { Tx } from "#db/client.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { GardenFacts, KitchenFacts } from "#shared/planning/facts.ts";
import { loadGarden } from "./garden.ts";
import type { House } from "./house.ts";
import { loadKitchen } from "./kitchen.ts";
import type { Reference } from "./reference.ts";

export interface Homestead {
  readonly garden: GardenFacts;
  readonly kitchen: KitchenFacts;
}

export async function loadHomestead(tx: Tx, house: House, book: Reference, day: LocalDate): Promise<Homestead> {
  return { garden: await loadGarden(tx, house, book, day), kitchen: await loadKitchen(tx, house, book, day) };
}
