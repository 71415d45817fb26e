/** A cook day under way, as every device of the household sees it. Instants are UTC; minutes count from `zeroAt`. */
import { z } from "zod";
import { PLACE_KINDS } from "../kernel/way.ts";
import { Batch } from "./batches.ts";
import { Id, StoredId } from "./common.ts";
import { TimetableStep } from "./cook-days.ts";
import { DayPlan, StepRef } from "./day-plans.ts";
import { Instant, Timer } from "./timers.ts";

/** Without it: now. What a phone sends late says when it happened. */
const at = Instant.optional();

/** Facts of the day, written once; a wrong one is undone with DELETE. */
export const NewMark = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("begun"), at }),
    z.strictObject({ kind: z.literal("finished"), at }),
    z.strictObject({ kind: z.literal("started"), ...StepRef.shape, oven: z.int().min(1).max(4).optional(), at }),
    z.strictObject({ kind: z.literal("done"), ...StepRef.shape, at }),
    /** An ingredient is in. `line` is its place in the recipe, from 0. */
    z.strictObject({ kind: z.literal("ticked"), dish: Id, line: z.int().min(0).max(79), at }),
    /** Measured: the food is at the temperature of this stage or below. */
    z.strictObject({ kind: z.literal("cooled"), dish: Id, stage: z.union([z.literal(1), z.literal(2)]), at }),
    /** Brought to reheating temperature right through; cooling begins again. */
    z.strictObject({ kind: z.literal("reheated"), dish: Id, at }),
    /** Thrown away. */
    z.strictObject({ kind: z.literal("discarded"), dish: Id, at }),
  ])
  .meta({ id: "NewMark" });
export type NewMark = z.infer<typeof NewMark>;
export const MARK_KINDS = ["begun", "finished", "started", "done", "ticked", "cooled", "reheated", "discarded"] as const;

export const Mark = z
  .object({
    id: StoredId,
    kind: z.enum(MARK_KINDS),
    dish: StoredId.optional(),
    step: z.string().optional(),
    load: z.int().optional(),
    oven: z.int().optional(),
    line: z.int().optional(),
    stage: z.int().optional(),
    at: z.string(),
    undone: z.boolean(),
  })
  .meta({ id: "Mark" });
export type Mark = z.infer<typeof Mark>;

export const STEP_STATES = ["waiting", "ready", "in hand", "minding itself", "done", "late"] as const;

export const CounterStep = z
  .object({
    ...TimetableStep.shape,
    /** Names the step in this answer. */
    key: z.string(),
    state: z.enum(STEP_STATES),
    /** As it was, where it has begun; else as planned. */
    startsAt: z.string(),
    /** End of the hands-on part. */
    handsUntil: z.string(),
    endsAt: z.string(),
    mustStartBy: z.string().optional(),
    startedAt: z.string().optional(),
    doneAt: z.string().optional(),
    startedMark: StoredId.optional(),
    doneMark: StoredId.optional(),
    /** Keys of the steps that it waits for and that are not done yet. */
    waitsFor: z.array(z.string()),
  })
  .meta({ id: "CounterStep" });
export type CounterStep = z.infer<typeof CounterStep>;

/** `needed` false: nothing hot goes into the cold. */
export const Cooling = z
  .object({
    dish: StoredId,
    needed: z.boolean(),
    state: z.enum(["not hot yet", "cooling", "first stage late", "second stage late", "cold", "thrown away"]),
    /** When the heat ended, or it was brought to heat again. */
    hotUntil: z.string().optional(),
    stages: z.array(z.object({ stage: z.int(), toC: z.number(), by: z.string().optional(), reachedAt: z.string().optional(), mark: StoredId.optional() })),
    /** It may be put into fridge or freezer. */
    mayGoCold: z.boolean(),
    /** What to do now. */
    text: z.string(),
    sources: z.array(z.object({ id: z.string(), text: z.string() })),
  })
  .meta({ id: "Cooling" });
export type Cooling = z.infer<typeof Cooling>;

/** What closing a dish begins with: nothing of it is stored. */
export const BatchDraft = z.object({
  portions: z.int(),
  keeps: z.array(z.object({ place: z.enum(PLACE_KINDS), days: z.int() })),
  /** From the larder, oldest first; `missingGrams` of what the recipe takes is not there. */
  took: z.array(z.object({ lotId: StoredId, title: z.string(), crop: z.string(), placeName: z.string(), grams: z.int() })),
  missing: z.array(z.object({ crop: z.string(), grams: z.int() })),
});

export const CounterDish = z
  .object({
    dish: StoredId,
    letter: z.string(),
    title: z.string(),
    batches: z.int(),
    state: z.enum(["planned", "under way", "cooling", "ready to put away", "put away", "left out"]),
    ingredients: z.array(z.object({ line: z.int(), text: z.string(), tickedAt: z.string().optional(), mark: StoredId.optional() })),
    cooling: Cooling,
    draft: BatchDraft,
    /** The closed batch, where it is closed. */
    batch: Batch.optional(),
  })
  .meta({ id: "CounterDish" });
export type CounterDish = z.infer<typeof CounterDish>;

export const Counter = z
  .object({
    id: StoredId,
    title: z.string().optional(),
    on: z.string(),
    zone: z.string(),
    /** The server's clock when this was answered: a device reckons the difference to its own. */
    now: z.string(),
    /** Where the stream of events stands; give it to GET /api/events as `since`. */
    since: z.string(),
    state: z.enum(["draft", "agreed", "under way", "finished"]),
    /** The day was changed after its timetable was agreed: agree on it again. */
    stale: z.boolean(),
    headline: z.string(),
    /** Minute 0: when the day was begun; before that, when it is to begin. */
    zeroAt: z.string(),
    begunAt: z.string().optional(),
    finishedAt: z.string().optional(),
    begunMark: StoredId.optional(),
    finishedMark: StoredId.optional(),
    /** The plan in hand; null while none is agreed. Its steps stand in `steps`, with what has happened. */
    plan: DayPlan.omit({ steps: true }).nullable(),
    /** Whether it is a plan of before that would come back when this one is undone. */
    planCanBeUndone: z.boolean(),
    steps: z.array(CounterStep),
    /** Keys: hands are on it; the next for each cook; going on by itself. */
    inHand: z.array(z.string()),
    next: z.array(z.string()),
    minding: z.array(z.string()),
    skipped: z.array(z.object({ dish: StoredId, step: z.string(), text: z.string() })),
    dishes: z.array(CounterDish),
    /** Ringing first, then soonest; stopped ones are left out. */
    timers: z.array(Timer),
    cautions: z.array(z.string()),
  })
  .meta({ id: "Counter" });
export type Counter = z.infer<typeof Counter>;

export const MarkParams = z.strictObject({ id: Id, markId: Id });
