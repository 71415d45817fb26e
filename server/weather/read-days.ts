/** Daily weather as CSV: columns by name, every bad row named with the line of the file (the header is line 1), all or none. */
import { parse } from "csv-parse/sync";
import { Day } from "#shared/contracts/common.ts";
import { ok, refuse, type FieldFault, type Result } from "#shared/kernel/outcome.ts";

export interface WeatherRow {
  readonly day: string;
  readonly tmaxTenths: number;
  readonly tminTenths: number;
}

const COLUMNS = ["date", "tmax_c", "tmin_c"] as const;
type Column = (typeof COLUMNS)[number];
const MOST_ROWS = 50_000;
/** Outside of this is a slip of the pen: the records of the World Meteorological Organization are 56.7 and −89.2 °C. */
const COLDEST_C = -90;
const HOTTEST_C = 60;
/** So that one wrong column does not answer with a document longer than the file. */
const MOST_FAULTS = 100;

interface Line {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

export function readDays(csv: string): Result<WeatherRow[]> {
  const read = split(csv);
  if (!read.ok) return read;
  const [header, ...lines] = read.value;
  const names = (header?.record ?? []).map((name) => name.trim().toLowerCase());
  const missing = COLUMNS.filter((column) => !names.includes(column));
  const twice = COLUMNS.filter((column) => names.indexOf(column) !== names.lastIndexOf(column));
  if (missing.length + twice.length > 0)
    return refuse("bad-request", `The first line must name the columns date, tmax_c and tmin_c, each once.${hintFor(names)}`, [
      ...missing.map((column) => ({ path: `rows.1.${column}`, message: "there is no column of this name" })),
      ...twice.map((column) => ({ path: `rows.1.${column}`, message: "there are two columns of this name" })),
    ]);
  if (lines.length === 0) return refuse("bad-request", "There is no day in the file.", [{ path: "rows", message: "there is no row below the header" }]);
  if (lines.length > MOST_ROWS) return refuse("too-large", `More than ${MOST_ROWS} rows; send the years in several files.`);
  const at = (column: Column) => names.indexOf(column);
  return rowsOf(lines, { date: at("date"), tmax_c: at("tmax_c"), tmin_c: at("tmin_c") });
}

/** What a spreadsheet writes where the comma is the decimal sign. */
function hintFor(names: readonly string[]): string {
  const inOne = names.find((name) => name.includes(";") || name.includes("\t"));
  if (inOne === undefined) return "";
  return ` The columns of this file are parted by ${inOne.includes(";") ? "semicolons" : "tabs"}: save it with commas between the columns, and with a point in numbers, such as 21.4.`;
}

function split(csv: string): Result<Line[]> {
  try {
    return ok(parse(csv, { bom: true, info: true, skip_empty_lines: true, relax_column_count: true, trim: true, max_record_size: 20_000 }) as unknown as Line[]);
  } catch (error) {
    const line = typeof error === "object" && error !== null && "lines" in error ? Number(error.lines) : 1;
    return refuse("bad-request", "The file cannot be read as CSV (RFC 4180).", [{ path: `rows.${line}`, message: "the quotes in this line do not close as they should" }]);
  }
}

function rowsOf(lines: readonly Line[], columns: Readonly<Record<Column, number>>): Result<WeatherRow[]> {
  const rows: WeatherRow[] = [];
  const faults: FieldFault[] = [];
  const seen = new Map<string, number>();
  for (const { record, info } of lines) {
    const cell = (column: Column): string => record[columns[column]] ?? "";
    const line = info.lines;
    const wrong = faultsOf(cell, line);
    const first = seen.get(cell("date"));
    if (first !== undefined) wrong.push({ path: `rows.${line}.date`, message: `${cell("date")} stands in line ${first} already` });
    else seen.set(cell("date"), line);
    if (wrong.length > 0) faults.push(...wrong);
    else rows.push({ day: cell("date"), tmaxTenths: tenths(cell("tmax_c")), tminTenths: tenths(cell("tmin_c")) });
  }
  if (faults.length === 0) return ok(rows);
  const more = faults.length > MOST_FAULTS ? ` The first ${MOST_FAULTS} are named.` : "";
  return refuse("bad-request", `${faults.length} ${faults.length === 1 ? "cell does" : "cells do"} not fit, so no day was stored.${more}`, faults.slice(0, MOST_FAULTS));
}

function faultsOf(cell: (column: Column) => string, line: number): FieldFault[] {
  const faults: FieldFault[] = [];
  const day = Day.safeParse(cell("date"));
  if (!day.success) faults.push({ path: `rows.${line}.date`, message: `"${cell("date")}" ${day.error.issues[0]?.message ?? "is no day"}` });
  for (const column of ["tmax_c", "tmin_c"] as const) {
    const fault = temperatureFault(cell(column));
    if (fault) faults.push({ path: `rows.${line}.${column}`, message: fault });
  }
  if (faults.length === 0 && tenths(cell("tmax_c")) < tenths(cell("tmin_c")))
    faults.push({ path: `rows.${line}.tmax_c`, message: `the maximum ${cell("tmax_c")} is below the minimum ${cell("tmin_c")}` });
  return faults;
}

function temperatureFault(text: string): string | null {
  if (text === "") return "is missing; leave a day out altogether if it was not measured";
  if (!/^[+-]?\d{1,3}(?:\.\d+)?$/.test(text)) return `"${text}" is not a temperature such as 21.4`;
  const celsius = Number(text);
  return celsius < COLDEST_C || celsius > HOTTEST_C ? `${text} °C is outside of what any garden has seen` : null;
}

/** Weather services publish more decimals than are measured; one is kept. */
const tenths = (text: string): number => Math.round(Number(text) * 10);
