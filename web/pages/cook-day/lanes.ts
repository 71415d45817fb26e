/** Where everything stands in the lanes: spans of minutes by hands, oven, burner and by itself. Pure; no pixels. */
import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";

type Step = Timetable["steps"][number];

export interface Span {
  readonly fromMin: number;
  readonly toMin: number;
  readonly letter: string;
  /** Number of the step in the list, from 1. */
  readonly number: number;
  readonly words: string;
}

/** A stretch in which an oven holds one temperature and something is inside. */
export interface OvenRun {
  readonly fromMin: number;
  readonly toMin: number;
  readonly c: number;
  readonly spans: readonly Span[];
}

/** From the end of what is ready to the latest minute its next step may begin. */
export interface Wait {
  readonly fromMin: number;
  readonly toMin: number;
  readonly letter: string;
}

export interface Lanes {
  readonly endMin: number;
  readonly hands: readonly (readonly Span[])[];
  readonly ovens: readonly (readonly OvenRun[])[];
  readonly burners: readonly (readonly Span[])[];
  /** Rows in which spans do not overlap. */
  readonly alone: readonly (readonly Span[])[];
}

export function lanesOf(day: CookDay, plan: Timetable): Lanes {
  const letters = new Map(plan.dishes.map(({ dish, letter }) => [dish, letter]));
  const numbered = plan.steps.map((step, i) => ({ step, number: i + 1, letter: letters.get(step.dish) ?? "" }));
  const span = (one: (typeof numbered)[number], fromMin: number, toMin: number): Span => ({ fromMin, toMin, letter: one.letter, number: one.number, words: shortWords(one.step.text) });
  const whole = (one: (typeof numbered)[number]): Span => span(one, one.step.startMin, endOf(one.step));
  const lane = (count: number, of: (step: Step) => number | undefined, make: (one: (typeof numbered)[number]) => Span): Span[][] =>
    Array.from({ length: count }, (_, i) => numbered.filter(({ step }) => of(step) === i + 1).map(make));
  const usedBurners = Math.max(0, ...plan.steps.map((step) => step.burner ?? 0));
  return {
    endMin: Math.max(plan.endMin ?? 0, ...plan.steps.map(endOf)),
    hands: lane(day.cooks, (step) => (step.handsOnMin > 0 ? step.cook : undefined), (one) => span(one, one.step.startMin, one.step.startMin + one.step.handsOnMin)),
    ovens: day.kitchen.ovens.map((_, i) => runsOf(numbered.filter(({ step }) => step.oven === i + 1).map((one) => ({ ...whole(one), c: one.step.ovenC ?? 0 })))).filter((runs) => runs.length > 0),
    burners: lane(usedBurners, (step) => step.burner, whole).filter((spans) => spans.length > 0),
    alone: stacked(numbered.filter(({ step }) => step.handsOffMin > 0 && step.oven === undefined && step.burner === undefined).map((one) => span(one, one.step.startMin + one.step.handsOnMin, endOf(one.step)))),
  };
}

const endOf = (step: Step): number => step.startMin + step.handsOnMin + step.handsOffMin;

/** The first words of a step, for a block that has little room: "Peel and slice". */
export function shortWords(text: string): string {
  const clause = text.split(/[,;.:(]/)[0] ?? text;
  const words = clause.split(" ");
  return words.slice(0, 3).join(" ").toLowerCase();
}

/** Overlapping or touching uses at one temperature make one run. */
export function runsOf(uses: readonly (Span & { readonly c: number })[]): OvenRun[] {
  const runs: { fromMin: number; toMin: number; c: number; spans: Span[] }[] = [];
  for (const { c, ...use } of [...uses].sort((a, b) => a.fromMin - b.fromMin)) {
    const last = runs.at(-1);
    if (last && last.c === c && use.fromMin <= last.toMin) {
      last.toMin = Math.max(last.toMin, use.toMin);
      last.spans.push(use);
    } else runs.push({ fromMin: use.fromMin, toMin: use.toMin, c, spans: [use] });
  }
  return runs;
}

/** As few rows as will do: each span goes into the first row that is free. */
export function stacked(spans: readonly Span[]): Span[][] {
  const rows: Span[][] = [];
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

/** Minutes between the marks of the clock, so that they do not crowd: 15, 30, 60 or 120. */
export function tickEvery(endMin: number, width: number, least: number): number {
  return [15, 30, 60, 120].find((every) => (every / endMin) * width >= least) ?? 240;
}
