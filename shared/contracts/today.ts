import { z } from "zod";
import { Day, GramBand, StoredId } from "./common.ts";

export const TodayQuery = z.strictObject({ asOf: Day.optional() });

export const Today = z
  .object({
    today: z.string(),
    headline: z.string(),
    urgent: z.array(z.object({ kind: z.enum(["frost", "glut", "setup"]), text: z.string(), href: z.string() })),
    pick: z.array(
      z.object({
        sowingId: StoredId,
        crop: z.string(),
        name: z.string(),
        bedName: z.string(),
        /** Likely on the plant today: since the last pick, or since it ripened. */
        grams: GramBand,
        daysSince: z.int().nullable(),
        gramsPerPiece: z.number().nullable(),
      }),
    ),
    sow: z.array(z.object({ sowingId: StoredId, crop: z.string(), name: z.string(), bedName: z.string(), on: z.string(), text: z.string() })),
    /** Each by its likely day, the soonest first. */
    jobs: z.array(z.object({ sowingId: StoredId.nullable(), on: z.string(), text: z.string() })),
    useFirst: z.array(z.object({ lotId: StoredId, title: z.string(), text: z.string() })),
    cook: z.array(z.object({ cookDayId: StoredId.nullable(), on: z.string(), text: z.string(), href: z.string() })),
  })
  .meta({ id: "Today" });
export type Today = z.infer<typeof Today>;
