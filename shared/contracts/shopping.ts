import { z } from "zod";
import { Day, StoredId, Week } from "./common.ts";

/** `by`: the day on which it is needed, for what the garden gives until then; the end of the week without it. */
export const ShoppingQuery = z.strictObject({ week: Week.optional(), by: Day.optional(), asOf: Day.optional() });

/** What a week's dishes need: from the larder, from the garden by the careful end of its forecast, and the rest from the shop. */
export const Shopping = z
  .object({
    week: z.string(),
    headline: z.string(),
    /** needGrams = larderGrams + gardenGrams + buyGrams where less is there than needed. */
    crops: z.array(z.object({ crop: z.string(), name: z.string(), needGrams: z.int(), larderGrams: z.int(), gardenGrams: z.int(), buyGrams: z.int(), text: z.string() })),
    /** Lines of the recipes that are neither a crop with a weight nor made by another recipe, as they are written. */
    further: z.array(z.object({ text: z.string(), title: z.string(), batches: z.int() })),
    supplies: z.array(z.object({ kind: z.enum(["jar", "lid", "bag"]), need: z.int(), have: z.int(), short: z.int(), text: z.string() })),
    /** The same in three lists: to buy, to pick and when, to take from the larder and where it stands. */
    shop: z.array(z.object({ text: z.string() })),
    garden: z.array(z.object({ crop: z.string(), grams: z.int(), text: z.string() })),
    larder: z.array(z.object({ crop: z.string(), grams: z.int(), placeName: z.string().nullable(), text: z.string() })),
  })
  .meta({ id: "Shopping" });
export type Shopping = z.infer<typeof Shopping>;

export const TakeOutQuery = z.strictObject({ asOf: Day.optional() });

/** What comes out of the freezer tonight for tomorrow. */
export const TakeOut = z
  .object({
    on: z.string(),
    headline: z.string(),
    lots: z.array(z.object({ lotId: StoredId, title: z.string(), placeId: StoredId, placeName: z.string(), grams: z.int().nullable(), portions: z.int().nullable(), for: z.string(), text: z.string() })),
  })
  .meta({ id: "TakeOut" });
export type TakeOut = z.infer<typeof TakeOut>;
