import { z } from "zod";
import { Day, Id, Slug, StoredId } from "./common.ts";
import { LarderLot } from "./lots.ts";
import { Place } from "./places.ts";

/** `all=true` adds what is used up. */
export const LarderQuery = z.strictObject({ asOf: Day.optional(), all: z.enum(["true", "false"]).optional() });

const LotLine = z.object({ lotId: StoredId, title: z.string(), text: z.string() });

export const Larder = z
  .object({
    today: z.string(),
    headline: z.string(),
    places: z.array(Place),
    /** Oldest first. */
    lots: z.array(LarderLot),
    useFirst: z.array(LotLine),
    /** Past the time in which it may be eaten. */
    discard: z.array(LotLine),
    forgotten: z.array(LotLine),
    toRecount: z.array(LotLine),
  })
  .meta({ id: "Larder" });
export type Larder = z.infer<typeof Larder>;

/** Exactly one of crop and recipeId, and exactly one of portions and grams. */
export const OldestQuery = z
  .strictObject({
    crop: Slug.optional(),
    recipeId: Id.optional(),
    portions: z.coerce.number().int("must be whole portions").min(1, "must be more than nothing").max(1_000_000).optional(),
    grams: z.coerce.number().int("must be whole grams").min(1, "must be more than nothing").max(100_000_000).optional(),
    asOf: Day.optional(),
  })
  .superRefine(({ crop, recipeId, portions, grams }, ctx) => {
    if ((crop === undefined) === (recipeId === undefined)) ctx.addIssue({ code: "custom", path: [crop === undefined ? "recipeId" : "crop"], message: "name either a crop or a recipe" });
    if ((portions === undefined) === (grams === undefined)) ctx.addIssue({ code: "custom", path: ["portions"], message: "say how much with either grams or portions" });
  });

/** From which lots so much is taken, oldest first. Nothing is stored: each line is put as a movement of its lot. */
export const OldestFirst = z
  .object({
    takes: z.array(
      z.object({
        lotId: StoredId,
        title: z.string(),
        madeOn: z.string(),
        placeId: StoredId,
        placeName: z.string(),
        grams: z.int().nullable(),
        portions: z.int().nullable(),
        usesUp: z.boolean(),
      }),
    ),
    missing: z.object({ grams: z.int().nullable(), portions: z.int().nullable() }),
    text: z.string(),
  })
  .meta({ id: "OldestFirst" });
export type OldestFirst = z.infer<typeof OldestFirst>;
