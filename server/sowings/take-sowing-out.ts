/** Takes a sowing out of the book with what was seen of it; one from which something was picked stays. */
import type { Tx } from "#db/client.ts";
import { ok, refuse, type Result } from "#shared/kernel/outcome.ts";
import { tagOf } from "../http/etag.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { countPicksOf, deleteSowing, lockSowing } from "./store.ts";

export async function takeSowingOut(tx: Tx, householdId: string, id: string, ifMatch: string | undefined): Promise<Result<void>> {
  const sowing = await lockSowing(tx, householdId, id);
  if (!sowing) return refuse("not-found", "There is no such sowing.");
  refuseStaleDelete(ifMatch, tagOf(sowing));
  const picks = await countPicksOf(tx, sowing);
  if (picks > 0) return refuse("conflict", `${picks} ${picks === 1 ? "pick is" : "picks are"} on record from this sowing, so it stays. Write down that it is finished instead, or undo ${picks === 1 ? "the pick" : "the picks"} first.`);
  await deleteSowing(tx, sowing);
  return ok(undefined);
}
