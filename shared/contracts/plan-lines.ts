import { z } from "zod";
import { WAYS } from "../kernel/way.ts";
import { Id, StoredId, Week } from "./common.ts";

/**
 * A way chosen for a week: so many batches of a recipe. What it uses is no longer over. With `buyMissing` what is missing of produce, jars, lids and
 * bags is bought; it is not stored.
 */
export const NewPlanLine = z.strictObject({ week: Week, recipeId: Id, batches: z.int().min(1).max(50), buyMissing: z.boolean().optional() }).meta({ id: "NewPlanLine" });
export type NewPlanLine = z.infer<typeof NewPlanLine>;

export const PlanLine = z
  .object({
    id: StoredId,
    week: z.string(),
    recipeId: StoredId,
    title: z.string(),
    way: z.enum(WAYS),
    batches: z.int(),
    uses: z.array(z.object({ crop: z.string(), grams: z.int() })),
  })
  .meta({ id: "PlanLine" });
export type PlanLine = z.infer<typeof PlanLine>;
export const PlanLines = z.array(PlanLine);
export const PlanLinesQuery = z.strictObject({ week: Week.optional() });
