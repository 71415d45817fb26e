import { and, asc, eq, gte, isNotNull, isNull, lt, sql, type SQL } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { households, picks, sowings } from "#db/schema/index.ts";
import type { NewPick } from "#shared/contracts/picks.ts";

export type PickRow = typeof picks.$inferSelect;
export type PickOfCrop = PickRow & { readonly crop: string };

export interface PicksWanted {
  readonly from?: string | undefined;
  readonly until?: string | undefined;
  readonly sowingId?: string | undefined;
  readonly undone: boolean;
}

export function listPicks(tx: Tx, householdId: string, { from, until, sowingId, undone }: PicksWanted): Promise<PickOfCrop[]> {
  const wanted: (SQL | undefined)[] = [
    eq(picks.householdId, householdId),
    from === undefined ? undefined : gte(picks.pickedOn, from),
    until === undefined ? undefined : lt(picks.pickedOn, until),
    sowingId === undefined ? undefined : eq(picks.sowingId, sowingId),
    undone ? isNotNull(picks.undoneAt) : isNull(picks.undoneAt),
  ];
  return withCrop(tx).where(and(...wanted)).orderBy(asc(picks.pickedOn), asc(picks.recordedAt), asc(picks.id)).then(flat);
}

export async function findPick(tx: Tx, householdId: string, id: string): Promise<PickOfCrop | undefined> {
  return flat(await withCrop(tx).where(and(eq(picks.householdId, householdId), eq(picks.id, id))))[0];
}

/** When the sowing starts and which crop it is, with the household's zone; undefined when there is no such sowing. */
export async function sowingPicked(tx: Tx, householdId: string, sowingId: string) {
  const [row] = await tx
    .select({ crop: sowings.crop, sownOn: sowings.sownOn, plantedOutOn: sowings.plantedOutOn, standsSince: sowings.standsSince, zone: households.zone })
    .from(sowings)
    .innerJoin(households, eq(households.householdId, sowings.householdId))
    .where(and(eq(sowings.householdId, householdId), eq(sowings.id, sowingId)))
    .for("key share", { of: sowings });
  return row;
}

export async function insertPick(tx: Tx, householdId: string, id: string, pick: NewPick): Promise<PickRow | undefined> {
  const [row] = await tx.insert(picks).values({ householdId, id, ...pick }).onConflictDoNothing().returning();
  return row;
}

/** The row stays, marked; marking it again changes nothing. False when there is no such pick. */
export async function undoPick(tx: Tx, householdId: string, id: string): Promise<boolean> {
  const undone = await tx
    .update(picks)
    .set({ undoneAt: sql`coalesce(${picks.undoneAt}, now())` })
    .where(and(eq(picks.householdId, householdId), eq(picks.id, id)))
    .returning({ id: picks.id });
  return undone.length > 0;
}

const withCrop = (tx: Tx) =>
  tx
    .select({ pick: picks, crop: sowings.crop })
    .from(picks)
    .innerJoin(sowings, and(eq(sowings.householdId, picks.householdId), eq(sowings.id, picks.sowingId)))
    .$dynamic();

const flat = (rows: readonly { pick: PickRow; crop: string }[]): PickOfCrop[] => rows.map(({ pick, crop }) => ({ ...pick, crop }));
