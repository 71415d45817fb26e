/** Rows of seed-data in the shape in which the database hands them back. */
import { readFileSync, readdirSync } from "node:fs";
import type { ReferenceRow } from "#shared/kernel/reference-row.ts";

interface SeedFile {
  readonly sources: readonly { readonly id: string; readonly text: string }[];
  readonly rows: readonly (Record<string, unknown> & { readonly key: string; readonly source: string })[];
}

/** All rows of one folder of seed-data; the kind is folder/file. */
export function seedRows(folder: string): ReferenceRow[] {
  return seedFiles(folder).flatMap(([name, file]) => file.rows.map(({ key, source, ...facts }) => ({ kind: `${folder}/${name}`, key, facts, source })));
}

export function seedSources(folder: string): { id: string; text: string }[] {
  return seedFiles(folder).flatMap(([, file]) => [...file.sources]);
}

function seedFiles(folder: string): [string, SeedFile][] {
  const here = new URL(`../../seed-data/${folder}/`, import.meta.url);
  return readdirSync(here)
    .filter((name) => name.endsWith(".json"))
    .map((name) => [name.slice(0, -5), JSON.parse(readFileSync(new URL(name, here), "utf8")) as SeedFile]);
}

/** A file of tests/cases. */
export function readCases<T>(path: string): readonly T[] {
  return (JSON.parse(readFileSync(new URL(`../cases/${path}`, import.meta.url), "utf8")) as { cases: T[] }).cases;
}
