import { z } from "zod";
import { Id, StoredId } from "./common.ts";

/** What the household thinks of a dish. `tired`: not again for now. `never`: not planned at all. */
export const LIKINGS = ["loved", "fine", "tired", "never"] as const;

export const NewTaste = z.strictObject({ liking: z.enum(LIKINGS) }).meta({ id: "NewTaste" });
export type NewTaste = z.infer<typeof NewTaste>;

export const Taste = z.object({ recipeId: StoredId, title: z.string(), liking: z.enum(LIKINGS) }).meta({ id: "Taste" });
export type Taste = z.infer<typeof Taste>;
export const Tastes = z.array(Taste);
export const TasteParams = z.strictObject({ recipeId: Id });
