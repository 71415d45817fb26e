import { z } from "zod";
import { Day, Id, PositiveGrams, StoredId } from "./common.ts";

/** Append-only: a wrong pick is undone and written again. */
export const NewPick = z
  .strictObject({ sowingId: Id, pickedOn: Day, grams: PositiveGrams, pieces: z.int().min(1).max(100_000).optional() })
  .meta({ id: "NewPick" });
export type NewPick = z.infer<typeof NewPick>;

export const Pick = z
  .object({
    id: StoredId,
    sowingId: StoredId,
    crop: z.string(),
    pickedOn: z.string(),
    grams: z.int(),
    pieces: z.int().optional(),
    undone: z.boolean(),
  })
  .meta({ id: "Pick" });
export type Pick = z.infer<typeof Pick>;
export const Picks = z.array(Pick);
export const PicksQuery = z.strictObject({ from: Day.optional(), until: Day.optional(), sowingId: Id.optional(), undone: z.enum(["true", "false"]).optional() });
