/** Writes a sowing down, or changes one: the bed and the crop must be there, and nothing may have been seen or picked before it was sown. */
import type { Tx } from "#db/client.ts";
import type { NewSowing } from "#shared/contracts/sowings.ts";
import { refuse, type FieldFault, type Problem, type Result } from "#shared/kernel/outcome.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, type Put } from "../http/put-once.ts";
import { bedIsThere, firstFacts, insertSowing, lockSowing, updateSowing, type SowingRow } from "./store.ts";

export interface AskedSowing {
  readonly id: string;
  readonly body: NewSowing;
  readonly ifMatch: string | undefined;
}

export function recordSowing(tx: Tx, householdId: string, { id, body, ifMatch }: AskedSowing, crops: ReadonlySet<string>): Promise<Result<Put<SowingRow>>> {
  return putEditable<SowingRow, NewSowing>({
    body,
    bodyOf: toBody,
    ifMatch,
    tagOf,
    find: () => lockSowing(tx, householdId, id),
    check: async (stored) => (await missing(tx, householdId, body, crops)) ?? (stored ? await tooLate(tx, stored, body) : undefined),
    insert: () => insertSowing(tx, householdId, id, body),
    update: (stored) => updateSowing(tx, stored, body),
  });
}

/** What the body names and is not there. */
export async function missing(tx: Tx, householdId: string, body: NewSowing, crops: ReadonlySet<string>): Promise<Problem | undefined> {
  const fields: FieldFault[] = [];
  if (!(await bedIsThere(tx, householdId, body.bedId))) fields.push({ path: "bedId", message: "there is no such bed" });
  if (!crops.has(body.crop)) fields.push({ path: "crop", message: `there is no crop "${body.crop}" in the book` });
  return fields.length > 0 ? refuse("bad-request", "The sowing names something that is not there.", fields).problem : undefined;
}

/** Sightings and picks are facts: a sowing cannot be moved to a day after them. */
async function tooLate(tx: Tx, stored: SowingRow, body: NewSowing): Promise<Problem | undefined> {
  const { picked, seen } = await firstFacts(tx, stored.householdId, stored.id);
  const fields: FieldFault[] = [];
  const { sownOn, plantedOutOn } = body;
  const sown = sownOn ?? plantedOutOn;
  if (seen !== null && sown !== undefined && seen < sown)
    fields.push({ path: sownOn === undefined ? "plantedOutOn" : "sownOn", message: `must not be after ${seen}, when something was already seen of it` });
  const grows = plantedOutOn ?? sownOn;
  if (picked !== null && grows !== undefined && picked < grows)
    fields.push({ path: plantedOutOn === undefined ? "sownOn" : "plantedOutOn", message: `must not be after ${picked}, when it was already picked` });
  return fields.length > 0 ? refuse("conflict", "Something was seen or picked of this sowing before the day it would begin.", fields).problem : undefined;
}

export function toBody(row: SowingRow): NewSowing {
  return {
    bedId: row.bedId,
    crop: row.crop,
    method: row.method as NewSowing["method"],
    variety: row.variety ?? undefined,
    varietyDays: row.varietyDays ?? undefined,
    sownOn: row.sownOn ?? undefined,
    plantedOutOn: row.plantedOutOn ?? undefined,
    rowM: row.rowM ?? undefined,
    plants: row.plants ?? undefined,
    areaM2: row.areaM2 ?? undefined,
    standsSince: row.standsSince ?? undefined,
    note: row.note ?? undefined,
  };
}
