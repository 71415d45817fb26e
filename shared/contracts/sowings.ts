import { z } from "zod";
import { VARIETY_DAYS } from "../kernel/crop-facts.ts";
import { METHODS } from "../kernel/way.ts";
import { DateBand, Day, GramBand, Id, Metres, Note, Slug, Source, StoredId } from "./common.ts";
import { Sighting } from "./sightings.ts";

const amounts = ["rowM", "plants", "areaM2"] as const;

const PacketDays = z
  .int()
  .min(VARIETY_DAYS.fewest, `must be at least ${VARIETY_DAYS.fewest} days`)
  .max(VARIETY_DAYS.most, `must be at most ${VARIETY_DAYS.most} days`);

/** Days to maturity as the packet prints them; without `from` counted as the crop's own. */
export const VarietyDays = z
  .strictObject({ low: PacketDays, high: PacketDays, from: z.enum(["sowing", "transplanting"]).optional() })
  .refine(({ low, high }) => low <= high, { path: ["high"], error: "must not be fewer than low" });

/** Exactly one of rowM, plants, areaM2; direct needs sownOn, transplant plantedOutOn or sownOn, established neither. */
export const NewSowing = z
  .strictObject({
    bedId: Id,
    crop: Slug,
    variety: z.string().trim().min(1).max(120).optional(),
    /** Of the variety, from its packet: `{low, high}`, or one figure. */
    varietyDays: z.union([PacketDays.transform((days) => ({ low: days, high: days })), VarietyDays]).optional(),
    method: z.enum(METHODS),
    sownOn: Day.optional(),
    plantedOutOn: Day.optional(),
    rowM: Metres.optional(),
    plants: z.int().min(1, "must be at least one plant").max(100_000).optional(),
    areaM2: Metres.optional(),
    /** The year an established planting was set; without it, full bearing is taken. */
    standsSince: z.int().min(1900).max(2200).optional(),
    note: Note.optional(),
  })
  .superRefine((sowing, ctx) => {
    const given = amounts.filter((name) => sowing[name] !== undefined);
    if (given.length !== 1)
      ctx.addIssue({
        code: "custom",
        path: [given[1] ?? "rowM"],
        message: "say how much with exactly one of rowM (metres of row), plants or areaM2",
      });
    if (sowing.method === "direct" && sowing.sownOn === undefined)
      ctx.addIssue({ code: "custom", path: ["sownOn"], message: "a crop sown in place needs the day it was sown" });
    if (sowing.method === "transplant" && sowing.plantedOutOn === undefined && sowing.sownOn === undefined)
      ctx.addIssue({ code: "custom", path: ["plantedOutOn"], message: "a transplant needs the day it was planted out, or sown" });
    if (sowing.sownOn !== undefined && sowing.plantedOutOn !== undefined && sowing.plantedOutOn < sowing.sownOn)
      ctx.addIssue({ code: "custom", path: ["plantedOutOn"], message: "cannot be before the sowing" });
  })
  .meta({ id: "NewSowing" });
export type NewSowing = z.infer<typeof NewSowing>;

export const ForecastWeek = z.object({ week: z.string(), grams: GramBand, chanceInHarvest: z.number() });

/** °C d above the crop's base, since the day from which its first pick is counted. */
const Warmth = z.object({
  since: z.string(),
  from: z.enum(["book", "planted-out", "emerged", "flowering", "fruit-set", "coming-up"]),
  baseC: z.number(),
  gainedCd: z.int(),
  usualCd: GramBand,
  needsCd: z.int(),
  daysAhead: z.int(),
  points: z.array(z.object({ on: z.string(), gainedCd: z.int().nullable(), usualCd: GramBand })),
});

/** `percent` less (below zero) or more than the book's. */
const Learned = z.object({ count: z.int(), percent: z.int(), sameVariety: z.boolean() }).nullable();

export const Forecast = z
  .object({
    firstPick: DateBand.nullable(),
    lastPick: DateBand.nullable(),
    totalGrams: GramBand,
    weeks: z.array(ForecastWeek),
    /** Twenty first-pick days at equal steps of chance, earliest first; fewer where some seasons bring no pick. */
    dots: z.array(z.string()),
    /** Share of scenarios that come to a pick. */
    chanceOfPick: z.number(),
    frost: z.object({ lastSpring: DateBand.nullable(), firstAutumn: DateBand.nullable() }),
    /** Ready from, waits for the grower: no glut comes of it. */
    waits: z.boolean(),
    /** Of what waits: when it is at its best, and the last day before frost, seeding or age spoils it. */
    lift: z.object({ ready: DateBand, bestFrom: DateBand, bestUntil: DateBand, outBy: DateBand }).nullable().optional(),
    /** What the household's own finished sowings changed in the book's figures. */
    own: z.object({ warmth: Learned, amount: Learned }).optional(),
    /** Of one sowing asked for by itself: the warmth it has had against the usual by the same day. */
    warmth: Warmth.nullable().optional(),
    basis: z.array(Source),
    notes: z.array(z.string()),
  })
  .meta({ id: "Forecast" });
export type Forecast = z.infer<typeof Forecast>;

export const Sowing = z
  .object({
    id: StoredId,
    bedId: StoredId,
    crop: z.string(),
    variety: z.string().optional(),
    varietyDays: VarietyDays.optional(),
    method: z.enum(METHODS),
    sownOn: z.string().optional(),
    plantedOutOn: z.string().optional(),
    rowM: z.number().optional(),
    plants: z.int().optional(),
    areaM2: z.number().optional(),
    standsSince: z.int().optional(),
    note: z.string().optional(),
    sightings: z.array(Sighting),
    pickedGrams: z.int(),
    /** What does not fit the bed, in square metres and weeks; the sowing is kept all the same. */
    fits: z.array(z.string()),
    forecast: Forecast,
  })
  .meta({ id: "Sowing" });
export type Sowing = z.infer<typeof Sowing>;
export const Sowings = z.array(Sowing);

/** Answer to `POST /api/sowings/preview` with a NewSowing: what it would come to; nothing is stored. */
export const SowingPreview = z.object({ fits: z.array(z.string()), forecast: Forecast }).meta({ id: "SowingPreview" });
export type SowingPreview = z.infer<typeof SowingPreview>;

export const ForecastQuery = z.strictObject({ asOf: Day.optional(), season: z.coerce.number().int().min(1900).max(2200).optional() });
export const SowingsQuery = z.strictObject({ asOf: Day.optional(), crop: Slug.optional() });
