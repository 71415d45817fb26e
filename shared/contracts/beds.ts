import { z } from "zod";
import { COVERS } from "../kernel/way.ts";
import { Metres, Name, StoredId } from "./common.ts";

export const NewBed = z
  .strictObject({ name: Name, lengthM: Metres, widthM: Metres, cover: z.enum(COVERS) })
  .meta({ id: "NewBed" });
export type NewBed = z.infer<typeof NewBed>;

export const Bed = z
  .object({
    id: StoredId,
    name: z.string(),
    lengthM: z.number(),
    widthM: z.number(),
    cover: z.enum(COVERS),
    areaM2: z.number(),
    /** What stands free today. */
    freeM2: z.number(),
  })
  .meta({ id: "Bed" });
export type Bed = z.infer<typeof Bed>;
export const Beds = z.array(Bed);
