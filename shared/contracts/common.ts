/** The spellings that every contract shares: ids, days, weeks, amounts, spreads. */
import { z } from "zod";
import { isIsoWeek } from "../kernel/iso-week.ts";
import { isLocalDate } from "../kernel/local-date.ts";

/** Any UUID of 8-4-4-4-12 hex digits, whatever its version; read back in lower case. */
export const Id = z
  .string()
  .regex(/^[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}$/, "must be a UUID such as 3f8a1c1e-4a59-4a0e-9d57-2b1f6f0c9a11")
  .transform((id) => id.toLowerCase());
/** The same on the way out, where a transform has no place. */
export const StoredId = z.string();

/** Reckoning looks years back and ahead of a day, and neither may leave the four digits of a year. */
const inTheBook = (dayOrWeek: string): boolean => dayOrWeek >= "1900" && dayOrWeek < "2200";
const YEARS = "must lie in the years 1900 to 2199";

export const Day = z.string().refine(isLocalDate, { error: "must be a calendar day such as 2027-07-26", abort: true }).refine(inTheBook, YEARS);
export const Week = z.string().refine(isIsoWeek, { error: "must be an ISO week such as 2027-W32", abort: true }).refine(inTheBook, YEARS);
export const Clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, "must be a time such as 14:00");
export const Slug = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "must be a crop's short name such as french-bean").max(60);

const HUNDRED_TONNES = 100_000_000;
export const Grams = z.int("must be whole grams").min(0, "must not be negative").max(HUNDRED_TONNES);
export const PositiveGrams = z.int("must be whole grams").min(1, "must be more than nothing").max(HUNDRED_TONNES);
const A_WEEK_OF_MINUTES = 10_080;
export const Minutes = z.int("must be whole minutes").min(0, "must not be negative").max(A_WEEK_OF_MINUTES);
export const Metres = z.number().positive("must be more than nothing").max(10_000).multipleOf(0.01, "has two decimals at most");
export const Name = z.string().trim().min(1, "must not be empty").max(120);
export const Note = z.string().trim().max(2_000);

/** 10th, 50th and 90th percentile. */
export const GramBand = z.object({ low: z.number(), likely: z.number(), high: z.number() });
export const DateBand = z.object({ low: z.string(), likely: z.string(), high: z.string() });
export type DateBand = z.infer<typeof DateBand>;
export const Source = z.object({ id: z.string(), text: z.string() });

export const IdParams = z.strictObject({ id: Id });
