/** Compares a reading with a hand-made label: lower case, ½ as 1/2, units in the singular, marks left aside. */
import { readFileSync } from "node:fs";
import { readIngredient } from "#shared/engines/measures/read-line.ts";
import { singular } from "#shared/engines/measures/names.ts";
import type { MeasureTables, ReadLine } from "#shared/engines/measures/types.ts";

export interface LabelledLine {
  readonly source: string;
  readonly input: string;
  readonly amounts: readonly string[];
  readonly units: readonly string[];
  readonly name: string;
}

/** Which of the lines were looked at while the rules were written; null where the file is another. The rest is never looked at, only counted. */
export function seenLines(lines: number): readonly boolean[] | null {
  const half = JSON.parse(readFileSync(new URL("../cases/measures/seen-half.json", import.meta.url), "utf8")) as { lines: number; seen: string[] };
  if (half.lines !== lines) return null;
  return [...half.seen.join("")].flatMap((digit) => [8, 4, 2, 1].map((bit) => (parseInt(digit, 16) & bit) !== 0)).slice(0, lines);
}

export interface LineScore {
  readonly amounts: boolean;
  readonly units: boolean;
  readonly name: boolean;
  readonly read: { readonly amounts: readonly string[]; readonly units: readonly string[]; readonly name: string };
}

export function scoreLine(label: LabelledLine, tables: MeasureTables): LineScore {
  const line = readIngredient(label.input, tables);
  const read = { amounts: line.amounts.map((a) => a.text).filter((text) => text !== ""), units: unitsInOrder(line), name: line.food };
  const same = (a: readonly string[], b: readonly string[]): boolean => a.join("|") === b.join("|");
  return {
    amounts: same(read.amounts.map(lower), label.amounts.map(lower)),
    units: same(
      read.units.map((unit) => unitWord(unit, tables)),
      label.units.map((unit) => unitWord(unit, tables)),
    ),
    name: nameWords(read.name, tables) === nameWords(label.name, tables),
    read,
  };
}

/** As printed: the container of a sized amount stands behind its size. */
function unitsInOrder(line: ReadLine): string[] {
  const [first, ...rest] = line.amounts;
  if (!first) return [];
  const each = rest.filter((amount) => amount.role === "each");
  const others = rest.filter((amount) => amount.role !== "each");
  return [...each, first, ...others].flatMap((amount) => amount.unitWords);
}

const lower = (text: string): string => text.toLowerCase();

/** The singular of a unit as printed: lbs, pts, inches. */
function unitWord(text: string, tables: MeasureTables): string {
  const low = text.toLowerCase();
  const shorter = [low.slice(0, -2), low.slice(0, -1)].find((stem) => low === `${stem}s` || low === `${stem}es` ? tables.words.get(stem)?.unit != null && tables.words.get(stem)?.unit === tables.words.get(low)?.unit : false);
  return shorter ?? singular(low);
}

function nameWords(name: string, tables: MeasureTables): string {
  return name
    .toLowerCase()
    .replace(/’/g, "'")
    .split(/[^\p{L}\p{N}'%&/-]+/u)
    .map((word) => word.replace(/^['/-]+|['/-]+$/g, ""))
    .filter((word) => word !== "")
    .map((word) => (tables.words.get(word)?.unit ? singular(word) : word))
    .join(" ");
}
