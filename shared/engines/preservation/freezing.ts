/** Question: how is a crop made ready for the freezer? Minutes in boiling water or steam, by cut. Source: each row's publication. */
import type { Outcome } from "../../kernel/outcome.ts";
import { sourceOf } from "./citing.ts";
import type { BlanchingRow, PreservationTables } from "./types.ts";

/** Rows of a crop; empty with the reason where the tables have none. */
export function blanching(crop: string, tables: PreservationTables): Outcome<readonly BlanchingRow[]> {
  const rows = tables.blanching.filter((row) => row.crop === crop);
  if (rows.length === 0) return { value: [], basis: [], notes: [`No blanching time for ${crop} in the tables.`] };
  const high = tables.rules.find((rule) => rule.key === "blanching-altitude");
  const notes = [
    ...new Set(rows.flatMap((row) => (row.note === null ? [] : [`${row.cut}: ${row.note}`]))),
    ...(rows.some((row) => row.fromMemory) ? ["Some of these times are from memory: check them with your extension service."] : []),
    ...(high && rows.some((row) => row.how === "blanch") ? [`From 5,000 ft (1,524 m) blanch ${high.value} minute longer (${high.page}).`] : []),
  ];
  return { value: rows, basis: [...new Map(rows.map((row) => [row.source, sourceOf(row, tables)])).values()], notes };
}
