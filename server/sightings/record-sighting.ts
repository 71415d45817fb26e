/** Writes down what was seen of a sowing: not before it began, not after today. */
import type { Tx } from "#db/client.ts";
import type { NewSighting } from "#shared/contracts/sightings.ts";
import { refuse, type Problem, type Result } from "#shared/kernel/outcome.ts";
import type { Clock } from "../clock.ts";
import { dayProblem, yearBegan } from "../facts/recorded-day.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, type Put } from "../http/put-once.ts";
import { insertSighting, lockSighting, sowingSeen, updateSighting, type SightingRow } from "./store.ts";

export interface AskedSighting {
  readonly id: string;
  readonly sowingId: string;
  readonly body: NewSighting;
  readonly ifMatch: string | undefined;
}

interface Seen extends NewSighting {
  readonly sowingId: string;
}

export async function recordSighting(tx: Tx, householdId: string, { id, sowingId, body, ifMatch }: AskedSighting, clock: Clock): Promise<Result<Put<SightingRow>>> {
  const sowing = await sowingSeen(tx, householdId, sowingId);
  if (!sowing) return refuse("not-found", "There is no such sowing.");
  const begins = sowing.sownOn ?? sowing.plantedOutOn ?? yearBegan(sowing);
  const seen = { field: "seenOn", day: body.seenOn, today: clock.today(sowing.zone), begins, toCome: "What is seen is written down when it has been seen.", tooEarly: "Nothing can be seen before the sowing." };
  return putEditable<SightingRow, Seen>({
    body: { ...body, sowingId },
    bodyOf: (row) => ({ sowingId: row.sowingId, stage: row.stage as NewSighting["stage"], seenOn: row.seenOn }),
    ifMatch,
    tagOf,
    find: () => lockSighting(tx, householdId, id),
    check: (stored) => Promise.resolve(elsewhere(stored, sowingId) ?? dayProblem(seen)),
    insert: () => insertSighting(tx, householdId, sowingId, id, body),
    update: (stored) => updateSighting(tx, stored, body),
  });
}

function elsewhere(stored: SightingRow | undefined, sowingId: string): Problem | undefined {
  if (stored === undefined || stored.sowingId === sowingId) return undefined;
  return { code: "conflict", detail: "A sighting of another sowing is stored under this id; put this one under an id of its own." };
}
