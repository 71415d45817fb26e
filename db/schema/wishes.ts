import { check, foreignKey, index, integer, pgTable, primaryKey, text, uuid } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { householdId, id, localDate, recordedAt, version } from "./columns.ts";
import { ofHousehold } from "./households.ts";
import { recipes } from "./recipes.ts";

/** Somebody asked for it: so many portions. `by_words` and `from_words` hold a day or who it was, as it was said. */
export const wishes = pgTable(
  "wishes",
  {
    householdId: householdId(),
    id: id(),
    recipeId: uuid("recipe_id").notNull(),
    portions: integer("portions").notNull(),
    by: text("by_words"),
    from: text("from_words"),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "wishes_pk", columns: [t.householdId, t.id] }),
    ofHousehold("wishes", t.householdId),
    foreignKey({ name: "wishes_recipe_fk", columns: [t.householdId, t.recipeId], foreignColumns: [recipes.householdId, recipes.id] }),
    index("wishes_recipe").on(t.householdId, t.recipeId),
    check("wishes_portions", sql`${t.portions} > 0`),
  ],
);

/** So many portions of it are to be in store by a day. */
export const stockTargets = pgTable(
  "stock_targets",
  {
    householdId: householdId(),
    id: id(),
    recipeId: uuid("recipe_id").notNull(),
    portions: integer("portions").notNull(),
    by: localDate("by_day").notNull(),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "stock_targets_pk", columns: [t.householdId, t.id] }),
    ofHousehold("stock_targets", t.householdId),
    foreignKey({ name: "stock_targets_recipe_fk", columns: [t.householdId, t.recipeId], foreignColumns: [recipes.householdId, recipes.id] }),
    index("stock_targets_recipe").on(t.householdId, t.recipeId),
    check("stock_targets_portions", sql`${t.portions} > 0`),
  ],
);

/** What the household thinks of a dish; a recipe without a row is one nobody has spoken of. */
export const tastes = pgTable(
  "tastes",
  {
    householdId: householdId(),
    recipeId: uuid("recipe_id").notNull(),
    liking: text("liking").notNull(),
    recordedAt: recordedAt(),
  },
  (t) => [
    primaryKey({ name: "tastes_pk", columns: [t.householdId, t.recipeId] }),
    ofHousehold("tastes", t.householdId),
    // an opinion goes with its recipe
    foreignKey({ name: "tastes_recipe_fk", columns: [t.householdId, t.recipeId], foreignColumns: [recipes.householdId, recipes.id] }).onDelete("cascade"),
    check("tastes_liking", sql`${t.liking} in ('loved','fine','tired','never')`),
  ],
);
