/** Writes down what somebody asked for: its recipe is there, and the day it is wanted by is not over. */
import type { Tx } from "#db/client.ts";
import type { NewWish } from "#shared/contracts/wishes.ts";
import { isLocalDate } from "#shared/kernel/local-date.ts";
import type { FieldFault, Result } from "#shared/kernel/outcome.ts";
import { badFields } from "../http/contract.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, type Put } from "../http/put-once.ts";
import { insertWish, lockWish, recipeIsThere, updateWish, type WishRow } from "./store.ts";

export interface AskedWish {
  readonly id: string;
  readonly body: NewWish;
  readonly ifMatch: string | undefined;
}

export function recordWish(tx: Tx, householdId: string, { id, body, ifMatch }: AskedWish, today: string): Promise<Result<Put<WishRow>>> {
  return putEditable<WishRow, NewWish>({
    body,
    bodyOf: ({ recipeId, portions, by, from }) => ({ recipeId, portions, by: by ?? undefined, from: from ?? undefined }),
    ifMatch,
    tagOf,
    find: () => lockWish(tx, householdId, id),
    check: async () => {
      const faults: FieldFault[] = [];
      if (!(await recipeIsThere(tx, householdId, body.recipeId))) faults.push({ path: "recipeId", message: "there is no such recipe" });
      if (body.by !== undefined && isLocalDate(body.by) && body.by < today) faults.push({ path: "by", message: `must not be before today, ${today}` });
      return faults.length > 0 ? badFields(faults, "The wish cannot be written down like this.").problem : undefined;
    },
    insert: () => insertWish(tx, householdId, id, body),
    update: (stored) => updateWish(tx, stored, body),
  });
}
