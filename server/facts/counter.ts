/** Loads a cook day under way: its plans, what has happened, its timers. Nothing is computed here. */
import { and, asc, eq, isNull } from "drizzle-orm";
import { batches, cookDays, dayMarks, dayPlans, timers } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { CookDayInput, PlannedStep } from "#shared/engines/cook-day/index.ts";
import type { AgreedPlan, DayFacts, MarkFacts } from "#shared/planning/day-under-way.ts";

export type DayRow = typeof cookDays.$inferSelect;
export type PlanRow = typeof dayPlans.$inferSelect;
export type MarkRow = typeof dayMarks.$inferSelect;
export type TimerRow = typeof timers.$inferSelect;
export type BatchRow = typeof batches.$inferSelect;

export interface DayUnderWayRows {
  readonly row: DayRow;
  /** The last that stands is in hand. */
  readonly plans: readonly PlanRow[];
  readonly marks: readonly MarkRow[];
  readonly facts: DayFacts;
}

/** What stands; with `lock` the day's row is held, so that what is written next rests on what was read. */
export async function loadDayUnderWay(tx: Tx, householdId: string, zone: string, id: string, lock = false): Promise<DayUnderWayRows | undefined> {
  const asked = tx.select().from(cookDays).where(and(eq(cookDays.householdId, householdId), eq(cookDays.id, id)));
  const [row] = lock ? await asked.for("update") : await asked;
  if (!row) return undefined;
  const plans = await tx.select().from(dayPlans).where(and(eq(dayPlans.householdId, householdId), eq(dayPlans.cookDayId, id), isNull(dayPlans.undoneAt))).orderBy(asc(dayPlans.position));
  const marks = await tx.select().from(dayMarks).where(and(eq(dayMarks.householdId, householdId), eq(dayMarks.cookDayId, id), isNull(dayMarks.undoneAt))).orderBy(asc(dayMarks.at), asc(dayMarks.id));
  return { row, plans, marks, facts: { on: row.on, startsAt: row.startsAt, zone, version: row.version, plans: plans.map(planFacts), marks: marks.map(markFacts) } };
}

/** Begun, and not finished. */
export const isUnderWay = (marks: readonly { readonly kind: string }[]): boolean => marks.some(({ kind }) => kind === "begun") && !marks.some(({ kind }) => kind === "finished");

export async function timersOf(tx: Tx, householdId: string, cookDayId: string): Promise<TimerRow[]> {
  return tx.select().from(timers).where(and(eq(timers.householdId, householdId), eq(timers.cookDayId, cookDayId))).orderBy(asc(timers.endsAt), asc(timers.id));
}

/** Closed dishes that stand, by the recipe. */
export async function batchesOf(tx: Tx, householdId: string, cookDayId: string): Promise<BatchRow[]> {
  return tx.select().from(batches).where(and(eq(batches.householdId, householdId), eq(batches.cookDayId, cookDayId), isNull(batches.undoneAt))).orderBy(asc(batches.at), asc(batches.id));
}


export interface Told {
  readonly moved: readonly { readonly dish: string; readonly step: string; readonly load: number | null; readonly fromMin: number; readonly toMin: number; readonly text: string }[];
  readonly passed: readonly string[];
  readonly notes: readonly string[];
}

export const toldBy = ({ told }: PlanRow): Told => told as Told;
export const kindOf = ({ said }: PlanRow): string => (said as { kind: string }).kind;

export function planFacts(row: PlanRow): AgreedPlan {
  const { id, at, dayVersion, brokenOff } = row;
  return { id, kind: kindOf(row), atMs: Date.parse(at), dayVersion, day: row.day as CookDayInput, steps: row.steps as readonly PlannedStep[], brokenOff, passed: toldBy(row).passed };
}

export function markFacts({ id, kind, dish, step, load, oven, line, stage, at }: MarkRow): MarkFacts {
  return { id, kind, dish, step, load, oven, line, stage, atMs: Date.parse(at) };
}
