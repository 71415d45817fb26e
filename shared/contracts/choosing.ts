/** Before a cook day is settled: which dishes fit together, what each adds, when the rises begin, what can be done the night before. */
import { z } from "zod";
import { Clock, Id, StoredId, Week } from "./common.ts";
import { Kitchen } from "./kitchen.ts";

/** With a week: the ways chosen for it. Kitchen and cooks are the household's where they are not said. */
export const NewChoice = z
  .strictObject({
    week: Week.optional(),
    dishes: z.array(z.strictObject({ recipeId: Id, batches: z.int().min(1).max(20) })).min(1, "name a dish, or a week").max(10, "at most ten dishes can be tried together").optional(),
    withinMin: z.int().min(10).max(900),
    startsAt: Clock.optional(),
    cooks: z.int().min(1, "at least one cook").max(6).optional(),
    kitchen: Kitchen.optional(),
  })
  .superRefine(({ week, dishes }, ctx) => {
    if ((week === undefined) === (dishes === undefined)) ctx.addIssue({ code: "custom", path: ["dishes"], message: "name either a week or dishes" });
  })
  .meta({ id: "NewChoice" });
export type NewChoice = z.infer<typeof NewChoice>;

const DishCost = z.object({ recipeId: StoredId, title: z.string(), batches: z.int(), addsMin: z.int().nullable(), aloneMin: z.int().nullable(), handsOnMin: z.int() });

export const Choice = z
  .object({
    text: z.string(),
    /** Sets to which no further dish can be added, most dishes first, then earliest end. */
    sets: z.array(z.object({ recipeIds: z.array(StoredId), endMin: z.int(), handsOnMin: z.int(), text: z.string() })),
    /** False where there were more sets than could be tried. */
    complete: z.boolean(),
    dishes: z.array(DishCost),
    /** Ways of the week that have no steps written. */
    leftOut: z.array(z.string()),
  })
  .meta({ id: "Choice" });
export type Choice = z.infer<typeof Choice>;

/** What helps to settle a day that is put down already. */
export const DayAdvice = z
  .object({
    dishes: z.array(DishCost),
    rests: z.array(z.object({ dish: StoredId, step: z.string(), earliestMin: z.int(), latestMin: z.int(), text: z.string() })),
    nightBefore: z.array(z.object({ dish: StoredId, title: z.string(), steps: z.array(z.string()), texts: z.array(z.string()), whole: z.boolean(), handsOnMin: z.int(), savesMin: z.int().nullable(), text: z.string() })),
  })
  .meta({ id: "DayAdvice" });
export type DayAdvice = z.infer<typeof DayAdvice>;
