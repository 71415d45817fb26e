import { z } from "zod";
import { Minutes } from "./common.ts";

/** What a cook can work with. `ovens` holds one entry for each oven; an oven holds one temperature at a time. */
export const Kitchen = z
  .strictObject({
    ovens: z.array(z.strictObject({ trays: z.int().min(1).max(12), preheatMin: Minutes, changeMin: Minutes })).max(4),
    burners: z.int().min(0).max(12),
    /** Large pots. */
    pots: z.int().min(0).max(20).optional(),
    sinks: z.int().min(0).max(6).optional(),
    /** By the name that a step asks for: slow pot, skillet, steamer, canner. */
    appliances: z.array(z.strictObject({ name: z.string().trim().min(1).max(60), count: z.int().min(1).max(6) })).max(12).optional(),
    /** Hands-on minutes of washing up after each dish; left out = not planned. */
    washUpMin: z.int().min(0).max(120).optional(),
  })
  .meta({ id: "Kitchen" });
export type Kitchen = z.infer<typeof Kitchen>;
