import { z } from "zod";
import { Day, Name, Note, StoredId } from "./common.ts";

export const SUPPLY_KINDS = ["jar", "lid", "bag", "box", "vinegar", "sugar", "salt", "yeast", "spice", "other"] as const;
export const SUPPLY_UNITS = ["pieces", "g", "ml"] as const;

/** Jars, lids, bags, and dry goods with a date. */
export const NewSupply = z
  .strictObject({
    kind: z.enum(SUPPLY_KINDS),
    name: Name,
    amount: z.int("must be a whole number").min(0, "must not be negative").max(100_000_000),
    unit: z.enum(SUPPLY_UNITS),
    /** What one jar, bag or box holds. */
    holdsMl: z.int("must be whole millilitres").min(1, "must be more than nothing").max(1_000_000).optional(),
    bestUntil: Day.optional(),
    note: Note.optional(),
  })
  .meta({ id: "NewSupply" });
export type NewSupply = z.infer<typeof NewSupply>;

export const Supply = z
  .object({
    id: StoredId,
    kind: z.enum(SUPPLY_KINDS),
    name: z.string(),
    amount: z.int(),
    unit: z.enum(SUPPLY_UNITS),
    holdsMl: z.int().optional(),
    bestUntil: z.string().optional(),
    note: z.string().optional(),
    /** Past its date. */
    past: z.boolean(),
  })
  .meta({ id: "Supply" });
export type Supply = z.infer<typeof Supply>;
export const Supplies = z.array(Supply);
