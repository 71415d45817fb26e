import { check, doublePrecision, foreignKey, index, integer, jsonb, pgTable, primaryKey, text, uuid } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
import { householdId, id, recordedAt, version } from "./columns.ts";
import { ofHousehold } from "./households.ts";

/** A recipe is a document of the household's: what it is found by stands in columns, the rest in `body` as the contract has it. */
export const recipes = pgTable(
  "recipes",
  {
    householdId: householdId(),
    id: id(),
    title: text("title").notNull(),
    way: text("way").notNull(),
    makesAmount: doublePrecision("makes_amount").notNull(),
    makesUnit: text("makes_unit").notNull(),
    /** Key of the tested canning process; null where there is none. */
    process: text("process"),
    /** book = came with the product, own = written by the household. */
    origin: text("origin").notNull().default("own"),
    /** NewRecipe without the columns above. */
    body: jsonb("body").$type<Record<string, unknown>>().notNull(),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "recipes_pk", columns: [t.householdId, t.id] }),
    ofHousehold("recipes", t.householdId),
    check("recipes_way", sql`${t.way} in ('eat','cook','freeze','bottle','dry','pickle','ferment','store','give')`),
    check("recipes_origin", sql`${t.origin} in ('book','own')`),
    check("recipes_makes", sql`${t.makesAmount} > 0`),
  ],
);

/** Which recipe uses what another recipe makes. */
export const recipeParts = pgTable(
  "recipe_parts",
  {
    householdId: householdId(),
    recipeId: uuid("recipe_id").notNull(),
    partId: uuid("part_id").notNull(),
  },
  (t) => [
    primaryKey({ name: "recipe_parts_pk", columns: [t.householdId, t.recipeId, t.partId] }),
    ofHousehold("recipe_parts", t.householdId),
    foreignKey({ name: "recipe_parts_recipe_fk", columns: [t.householdId, t.recipeId], foreignColumns: [recipes.householdId, recipes.id] }).onDelete("cascade"),
    foreignKey({ name: "recipe_parts_part_fk", columns: [t.householdId, t.partId], foreignColumns: [recipes.householdId, recipes.id] }),
    check("recipe_parts_not_itself", sql`${t.recipeId} <> ${t.partId}`),
  ],
);

/** A way chosen for a week: so many batches of a recipe. */
export const planLines = pgTable(
  "plan_lines",
  {
    householdId: householdId(),
    id: id(),
    week: text("week").notNull(),
    recipeId: uuid("recipe_id").notNull(),
    batches: integer("batches").notNull(),
    recordedAt: recordedAt(),
    version: version(),
  },
  (t) => [
    primaryKey({ name: "plan_lines_pk", columns: [t.householdId, t.id] }),
    ofHousehold("plan_lines", t.householdId),
    foreignKey({ name: "plan_lines_recipe_fk", columns: [t.householdId, t.recipeId], foreignColumns: [recipes.householdId, recipes.id] }),
    index("plan_lines_week").on(t.householdId, t.week),
    check("plan_lines_week", sql`${t.week} ~ '^[0-9]{4}-W(0[1-9]|[1-4][0-9]|5[0-3])$'`),
    check("plan_lines_batches", sql`${t.batches} > 0`),
  ],
);
