import { check, integer, pgTable, primaryKey, text } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { householdId, id, localDate, recordedAt, version } from "./columns.ts";
import { ofHousehold } from "./households.ts";

/** Jars, lids, bags, and dry goods with a date. */
export const supplies = pgTable(
  "supplies",
  {
    householdId: householdId(),
    id: id(),
    kind: text("kind").notNull(),
    name: text("name").notNull(),
    amount: integer("amount").notNull(),
    unit: text("unit").notNull(),
    /** What one jar, bag or box holds. */
    holdsMl: integer("holds_ml"),
    bestUntil: localDate("best_until"),
    note: text("note"),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "supplies_pk", columns: [t.householdId, t.id] }),
    ofHousehold("supplies", t.householdId),
    check("supplies_kind", sql`${t.kind} in ('jar','lid','bag','box','vinegar','sugar','salt','yeast','spice','other')`),
    check("supplies_unit", sql`${t.unit} in ('pieces','g','ml')`),
    check("supplies_amount", sql`${t.amount} >= 0 and (${t.holdsMl} is null or ${t.holdsMl} > 0)`),
  ],
);
