/** A dish of a cook day is closed to the gram: what went in, what was made, eaten and lost, and which lots it became. */
import { z } from "zod";
import { Day, Grams, Id, Name, Note, PositiveGrams, StoredId } from "./common.ts";
import { LarderLot } from "./lots.ts";

const Portions = z.int("must be whole portions").min(0, "must not be negative").max(100_000);

/** Portions made = eaten now + given away + in lots, exactly; where the whole was weighed, portions × portion + loss = the whole, exactly. */
export const NewBatch = z
  .strictObject({
    recipeId: Id,
    portions: Portions,
    portionGrams: PositiveGrams.optional(),
    /** The whole of it, on the scales. */
    weighedGrams: PositiveGrams.optional(),
    /** Left in the pan, spilt, tasted. */
    lossGrams: Grams.optional(),
    eatenPortions: Portions.optional(),
    givenPortions: Portions.optional(),
    /** What is put away; each becomes a lot of the larder under the id given. */
    lots: z
      .array(z.strictObject({ id: Id, placeId: Id, portions: Portions.min(1, "must be more than nothing"), title: Name.optional(), bestUntil: Day.optional(), note: Note.optional() }))
      .max(12),
    /** Produce and parts taken from the larder for it: exactly one of grams and portions each. */
    took: z.array(z.strictObject({ lotId: Id, grams: PositiveGrams.optional(), portions: Portions.min(1, "must be more than nothing").optional() })).max(60),
  })
  .superRefine((batch, ctx) => {
    const fault = (path: (string | number)[], message: string): void => ctx.addIssue({ code: "custom", path, message });
    const { portions, portionGrams, weighedGrams, lossGrams = 0, eatenPortions = 0, givenPortions = 0 } = batch;
    const away = eatenPortions + givenPortions + batch.lots.reduce((sum, lot) => sum + lot.portions, 0);
    if (away !== portions) fault(["portions"], away < portions ? `${portions - away} of ${portions} portions are neither eaten, given nor put away` : `${away - portions} more portions are eaten, given or put away than were made`);
    if (weighedGrams !== undefined && portionGrams === undefined && portions > 0) fault(["portionGrams"], "say what a portion weighs, so that it can be held against the whole");
    if (weighedGrams !== undefined && (portionGrams !== undefined || portions === 0)) {
      const open = weighedGrams - portions * (portionGrams ?? 0) - lossGrams;
      if (open !== 0) fault(["weighedGrams"], open > 0 ? `${open} g are neither in a portion nor lost` : `portions and loss are ${-open} g more than the whole`);
    }
    batch.took.forEach((take, i) => {
      if ((take.grams === undefined) === (take.portions === undefined)) fault(["took", i, "grams"], "say how much with either grams or portions");
    });
    batch.lots.forEach((lot, i) => {
      if (batch.lots.findIndex((other) => other.id === lot.id) < i) fault(["lots", i, "id"], "is in the list already");
    });
  })
  .meta({ id: "NewBatch" });
export type NewBatch = z.infer<typeof NewBatch>;

export const Batch = z
  .object({
    id: StoredId,
    recipeId: StoredId,
    title: z.string(),
    /** The calendar day, and the instant at which it was closed. */
    on: z.string(),
    at: z.string(),
    portions: z.int(),
    portionGrams: z.int().optional(),
    weighedGrams: z.int().optional(),
    lossGrams: z.int(),
    eatenPortions: z.int(),
    givenPortions: z.int(),
    /** As they are now, with all that goes on a label. */
    lots: z.array(LarderLot),
    took: z.array(z.object({ lotId: StoredId, title: z.string(), crop: z.string().optional(), grams: z.int().nullable(), portions: z.int().nullable() })),
    undone: z.boolean(),
  })
  .meta({ id: "Batch" });
export type Batch = z.infer<typeof Batch>;

export const BatchParams = z.strictObject({ id: Id, batchId: Id });
