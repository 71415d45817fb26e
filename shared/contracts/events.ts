/** What the stream of events says: parts of the household's data that have changed, never the data itself. */
import { z } from "zod";

export const PARTS = ["garden", "kitchen", "weather", "larder", "counter"] as const;
export type ChangedPart = (typeof PARTS)[number];

/** `since`: where an answer said the stream stood, so that nothing between the two is missed. Last-Event-ID says the same. */
export const EventsQuery = z.strictObject({ since: z.string().max(200).optional() });

/** Data of the event `changed`. Its id is what `since` takes. */
export const Changed = z.object({ parts: z.array(z.enum(PARTS)), now: z.string() }).meta({ id: "Changed" });
export type Changed = z.infer<typeof Changed>;
