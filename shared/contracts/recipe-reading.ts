/** A recipe pasted as text or taken from a page's schema.org data, read into a draft. Nothing is stored. */
import { z } from "zod";
import { Ingredient, NewRecipe } from "./recipes.ts";

/** Exactly one of the two. `jsonLd` is a schema.org Recipe, an array or a graph that holds one, or the text of either. */
export const RecipeToRead = z
  .strictObject({ text: z.string().optional(), jsonLd: z.unknown().optional() })
  .refine((body) => (body.text === undefined) !== (body.jsonLd === undefined), "give either text or jsonLd")
  .meta({ id: "RecipeToRead" });
export type RecipeToRead = z.infer<typeof RecipeToRead>;

export const RecipeDraft = z
  .object({
    /** Fits `PUT /api/recipes/{id}` as it stands; what is doubtful in it is named in `doubts`. */
    recipe: NewRecipe,
    /** The ingredients of `recipe` in the same order, each as read and weighed. */
    ingredients: z.array(Ingredient),
    /** For each step the phrases that say how long and how hot, and what was made of each. */
    steps: z.array(z.object({ id: z.string(), found: z.array(z.object({ text: z.string(), means: z.string() })) })),
    /** Parts to look at before it is stored; `path` is dotted into `recipe`: makes, steps.2.handsOffMin. */
    doubts: z.array(z.object({ path: z.string(), text: z.string(), why: z.string() })),
    /** What was typed and has no place in the draft; nothing is lost. */
    notUnderstood: z.array(z.object({ text: z.string(), why: z.string() })),
  })
  .meta({ id: "RecipeDraft" });
export type RecipeDraft = z.infer<typeof RecipeDraft>;
