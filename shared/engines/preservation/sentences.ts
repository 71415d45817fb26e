/** Tested rows in plain words. Figures are repeated as the guide has them; only inches and feet get a metric companion. */
import type { AltitudeBand, Canner, CanningRow } from "./types.ts";

/** Hot pack, quart jars, dial-gauge pressure canner: 20 min at 6 psi */
export function lineOf(row: CanningRow, band: AltitudeBand): string {
  const jar = row.jar === "12oz" ? "12-ounce" : row.jar;
  const pressure = band.psi === null ? "" : ` at ${band.psi} psi`;
  return `${row.pack === "hot" ? "Hot" : "Raw"} pack, ${jar} jars, ${CANNER_WORDS[row.canner]}: ${band.minutes} min${pressure}`;
}

export const CANNER_WORDS: Readonly<Record<Canner, string>> = {
  "boiling-water": "boiling-water canner",
  "pressure-dial": "dial-gauge pressure canner",
  "pressure-weighted": "weighted-gauge pressure canner",
};

/** Each line with what is only true of it (a limit of this option), each jar's acid after the lines of that jar; headspace and the other notes, each once, last. */
export function sheetOf(lines: readonly { readonly row: CanningRow; readonly text: string }[]): string[] {
  const acids = [...new Set(lines.map(({ row }) => row.acid))];
  const ofLines = acids.flatMap((acid) => [
    ...lines.filter(({ row }) => row.acid === acid).flatMap(({ row, text }) => [text, ...(isOfOption(row) ? [`${text}: ${row.note}.`] : [])]),
    ...(acid === null ? [] : [`Add ${acid}.`]),
  ]);
  const ofAll = lines.flatMap(({ row }) => [
    row.headspaceIn === null ? "" : `Leave ${inches(row.headspaceIn)} of headspace.`,
    row.note === null || isOfOption(row) ? "" : `${row.note.charAt(0).toUpperCase()}${row.note.slice(1)}.`,
  ]);
  return [...new Set([...ofLines, ...ofAll].filter((sentence) => sentence !== ""))];
}

const isOfOption = (row: CanningRow): boolean => row.note?.includes("this option") ?? false;

/** 8,000 ft (2,438 m) */
export function bandWords(ft: number): string {
  return `${thousands(ft)} ft (${thousands(Math.round(ft * 0.3048))} m)`;
}

const thousands = (n: number): string => String(n).replace(/\B(?=(\d{3})+$)/g, ",");

const FRACTION: Record<string, string> = { "0.125": "⅛", "0.25": "¼", "0.5": "½", "0.75": "¾", "1.25": "1¼", "1.5": "1½" };

/** An inch is 25.4 mm exactly; headspace is measured by eye, so whole millimetres do. */
export function inches(inch: number): string {
  return `${FRACTION[String(inch)] ?? inch} in (${Math.round(inch * 25.4)} mm)`;
}
