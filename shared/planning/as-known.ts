/** Facts as they were known on a day: sightings and picks dated later are left out, by the date of the fact. A sowing dated later is a plan and stays. */
import { dayNumber, type DayNumber } from "../kernel/local-date.ts";
import type { GardenFacts, GardenPlanting } from "./facts.ts";

export function asKnown(garden: GardenFacts): GardenFacts {
  const asOf = dayNumber(garden.asOf);
  return { ...garden, plantings: garden.plantings.map((planting) => plantingAsKnown(planting, asOf)) };
}

export function plantingAsKnown(planting: GardenPlanting, asOf: DayNumber): GardenPlanting {
  const known = (fact: { readonly day: DayNumber }): boolean => fact.day <= asOf;
  if (planting.picks.every(known) && planting.sightings.every(known)) return planting;
  return { ...planting, picks: planting.picks.filter(known), sightings: planting.sightings.filter(known) };
}
