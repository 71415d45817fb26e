import { pgTable, primaryKey, uuid } from "drizzle-orm/pg-core";
import { householdId } from "./columns.ts";
import { ofHousehold } from "./households.ts";

const stamp = (name: string) => uuid(name).notNull().defaultRandom();

/**
 * One random stamp for each part of what a household has stored, renewed by triggers with every write to a table of that part and in its
 * transaction, whoever writes. What was reckoned under the stamps that are read again still holds. Which table belongs to which part is
 * written where its triggers are made.
 */
export const householdStamps = pgTable(
  "household_stamps",
  {
    householdId: householdId(),
    /** Place and normals, beds, sowings, sightings, picks. */
    garden: stamp("garden"),
    /** People and what they eat, recipes, plan lines, cook days, wishes, targets. */
    kitchen: stamp("kitchen"),
    /** Daily weather. */
    weather: stamp("weather"),
    /** Places, lots, movements, supplies. */
    larder: stamp("larder"),
    /** A cook day under way: plans agreed on, marks, timers, closed dishes. */
    counter: stamp("counter"),
  },
  (t) => [primaryKey({ name: "household_stamps_pk", columns: [t.householdId] }), ofHousehold("household_stamps", t.householdId)],
);
