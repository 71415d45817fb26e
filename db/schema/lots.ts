import { boolean, check, foreignKey, index, integer, pgTable, primaryKey, text, timestamp, uuid } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { grams, householdId, id, localDate, recordedAt, version } from "./columns.ts";
import { batches } from "./counter.ts";
import { ofHousehold } from "./households.ts";
import { places } from "./places.ts";
import { recipes } from "./recipes.ts";
import { crops } from "./reference.ts";

/** What stands in the larder under one label. It has no amount: what is left is the sum of its movements. */
export const lots = pgTable(
  "lots",
  {
    householdId: householdId(),
    id: id(),
    title: text("title").notNull(),
    /** Produce as picked; null for what was made, bought or given. */
    crop: text("crop"),
    recipeId: uuid("recipe_id"),
    /** Where what is put in goes unless the movement says otherwise. */
    placeId: uuid("place_id").notNull(),
    madeOn: localDate("made_on").notNull(),
    portionGrams: grams("portion_grams"),
    portionMl: integer("portion_ml"),
    bestUntil: localDate("best_until"),
    note: text("note"),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "lots_pk", columns: [t.householdId, t.id] }),
    ofHousehold("lots", t.householdId),
    foreignKey({ name: "lots_place_fk", columns: [t.householdId, t.placeId], foreignColumns: [places.householdId, places.id] }),
    foreignKey({ name: "lots_recipe_fk", columns: [t.householdId, t.recipeId], foreignColumns: [recipes.householdId, recipes.id] }),
    foreignKey({ name: "lots_crop_fk", columns: [t.crop], foreignColumns: [crops.slug] }),
    index("lots_place").on(t.householdId, t.placeId),
    index("lots_made").on(t.householdId, t.madeOn),
    check("lots_one_origin", sql`num_nonnulls(${t.crop}, ${t.recipeId}) <= 1`),
    check("lots_portion", sql`(${t.portionGrams} is null or ${t.portionGrams} > 0) and (${t.portionMl} is null or ${t.portionMl} > 0)`),
    check("lots_best_until", sql`${t.bestUntil} is null or ${t.bestUntil} >= ${t.madeOn}`),
  ],
);

/** Append-only: the app role may insert and set undone_at, nothing else. */
export const movements = pgTable(
  "movements",
  {
    householdId: householdId(),
    id: id(),
    lotId: uuid("lot_id").notNull(),
    kind: text("kind").notNull(),
    on: localDate("on_day").notNull(),
    /** As it was said: one of the two. */
    grams: grams("grams"),
    portions: integer("portions"),
    /** The same in what the lot is counted in. */
    amount: integer("amount").notNull(),
    countedIn: text("counted_in").notNull(),
    /** What is left of the whole lot when one place of it was counted; for a count of the whole, the amount. */
    wholeAmount: integer("whole_amount"),
    takenFor: text("taken_for"),
    placeId: uuid("place_id"),
    toPlaceId: uuid("to_place_id"),
    queued: boolean("queued").notNull().default(false),
    /** When it was written down on the device, as it was sent. */
    at: text("at"),
    note: text("note"),
    /** The closed dish of a cook day that it belongs to. */
    batchId: uuid("batch_id"),
    /** The moment the row was written, under the lock of its lot: two entries of one day keep the order in which they were taken. */
    recordedAt: timestamp("recorded_at", { withTimezone: true, mode: "string" })
      .notNull()
      .default(sql`clock_timestamp()`),
    undoneAt: timestamp("undone_at", { withTimezone: true, mode: "string" }),
  },
  (t) => [
    primaryKey({ name: "movements_pk", columns: [t.householdId, t.id] }),
    ofHousehold("movements", t.householdId),
    // a lot goes with its undone movements; the trigger lots_keep_movements refuses it while one stands
    foreignKey({ name: "movements_lot_fk", columns: [t.householdId, t.lotId], foreignColumns: [lots.householdId, lots.id] }).onDelete("cascade"),
    foreignKey({ name: "movements_place_fk", columns: [t.householdId, t.placeId], foreignColumns: [places.householdId, places.id] }),
    foreignKey({ name: "movements_to_place_fk", columns: [t.householdId, t.toPlaceId], foreignColumns: [places.householdId, places.id] }),
    foreignKey({ name: "movements_batch_fk", columns: [t.householdId, t.batchId], foreignColumns: [batches.householdId, batches.id] }),
    index("movements_lot").on(t.householdId, t.lotId),
    index("movements_batch").on(t.householdId, t.batchId),
    check("movements_kind", sql`${t.kind} in ('put','take','give','compost','recount','move')`),
    check("movements_one_amount", sql`num_nonnulls(${t.grams}, ${t.portions}) = 1`),
    check("movements_amounts", sql`coalesce(${t.grams}, ${t.portions}) >= 0 and ${t.amount} >= 0 and (${t.kind} = 'recount' or ${t.amount} > 0)`),
    check("movements_counted_in", sql`${t.countedIn} in ('grams','portions')`),
    check("movements_whole", sql`(${t.kind} = 'recount') = (${t.wholeAmount} is not null) and (${t.wholeAmount} is null or ${t.wholeAmount} >= ${t.amount})`),
    check("movements_taken_for", sql`(${t.kind} = 'take') = (${t.takenFor} is not null) and (${t.takenFor} is null or ${t.takenFor} in ('eat','trim','batch'))`),
    check("movements_to_place", sql`(${t.kind} = 'move') = (${t.toPlaceId} is not null) and (${t.toPlaceId} is null or ${t.placeId} is null or ${t.toPlaceId} <> ${t.placeId})`),
  ],
);
