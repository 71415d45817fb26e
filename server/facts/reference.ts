/** The book: reference tables that belong to no household and change only when the service is started anew, so they are read once and kept. */
import { bookRecipes, crops, referenceRows, sources } from "#db/schema/index.ts";
import type { Db } from "#db/client.ts";
import { measureTables, type MeasureTables } from "#shared/engines/measures/index.ts";
import { preservationTables, type PreservationTables } from "#shared/engines/preservation/index.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import { amount, readRows, text } from "#shared/kernel/reference-row.ts";
import type { EatsRow } from "#shared/planning/book-eats.ts";
import { lineReader, type ReadLine } from "./ingredients.ts";

export interface Reference {
  /** By slug, in the order of their names. */
  readonly crops: ReadonlyMap<string, CropFacts>;
  /** What a source code stands for: author, title, year. */
  readonly sources: ReadonlyMap<string, string>;
  readonly eats: readonly EatsRow[];
  /** What each recipe of the book rests on, by its id. */
  readonly recipeSources: ReadonlyMap<string, readonly { readonly id: string; readonly text: string }[]>;
  readonly preservation: PreservationTables;
  readonly measures: MeasureTables;
  readonly readLine: ReadLine;
}

export type ReferenceBooks = () => Promise<Reference>;

/** The tables as a value that is loaded when first asked for; a load that failed is tried again. */
export function referenceBooks(db: Db): ReferenceBooks {
  let held: Promise<Reference> | null = null;
  return () => {
    held ??= load(db).catch((error: unknown) => {
      held = null;
      throw error;
    });
    return held;
  };
}

function load(db: Db): Promise<Reference> {
  return db.outside(async (tx) => {
    const cropRows = await tx.select().from(crops);
    const publications = await tx.select({ id: sources.id, text: sources.text }).from(sources);
    const rows = await tx.select().from(referenceRows).orderBy(referenceRows.kind, referenceRows.key);
    const cited = await tx.select({ id: bookRecipes.id, sources: bookRecipes.sources }).from(bookRecipes);
    const facts = cropRows.map((row) => row.facts).sort((a, b) => a.name.localeCompare(b.name, "en"));
    const measures = measureTables(rows, publications);
    return {
      crops: new Map(facts.map((crop) => [crop.slug, crop])),
      sources: new Map(publications.map((publication) => [publication.id, publication.text])),
      eats: readRows(rows, "eats", { crop: text, gramsPerPersonWeek: amount }),
      recipeSources: new Map(cited.map((recipe) => [recipe.id, recipe.sources])),
      preservation: preservationTables(rows, publications),
      measures,
      readLine: lineReader(measures),
    };
  });
}
