/**
 * Question: for this food, pack, jar and canner at this altitude, which minutes and which gauge pressure were tested?
 * Units: altitude in metres in, bands in feet (1 ft = 0.3048 m exactly), minutes, psi.
 * Source: the rows of seed-data/preservation/canning.json. A figure is looked up or it is not there.
 */
import type { Outcome } from "../../kernel/outcome.ts";
import { sourceOf } from "./citing.ts";
import { bandWords, CANNER_WORDS, lineOf, sheetOf } from "./sentences.ts";
import type { AltitudeBand, Canner, CanningRow, Jar, PreservationTables } from "./types.ts";

export interface ProcessQuestion {
  /** Food key such as tomato-crushed. */
  readonly food: string;
  readonly pack: "hot" | "raw";
  readonly jar: Jar;
  readonly canner: Canner;
  readonly altitudeM: number;
  /** Picks one of the pressure options where the guide lists several. */
  readonly minutes?: number;
}

export interface TestedFigure {
  readonly row: CanningRow;
  readonly band: AltitudeBand;
}

export interface TestedProcess extends TestedFigure {
  /** Every listed option with a figure at this altitude, in the guide's order; the first is `row` and `band`. */
  readonly options: readonly TestedFigure[];
}

export interface ProcessLine extends TestedFigure {
  /** Hot pack, quart jars, boiling-water canner: 45 min */
  readonly text: string;
}

export interface ProcessSheet {
  readonly lines: readonly ProcessLine[];
  /** The lines, then headspace, acid and what the guide adds, each a plain sentence. */
  readonly sentences: readonly string[];
}

/** The tested figure, or null with the reason in `notes`. */
export function testedProcess(question: ProcessQuestion, tables: PreservationTables): Outcome<TestedProcess | null> {
  const ofFood = tables.canning.filter((row) => row.food === question.food);
  const first = ofFood[0];
  if (!first) return none(`No tested process for ${question.food}. Freeze it, or choose a tested recipe.`);
  const notes: string[] = [];
  const listed = (jar: Jar): CanningRow[] =>
    ofFood.filter((row) => row.pack === question.pack && row.jar === jar && row.canner === question.canner && (question.minutes === undefined || row.bands.some((b) => b.minutes === question.minutes)));
  let rows = listed(question.jar);
  const equal = tables.jars.find((jar) => jar.jar === question.jar);
  if (rows.length === 0 && equal) {
    rows = listed(equal.takesTimeOf);
    if (rows.length > 0) notes.push(`A ${equal.jar} jar takes the time of a ${equal.takesTimeOf} jar (${equal.page}).`);
  }
  if (rows.length === 0) return none(`${first.title}: not tested for ${question.pack} pack in ${question.jar} jars by ${CANNER_WORDS[question.canner]} (${first.page}).`);
  const options = rows.flatMap((row) => figureAt(row, question.altitudeM));
  const best = options[0];
  if (!best) return none(...rows.map((row) => outsideBands(row)));
  if (question.altitudeM < 0) notes.push("Below sea level: the first band of the guide, which starts at 0 ft.");
  return { value: { ...best, options }, basis: [sourceOf(best.row, tables)], notes };
}

/** Every row of a food, or the one row of a key, with its figure at this altitude. */
export function processesFor(key: string, altitudeM: number, tables: PreservationTables): Outcome<ProcessSheet> {
  const rows = rowsOf(key, tables);
  if (rows.length === 0) return { value: { lines: [], sentences: [] }, basis: [], notes: [`No tested process for ${key}. Freeze it, or choose a tested recipe.`] };
  const lines = rows.flatMap((row) => figureAt(row, altitudeM)).map((figure) => ({ ...figure, text: lineOf(figure.row, figure.band) }));
  const outside = rows.filter((row) => figureAt(row, altitudeM).length === 0).map(outsideBands);
  return {
    value: { lines, sentences: lines.length === 0 ? [] : sheetOf(lines) },
    basis: [...new Map(rows.map((row) => [row.page, sourceOf(row, tables)])).values()],
    notes: [...new Set(outside)],
  };
}

/**
 * Minutes to boil home-canned low-acid food before it is tasted: the rule's own, and one more for every 1,000 ft begun from 1,000 ft on (NAL-canning,
 * citing the National Center for Home Food Preservation). Null where the tables have no such rule.
 */
export function boilBeforeTastingMin(altitudeM: number, tables: PreservationTables): number | null {
  const minutes = tables.rules.find((rule) => rule.key === "boil-before-eating")?.value ?? null;
  return minutes === null || altitudeM < 1000 * FOOT_M - 1e-6 ? minutes : minutes + Math.ceil(altitudeM / (1000 * FOOT_M) - 1e-9);
}

const FOOT_M = 0.3048;

/** True for a food of the tested tables and for a row's own key. */
export function isTestedProcess(key: string, tables: PreservationTables): boolean {
  return rowsOf(key, tables).length > 0;
}

export function rowsOf(key: string, tables: PreservationTables): readonly CanningRow[] {
  return tables.canning.filter((row) => row.food === key || row.key === key);
}

/** None or one. An altitude between two whole feet takes the higher band, which is the stricter. */
function figureAt(row: CanningRow, altitudeM: number): TestedFigure[] {
  const band = row.bands.find((b) => b.toFt === null || !isAbove(altitudeM, b.toFt));
  return band ? [{ row, band }] : [];
}

/** Compared in tenths of a millimetre, in which both a centimetre and a foot are whole numbers. */
function isAbove(altitudeM: number, ft: number): boolean {
  return Math.ceil(altitudeM * 100 - 1e-6) * 100 > ft * 3048;
}

function outsideBands(row: CanningRow): string {
  const last = row.bands[row.bands.length - 1] as AltitudeBand;
  return `${row.title}, ${row.jar} jars by ${CANNER_WORDS[row.canner]}: no tested figure above ${bandWords(last.toFt ?? 0)} (${row.page}). Ask your local extension service or food-safety authority.`;
}

function none(...notes: string[]): Outcome<null> {
  return { value: null, basis: [], notes: [...new Set(notes)] };
}
