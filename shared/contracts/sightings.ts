import { z } from "zod";
import { STAGES } from "../kernel/way.ts";
import { Day, Id, StoredId } from "./common.ts";

export const NewSighting = z.strictObject({ stage: z.enum(STAGES), seenOn: Day }).meta({ id: "NewSighting" });
export type NewSighting = z.infer<typeof NewSighting>;

export const Sighting = z.object({ id: StoredId, stage: z.enum(STAGES), seenOn: z.string() }).meta({ id: "Sighting" });
export type Sighting = z.infer<typeof Sighting>;

export const SightingParams = z.strictObject({ id: Id, sightingId: Id });
