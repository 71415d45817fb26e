/** Writes a pick down once: not before the sowing began, not after today. */
import type { Tx } from "#db/client.ts";
import type { NewPick } from "#shared/contracts/picks.ts";
import { refuse, type Problem, type Result } from "#shared/kernel/outcome.ts";
import type { Clock } from "../clock.ts";
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
      return dayProblem(body.pickedOn, sowing, clock.today(sowing.zone));
    },
    insert: async () => {
      const row = await insertPick(tx, householdId, id, body);
      return row ? { ...row, crop } : undefined;
    },
  });
}

interface Start {
  readonly sownOn: string | null;
  readonly plantedOutOn: string | null;
  readonly standsSince: number | null;
}

function dayProblem(day: string, { sownOn, plantedOutOn, standsSince }: Start, today: string): Problem | undefined {
  const starts = plantedOutOn ?? sownOn ?? (standsSince === null ? null : `${standsSince}-01-01`);
  if (day > today) return refuse("bad-request", "A pick is written down when it has been picked.", [{ path: "pickedOn", message: `must not be after today, ${today}` }]).problem;
  if (starts !== null && day < starts) return refuse("bad-request", "A pick cannot be older than its sowing.", [{ path: "pickedOn", message: `must not be before ${starts}, when the sowing began` }]).problem;
  return undefined;
}
