import { check, jsonb, pgTable, primaryKey, text, uuid } from "drizzle-orm/pg-core";
import { sql } from "drizzle-orm";
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
    /** Ids in the register, a space between several. */
    source: text("source").notNull(),
  },
  (t) => [primaryKey({ name: "reference_rows_pk", columns: [t.kind, t.key] }), check("reference_rows_source", sql`${t.source} <> ''`)],
);

/** Recipes that come with the product, copied to each household when it is set up. */
export const bookRecipes = pgTable("book_recipes", {
  id: uuid("id").primaryKey(),
  /** NewRecipe of the contract. */
  recipe: jsonb("recipe").$type<Record<string, unknown>>().notNull(),
  /** What its times and temperatures rest on: ids in the register, and the passage in the publication. */
  sources: jsonb("sources").$type<{ id: string; text: string }[]>().notNull().default([]),
});
