/** Puts a cook day down: its recipes are there, and it ends after it starts. Whether it can be done is for the timetable to say. */
import type { Tx } from "#db/client.ts";
import type { NewCookDay } from "#shared/contracts/cook-days.ts";
import { refuse, type FieldFault, type Problem, type Result } from "#shared/kernel/outcome.ts";
import { badFields } from "../http/contract.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, sameBody, type Put } from "../http/put-once.ts";
import { hasBatches, hasBegun, insertCookDay, lockCookDay, recipesThere, updateCookDay, type StoredDay } from "./store.ts";

export interface AskedDay {
  readonly id: string;
  readonly body: NewCookDay;
  readonly ifMatch: string | undefined;
}

export function planCookDay(tx: Tx, householdId: string, { id, body, ifMatch }: AskedDay): Promise<Result<Put<StoredDay>>> {
  return putEditable<StoredDay, NewCookDay>({
    body: { ...body, unavailable: body.unavailable ?? [] },
    bodyOf: toBody,
    ifMatch,
    tagOf,
    find: () => lockCookDay(tx, householdId, id),
    check: async (stored) => {
      if (stored !== undefined && !sameButTitle(body, stored) && (await hasBegun(tx, stored))) return refuse("conflict", BEGUN).problem;
      const faults = [...hourFaults(body), ...(await dishFaults(tx, householdId, body))];
      return faults.length > 0 ? badFields(faults, "The cook day cannot be kept like this.").problem : undefined;
    },
    insert: () => insertCookDay(tx, householdId, id, body),
    update: (stored) => updateCookDay(tx, stored, body),
  });
}

/** A day under way is changed by saying what happens, so that what is done and what is on the stove stays on record. */
const BEGUN = "The day has begun. At the counter say what has changed (late, leave a dish out, one dish more), and the rest of it is planned again; what is done stays.";

const sameButTitle = (body: NewCookDay, stored: StoredDay): boolean => sameBody({ ...body, unavailable: body.unavailable ?? [], title: undefined }, { ...toBody(stored), title: undefined });

/** A day that has begun, or of which a dish was closed, stays on record. */
export async function mayGo(tx: Tx, day: StoredDay): Promise<Problem | undefined> {
  if (await hasBatches(tx, day)) return refuse("conflict", "Dishes of this day were put away, so it stays on record.").problem;
  return (await hasBegun(tx, day)) ? refuse("conflict", "The day has begun. Undo its beginning first, or leave it on record.").problem : undefined;
}

function hourFaults({ startsAt, endsBy }: NewCookDay): FieldFault[] {
  return endsBy !== undefined && endsBy <= startsAt ? [{ path: "endsBy", message: `must be after ${startsAt}, when the day starts: a cook day ends on the day it begins. Put what runs past midnight into a cook day of the next morning` }] : [];
}

async function dishFaults(tx: Tx, householdId: string, { dishes }: NewCookDay): Promise<FieldFault[]> {
  const there = await recipesThere(tx, householdId, dishes.map((dish) => dish.recipeId));
  return dishes.flatMap(({ recipeId }, i) => {
    const path = `dishes.${i}.recipeId`;
    if (!there.has(recipeId)) return [{ path, message: "there is no such recipe" }];
    return dishes.findIndex((dish) => dish.recipeId === recipeId) < i ? [{ path, message: "is in the day already; give that dish more batches" }] : [];
  });
}

function toBody({ on, startsAt, endsBy, cooks, kitchen, unavailable, title, dishes }: StoredDay): NewCookDay {
  return {
    on,
    startsAt,
    endsBy: endsBy ?? undefined,
    cooks,
    kitchen,
    unavailable,
    title: title ?? undefined,
    dishes: dishes.map(({ recipeId, batches }) => ({ recipeId, batches })),
  };
}
