import { z } from "zod";
import { PLACE_KINDS } from "../kernel/way.ts";
import { Day, Grams, Id, Name, Note, PositiveGrams, Source, StoredId } from "./common.ts";

export const MOVEMENT_KINDS = ["put", "take", "give", "compost", "recount", "move"] as const;
export const TAKEN_FOR = ["eat", "trim", "batch"] as const;
export const LOT_STATES = ["not put in yet", "in store", "part used", "used up", "to recount"] as const;

/** What stands in the larder under one label. `crop`: produce as picked. `recipeId`: what was made. Neither: bought or given. It has no amount. */
export const NewLot = z
  .strictObject({
    title: Name,
    crop: z.string().trim().min(1).max(60).optional(),
    recipeId: Id.optional(),
    placeId: Id,
    madeOn: Day,
    /** Weight of one portion, so that grams and portions can be told from each other. */
    portionGrams: PositiveGrams.optional(),
    /** Room that one portion takes. */
    portionMl: z.int("must be whole millilitres").min(1, "must be more than nothing").max(1_000_000).optional(),
    /** A date of the household's own, as on what was bought; never makes anything safe for longer. */
    bestUntil: Day.optional(),
    note: Note.optional(),
  })
  .superRefine((lot, ctx) => {
    if (lot.crop !== undefined && lot.recipeId !== undefined)
      ctx.addIssue({ code: "custom", path: ["recipeId"], message: "a lot is either a crop as picked or made by a recipe: leave one of crop and recipeId out" });
    if (lot.bestUntil !== undefined && lot.bestUntil < lot.madeOn) ctx.addIssue({ code: "custom", path: ["bestUntil"], message: "cannot be before the day it was made" });
  })
  .meta({ id: "NewLot" });
export type NewLot = z.infer<typeof NewLot>;

const Amount = z.object({ grams: z.int().nullable(), portions: z.int().nullable() });

/** Append-only: a wrong movement is undone and written again. Exactly one of grams and portions. */
export const NewMovement = z
  .strictObject({
    kind: z.enum(MOVEMENT_KINDS),
    on: Day,
    grams: Grams.optional(),
    portions: z.int("must be whole portions").min(0, "must not be negative").max(1_000_000).optional(),
    for: z.enum(TAKEN_FOR).optional(),
    /** Where it is put, taken from, moved from or counted; without it the lot's own place first, then the others. */
    placeId: Id.optional(),
    toPlaceId: Id.optional(),
    /** It has happened already and was only sent later: it is kept even where the book says there was less. */
    queued: z.boolean().optional(),
    /** When it was written down on the device; tells two entries of one day apart. */
    at: z.iso
      .datetime({ offset: true, error: "must be an instant such as 2027-07-26T09:30:00Z" })
      .transform((at) => new Date(at).toISOString())
      .optional(),
    note: Note.optional(),
  })
  .superRefine((movement, ctx) => {
    const { kind, grams, portions, toPlaceId, placeId } = movement;
    const fault = (path: string, message: string): void => ctx.addIssue({ code: "custom", path: [path], message });
    if (grams === undefined && portions === undefined) fault("grams", "say how much with grams or portions");
    if (grams !== undefined && portions !== undefined) fault("portions", "say how much with either grams or portions, not both");
    if (kind !== "recount" && (grams ?? portions ?? 1) === 0) fault(grams === undefined ? "portions" : "grams", "must be more than nothing");
    if (movement.for !== undefined && kind !== "take") fault("for", "is said of what is taken only");
    if (kind === "move" && toPlaceId === undefined) fault("toPlaceId", "say where it goes");
    if (kind !== "move" && toPlaceId !== undefined) fault("toPlaceId", "is said of what is moved only");
    if (kind === "move" && placeId !== undefined && placeId === toPlaceId) fault("toPlaceId", "must be another place than the one it comes from");
  })
  .meta({ id: "NewMovement" });
export type NewMovement = z.infer<typeof NewMovement>;

export const Movement = z
  .object({
    id: StoredId,
    lotId: StoredId,
    kind: z.enum(MOVEMENT_KINDS),
    on: z.string(),
    /** Null where the lot is counted in the other and nobody has weighed a portion. */
    grams: z.int().nullable(),
    portions: z.int().nullable(),
    for: z.enum(TAKEN_FOR).optional(),
    placeId: StoredId.optional(),
    toPlaceId: StoredId.optional(),
    queued: z.boolean(),
    at: z.string().optional(),
    note: z.string().optional(),
    undone: z.boolean(),
  })
  .meta({ id: "Movement" });
export type Movement = z.infer<typeof Movement>;

/** What is left of the lot now; `short`: more was taken than there was, by so much at most. */
export const LotBalance = z.object({ ...Amount.shape, short: Amount.nullable() });
export const MovementOfLot = z.object({ ...Movement.shape, left: LotBalance }).meta({ id: "MovementOfLot" });
export type MovementOfLot = z.infer<typeof MovementOfLot>;

const LotFields = {
  id: StoredId,
  title: z.string(),
  crop: z.string().optional(),
  recipeId: StoredId.optional(),
  madeOn: z.string(),
  /** Where it stands; where it is split, where most of it is. */
  placeId: StoredId,
  placeName: z.string(),
  ...Amount.shape,
  countedIn: z.enum(["grams", "portions"]).nullable(),
  stands: z.array(z.object({ placeId: StoredId, placeName: z.string(), kind: z.enum(PLACE_KINDS), ...Amount.shape })),
  /** Ends the quality. Null where nothing is known. */
  bestUntil: z.string().nullable(),
  /** Ends the time in which it may be eaten; left out where the tables set no such end. */
  safeUntil: z.string().optional(),
  useFirst: z.boolean(),
  /** Past `safeUntil`: thrown away, not eaten. */
  discard: z.boolean(),
  state: z.enum(LOT_STATES),
  short: Amount.nullable(),
  /** Not touched for so long that it is listed as forgotten. */
  forgotten: z.boolean(),
  lastMovedOn: z.string().nullable(),
  reheat: z.string().optional(),
  keepsWhy: z.array(z.string()),
  sources: z.array(Source),
};

export const LarderLot = z.object(LotFields).meta({ id: "LarderLot" });
export type LarderLot = z.infer<typeof LarderLot>;

export const Lot = z
  .object({
    ...LotFields,
    /** The place named when the lot was put down; what PUT wants back. */
    homePlaceId: StoredId,
    portionGrams: z.int().optional(),
    portionMl: z.int().optional(),
    /** The household's own date, when it gave one. */
    ownBestUntil: z.string().optional(),
    note: z.string().optional(),
    cautions: z.array(z.string()),
    movements: z.array(Movement),
    /** Entries dated before a recount that were written after it: the count stands, these are shown beside it. */
    late: z.array(StoredId),
  })
  .meta({ id: "Lot" });
export type Lot = z.infer<typeof Lot>;

export const MovementParams = z.strictObject({ id: Id, movementId: Id });
