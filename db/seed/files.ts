/** Reads the files of seed-data with the line that each entry stands in. A file or folder that is not there has no entries. */
import { existsSync, readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import type { Faults, Place } from "./book.ts";

export interface CsvRow {
  readonly cells: Readonly<Record<string, string>>;
  readonly place: Place;
}

/** Columns by name. */
export function csvRows(folder: string, file: string, faults: Faults): CsvRow[] {
  const full = path.join(folder, file);
  if (!existsSync(full)) return [];
  try {
    const records = parse(readFileSync(full, "utf8"), { bom: true, columns: true, info: true, skip_empty_lines: true, trim: true }) as unknown as {
      record: Record<string, string>;
      info: { lines: number };
    }[];
    return records.map(({ record, info }) => ({ cells: record, place: () => ({ file, line: info.lines }) }));
  } catch (error) {
    faults.add(() => ({ file, line: (error as { lines?: number }).lines ?? 1 }), (error as Error).message);
    return [];
  }
}

export interface JsonFile {
  readonly file: string;
  readonly text: string;
  readonly content: Readonly<Record<string, unknown>>;
}

/** All `*.json` of a folder, in the order of their names. */
export function jsonFiles(folder: string, under: string, faults: Faults): JsonFile[] {
  const full = path.join(folder, under);
  if (!existsSync(full)) return [];
  const names = readdirSync(full).filter((name) => name.endsWith(".json")).sort();
  return names.flatMap((name) => {
    const file = `${under}/${name}`;
    const text = readFileSync(path.join(full, name), "utf8");
    try {
      const content: unknown = JSON.parse(text);
      if (isRecord(content)) return [{ file, text, content }];
      faults.add(top(file), "must be one JSON object");
    } catch (error) {
      faults.add(top(file), (error as Error).message);
    }
    return [];
  });
}

/** Where an entry stands: the first line that has this name with this value; without a name, the first that has the value. */
export function placeOf({ file, text }: JsonFile, name: string | null, value: unknown): Place {
  return () => {
    const sign = new RegExp(`${name === null ? "" : `"${name}"\\s*:\\s*`}${escape(JSON.stringify(value) ?? "")}\\s*[,}\\]\\n]`);
    const at = text.search(sign);
    return { file, line: at < 0 ? 1 : text.slice(0, at).split("\n").length };
  };
}

/** For what concerns the file as a whole. */
export const top = (file: string): Place => () => ({ file, line: 1 });

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

const escape = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
