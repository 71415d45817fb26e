import { z } from "zod";
import { Source } from "./common.ts";

export const Crop = z
  .object({
    crop: z.string(),
    name: z.string(),
    family: z.string(),
    habit: z.enum(["one-cut", "repeat", "cut-again", "stands", "head+shoots"]),
    perennial: z.boolean(),
    usualMethod: z.enum(["direct", "transplant", "established"]),
    baseC: z.number(),
    upperC: z.number(),
    /** Null for what stands for years. */
    daysToMaturity: z.object({ low: z.int(), high: z.int(), from: z.enum(["sowing", "transplanting", "planting"]) }).nullable(),
    /** Which of these amounts the book has a yield for. */
    amounts: z.array(z.enum(["rowM", "plants", "areaM2"])),
    keepDays: z.int(),
    cautions: z.array(z.string()),
    sources: z.array(Source),
  })
  .meta({ id: "Crop" });
export type Crop = z.infer<typeof Crop>;
export const Crops = z.array(Crop);
