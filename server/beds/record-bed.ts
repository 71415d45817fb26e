/** Lays a bed out, or changes one; a bed in which something stands cannot be taken away. */
import type { Tx } from "#db/client.ts";
import type { NewBed } from "#shared/contracts/beds.ts";
import { ok, refuse, type Result } from "#shared/kernel/outcome.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, refuseStaleDelete, type Put } from "../http/put-once.ts";
import { countSowingsIn, deleteBed, insertBed, lockBed, updateBed, type BedRow } from "./store.ts";

export interface AskedBed {
  readonly id: string;
  readonly body: NewBed;
  readonly ifMatch: string | undefined;
}

export function recordBed(tx: Tx, householdId: string, { id, body, ifMatch }: AskedBed): Promise<Result<Put<BedRow>>> {
  return putEditable<BedRow, NewBed>({
    body,
    bodyOf: ({ name, lengthM, widthM, cover }) => ({ name, lengthM, widthM, cover: cover as NewBed["cover"] }),
    ifMatch,
    tagOf,
    find: () => lockBed(tx, householdId, id),
    insert: () => insertBed(tx, householdId, id, body),
    update: (stored) => updateBed(tx, stored, body),
  });
}

export async function takeBedAway(tx: Tx, householdId: string, id: string, ifMatch: string | undefined): Promise<Result<void>> {
  const bed = await lockBed(tx, householdId, id);
  if (!bed) return refuse("not-found", "There is no such bed.");
  refuseStaleDelete(ifMatch, tagOf(bed));
  const standing = await countSowingsIn(tx, bed);
  if (standing > 0) return refuse("conflict", `${standing} ${standing === 1 ? "sowing is" : "sowings are"} recorded in this bed. Move or delete ${standing === 1 ? "it" : "them"} first.`);
  await deleteBed(tx, bed);
  return ok(undefined);
}
