import { z } from "zod";
import { Day, Id, StoredId } from "./common.ts";

/** So many portions of it are to be in store by a day. */
export const NewStockTarget = z
  .strictObject({ recipeId: Id, portions: z.int("must be whole portions").min(1, "must be at least one portion").max(100_000), by: Day })
  .meta({ id: "NewStockTarget" });
export type NewStockTarget = z.infer<typeof NewStockTarget>;

export const StockTarget = z
  .object({ id: StoredId, recipeId: StoredId, title: z.string(), portions: z.int(), by: z.string(), inLarderPortions: z.int(), missingPortions: z.int(), past: z.boolean() })
  .meta({ id: "StockTarget" });
export type StockTarget = z.infer<typeof StockTarget>;
export const StockTargets = z.array(StockTarget);

/** A target that rests on what was eaten last winter: from 1 October to 30 April, south of the equator half a year later. Nothing is stored. */
export const SuggestedTarget = z
  .object({ recipeId: StoredId, title: z.string(), portions: z.int(), by: z.string(), eatenPortions: z.int(), inLarderPortions: z.int(), text: z.string() })
  .meta({ id: "SuggestedTarget" });
export type SuggestedTarget = z.infer<typeof SuggestedTarget>;
export const SuggestedTargets = z.array(SuggestedTarget);
