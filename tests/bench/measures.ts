/**
 * How many lines labelled by hand are read as the label has them, and how many are read in a second in one thread. A label and a reading are
 * compared in lower case, with ½ as 1/2 and units in the singular; a whole line is right when its amounts, units and name are. Only reading is
 * timed, not the comparing. `--worst N` prints lines that were read otherwise, those with most wrong first. Of a file that the list of seen lines fits
 * (tests/cases/measures/seen-half.json) both halves are counted, and only lines of the half that was looked at are ever printed.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { measureTables, readIngredient, type MeasureTables } from "#shared/engines/measures/index.ts";
import { scoreLine, seenLines, type LabelledLine, type LineScore } from "#tests/support/labelled-lines.ts";
import { seedRows } from "#tests/support/reference-rows.ts";

type Scored = LineScore & { readonly label: LabelledLine };

/** Long enough that the machine has compiled what it runs, short enough to be asked often. */
const LEAST_TIMED_MS = 1_500;

export async function run(args: string[]): Promise<Record<string, unknown>> {
  const { values } = parseArgs({ args, options: { lines: { type: "string" }, worst: { type: "string", default: "0" } } });
  if (values.lines === undefined) throw new Error("say which lines: --lines F.jsonl (one object a line: input, amounts, units, name)");
  const worst = Number(values.worst);
  if (!Number.isInteger(worst) || worst < 0) throw new RangeError("--worst takes a whole number");
  const labels = labelsIn(values.lines);
  const tables = measureTables(seedRows("measures"));
  const linesPerSecond = speedOf(labels.map(({ input }) => input), tables);
  const scored = labels.map((label): Scored => ({ label, ...scoreLine(label, tables) }));
  const seen = seenLines(labels.length);
  const halves = seen && { seen: sharesOf(scored.filter((_, i) => seen[i])), unseen: sharesOf(scored.filter((_, i) => !seen[i])) };
  const sets = [...new Set(labels.map(({ source }) => source))].sort();
  const all = sharesOf(scored);
  process.stderr.write(`${all.lines} lines: amounts ${percent(all.amountRight)}, units ${percent(all.unitRight)}, names ${percent(all.nameRight)}, whole lines ${percent(all.allRight)}; ${linesPerSecond} lines a second\n`);
  for (const [half, shares] of Object.entries(halves ?? {})) process.stderr.write(`  ${half}: amounts ${percent(shares.amountRight)}, units ${percent(shares.unitRight)}, names ${percent(shares.nameRight)}, whole lines ${percent(shares.allRight)}\n`);
  printWorst(seen ? scored.filter((_, i) => seen[i]) : scored, worst);
  return { ...all, linesPerSecond, ...(halves ? { byHalf: halves } : {}), bySet: Object.fromEntries(sets.map((set) => [set, sharesOf(scored.filter(({ label }) => label.source === set))])) };
}

/** Each line of the file is an object of its own; the place of a bad one is named. */
function labelsIn(file: string): LabelledLine[] {
  const lines = readFileSync(file, "utf8").split(/\r?\n/);
  const labels = lines.flatMap((line, i): LabelledLine[] => {
    if (line.trim() === "") return [];
    const { source = "all", input, amounts = [], units = [], name = "" } = parsed(line, `${file}, line ${i + 1}`);
    if (typeof input !== "string") throw new Error(`${file}, line ${i + 1}: has no input`);
    return [{ source, input, amounts, units, name }];
  });
  if (labels.length === 0) throw new Error(`${file} holds no lines`);
  return labels;
}

function parsed(line: string, where: string): Partial<LabelledLine> {
  try {
    return JSON.parse(line) as Partial<LabelledLine>;
  } catch {
    throw new Error(`${where}: is not JSON`);
  }
}

function sharesOf(scored: readonly Scored[]): { lines: number; amountRight: number; unitRight: number; nameRight: number; allRight: number } {
  const share = (right: (score: Scored) => boolean): number => Math.round((scored.filter(right).length / scored.length) * 10_000) / 10_000;
  return { lines: scored.length, amountRight: share((s) => s.amounts), unitRight: share((s) => s.units), nameRight: share((s) => s.name), allRight: share((s) => wrongIn(s) === 0) };
}

const wrongIn = (score: LineScore): number => [score.amounts, score.units, score.name].filter((right) => !right).length;

/** The middle one of many passes, so that a moment in which the machine did something else does not count. */
function speedOf(inputs: readonly string[], tables: MeasureTables): number {
  const pass = (): number => {
    const began = performance.now();
    for (const input of inputs) readIngredient(input, tables);
    return performance.now() - began;
  };
  pass();
  const passesMs: number[] = [];
  for (let spentMs = 0; spentMs < LEAST_TIMED_MS || passesMs.length < 3; spentMs += passesMs[passesMs.length - 1] as number) passesMs.push(pass());
  const middleMs = passesMs.sort((a, b) => a - b)[Math.floor(passesMs.length / 2)] as number;
  return Math.round((inputs.length * 1000) / middleMs);
}

function printWorst(scored: readonly Scored[], most: number): void {
  const wrong = scored.filter((score) => wrongIn(score) > 0).sort((a, b) => wrongIn(b) - wrongIn(a));
  for (const { label, read } of wrong.slice(0, most)) {
    process.stderr.write(`\n${label.input}\n  label:   ${saying(label)}\n  reading: ${saying(read)}\n`);
  }
}

const saying = ({ amounts, units, name }: { readonly amounts: readonly string[]; readonly units: readonly string[]; readonly name: string }): string => `${amounts.join(", ")} | ${units.join(", ")} | ${name}`;
const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
