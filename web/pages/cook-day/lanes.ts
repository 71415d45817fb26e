/** Where everything stands in the lanes: spans of minutes by hands, oven, burner and by itself. Pure; no pixels. */
import type { CookDay, Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { endOf, entriesOf, type Entry } from "./entries.ts";

export interface Stretch {
  readonly fromMin: number;
  readonly toMin: number;
}

/** What one entry of the list takes of one lane; in several loads it has several parts, never over each other in hands and burners. */
export interface Span extends Stretch {
  readonly letter: string;
  /** Numbers of the entry in the list. */
  readonly first: number;
  readonly last: number;
  readonly words: string;
  readonly parts: readonly Stretch[];
}

/** A stretch in which an oven holds one temperature and something is inside. */
export interface OvenRun extends Stretch {
  readonly c: number;
  readonly letters: readonly string[];
}

export interface Away extends Stretch {
  readonly why: string;
}

export interface HandsLane {
  readonly spans: readonly Span[];
  readonly away: readonly Away[];
  readonly busyMin: number;
}

export interface Lanes {
  readonly endMin: number;
  readonly hands: readonly HandsLane[];
  readonly ovens: readonly { readonly oven: number; readonly runs: readonly OvenRun[] }[];
  readonly burners: readonly { readonly burner: number; readonly spans: readonly Span[] }[];
  /** Rows in which spans do not overlap. */
  readonly alone: readonly (readonly Span[])[];
}

type Holds = Pick<Recipe, "id" | "holds">;

/** `recipes` say how long a pot stays on its burner between steps; without them a burner is drawn only while a step runs. */
export function lanesOf(day: CookDay, plan: Timetable, recipes: readonly Holds[] = []): Lanes {
  const entries = entriesOf(plan);
  const count = (of: (step: TimetableStep) => number | undefined): number => Math.max(0, ...plan.steps.map((step) => of(step) ?? 0));
  const numbered = (n: number): number[] => Array.from({ length: n }, (_, i) => i + 1);
  const handsOf = (cook: number): Span[] => spansOf(entries, (step) => (step.handsOnMin > 0 && step.cook === cook ? { fromMin: step.startMin, toMin: step.startMin + step.handsOnMin } : null));
  const kept = keptOnBurner(plan, recipes);
  const itself = spansOf(entries, (step) => (step.handsOffMin > 0 && step.oven === undefined && step.burner === undefined ? { fromMin: step.startMin + step.handsOnMin, toMin: endOf(step) } : null));
  return {
    endMin: Math.max(plan.endMin ?? 0, ...plan.steps.map(endOf)),
    hands: withAway(numbered(day.cooks).map(handsOf), day.unavailable),
    ovens: numbered(day.kitchen.ovens.length)
      .map((oven) => ({ oven, runs: runsOf(ovenUses(entries, oven)) }))
      .filter(({ runs }) => runs.length > 0),
    burners: numbered(count((step) => step.burner))
      .map((burner) => ({ burner, spans: unlapped(spansOf(entries, (step) => (step.burner === burner ? { fromMin: step.startMin, toMin: Math.max(endOf(step), kept.get(step) ?? 0) } : null))) }))
      .filter(({ spans }) => spans.length > 0),
    alone: stacked(itself.flatMap(apart)),
  };
}

function spansOf(entries: readonly Entry[], stretchOf: (step: TimetableStep) => Stretch | null): Span[] {
  return entries.flatMap((entry) => {
    const parts = entry.steps.flatMap((step) => stretchOf(step) ?? []).sort((a, b) => a.fromMin - b.fromMin);
    const from = parts[0]?.fromMin;
    if (from === undefined) return [];
    const words = entry.steps.length === 1 ? shortWords(entry.steps[0]?.text ?? "") : "in loads";
    return [{ fromMin: from, toMin: Math.max(...parts.map((part) => part.toMin)), letter: entry.letter, first: entry.first, last: entry.last, words, parts }];
  });
}

/** Loads that run into each other are one bracket; a pause between two of them parts it. */
function apart(span: Span): Span[] {
  const runs: { fromMin: number; toMin: number; parts: Stretch[] }[] = [];
  for (const part of span.parts) {
    const last = runs.at(-1);
    if (last && part.fromMin <= last.toMin) {
      last.toMin = Math.max(last.toMin, part.toMin);
      last.parts.push(part);
    } else runs.push({ fromMin: part.fromMin, toMin: part.toMin, parts: [part] });
  }
  return runs.map((run) => ({ ...span, ...run }));
}

/** Until which minute a pot stays on the burner that a step put it on. */
function keptOnBurner(plan: Timetable, recipes: readonly Holds[]): Map<TimetableStep, number> {
  const kept = new Map<TimetableStep, number>();
  for (const { id, holds } of recipes) {
    for (const hold of holds) {
      if (hold.what !== "burners") continue;
      const of = (name: string): TimetableStep[] => plan.steps.filter((step) => step.dish === id && step.step === name);
      const until = Math.max(0, ...of(hold.to).map(endOf));
      for (const step of of(hold.from)) kept.set(step, Math.max(until, kept.get(step) ?? 0));
    }
  }
  return kept;
}

/** A pot that stays on a burner ends where the next step on it begins: the frames of a lane stand side by side. */
function unlapped(spans: readonly Span[]): Span[] {
  const starts = spans.flatMap((span) => span.parts.map((part) => part.fromMin)).sort((a, b) => a - b);
  const cut = (part: Stretch): Stretch => ({ fromMin: part.fromMin, toMin: Math.min(part.toMin, starts.find((start) => start > part.fromMin) ?? Infinity) });
  return spans.map((span) => {
    const parts = span.parts.map(cut);
    return { ...span, parts, toMin: Math.max(...parts.map((part) => part.toMin)) };
  });
}

function ovenUses(entries: readonly Entry[], oven: number): (Stretch & { c: number; letter: string })[] {
  return entries.flatMap(({ letter, steps }) => steps.flatMap((step) => (step.oven === oven ? [{ fromMin: step.startMin, toMin: endOf(step), c: step.ovenC ?? 0, letter }] : [])));
}

/** Overlapping or touching uses at one temperature make one run. */
export function runsOf(uses: readonly (Stretch & { readonly c: number; readonly letter: string })[]): OvenRun[] {
  const runs: { fromMin: number; toMin: number; c: number; letters: string[] }[] = [];
  for (const { fromMin, toMin, c, letter } of [...uses].sort((a, b) => a.fromMin - b.fromMin)) {
    const last = runs.at(-1);
    if (last && last.c === c && fromMin <= last.toMin) {
      last.toMin = Math.max(last.toMin, toMin);
      if (!last.letters.includes(letter)) last.letters.push(letter);
    } else runs.push({ fromMin, toMin, c, letters: [letter] });
  }
  return runs;
}

/** Puts each absence into the lane of a cook who does nothing then; the last such lane, so that the first cook's stays whole. */
function withAway(lanes: readonly Span[][], absences: CookDay["unavailable"]): HandsLane[] {
  const hands = lanes.map((spans) => ({ spans, away: [] as Away[], busyMin: spans.flatMap((span) => span.parts).reduce((sum, part) => sum + part.toMin - part.fromMin, 0) }));
  for (const { fromMin, toMin, why } of absences) {
    const meets = (one: Stretch): boolean => one.fromMin < toMin && fromMin < one.toMin;
    const lane = hands.findLast(({ spans, away }) => !spans.some((span) => span.parts.some(meets)) && !away.some(meets));
    lane?.away.push({ fromMin, toMin, why: why ?? "" });
  }
  return hands;
}

/** The first words of a step, for a block that has little room: "peel and slice". */
export function shortWords(text: string): string {
  const clause = text.split(/[,;.:(]/)[0] ?? text;
  return whole(clause.toLowerCase().split(" ").slice(0, 4));
}

/** Whole words only, as many as have room, and none left hanging at the end. */
export function fitted(words: string, room: number): string {
  if (words.length <= room) return words;
  const cut = words.slice(0, room + 1).lastIndexOf(" ");
  return cut > 0 ? whole(words.slice(0, cut).split(" ")) : "";
}

const HANGING = new Set(["a", "an", "and", "at", "by", "for", "from", "in", "into", "of", "on", "or", "the", "them", "to", "until", "with", "now", "once", "half"]);

function whole(words: readonly string[]): string {
  const end = words.findLastIndex((word) => !HANGING.has(word));
  return words.slice(0, end + 1).join(" ");
}

/** As few rows as will do: each span goes into the first row that is free. */
export function stacked<T extends Stretch>(spans: readonly T[]): T[][] {
  const rows: T[][] = [];
  for (const span of [...spans].sort((a, b) => a.fromMin - b.fromMin)) {
    const row = rows.find((one) => (one.at(-1)?.toMin ?? 0) <= span.fromMin);
    if (row) row.push(span);
    else rows.push([span]);
  }
  return rows;
}

/** Where an oven's line goes: minute and °C. It is cold before its first run and cools after the last. */
export function ovenLine(runs: readonly OvenRun[], preheatMin: number, endMin: number): [minute: number, c: number][] {
  const ROOM_C = 20;
  const line: [number, number][] = [];
  for (const run of runs) {
    if (line.length === 0) line.push([Math.max(0, run.fromMin - preheatMin), ROOM_C]);
    line.push([run.fromMin, run.c], [run.toMin, run.c]);
  }
  const last = runs.at(-1);
  if (last && last.toMin < endMin) line.push([Math.min(endMin, last.toMin + 2 * preheatMin), ROOM_C + (last.c - ROOM_C) / 3]);
  return line;
}
