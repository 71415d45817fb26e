import { z } from "zod";
import { WAYS } from "../kernel/way.ts";
import { DateBand, Day, GramBand, Source, StoredId, Week } from "./common.ts";
import { PlanLine } from "./plan-lines.ts";

export const CalendarQuery = z.strictObject({
  from: Week.optional(),
  weeks: z.coerce.number().int().min(1, "at least one week").max(60, "60 weeks at most").optional(),
  asOf: Day.optional(),
});

export const Pairing = z
  .object({
    recipeId: StoredId,
    title: z.string(),
    way: z.enum(WAYS),
    batches: z.int(),
    uses: z.array(z.object({ crop: z.string(), grams: z.int() })),
    makes: z.object({ amount: z.number(), unit: z.string() }),
    handsOnMin: z.int(),
    why: z.string(),
    cautions: z.array(z.string()),
    /** Stands in the season's plan for this week; the others are alternatives, in their order. */
    planned: z.boolean(),
    /** What of it another recipe makes, and what of that is in store. */
    parts: z.array(z.object({ recipeId: StoredId, title: z.string(), inStore: z.string().optional() })),
  })
  .meta({ id: "Pairing" });
export type Pairing = z.infer<typeof Pairing>;

export const CalendarCrop = z.object({
  crop: z.string(),
  name: z.string(),
  /** What the garden gives that week; of a past week what was picked. */
  grams: GramBand,
  pickedGrams: z.int(),
  /** What of it is eaten fresh, middle of the scenarios. */
  freshGrams: z.number(),
  /** Amount + what still keeps − eaten fresh − planned, middle of the scenarios. */
  surplusGrams: z.number(),
  chanceInHarvest: z.number(),
  /** Waits in the ground or in store: never a glut. */
  waits: z.boolean(),
});
export type CalendarCrop = z.infer<typeof CalendarCrop>;

export const CalendarWeek = z
  .object({
    week: z.string(),
    starts: z.string(),
    ends: z.string(),
    headline: z.string(),
    crops: z.array(CalendarCrop),
    /** All crops that do not wait, together. */
    grams: GramBand,
    pickedGrams: z.int(),
    eatsGrams: z.number(),
    surplusGrams: z.number(),
    glut: z.boolean(),
    planned: z.array(PlanLine),
    /** First what the season's plan has for this week, where one stands, then the alternatives, best first. */
    pairings: z.array(Pairing),
    /** What a cook day of this week begins with: what is chosen for it, else what the season's plan has for it. */
    cookDay: z.array(z.object({ recipeId: StoredId, batches: z.int() })),
  })
  .meta({ id: "CalendarWeek" });
export type CalendarWeek = z.infer<typeof CalendarWeek>;

export const CalendarRow = z
  .object({
    crop: z.string(),
    name: z.string(),
    waits: z.boolean(),
    sowings: z.array(
      z.object({
        id: StoredId,
        bedName: z.string(),
        variety: z.string().optional(),
        /** Sown or planted out; null for what stands for years. */
        from: z.string().nullable(),
        /** Last likely day in the ground; null where it stands on. */
        until: z.string().nullable(),
      }),
    ),
    /** For crops taken in one go: the spread of the lifting day. */
    lift: DateBand.nullable(),
    bestWeekGrams: z.number(),
    seasonGrams: GramBand,
  })
  .meta({ id: "CalendarRow" });
export type CalendarRow = z.infer<typeof CalendarRow>;

export const Calendar = z
  .object({
    today: z.string(),
    /** The page's sentence. */
    headline: z.string(),
    /** The part of the sentence that says how much is over, to be set in the surplus colour; empty in a calm year. */
    headlineOver: z.string(),
    /** Newly over what is eaten from today on, each gram counted once. */
    overGrams: z.number(),
    overUntil: z.string().nullable(),
    eatsGrams: z.number(),
    frost: z.object({ lastSpring: DateBand.nullable(), firstAutumn: DateBand.nullable() }),
    rows: z.array(CalendarRow),
    weeks: z.array(CalendarWeek),
    /** The plan that the pairings come from; null where none stands and they are in the order of the written rule alone. `upToDate`: nothing it rests on has changed since. */
    seasonPlan: z.object({ by: z.enum(["solver", "rule"]), from: z.string(), weeks: z.int(), asOf: z.string(), upToDate: z.boolean(), text: z.string() }).nullable(),
    /** What is missing before the page can say more. */
    missing: z.array(z.enum(["place", "weather", "beds", "sowings"])),
    basis: z.array(Source),
    notes: z.array(z.string()),
  })
  .meta({ id: "Calendar" });
export type Calendar = z.infer<typeof Calendar>;
