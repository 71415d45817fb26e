import type { SourceRef } from "../../kernel/outcome.ts";
import type { PreservationTables } from "./types.ts";

/** Publication and page of a row. */
export function sourceOf(row: { readonly source: string; readonly page: string | null }, tables: PreservationTables): SourceRef {
  const publication = tables.publications.get(row.source) ?? row.source;
  return { id: row.source, text: row.page === null ? publication : `${publication}: ${row.page}` };
}
