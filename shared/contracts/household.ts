import { z } from "zod";
import { isZone } from "../kernel/zone.ts";
import { Day, Grams, Minutes, Name, Slug } from "./common.ts";
import { Kitchen } from "./kitchen.ts";

export const WEEK_STARTS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"] as const;

const fields = {
  name: Name,
  zone: z.string().refine(isZone, "must be a time zone such as Europe/Amsterdam"),
  latitude: z.number().min(-90).max(90),
  longitude: z.number().min(-180).max(180),
  altitudeM: z.number().min(-430).max(5_500),
  people: z.int().min(1).max(60),
  weekStart: z.enum(WEEK_STARTS),
  units: z.enum(["metric", "us", "imperial"]),
};
const Eats = z.object({ crop: Slug, gramsPerWeek: Grams });
/** Days on which nobody is at home, the first and the last included. */
const Away = z.strictObject({ firstDay: Day, lastDay: Day }).refine(({ firstDay, lastDay }) => firstDay <= lastDay, { path: ["lastDay"], message: "cannot be before the first day" });
/** What is never planned: crops, and whatever states one of these allergens. */
const Avoids = z.strictObject({ crops: z.array(Slug).max(200), allergens: z.array(z.string().trim().min(1, "must not be empty").max(60)).max(40) });

/** Without `eats` the sourced figures for that many people are used; without `glutGrams` a surplus of 1 kg a week is a glut. */
export const NewHousehold = z
  .strictObject({
    ...fields,
    eats: z.array(z.strictObject(Eats.shape)).max(200).optional(),
    glutGrams: Grams.optional(),
    /** What a cook day starts from; each cook day can say otherwise. */
    kitchen: Kitchen.optional(),
    cooks: z.int().min(1).max(6).optional(),
    /** Hands there are in a week for cooking ahead and preserving; the season plan says what it takes for granted without it. */
    kitchenMinPerWeek: Minutes.optional(),
    away: z.array(Away).max(60).optional(),
    avoids: Avoids.optional(),
    /** As the answer has them, so that it can be sent back: figures that are the book's stay the book's, a garden that has no place stays without. */
    eatsFrom: z.enum(["household", "book"]).optional(),
    placed: z.boolean().optional(),
  })
  .meta({ id: "NewHousehold" });
export type NewHousehold = z.infer<typeof NewHousehold>;

export const Household = z
  .object({
    ...fields,
    // was checked on its way in; asking the zone database costs more than the rest of the answer
    zone: z.string(),
    eats: z.array(Eats),
    /** Whether the figures in `eats` are the household's own or the book's. */
    eatsFrom: z.enum(["household", "book"]),
    glutGrams: z.int(),
    kitchen: Kitchen,
    cooks: z.int(),
    kitchenMinPerWeek: z.int().optional(),
    away: z.array(z.object({ firstDay: z.string(), lastDay: z.string() })),
    avoids: z.object({ crops: z.array(z.string()), allergens: z.array(z.string()) }),
    /** False until somebody has said where the garden lies. */
    placed: z.boolean(),
  })
  .meta({ id: "Household" });
export type Household = z.infer<typeof Household>;
