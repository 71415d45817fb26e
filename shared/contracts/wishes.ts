import { z } from "zod";
import { isLocalDate } from "../kernel/local-date.ts";
import { Id, StoredId } from "./common.ts";

/** A calendar day, or who it was. What looks like a day must be one. */
const DayOrName = z
  .string()
  .trim()
  .min(1, "must not be empty")
  .max(120)
  .refine((text) => !/^\d{1,4}-\d/.test(text) || isLocalDate(text), "must be a calendar day such as 2027-08-14, or a name");

/** Somebody asked for it: so many portions. `by` and `from` are each a day (wanted by, wanted from) or the name of who asked. */
export const NewWish = z
  .strictObject({ recipeId: Id, portions: z.int("must be whole portions").min(1, "must be at least one portion").max(10_000), by: DayOrName.optional(), from: DayOrName.optional() })
  .superRefine(({ by, from }, ctx) => {
    if (by !== undefined && from !== undefined && isLocalDate(by) && isLocalDate(from) && by < from) ctx.addIssue({ code: "custom", path: ["by"], message: "cannot be before the day it is wanted from" });
  })
  .meta({ id: "NewWish" });
export type NewWish = z.infer<typeof NewWish>;

export const Wish = z
  .object({
    id: StoredId,
    recipeId: StoredId,
    title: z.string(),
    portions: z.int(),
    by: z.string().optional(),
    from: z.string().optional(),
    /** In the larder already, of this recipe; counted in portions. */
    inLarderPortions: z.int(),
    askedOn: z.string(),
  })
  .meta({ id: "Wish" });
export type Wish = z.infer<typeof Wish>;
export const Wishes = z.array(Wish);
