/** The timetable that the cooks have agreed on, and every change of it while the day is under way. Minutes count from the start of the day. */
import { z } from "zod";
import { TimetableStep } from "./cook-days.ts";
import { Id, Minutes, StoredId } from "./common.ts";

const StepId = z.string().trim().min(1).max(80);
const Numbered = z.int().min(1).max(1_000);

/** A step of the day; `dish` is the recipe's id, copies of a step that comes in loads count from 1. */
export const StepRef = z.strictObject({ dish: Id, step: StepId, load: Numbered.optional() });
export type StepRef = z.infer<typeof StepRef>;

export const PlacedStep = z.strictObject({ ...StepRef.shape, startMin: Minutes, cook: Numbered.optional(), oven: Numbered.optional(), burner: Numbered.optional() }).meta({ id: "PlacedStep" });
export type PlacedStep = z.infer<typeof PlacedStep>;

/** More than a plan is made for is answered by the scheduler; this only keeps a body from growing for ever. */
const MOST_PLACED = 1_000;

/**
 * `agree`: before the day is begun; without `steps` the timetable as the service makes it. The others plan the rest of a day under way anew from
 * this moment: everything done and running stays.
 */
export const NewDayPlan = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("agree"), steps: z.array(PlacedStep).max(MOST_PLACED).optional() }),
    /** Nothing new for so long; with a running step named, that step takes so much longer. */
    z.strictObject({ kind: z.literal("late"), byMin: z.int().min(1, "must be more than nothing").max(720), step: StepRef.optional() }),
    /** A whole dish, or one step of it with all its loads, as far as it has not been begun. */
    z.strictObject({ kind: z.literal("skip"), dish: Id, step: StepId.optional() }),
    z.strictObject({ kind: z.literal("oven-broken"), oven: z.int().min(1).max(4) }),
    z.strictObject({ kind: z.literal("dish-more"), recipeId: Id, batches: z.int().min(1).max(20) }),
    z.strictObject({ kind: z.literal("from-now") }),
  ])
  .meta({ id: "NewDayPlan" });
export type NewDayPlan = z.infer<typeof NewDayPlan>;

export const MovedStep = z.object({ dish: StoredId, step: z.string(), load: z.int().optional(), fromMin: z.int(), toMin: z.int(), text: z.string() });

export const DayPlan = z
  .object({
    id: StoredId,
    kind: z.enum(["agree", "late", "skip", "oven-broken", "dish-more", "from-now"]),
    /** In words: “20 minutes late”. */
    title: z.string(),
    /** When it was agreed on. */
    at: z.string(),
    endMin: z.int(),
    /** The instant; before the day is begun, as it would be if begun on time. */
    endsAt: z.string(),
    steps: z.array(TimetableStep),
    /** Against the plan before it. */
    moved: z.array(MovedStep),
    /** Limits that were or will be passed, in sentences; empty when all are kept. */
    passed: z.array(z.string()),
    notes: z.array(z.string()),
    undone: z.boolean(),
  })
  .meta({ id: "DayPlan" });
export type DayPlan = z.infer<typeof DayPlan>;

export const PlanParams = z.strictObject({ id: Id, planId: Id });
