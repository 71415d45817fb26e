import { z } from "zod";
import { Day } from "./common.ts";

const tenths = z.number().min(-70, "colder than any garden").max(60, "hotter than any garden").multipleOf(0.1, "has one decimal");

/** Twelve monthly means of daily maximum and minimum, typed by hand: enough to start. */
export const Normals = z
  .strictObject({
    months: z
      .array(
        z
          .strictObject({ month: z.int().min(1).max(12), tmaxC: tenths, tminC: tenths })
          .refine((m) => m.tmaxC > m.tminC, { message: "the mean maximum must be above the mean minimum", path: ["tmaxC"] }),
      )
      .length(12, "twelve months, one entry each")
      .refine((months) => new Set(months.map((m) => m.month)).size === 12, "each month once"),
  })
  .meta({ id: "Normals" });
export type Normals = z.infer<typeof Normals>;

export const DaysStored = z.object({ days: z.int() }).meta({ id: "DaysStored" });

/** Days of the record from the first up to, and without, the last. */
export const WeatherDaysQuery = z.strictObject({ from: Day, until: Day }).refine(({ from, until }) => from < until, { message: "must be after from; the day itself is not in it", path: ["until"] });

export const DaysRemoved = z.object({ days: z.int() }).meta({ id: "DaysRemoved" });

export const WeatherHeld = z
  .object({
    days: z.int(),
    from: z.string().nullable(),
    until: z.string().nullable(),
    /** Whole calendar years in the record. */
    wholeYears: z.int(),
    normals: Normals.nullable(),
    /** Whose figures these are; shown wherever they are used. */
    attribution: z.string().nullable(),
  })
  .meta({ id: "WeatherHeld" });
export type WeatherHeld = z.infer<typeof WeatherHeld>;
