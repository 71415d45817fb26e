/** Puts a lot down, or changes its label. What it is, where it went first and how old it may be stay once something was moved. */
import type { Tx } from "#db/client.ts";
import type { NewLot } from "#shared/contracts/lots.ts";
import { ok, refuse, type FieldFault, type Problem, type Result } from "#shared/kernel/outcome.ts";
import type { LotRow } from "../facts/larder.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, refuseStaleDelete, type Put } from "../http/put-once.ts";
import { deleteLot, firstMovement, insertLot, lockLot, placesThere, recipeIsThere, updateLot } from "./store.ts";

export interface AskedLot {
  readonly id: string;
  readonly body: NewLot;
  readonly ifMatch: string | undefined;
}

export function recordLot(tx: Tx, householdId: string, { id, body, ifMatch }: AskedLot, crops: ReadonlySet<string>, today: string): Promise<Result<Put<LotRow>>> {
  return putEditable<LotRow, NewLot>({
    body,
    bodyOf: toBody,
    ifMatch,
    tagOf,
    find: () => lockLot(tx, householdId, id),
    check: async (stored) => (await missing(tx, householdId, body, crops, today)) ?? (stored ? await settled(tx, stored, body) : undefined),
    insert: () => insertLot(tx, householdId, id, body),
    update: (stored) => updateLot(tx, stored, body),
  });
}

export async function takeLotOut(tx: Tx, householdId: string, id: string, ifMatch: string | undefined): Promise<Result<void>> {
  const lot = await lockLot(tx, householdId, id);
  if (!lot) return refuse("not-found", "There is no such lot.");
  refuseStaleDelete(ifMatch, tagOf(lot));
  const { standing } = await firstMovement(tx, lot);
  if (standing > 0) return refuse("conflict", `${standing} ${standing === 1 ? "movement of this lot is" : "movements of this lot are"} on record, so it stays. Undo ${standing === 1 ? "it" : "them"} first, or write down what became of it.`);
  await deleteLot(tx, lot);
  return ok(undefined);
}

async function missing(tx: Tx, householdId: string, body: NewLot, crops: ReadonlySet<string>, today: string): Promise<Problem | undefined> {
  const fields: FieldFault[] = [];
  if (!(await placesThere(tx, householdId, [body.placeId])).has(body.placeId)) fields.push({ path: "placeId", message: "there is no such place" });
  if (body.crop !== undefined && !crops.has(body.crop)) fields.push({ path: "crop", message: `there is no crop "${body.crop}" in the book` });
  if (body.recipeId !== undefined && !(await recipeIsThere(tx, householdId, body.recipeId))) fields.push({ path: "recipeId", message: "there is no such recipe" });
  if (body.madeOn > today) fields.push({ path: "madeOn", message: `must not be after today, ${today}` });
  return fields.length > 0 ? refuse("bad-request", "The lot cannot be put down like this.", fields).problem : undefined;
}

async function settled(tx: Tx, stored: LotRow, body: NewLot): Promise<Problem | undefined> {
  const { standing, first } = await firstMovement(tx, stored);
  if (standing === 0) return undefined;
  const before = toBody(stored);
  const fields: FieldFault[] = [];
  for (const path of ["crop", "recipeId"] as const) if (body[path] !== before[path]) fields.push({ path, message: "stays as it is once something was moved" });
  if (body.placeId !== before.placeId) fields.push({ path: "placeId", message: "is changed by a move, so that what stood where is kept" });
  if (first !== null && body.madeOn > first) fields.push({ path: "madeOn", message: `must not be after ${first}, when something was already moved` });
  return fields.length > 0 ? refuse("conflict", "Something was moved of this lot already.", fields).problem : undefined;
}

function toBody(row: LotRow): NewLot {
  const { title, placeId, madeOn } = row;
  return {
    title,
    crop: row.crop ?? undefined,
    recipeId: row.recipeId ?? undefined,
    placeId,
    madeOn,
    portionGrams: row.portionGrams ?? undefined,
    portionMl: row.portionMl ?? undefined,
    bestUntil: row.bestUntil ?? undefined,
    note: row.note ?? undefined,
  };
}
