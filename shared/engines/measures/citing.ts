import type { SourceRef } from "../../kernel/outcome.ts";
import type { MeasureTables } from "./types.ts";

/** Publication and row. */
export function sourceOf(row: { readonly source: string; readonly page: string }, tables: MeasureTables): SourceRef {
  return { id: row.source, text: `${tables.publications.get(row.source) ?? row.source}: ${row.page}` };
}
