/** "Can I keep this?": for a food, a way, a jar and an altitude the tested figures with their source, or the refusal and what to do instead. */
import { z } from "zod";
import { PLACE_KINDS } from "../kernel/way.ts";
import { Source } from "./common.ts";

export const KEEPING_WAYS = ["freeze", "bottle", "dry", "pickle", "ferment", "store"] as const;
export const JAR_NAMES = ["half-pint", "12oz", "pint", "1.5-pint", "quart", "half-gallon"] as const;
export const CANNER_NAMES = ["boiling-water", "pressure-dial", "pressure-weighted"] as const;

/** `food` is a crop's short name, a key of `GET /api/keeping/foods`, or what somebody typed. Without `altitudeM` the household's own. */
export const KeepingQuery = z.strictObject({
  food: z.string().trim().min(1, "must not be empty").max(120),
  way: z.enum(KEEPING_WAYS),
  jar: z.enum(JAR_NAMES).optional(),
  canner: z.enum(CANNER_NAMES).optional(),
  altitudeM: z.coerce.number().min(-430, "lies lower than any shore").max(9_000, "lies higher than any kitchen").optional(),
});
export type KeepingQuery = z.infer<typeof KeepingQuery>;

const DaySpan = z.object({ low: z.int(), high: z.int() });

export const KeepingAnswer = z
  .object({
    food: z.string(),
    way: z.enum(KEEPING_WAYS),
    /** Null when nobody has said how high the kitchen lies; then no minutes are shown. */
    altitudeM: z.number().nullable(),
    may: z.boolean(),
    /** One sentence that answers the question. */
    answer: z.string(),
    /** Tested processes, each line looked up by food, pack, jar, canner and altitude; `acid` belongs to every jar. */
    processes: z.array(
      z.object({
        key: z.string(),
        title: z.string(),
        lines: z.array(z.object({ pack: z.enum(["hot", "raw"]), jar: z.enum(JAR_NAMES), canner: z.enum(CANNER_NAMES), minutes: z.number(), psi: z.number().nullable(), text: z.string() })),
        acid: z.array(z.string()),
        /** Headspace, quantities and what else the guide says. */
        more: z.array(z.string()),
        notes: z.array(z.string()),
        sources: z.array(Source),
      }),
    ),
    /** Blanching, drying, salt: one sentence each. */
    figures: z.array(z.object({ text: z.string(), source: Source })),
    /** How long it keeps: `best` ends the quality, `safe` the time in which it may be eaten; both in days. */
    keeps: z.array(z.object({ place: z.enum(PLACE_KINDS), best: DaySpan.nullable(), safe: DaySpan.nullable(), text: z.string(), source: Source })),
    /** What must not be done, with the reason. */
    never: z.array(z.object({ text: z.string(), source: Source })),
    instead: z.array(z.object({ way: z.string(), text: z.string() })),
    cautions: z.array(z.string()),
    sources: z.array(Source),
  })
  .meta({ id: "KeepingAnswer" });
export type KeepingAnswer = z.infer<typeof KeepingAnswer>;

/** What can be asked for: crops of the book and foods of the tested tables, by name. */
export const KeepingFoods = z.array(
  z.object({ food: z.string(), name: z.string(), kind: z.enum(["crop", "tested food"]), ways: z.array(z.enum(KEEPING_WAYS)), jars: z.array(z.enum(JAR_NAMES)), canners: z.array(z.enum(CANNER_NAMES)) }),
);
export type KeepingFoods = z.infer<typeof KeepingFoods>;
