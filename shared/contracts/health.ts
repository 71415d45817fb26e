import { z } from "zod";

export const Health = z
  .object({
    status: z.literal("ok"),
    database: z.enum(["embedded", "server"]),
    version: z.string(),
    mode: z.enum(["live", "demo", "test"]),
    /** The day the house goes by, in the household's zone. */
    today: z.string(),
  })
  .meta({ id: "Health" });
export type Health = z.infer<typeof Health>;
