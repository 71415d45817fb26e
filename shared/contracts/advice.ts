/** Advice from the same forecasts as the calendar: frost dates, what to sow for which weeks, what still ripens, and how good past forecasts were. */
import { z } from "zod";
import { COVERS, METHODS } from "../kernel/way.ts";
import { DateBand, Day, GramBand, Slug, Source, StoredId, Week } from "./common.ts";

const Year = z.coerce.number().int().min(1900).max(2199);

export const FrostQuery = z.strictObject({ season: Year.optional(), asOf: Day.optional() });

/** Minimum of 0 °C or less at screen height; hard: −2 °C or less. Null where no year has such a night. */
export const FrostDates = z
  .object({
    season: z.int(),
    lastSpring: DateBand.nullable(),
    firstAutumn: DateBand.nullable(),
    lastHardSpring: DateBand.nullable(),
    firstHardAutumn: DateBand.nullable(),
    text: z.string(),
    basis: z.array(Source),
    notes: z.array(z.string()),
  })
  .meta({ id: "FrostDates" });

const MOST_WEEKS = 53;
const MOST_GRAMS_A_WEEK = 1_000_000;

/** A crop wanted for some weeks in a row. */
export const SowingAdviceQuery = z.strictObject({
  crop: Slug,
  from: Week,
  weeks: z.coerce.number().int().min(1, "at least one week").max(MOST_WEEKS, "a year of weeks at most"),
  gramsPerWeek: z.coerce.number().int().min(1, "must be more than nothing").max(MOST_GRAMS_A_WEEK),
  cover: z.enum(COVERS).optional(),
  method: z.enum(["direct", "transplant"]).optional(),
  variety: z.string().trim().min(1).max(120).optional(),
  asOf: Day.optional(),
});

export const AdvisedSowing = z.object({
  /** In place, or in trays where `plantOutOn` is given. */
  sowOn: z.string(),
  plantOutOn: z.string().nullable(),
  fromWeek: z.string(),
  untilWeek: z.string(),
  rowM: z.number(),
  plants: z.int().nullable(),
  areaM2: z.number().nullable(),
  firstPick: DateBand.nullable(),
  chanceOfPick: z.number(),
});

export const SowingAdvice = z
  .object({ sowings: z.array(AdvisedSowing), outOfReach: z.array(z.string()), basis: z.array(Source), notes: z.array(z.string()) })
  .meta({ id: "SowingAdvice" });
export type SowingAdvice = z.infer<typeof SowingAdvice>;

export const BedAdviceQuery = z.strictObject({ on: Day.optional(), asOf: Day.optional() });

export const StillRipens = z.object({
  crop: z.string(),
  name: z.string(),
  method: z.enum(METHODS),
  chanceOfPick: z.number(),
  firstPick: DateBand,
  gramsPerRowM: GramBand,
  waits: z.boolean(),
  notes: z.array(z.string()),
});

export const BedAdvice = z
  .object({ on: z.string(), freeM2: z.number(), sensible: z.array(StillRipens), gamble: z.array(StillRipens), basis: z.array(Source), notes: z.array(z.string()) })
  .meta({ id: "BedAdvice" });
export type BedAdvice = z.infer<typeof BedAdvice>;

export const TrackRecordQuery = z.strictObject({ asOf: Day.optional() });

const ForecastThen = z.object({ asOf: z.string(), firstPick: DateBand.nullable(), inside: z.boolean(), daysLater: z.int().nullable() });
const TrackScore = z.object({ inside: z.int(), of: z.int(), meanDaysOut: z.number().nullable() });

export const TrackRecord = z
  .object({
    text: z.string(),
    atSowing: TrackScore,
    monthBefore: TrackScore,
    rows: z.array(
      z.object({
        sowingId: StoredId,
        crop: z.string(),
        name: z.string(),
        variety: z.string().nullable(),
        season: z.int().nullable(),
        /** The grower chose the day: shown, and not counted. */
        chosen: z.boolean(),
        cameOn: z.string(),
        atSowing: ForecastThen,
        monthBefore: ForecastThen.nullable(),
      }),
    ),
  })
  .meta({ id: "TrackRecord" });
export type TrackRecord = z.infer<typeof TrackRecord>;
