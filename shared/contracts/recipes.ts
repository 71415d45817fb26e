import { z } from "zod";
import { MEASURE_SYSTEMS } from "../kernel/units.ts";
import { PLACE_KINDS, WAYS } from "../kernel/way.ts";
import { Id, Minutes, Name, Note, Slug, StoredId } from "./common.ts";

const StepId = z.string().trim().min(1).max(80);
const shortest = z.strictObject({ low: Minutes, likely: Minutes, high: Minutes }).refine((r) => r.low <= r.likely && r.likely <= r.high, "low, likely and high must rise");

export const Step = z
  .strictObject({
    id: StepId,
    text: z.string().trim().min(1, "must not be empty").max(1_000),
    handsOnMin: Minutes,
    /** Follows the hands-on part at once; a range where the recipe gives one. */
    handsOffMin: z.union([Minutes, shortest]),
    needs: z.strictObject({
      oven: z
        .strictObject({
          c: z.int().min(30).max(350),
          trays: z.int().min(1).max(12),
          /** What it comes out well at too, so that dishes may share the oven; left out = `c` and no other. */
          fromC: z.int().min(30).max(350).optional(),
          toC: z.int().min(30).max(350).optional(),
        })
        .refine(({ c, fromC = c, toC = c }) => fromC <= c && c <= toC, "fromC, c and toC must rise")
        .optional(),
      burners: z.int().min(0).max(12).optional(),
      pots: z.int().min(0).max(20).optional(),
      sinks: z.int().min(0).max(6).optional(),
      /** By name, one of it, held during this step. */
      appliance: z.string().trim().min(1).max(60).optional(),
    }),
    after: z.array(StepId).max(60),
    maxWaitMin: z.union([Minutes, z.record(StepId, Minutes)]).optional(),
    loads: z.strictObject({ holds: z.int().min(1).max(1_000), of: z.int().min(1).max(10_000) }).optional(),
    startAtMin: Minutes.optional(),
    notBeforeMin: Minutes.optional(),
    endByMin: Minutes.optional(),
  })
  .meta({ id: "Step" });
export type Step = z.infer<typeof Step>;

export const NewIngredient = z.strictObject({
  text: z.string().trim().min(1, "must not be empty").max(400),
  crop: Slug.optional(),
  food: z.string().trim().min(1).max(120).optional(),
  /** The recipe that makes this part. */
  madeBy: Id.optional(),
});

/** A household's recipe. Whether its order of steps can be, and its keeping is allowed, is decided by the server. */
export const NewRecipe = z
  .strictObject({
    title: Name,
    way: z.enum(WAYS),
    makes: z.strictObject({ amount: z.number().positive("must be more than nothing").max(100_000), unit: z.string().trim().min(1).max(40) }),
    ingredients: z.array(NewIngredient).max(80),
    steps: z.array(Step).max(80),
    holds: z.array(z.strictObject({ what: z.enum(["pots", "burners", "sinks"]), from: StepId, to: StepId })).max(20).optional(),
    limits: z.array(z.strictObject({ from: StepId, to: StepId, maxMin: Minutes, why: z.string().trim().max(200).optional() })).max(40).optional(),
    keeps: z.array(z.strictObject({ place: z.enum(PLACE_KINDS), days: z.int().min(1).max(3_660) })).max(5),
    reheat: Note.optional(),
    /** Key of a tested canning process; the only way onto the shelf for what is bottled or pickled. */
    process: z.string().trim().min(1).max(80).optional(),
    allergens: z.array(z.string().trim().min(1).max(60)).max(20).optional(),
    note: Note.optional(),
    /** Whose cups, spoons and pints the lines mean; the household's own where nothing is said. */
    measures: z.enum(MEASURE_SYSTEMS).optional(),
  })
  .meta({ id: "NewRecipe" });
export type NewRecipe = z.infer<typeof NewRecipe>;

export const Ingredient = z.object({
  text: z.string(),
  crop: z.string().optional(),
  food: z.string().optional(),
  madeBy: StoredId.optional(),
  /** Null where no weight is known; never guessed. For a crop: as picked. */
  grams: z.int().nullable(),
  /** The line as read; null where it could not be. */
  read: z.object({ amount: z.number().nullable(), amountMax: z.number().nullable(), unit: z.string().nullable(), food: z.string(), comment: z.string() }).nullable(),
  /** Ready to print, by weight and by measure; null where no weight is known. */
  byWeight: z.string().nullable(),
  byMeasure: z.string().nullable(),
  /** What in the line cannot be meant, and what would work; left out where nothing is doubtful. */
  doubt: z.string().optional(),
});
export type Ingredient = z.infer<typeof Ingredient>;

export const Recipe = z
  .object({
    id: StoredId,
    title: z.string(),
    way: z.enum(WAYS),
    makes: z.object({ amount: z.number(), unit: z.string() }),
    ingredients: z.array(Ingredient),
    steps: z.array(z.object(Step.shape)),
    holds: z.array(z.object({ what: z.enum(["pots", "burners", "sinks"]), from: z.string(), to: z.string() })),
    limits: z.array(z.object({ from: z.string(), to: z.string(), maxMin: z.int(), why: z.string().optional() })),
    keeps: z.array(z.object({ place: z.enum(PLACE_KINDS), days: z.int() })),
    reheat: z.string().optional(),
    process: z.string().optional(),
    allergens: z.array(z.string()),
    note: z.string().optional(),
    measures: z.enum(MEASURE_SYSTEMS).optional(),
    /** Comes with the product, or written by the household. */
    origin: z.enum(["book", "own"]),
    /** Grams as picked that one batch takes, by crop. */
    uses: z.array(z.object({ crop: z.string(), grams: z.int() })),
    handsOnMin: z.int(),
    cautions: z.array(z.string()),
    sources: z.array(z.object({ id: z.string(), text: z.string() })),
    /** For a tested process at the household's altitude: jar, pack, minutes, pressure; empty where there is none. */
    processing: z.array(z.string()),
  })
  .meta({ id: "Recipe" });
export type Recipe = z.infer<typeof Recipe>;
export const Recipes = z.array(Recipe);

/** As much of a recipe as a list of them shows and is searched by. */
export const RecipeBrief = Recipe.pick({ id: true, title: true, way: true, makes: true, keeps: true, origin: true, uses: true, handsOnMin: true })
  .extend({
    /** The lines of its ingredients as written, one under the other. */
    lines: z.string(),
  })
  .meta({ id: "RecipeBrief" });
export type RecipeBrief = z.infer<typeof RecipeBrief>;
export const RecipeBriefs = z.array(RecipeBrief);
export const RecipesQuery = z.strictObject({ crop: Slug.optional(), way: z.enum(WAYS).optional() });
