/** Kitchen timers. They live on the server as the instant at which they ring; what is left is that instant less now, on any device. */
import { z } from "zod";
import { Clock, Id, Minutes, Name, StoredId } from "./common.ts";
import { StepRef } from "./day-plans.ts";

export const Instant = z.iso
  .datetime({ offset: true, error: "must be an instant such as 2027-07-26T09:30:00Z" })
  .transform((at) => new Date(at).toISOString());

/** Exactly one of `minutes` (from when it is first put), `endsAt`, and `clock` (the next time that the household's clock shows it). */
export const NewTimer = z
  .strictObject({
    /** What to do when it rings. */
    label: Name,
    /** Which pot, tray or bowl. */
    pot: Name.optional(),
    step: StepRef.optional(),
    minutes: Minutes.min(1, "must be more than nothing").optional(),
    endsAt: Instant.optional(),
    clock: Clock.optional(),
    /** Somebody has heard it ring; it rings no more, on any device, but still shows how long ago it was. */
    heard: z.boolean().optional(),
    stopped: z.boolean().optional(),
  })
  .superRefine(({ minutes, endsAt, clock }, ctx) => {
    if ([minutes, endsAt, clock].filter((one) => one !== undefined).length !== 1) ctx.addIssue({ code: "custom", path: ["minutes"], message: "say when it rings with one of minutes, endsAt and clock" });
  })
  .meta({ id: "NewTimer" });
export type NewTimer = z.infer<typeof NewTimer>;

export const Timer = z
  .object({
    id: StoredId,
    label: z.string(),
    pot: z.string().optional(),
    step: z.object({ dish: StoredId, step: z.string(), load: z.int().optional() }).optional(),
    /** As it was said. */
    minutes: z.int().optional(),
    clock: z.string().optional(),
    endsAt: z.string(),
    /** Local HH:MM of that instant where the household lives. */
    endsAtClock: z.string(),
    state: z.enum(["running", "ringing", "heard", "stopped"]),
    heardAt: z.string().optional(),
    stoppedAt: z.string().optional(),
    /** What If-Match takes to change it. */
    etag: z.string(),
  })
  .meta({ id: "Timer" });
export type Timer = z.infer<typeof Timer>;

export const TimerParams = z.strictObject({ id: Id, timerId: Id });
