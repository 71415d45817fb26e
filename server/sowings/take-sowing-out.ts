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
  // undone picks count too: what was once picked, and that it was undone, is kept
  const { standing, written } = await countPicksOf(tx, sowing);
  if (written > 0) return refuse("conflict", `${standing > 0 ? onRecord(standing) : undone(written)}, so it stays. Write down that it is finished instead.`);
  await deleteSowing(tx, sowing);
  return ok(undefined);
}

const onRecord = (picks: number): string => `${picks} ${picks === 1 ? "pick is" : "picks are"} on record from this sowing`;
const undone = (picks: number): string => (picks === 1 ? "One pick of this sowing was written down and undone, and both are kept" : `${picks} picks of this sowing were written down and undone, and all that is kept`);
