import { z } from "zod";
import { PLACE_KINDS } from "../kernel/way.ts";
import { Day, Name, StoredId } from "./common.ts";

const Litres = z.number().positive("must be more than nothing").max(100_000).multipleOf(0.1, "has one decimal at most");

/** A fridge, one freezer or one drawer of it, a shelf, a cellar, a clamp. Without litres nothing is said about room. */
export const NewPlace = z.strictObject({ name: Name, kind: z.enum(PLACE_KINDS), litres: Litres.optional() }).meta({ id: "NewPlace" });
export type NewPlace = z.infer<typeof NewPlace>;

export const ROOM_STATES = ["has room", "nearly full", "full"] as const;

export const Place = z
  .object({
    id: StoredId,
    name: z.string(),
    kind: z.enum(PLACE_KINDS),
    litres: z.number().optional(),
    /** Taken up by what is known of the lots here; rests on `portionMl`, else on their weight. */
    usedLitres: z.number(),
    /** Null where the place's litres are not known. */
    freeLitres: z.number().nullable(),
    state: z.enum(ROOM_STATES).nullable(),
    /** Lots with something left here, and how many of them nobody knows the size of. */
    lots: z.int(),
    unmeasuredLots: z.int(),
    /** For a freezer: how much that is not frozen yet it takes in 24 hours. */
    loadGrams: z.object({ low: z.int(), high: z.int() }).nullable(),
    /** Put or moved into it today. */
    inTodayGrams: z.int(),
    notes: z.array(z.string()),
  })
  .meta({ id: "Place" });
export type Place = z.infer<typeof Place>;
export const Places = z.array(Place);

/** Whether so much fits: litres, and grams that are not frozen yet. */
export const RoomQuery = z.strictObject({
  litres: z.coerce.number().positive("must be more than nothing").max(100_000).optional(),
  grams: z.coerce.number().int("must be whole grams").min(1, "must be more than nothing").max(100_000_000).optional(),
  asOf: Day.optional(),
});
export const Room = z
  .object({
    fits: z.boolean(),
    text: z.string(),
    freeLitres: z.number().nullable(),
    /** Days over which it is frozen, and how much on each; one day unless the freezer takes less in 24 hours. */
    days: z.array(z.object({ grams: z.int() })),
    eatFirst: z.array(z.object({ lotId: StoredId, title: z.string(), text: z.string() })),
  })
  .meta({ id: "Room" });
export type Room = z.infer<typeof Room>;
