/**
 * Question: can this food be kept this way, in this jar, at this altitude? The tested figures with their sources, or a refusal with what to do instead.
 * Source: the rows that are handed in; a figure is looked up or it is not there.
 */
import type { SourceRef } from "../../kernel/outcome.ts";
import { boilBeforeTastingMin, rowsOf } from "./canning.ts";
import { cautionsFor } from "./cautions.ts";
import { sourceOf } from "./citing.ts";
import { figuresFor, type Figure } from "./figures.ts";
import { keepsIn, type Kept } from "./kept.ts";
import { processSheets, type ProcessAnswer } from "./process-sheets.ts";
import { safeWays, type KeepingWay } from "./safe-ways.ts";
import type { Canner, Jar, PreservationTables, RefusalRow } from "./types.ts";

export interface KeepQuestion {
  readonly name: string;
  /** What was asked for in its own words; finds refusals that belong to no crop: pesto, purée, bread. */
  readonly words: string;
  readonly crop: string | null;
  /** Key of a tested food. */
  readonly process: string | null;
  readonly way: KeepingWay;
  readonly jar: Jar | null;
  readonly canner: Canner | null;
  /** Null when nobody has said how high the kitchen lies. */
  readonly altitudeM: number | null;
}

export interface KeepAnswer {
  readonly may: boolean;
  readonly answer: string;
  readonly processes: readonly ProcessAnswer[];
  readonly figures: readonly Figure[];
  readonly keeps: readonly Kept[];
  readonly never: readonly { readonly text: string; readonly source: SourceRef }[];
  readonly instead: readonly { readonly way: string; readonly text: string }[];
  readonly cautions: readonly string[];
  readonly sources: readonly SourceRef[];
}

const IN_JARS: readonly KeepingWay[] = ["bottle", "pickle"];
const NO_MINUTES = "No minutes are shown until your height above the sea is known.";
const WAY_WORDS: Readonly<Record<KeepingWay, string>> = { freeze: "freezing", dry: "drying", pickle: "pickling", bottle: "bottling", ferment: "fermenting", store: "storing" };

export function keepAnswer(question: KeepQuestion, tables: PreservationTables): KeepAnswer {
  const { way, crop, process, altitudeM } = question;
  const processes = way === "freeze" || way === "dry" || way === "store" ? [] : processSheets(question, tables);
  const figures = crop === null ? [] : figuresFor(crop, way, tables);
  const refusals = refusalsFor(question, tables);
  const withFigures = processes.some(({ lines }) => lines.length > 0);
  const tested = withFigures || (processes.length > 0 && altitudeM === null);
  const may = IN_JARS.includes(way) ? tested : figures.length > 0 || (way === "ferment" && tested);
  const keeps = may ? keepsIn(question, withFigures, tables) : [];
  const never = [...refusals, ...(may ? [] : rulesFor(question, processes, tables)), ...(IN_JARS.includes(way) ? methodsNever(tables) : [])].map((row) => ({ text: neverText(row), source: sourceOf({ source: row.source, page: row.page }, tables) }));
  const crops = crop === null ? [] : [crop];
  return {
    may,
    answer: sentence(question, may, processes, refusals.length > 0),
    processes,
    figures,
    keeps,
    never,
    instead: may ? [] : insteadOf(question, refusals, tables),
    cautions: [...tastingHere(processes, altitudeM, tables), ...cautionsFor({ way, crops, process: process ?? processes[0]?.key ?? null, topics: ["at-risk", "authority"] }, tables)],
    sources: distinct([...processes.flatMap(({ sources }) => sources), ...figures.map(({ source }) => source), ...keeps.map(({ source }) => source), ...never.map(({ source }) => source)]),
  };
}

function sentence({ name, way, jar, canner, altitudeM }: KeepQuestion, may: boolean, processes: readonly ProcessAnswer[], refused: boolean): string {
  const unplaced = processes.length > 0 && altitudeM === null;
  if (may && refused) return `Only as exactly the tested process below; other forms of it are refused, see what must never be done.${unplaced ? ` ${NO_MINUTES}` : ""}`;
  if (may && unplaced) return `Yes, by a tested process. ${NO_MINUTES}`;
  if (may) return IN_JARS.includes(way) ? "Yes, by exactly the tested process below." : `Yes: ${WAY_WORDS[way]} is covered by the tables.`;
  if (processes.length > 0) return `No tested figure for ${jar === null && canner === null ? "this altitude" : "this jar, canner and altitude"}. Ask your local extension service or food-safety authority, or keep it another way.`;
  return `No: ${WAY_WORDS[way]} ${name} has no ${IN_JARS.includes(way) ? "tested process" : "row in the tables"}. It is not guessed.`;
}

/** Foods that are refused by name or as a crop; only where it goes into jars. */
function refusalsFor({ crop, way, words, process }: KeepQuestion, tables: PreservationTables): readonly RefusalRow[] {
  if (!IN_JARS.includes(way)) return [];
  const asked = words.toLowerCase().split(/[^\p{L}]+/u).filter((word) => word.length >= 4);
  return tables.refusals.filter((row) => {
    if (row.of !== "food") return false;
    if (crop !== null && row.crops.includes(crop)) return true;
    const said = row.mustNot.toLowerCase().split(/[^\p{L}]+/u);
    return crop === null && process === null && asked.some((word) => said.some((one) => one === word || one === `${word}s` || `${one}s` === word || one === `${word}ed`));
  });
}

/** The rule that a refusal rests on: no row, or none so high. */
function rulesFor({ way }: KeepQuestion, processes: readonly ProcessAnswer[], tables: PreservationTables): readonly RefusalRow[] {
  if (!IN_JARS.includes(way)) return [];
  const key = processes.length > 0 ? "rule/above-last-band" : "rule/no-row";
  return tables.refusals.filter((row) => row.key === key || row.key === "rule/own-recipe");
}

/** One row for all methods that are no canning: an oven, a dishwasher, an open kettle. */
function methodsNever(tables: PreservationTables): RefusalRow[] {
  const methods = tables.refusals.filter((row) => row.of === "method");
  const [first] = methods;
  return first ? [{ ...first, key: "methods", mustNot: methods.map((row) => row.mustNot.replace(/^use /, "")).join("; "), page: [...new Set(methods.map((row) => row.page))].join("; ") }] : [];
}

/** What a jar of low-acid food asks for at this height when it is opened. */
function tastingHere(processes: readonly ProcessAnswer[], altitudeM: number | null, tables: PreservationTables): string[] {
  const low = processes.some(({ key }) => rowsOf(key, tables).some((row) => row.kind === "low-acid"));
  const minutes = altitudeM === null || !low ? null : boilBeforeTastingMin(altitudeM, tables);
  return minutes === null ? [] : [`At your height boil a jar of this ${minutes} minutes before anybody tastes it.`];
}

const neverText = (row: RefusalRow): string => `Never ${row.mustNot}${row.why === null ? "" : `: ${row.why}`}. Instead: ${row.instead}.`;

function insteadOf({ crop, way }: KeepQuestion, refusals: readonly RefusalRow[], tables: PreservationTables): { way: string; text: string }[] {
  const open = crop === null ? [] : safeWays(crop, tables).filter((one) => one.open && one.way !== way).map((one) => ({ way: one.way, text: one.why }));
  const named = refusals.map((row) => ({ way: "other", text: `${row.instead.charAt(0).toUpperCase()}${row.instead.slice(1)}.` }));
  return [...open, ...named, { way: "eat", text: "Eat it fresh, or cook it and keep it in the fridge for 3 to 4 days or in the freezer." }];
}

const distinct = (sources: readonly SourceRef[]): SourceRef[] => [...new Map(sources.map((one) => [`${one.id} ${one.text}`, one])).values()];

