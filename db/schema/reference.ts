import { index, jsonb, pgTable, primaryKey, text } from "drizzle-orm/pg-core";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";

/** The register of publications that reference rows point at. Reference tables belong to no household and are read-only to the app. */
export const sources = pgTable("sources", {
  id: text("id").primaryKey(),
  /** Author, title, year, table. */
  text: text("text").notNull(),
  licence: text("licence"),
});

export const crops = pgTable("crops", {
  slug: text("slug").primaryKey(),
  facts: jsonb("facts").$type<CropFacts>().notNull(),
});

/** Tested canning processes, blanching, keeping, household weights, eating figures: one row each, as seed-data has it. */
export const referenceRows = pgTable(
  "reference_rows",
  {
    kind: text("kind").notNull(),
    key: text("key").notNull(),
    facts: jsonb("facts").$type<Record<string, unknown>>().notNull(),
    source: text("source").notNull(),
  },
  (t) => [primaryKey({ name: "reference_rows_pk", columns: [t.kind, t.key] }), index("reference_rows_kind").on(t.kind)],
);

/** Recipes that come with the product, copied to each household when it is set up. */
export const bookRecipes = pgTable("book_recipes", {
  id: text("id").primaryKey(),
  recipe: jsonb("recipe").$type<Record<string, unknown>>().notNull(),
});
