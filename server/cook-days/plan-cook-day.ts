/** Puts a cook day down: its recipes are there, and it ends after it starts. Whether it can be done is for the timetable to say. */
import type { Tx } from "#db/client.ts";
import type { NewCookDay } from "#shared/contracts/cook-days.ts";
import type { FieldFault, Result } from "#shared/kernel/outcome.ts";
import { badFields } from "../http/contract.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, type Put } from "../http/put-once.ts";
import { insertCookDay, lockCookDay, recipesThere, updateCookDay, type StoredDay } from "./store.ts";

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
    check: async () => {
      const faults = [...hourFaults(body), ...(await dishFaults(tx, householdId, body))];
      return faults.length > 0 ? badFields(faults, "The cook day cannot be kept like this.").problem : undefined;
    },
    insert: () => insertCookDay(tx, householdId, id, body),
    update: (stored) => updateCookDay(tx, stored, body),
  });
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
