import { z } from "zod";
import { WAYS } from "../kernel/way.ts";
import { Day, Id, Source, StoredId, Week } from "./common.ts";
import { NewPlanLine } from "./plan-lines.ts";

/** `allowance`: the share of what is picked that may be lost so that what was asked for is made; 0 puts loss strictly first. */
export const SeasonQuestion = z
  .strictObject({
    from: Week,
    weeks: z.int("must be whole weeks").min(1, "at least one week").max(40, "40 weeks at most"),
    allowance: z.number().min(0, "must not be negative").max(0.2, "a fifth at most").optional(),
    asOf: Day.optional(),
  })
  .meta({ id: "SeasonQuestion" });
export type SeasonQuestion = z.infer<typeof SeasonQuestion>;

const Use = z.object({ crop: z.string(), name: z.string(), grams: z.int() });

export const SeasonLine = z
  .object({
    recipeId: StoredId,
    title: z.string(),
    way: z.enum(WAYS),
    batches: z.int(),
    /** For all batches together; only crops that decide the batch. */
    uses: z.array(Use),
    makes: z.object({ amount: z.number(), unit: z.string() }),
    handsOnMin: z.int(),
    /** Of the freezer, until it is eaten; 0 for what is kept elsewhere. */
    freezerLitres: z.number(),
    jars: z.int(),
    why: z.string(),
    /** What would take its place; only when it was worked out. */
    displaces: z.string().optional(),
    /** Plan lines of this recipe and week that are agreed; empty for what is only proposed. */
    agreedIds: z.array(StoredId),
  })
  .meta({ id: "SeasonLine" });
export type SeasonLine = z.infer<typeof SeasonLine>;

export const SeasonWeek = z
  .object({
    week: z.string(),
    starts: z.string(),
    ends: z.string(),
    /** Everybody is away for more than half of it. */
    away: z.boolean(),
    pickedGrams: z.int(),
    freshGrams: z.int(),
    lostGrams: z.int(),
    handsOnMin: z.int(),
    /** Hours there are, in minutes. */
    handsOnMostMin: z.int(),
    /** Why a week has no line, where it has none. */
    text: z.string(),
    lines: z.array(SeasonLine),
  })
  .meta({ id: "SeasonWeek" });
export type SeasonWeek = z.infer<typeof SeasonWeek>;

/** How the plan fares when the year is poor, as usual or good; grams of the whole span. */
export const SeasonCourse = z.object({
  id: z.enum(["poor", "usual", "good"]),
  /** Share of the weather years that this one stands for. */
  chance: z.number(),
  pickedGrams: z.int(),
  lostGrams: z.int(),
  /** Planned batches that the year has no produce for. */
  unmadeBatches: z.int(),
  /** Frozen besides, as it comes. */
  moreBatches: z.int(),
  text: z.string(),
});

/** A target or a wish, and how it stands at the end of each week of the plan. */
export const SeasonAsked = z.object({
  id: StoredId,
  kind: z.enum(["target", "wish"]),
  recipeId: StoredId,
  title: z.string(),
  portions: z.int(),
  by: z.string().nullable(),
  /** In the larder when the plan begins. */
  inLarderPortions: z.int(),
  /** By the day, with this plan, in the usual year. */
  reachedPortions: z.int(),
  missingPortions: z.int(),
  byWeek: z.array(z.object({ week: z.string(), portions: z.int() })),
  text: z.string(),
});

export const SeasonFreezer = z.object({
  /** Null where nobody has said how many litres it has. */
  litres: z.number().nullable(),
  /** At the fullest moment of the week. */
  weeks: z.array(z.object({ week: z.string(), usedLitres: z.number(), capacityLitres: z.number().nullable() })),
});

const Help = z.object({ limit: z.string(), more: z.number(), unit: z.string(), savesGrams: z.int(), text: z.string() });
/** A week in which something is lost all the same: what stood in the way, and what one step more of it would save. */
export const WeekWithoutAnswer = z.object({ week: z.string(), lostGrams: z.int(), crops: z.array(z.string()), helps: z.array(Help), text: z.string() });

export const SeasonRefused = z.object({ recipeId: StoredId, title: z.string(), why: z.string(), instead: z.array(z.object({ recipeId: StoredId, title: z.string() })) });

export const SeasonPlanAnswer = z
  .object({
    from: z.string(),
    asOf: z.string(),
    /** `rule`: only the simple rule has answered. `infeasible`: what is agreed cannot all be; `clashes` says why. */
    status: z.enum(["optimal", "feasible", "infeasible", "rule"]),
    plannedBy: z.enum(["solver", "rule"]),
    /** How far the loss may lie above the least possible, percent of what is lost; null: not known. */
    gapPct: z.number().nullable(),
    allowance: z.number(),
    headline: z.string(),
    pickedGrams: z.int(),
    lostGrams: z.int(),
    /** The simple rule's plan of the same season. */
    byRule: z.object({ lostGrams: z.int(), missingPct: z.number() }),
    missingPct: z.number(),
    weeks: z.array(SeasonWeek),
    courses: z.array(SeasonCourse),
    asked: z.array(SeasonAsked),
    freezer: SeasonFreezer,
    withoutAnswer: z.array(WeekWithoutAnswer),
    refused: z.array(SeasonRefused),
    /** Which limits clash, where no plan is possible as agreed. */
    clashes: z.array(z.string()),
    /** What was taken for granted because nobody has said it, and what could not be taken in. */
    notes: z.array(z.string()),
    basis: z.array(Source),
  })
  .meta({ id: "SeasonPlan" });
export type SeasonPlanAnswer = z.infer<typeof SeasonPlanAnswer>;

/** A plan being worked out in the background. */
export const SeasonJob = z
  .object({
    id: StoredId,
    state: z.enum(["waiting", "working", "done", "cancelled", "failed"]),
    /** 0–1, of the time it may take. */
    progress: z.number(),
    text: z.string(),
    /** The best so far; the rule's from the start. */
    plan: SeasonPlanAnswer,
  })
  .meta({ id: "SeasonJob" });
export type SeasonJob = z.infer<typeof SeasonJob>;

/** The plan that stands: the last one worked out. `upToDate` is false when something it rests on was changed since. */
export const StandingSeason = z
  .object({ plan: SeasonPlanAnswer.nullable(), upToDate: z.boolean(), jobId: StoredId.nullable() })
  .meta({ id: "StandingSeason" });
export type StandingSeason = z.infer<typeof StandingSeason>;

export const WeekParams = z.strictObject({ week: Week });

/** Agrees lines for a week, all or none; a line that is agreed already stays as it is. `buyMissing`: produce, jars, lids and bags that are short are bought. */
export const NewAgreed = z
  .strictObject({ lines: z.array(NewPlanLine.omit({ week: true }).extend({ id: Id })).min(1, "name at least one line").max(40), buyMissing: z.boolean().optional() })
  .meta({ id: "NewAgreed" });
export type NewAgreed = z.infer<typeof NewAgreed>;

const Left = z.object({ kind: z.enum(["crop", "freezer", "jar", "lid", "bag"]), id: z.string(), name: z.string(), unit: z.enum(["g", "l", "pieces"]), there: z.number(), reserved: z.number(), left: z.number() });
/** What is agreed for a week, and what of produce, room and jars is reserved and left. */
export const AgreedWeek = z
  .object({
    week: z.string(),
    lines: z.array(z.object({ id: StoredId, recipeId: StoredId, title: z.string(), way: z.enum(WAYS), batches: z.int(), uses: z.array(z.object({ crop: z.string(), grams: z.int() })) })),
    limits: z.array(Left),
  })
  .meta({ id: "AgreedWeek" });
export type AgreedWeek = z.infer<typeof AgreedWeek>;
