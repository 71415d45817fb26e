/** Writes a pick down once: not before the sowing began, not after today. */
import type { Tx } from "#db/client.ts";
import type { NewPick } from "#shared/contracts/picks.ts";
import { refuse, type Result } from "#shared/kernel/outcome.ts";
import type { Clock } from "../clock.ts";
import { dayProblem, yearBegan } from "../facts/recorded-day.ts";
import { putOnce, type Put } from "../http/put-once.ts";
import { findPick, insertPick, sowingPicked, type PickOfCrop } from "./store.ts";

export function recordPick(tx: Tx, householdId: string, id: string, body: NewPick, clock: Clock): Promise<Result<Put<PickOfCrop>>> {
  let crop = "";
  return putOnce<PickOfCrop, NewPick>({
    what: "pick",
    body,
    bodyOf: (row) => ({ sowingId: row.sowingId, pickedOn: row.pickedOn, grams: row.grams, pieces: row.pieces ?? undefined }),
    find: () => findPick(tx, householdId, id),
    check: async () => {
      const sowing = await sowingPicked(tx, householdId, body.sowingId);
      if (!sowing) return refuse("bad-request", "The pick names a sowing that is not there.", [{ path: "sowingId", message: "there is no such sowing" }]).problem;
      crop = sowing.crop;
      const begins = sowing.plantedOutOn ?? sowing.sownOn ?? yearBegan(sowing);
      return dayProblem({ field: "pickedOn", day: body.pickedOn, today: clock.today(sowing.zone), begins, toCome: "A pick is written down when it has been picked.", tooEarly: "A pick cannot be older than its sowing." });
    },
    insert: async () => {
      const row = await insertPick(tx, householdId, id, body);
      return row ? { ...row, crop } : undefined;
    },
  });
}
