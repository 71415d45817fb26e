/** A recipe for more or for less: both unit systems, what scales and what does not, and whether it fits. */
import { z } from "zod";
import { PositiveGrams, Slug, Source, StoredId } from "./common.ts";

const Centimetres = z.number().positive("must be more than nothing").max(200, "is larger than any tin");
const deepCm = Centimetres.optional();
const tins = z.int().min(1).max(50).optional();

/** Inside measures. `tins`: how many of them; one where it is left out. */
export const Dish = z
  .discriminatedUnion("shape", [
    z.strictObject({ shape: z.literal("round"), acrossCm: Centimetres, deepCm, tins }),
    z.strictObject({ shape: z.literal("square"), sideCm: Centimetres, deepCm, tins }),
    z.strictObject({ shape: z.literal("rectangle"), longCm: Centimetres, wideCm: Centimetres, deepCm, tins }),
  ])
  .meta({ id: "Dish" });
export type Dish = z.infer<typeof Dish>;

const WAYS_TO_ASK = ["batches", "yield", "dish", "atHand"] as const;
const wanted = z.number().positive("must be more than nothing");

/** Exactly one of `batches`, `yield` (in the recipe's own unit), `dish` and `atHand`; the rest says what it must fit into. */
export const ScaleAsked = z
  .strictObject({
    batches: wanted.max(1_000).optional(),
    yield: wanted.max(100_000).optional(),
    dish: z.strictObject({ from: Dish, to: Dish }).optional(),
    /** Produce as picked. */
    atHand: z.strictObject({ crop: Slug, grams: PositiveGrams }).optional(),
    potLitres: z.number().positive("must be more than nothing").max(1_000).optional(),
  })
  .refine((body) => WAYS_TO_ASK.filter((way) => body[way] !== undefined).length === 1, "give exactly one of batches, yield, dish and atHand")
  .meta({ id: "ScaleAsked" });
export type ScaleAsked = z.infer<typeof ScaleAsked>;

export const ScaledIngredient = z.object({
  /** The line as the recipe has it. */
  text: z.string(),
  crop: z.string().optional(),
  food: z.string().optional(),
  madeBy: StoredId.optional(),
  /** The line for this amount, ready to print; where nothing can be multiplied, the line as it was. */
  line: z.string(),
  /** Null where no weight is known. For a crop: as picked. */
  grams: z.int().nullable(),
  byWeight: z.string().nullable(),
  byMeasure: z.string().nullable(),
  /** (printed − exact) / exact, per cent; null where nothing is printed. */
  weightErrorPercent: z.number().nullable(),
  measureErrorPercent: z.number().nullable(),
  /** `rounded`: whole pieces such as eggs; `to-taste`, `by-pan`: start with what is said in `note`; `not`: the line names no amount. */
  scales: z.enum(["in-proportion", "rounded", "to-taste", "by-pan", "not"]),
  note: z.string().nullable(),
});

export const Scaled = z
  .object({
    id: StoredId,
    title: z.string(),
    /** How many batches it comes to; whole for a tested preserving recipe. */
    batches: z.number(),
    /** Each batch is made by itself: tested preserving recipes are never multiplied in one pot. */
    apart: z.boolean(),
    makes: z.object({ amount: z.number(), unit: z.string(), text: z.string() }),
    ingredients: z.array(ScaledIngredient),
    /** Grams as picked, by crop. */
    uses: z.array(z.object({ crop: z.string(), grams: z.int() })),
    /** For produce at hand: what whole batches leave over. */
    leftGrams: z.int().nullable(),
    steps: z.array(z.object({ id: z.string(), text: z.string(), handsOnMin: z.int(), loads: z.int(), note: z.string().nullable() })),
    doesNotScale: z.array(z.object({ what: z.enum(["times", "tins", "pans", "leavening", "salt", "spice", "thickener", "eggs", "evaporation", "cooling"]), text: z.string() })),
    /** Null where the size of the pot or oven is not known. */
    fits: z.array(z.object({ what: z.enum(["pot", "oven", "dish"]), fits: z.boolean().nullable(), text: z.string() })),
    cautions: z.array(z.string()),
    sources: z.array(Source),
  })
  .meta({ id: "Scaled" });
export type Scaled = z.infer<typeof Scaled>;
