/** The tested processes of a food as sheets: the lines for one altitude, jar and canner, the acid of every jar, and what else the guide says. */
import type { SourceRef } from "../../kernel/outcome.ts";
import type { Way } from "../../kernel/way.ts";
import { processesFor, rowsOf } from "./canning.ts";
import { CANNER_WORDS } from "./sentences.ts";
import type { Canner, Jar, PreservationTables } from "./types.ts";

export interface SheetQuestion {
  readonly crop: string | null;
  readonly process: string | null;
  readonly way: Way;
  readonly jar: Jar | null;
  readonly canner: Canner | null;
  readonly altitudeM: number | null;
}

export interface ProcessAnswer {
  readonly key: string;
  readonly title: string;
  readonly lines: readonly { readonly pack: "hot" | "raw"; readonly jar: Jar; readonly canner: Canner; readonly minutes: number; readonly psi: number | null; readonly text: string }[];
  readonly acid: readonly string[];
  readonly more: readonly string[];
  readonly notes: readonly string[];
  readonly sources: readonly SourceRef[];
}

const NOT_PLACED = "No minutes yet: they depend on your height above the sea.";

export function processSheets(question: SheetQuestion, tables: PreservationTables): ProcessAnswer[] {
  const { crop, process, way } = question;
  const rows = process !== null ? rowsOf(process, tables) : tables.canning.filter((row) => crop !== null && row.crops.includes(crop));
  const keys = [...new Set(rows.filter((row) => row.way === way).map((row) => (process !== null ? process : row.food)))];
  return keys.map((key) => sheet(key, question, tables));
}

function sheet(key: string, { altitudeM, jar, canner }: SheetQuestion, tables: PreservationTables): ProcessAnswer {
  const rows = rowsOf(key, tables);
  const found = processesFor(key, altitudeM ?? 0, tables);
  const equal = jar === null || rows.some((row) => row.jar === jar) ? undefined : tables.jars.find((one) => one.jar === jar);
  const takes = equal?.takesTimeOf ?? jar;
  const lines = altitudeM === null ? [] : found.value.lines.filter(({ row }) => (takes === null || row.jar === takes) && (canner === null || row.canner === canner));
  const acids = [...new Set(rows.filter((row) => takes === null || row.jar === takes).flatMap((row) => row.acid ?? []))];
  const isLine = (text: string): boolean => found.value.lines.some((line) => text.startsWith(line.text));
  const listed = lines.length > 0 || altitudeM === null || found.value.lines.length === 0;
  return {
    key,
    title: rows[0]?.title ?? key,
    lines: lines.map(({ row, band, text }) => ({ pack: row.pack, jar: jar !== null && equal ? jar : row.jar, canner: row.canner, minutes: band.minutes, psi: band.psi, text })),
    acid: acids.map((acid) => `Add ${acid}.`),
    more: found.value.sentences.filter((text) => !isLine(text) && !text.startsWith("Add ")),
    notes: [
      ...(altitudeM === null ? [NOT_PLACED] : found.notes),
      ...(equal && lines.length > 0 ? [`A ${equal.jar} jar takes the time of a ${equal.takesTimeOf} jar (${equal.page}).`] : []),
      ...(listed ? [] : [`Not tested${jar === null ? "" : ` in ${jar} jars`}${canner === null ? "" : ` by ${CANNER_WORDS[canner]}`}: choose one that is listed (${rows[0]?.page ?? ""}).`]),
    ],
    sources: found.basis,
  };
}
