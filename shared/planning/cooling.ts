/**
 * Whether hot food may go into the cold yet. Two stages by the clock from the end of the heat (FDA Food Code 3-501.14 (A), in the tables of rules): what
 * was not measured in time is not taken to have been cold in time. Moments are milliseconds since 1970.
 */
import { coolingStages, type PreservationTables } from "../engines/preservation/index.ts";
import { clockAt } from "../kernel/clock-time.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import { minutesWords } from "../kernel/words.ts";
import type { MarkFacts } from "./day-under-way.ts";
import { ruleFigure } from "./rule-figures.ts";

export interface CoolingStageToday {
  readonly stage: number;
  readonly toC: number;
  readonly byMs: number | null;
  readonly reachedMs: number | null;
  readonly mark: string | null;
}

export interface CoolingToday {
  readonly needed: boolean;
  readonly state: "not hot yet" | "cooling" | "first stage late" | "second stage late" | "cold" | "thrown away";
  readonly hotUntilMs: number | null;
  readonly stages: readonly CoolingStageToday[];
  readonly mayGoCold: boolean;
  readonly text: string;
  readonly sources: readonly SourceRef[];
}

export interface CoolingFacts {
  readonly title: string;
  /** What the last step on a burner or in the oven says; null where nothing is heated. */
  readonly hotStep: string | null;
  /** When the heat ended; null where it has not. */
  readonly heatEndedMs: number | null;
  /** Of this dish, those that stand. */
  readonly marks: readonly MarkFacts[];
  readonly zone: string;
}

const MS_A_MINUTE = 60_000;

export function coolingOf(facts: CoolingFacts, tables: PreservationTables, nowMs: number): CoolingToday {
  const { title, hotStep, heatEndedMs, marks } = facts;
  const figures = coolingStages(tables);
  const [first, second] = figures.map(({ toC, withinMin }) => ({ toC, withinMin })) as [Figures, Figures];
  const unmeasured = (needed: boolean, state: CoolingToday["state"], text: string): CoolingToday => ({
    needed, state, hotUntilMs: null, mayGoCold: !needed, text, sources: needed ? sourcesOf(tables) : [],
    stages: [first, second].map(({ toC }, i) => ({ stage: i + 1, toC, byMs: null, reachedMs: null, mark: null })),
  });
  if (marks.some(({ kind }) => kind === "discarded")) return { ...unmeasured(true, "thrown away", `${title} was thrown away.`), mayGoCold: false };
  if (hotStep === null) return unmeasured(false, "cold", "Nothing in it is heated.");
  if (heatEndedMs === null) return unmeasured(true, "not hot yet", `Mark “${hotStep}” as done when the heat ends: from then on it has ${minutesWords(first.withinMin)} to come down to ${first.toC} °C, and ${minutesWords(second.withinMin)} in all to be at ${second.toC} °C.`);
  const hotUntilMs = heatedAgain(heatEndedMs, marks, first, second);
  const stages = reached(hotUntilMs, marks, [first, second]);
  const verdict = verdictOf(stages, nowMs);
  return { needed: true, state: verdict, hotUntilMs, stages, mayGoCold: verdict === "cold", text: words(facts, verdict, stages, tables, nowMs), sources: sourcesOf(tables) };
}

interface Figures {
  readonly toC: number;
  readonly withinMin: number;
}

/** Brought to heat again while there was still time, it begins to cool anew; too late, that saves nothing. */
function heatedAgain(heatEndedMs: number, marks: readonly MarkFacts[], first: Figures, second: Figures): number {
  const again = marks.filter(({ kind, atMs }) => kind === "reheated" && atMs >= heatEndedMs).sort((a, b) => a.atMs - b.atMs);
  return again.reduce((since, { atMs }) => {
    const stages = reached(since, marks.filter((mark) => mark.atMs <= atMs), [first, second]);
    return verdictOf(stages, atMs).endsWith("late") ? since : atMs;
  }, heatEndedMs);
}

/** What is measured at the second temperature is below the first as well. */
function reached(hotUntilMs: number, marks: readonly MarkFacts[], figures: readonly [Figures, Figures]): CoolingStageToday[] {
  const measured = (stage: number): MarkFacts | undefined => marks.filter((mark) => mark.kind === "cooled" && (mark.stage ?? 0) >= stage && mark.atMs >= hotUntilMs).sort((a, b) => a.atMs - b.atMs)[0];
  return figures.map(({ toC, withinMin }, i) => {
    const mark = measured(i + 1);
    return { stage: i + 1, toC, byMs: hotUntilMs + withinMin * MS_A_MINUTE, reachedMs: mark?.atMs ?? null, mark: mark?.stage === i + 1 ? mark.id : null };
  });
}

function verdictOf(stages: readonly CoolingStageToday[], nowMs: number): Exclude<CoolingToday["state"], "not hot yet" | "thrown away"> {
  const late = ({ byMs, reachedMs }: CoolingStageToday): boolean => (reachedMs ?? nowMs) > (byMs as number);
  const [first, second] = stages as [CoolingStageToday, CoolingStageToday];
  if (late(first)) return "first stage late";
  if (late(second)) return "second stage late";
  return second.reachedMs === null ? "cooling" : "cold";
}

function words({ title, zone }: CoolingFacts, verdict: CoolingToday["state"], stages: readonly CoolingStageToday[], tables: PreservationTables, nowMs: number): string {
  const [first, second] = stages as [CoolingStageToday, CoolingStageToday];
  const until = ({ byMs, toC }: CoolingStageToday): string => `${toC} °C by ${clockAt(zone, byMs as number)}, ${minutesWords(Math.max(1, Math.ceil(((byMs as number) - nowMs) / MS_A_MINUTE)))} from now`;
  const heat = `${String(celsius(ruleFigure("reheat", tables)))} °C right through`;
  if (verdict === "cold") return `${title} was cold in time and may be put away.`;
  if (verdict === "cooling") {
    const next = first.reachedMs === null ? first : second;
    const where = next === first ? "Shallow boxes, small portions or a cold-water bath." : "It may stand in the fridge to cool on.";
    return `${title} is not put away yet: it must be at ${until(next)}. ${where} If that cannot be, bring it to ${heat} before then and cool it again.`;
  }
  const missed = verdict === "first stage late" ? first : second;
  return `Throw ${title} away: it was not at ${missed.toC} °C by ${clockAt(zone, missed.byMs as number)}. It was warm for too long, and heating it again does not make it safe. When in doubt, the local food-safety authority comes first.`;
}

const celsius = (fahrenheit: number): number => Math.round(((fahrenheit - 32) * 5) / 9);

function sourcesOf(tables: PreservationTables): SourceRef[] {
  return ["cool1-h", "reheat"].map((key) => {
    const row = tables.rules.find((rule) => rule.key === key);
    const id = row?.source ?? key;
    return { id, text: `${tables.publications.get(id) ?? id}: ${row?.page ?? ""}` };
  });
}
