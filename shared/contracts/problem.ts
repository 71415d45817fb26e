/** The error body of RFC 9457, with one entry for each bad field. */
import { z } from "zod";

export const Problem = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    instance: z.string().optional(),
    /** Where more was taken than there is. */
    left: z.object({ grams: z.int().nullable(), portions: z.int().nullable() }).optional(),
    fields: z.array(z.object({ path: z.string(), message: z.string() })).optional(),
  })
  .meta({ id: "Problem", description: "RFC 9457 problem document" });
export type Problem = z.infer<typeof Problem>;
