import { z } from "zod";
import { Clock, Day, Id, Minutes, Name, StoredId } from "./common.ts";
import { Kitchen } from "./kitchen.ts";

export const NewCookDay = z
  .strictObject({
    on: Day,
    startsAt: Clock,
    endsBy: Clock.optional(),
    cooks: z.int().min(1, "at least one cook").max(6),
    kitchen: Kitchen,
    dishes: z.array(z.strictObject({ recipeId: Id, batches: z.int().min(1).max(20) })).max(20),
    unavailable: z
      .array(
        z
          .strictObject({ what: z.literal("cook"), fromMin: Minutes, toMin: Minutes, why: z.string().trim().max(200).optional() })
          .refine((away) => away.toMin > away.fromMin, { message: "must be after fromMin", path: ["toMin"] }),
      )
      .max(12)
      .optional(),
    title: Name.optional(),
  })
  .meta({ id: "NewCookDay" });
export type NewCookDay = z.infer<typeof NewCookDay>;

export const CookDay = z
  .object({
    id: StoredId,
    on: z.string(),
    startsAt: z.string(),
    endsBy: z.string().optional(),
    cooks: z.int(),
    kitchen: Kitchen,
    dishes: z.array(z.object({ recipeId: StoredId, title: z.string(), batches: z.int() })),
    unavailable: z.array(z.object({ what: z.literal("cook"), fromMin: z.int(), toMin: z.int(), why: z.string().optional() })),
    title: z.string().optional(),
  })
  .meta({ id: "CookDay" });
export type CookDay = z.infer<typeof CookDay>;
export const CookDays = z.array(CookDay);

export const TimetableStep = z
  .object({
    dish: z.string(),
    step: z.string(),
    /** Copies of a step that comes in loads count from 1. */
    load: z.int().optional(),
    text: z.string(),
    startMin: z.int(),
    handsOnMin: z.int(),
    handsOffMin: z.int(),
    cook: z.int().optional(),
    oven: z.int().optional(),
    ovenC: z.int().optional(),
    burner: z.int().optional(),
    mustStartByMin: z.int().optional(),
  })
  .meta({ id: "TimetableStep" });
export type TimetableStep = z.infer<typeof TimetableStep>;

/** Minutes count from `startsAt`. A day that cannot be is an answer: `infeasible`, with what clashes and the ways out. */
export const Timetable = z
  .object({
    status: z.enum(["optimal", "feasible", "infeasible"]),
    endMin: z.int().nullable(),
    lowerBoundMin: z.int().nullable(),
    /** End with every range at its low, likely and high. */
    endSpread: z.object({ low: z.int(), likely: z.int(), high: z.int() }).nullable(),
    handsOnMin: z.int(),
    oneAfterAnotherMin: z.int(),
    longestStandMin: z.int().nullable(),
    steps: z.array(TimetableStep),
    dishes: z.array(z.object({ dish: z.string(), letter: z.string(), title: z.string(), batches: z.int() })),
    conflicts: z.array(z.object({ text: z.string(), ways: z.array(z.string()) })),
    cautions: z.array(z.string()),
    notes: z.array(z.string()),
  })
  .meta({ id: "Timetable" });
export type Timetable = z.infer<typeof Timetable>;
