/** Names a place, or changes one; a place that lots name stays. */
import type { Tx } from "#db/client.ts";
import type { NewPlace } from "#shared/contracts/places.ts";
import { ok, refuse, type Result } from "#shared/kernel/outcome.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, refuseStaleDelete, type Put } from "../http/put-once.ts";
import { deletePlace, insertPlace, lockPlace, lotsNaming, updatePlace, type PlaceRow } from "./store.ts";

export interface AskedPlace {
  readonly id: string;
  readonly body: NewPlace;
  readonly ifMatch: string | undefined;
}

export function recordPlace(tx: Tx, householdId: string, { id, body, ifMatch }: AskedPlace): Promise<Result<Put<PlaceRow>>> {
  return putEditable<PlaceRow, NewPlace>({
    body,
    bodyOf: ({ name, kind, litres }) => ({ name, kind: kind as NewPlace["kind"], litres: litres ?? undefined }),
    ifMatch,
    tagOf,
    find: () => lockPlace(tx, householdId, id),
    insert: () => insertPlace(tx, householdId, id, body),
    update: (stored) => updatePlace(tx, stored, body),
  });
}

export async function takePlaceAway(tx: Tx, householdId: string, id: string, ifMatch: string | undefined): Promise<Result<void>> {
  const place = await lockPlace(tx, householdId, id);
  if (!place) return refuse("not-found", "There is no such place.");
  refuseStaleDelete(ifMatch, tagOf(place));
  const lots = await lotsNaming(tx, place);
  if (lots > 0) return refuse("conflict", `${lots} ${lots === 1 ? "lot stands or stood" : "lots stand or stood"} here, and what became of ${lots === 1 ? "it" : "them"} is kept. Give the place another name instead.`);
  await deletePlace(tx, place);
  return ok(undefined);
}
