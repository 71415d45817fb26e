import type { Household, NewHousehold } from "#shared/contracts/household.ts";
import type { Kitchen } from "#shared/contracts/kitchen.ts";
import type { HouseholdRow } from "./store.ts";

/** What a cook day starts from until somebody has counted: common practice, no source. */
export const PLAIN_KITCHEN: Kitchen = { ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4, pots: 2, sinks: 1 };

export function toContract(row: HouseholdRow, bookEats: Household["eats"]): Household {
  return {
    ...placeOf(row),
    eats: row.eats ?? bookEats,
    eatsFrom: row.eats ? "household" : "book",
    kitchen: row.kitchen ?? PLAIN_KITCHEN,
    placed: row.placed,
  };
}

/** The body that would have stored this row, with what may be left out filled in. */
export function toBody(row: HouseholdRow): NewHousehold {
  return { ...placeOf(row), eats: row.eats ?? undefined, kitchen: row.kitchen ?? undefined };
}

function placeOf(row: HouseholdRow) {
  const { name, zone, latitude, longitude, altitudeM, people, glutGrams, cooks, away, avoids } = row;
  const hours = row.kitchenMinPerWeek === null ? {} : { kitchenMinPerWeek: row.kitchenMinPerWeek };
  return { name, zone, latitude, longitude, altitudeM, people, weekStart: row.weekStart as Household["weekStart"], units: row.units as Household["units"], glutGrams, cooks, ...hours, away, avoids };
}
