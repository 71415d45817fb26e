import { z } from "zod";
import { Day, Slug } from "./common.ts";

export const GramAccountQuery = z.strictObject({ season: z.coerce.number().int().min(1900).max(2199).optional(), crop: Slug.optional(), asOf: Day.optional() });

/** pickedGrams = trimmed + eaten + batch + given + composted + onHand + unaccounted, to the gram. */
export const CropAccount = z
  .object({
    crop: z.string(),
    name: z.string(),
    pickedGrams: z.int(),
    trimmedGrams: z.int(),
    eatenGrams: z.int(),
    batchGrams: z.int(),
    givenGrams: z.int(),
    /** Composted or spoiled. */
    compostedGrams: z.int(),
    onHandGrams: z.int(),
    /** May be below nothing: more was put away or taken than was picked. */
    unaccountedGrams: z.int(),
    /** What the unaccounted rests on; the three add up to it. */
    unaccounted: z.object({ notPutAwayGrams: z.int(), missingAtRecountGrams: z.int(), takenButNotThereGrams: z.int() }),
    /** Of what is on hand: past its keeping time. */
    onHandPastGrams: z.int(),
    text: z.string(),
  })
  .meta({ id: "CropAccount" });
export type CropAccount = z.infer<typeof CropAccount>;

export const GramAccount = z
  .object({ season: z.int(), seasons: z.array(z.int()), headline: z.string(), crops: z.array(CropAccount) })
  .meta({ id: "GramAccount" });
export type GramAccount = z.infer<typeof GramAccount>;
