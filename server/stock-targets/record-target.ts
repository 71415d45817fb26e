/** Writes down how much is to be in store by a day: its recipe is there, and the day is still to come. */
import type { Tx } from "#db/client.ts";
import type { NewStockTarget } from "#shared/contracts/stock-targets.ts";
import type { FieldFault, Result } from "#shared/kernel/outcome.ts";
import { badFields } from "../http/contract.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, type Put } from "../http/put-once.ts";
import { insertTarget, lockTarget, recipeIsThere, updateTarget, type TargetRow } from "./store.ts";

export interface AskedTarget {
  readonly id: string;
  readonly body: NewStockTarget;
  readonly ifMatch: string | undefined;
}

export function recordTarget(tx: Tx, householdId: string, { id, body, ifMatch }: AskedTarget, today: string): Promise<Result<Put<TargetRow>>> {
  return putEditable<TargetRow, NewStockTarget>({
    body,
    bodyOf: ({ recipeId, portions, by }) => ({ recipeId, portions, by }),
    ifMatch,
    tagOf,
    find: () => lockTarget(tx, householdId, id),
    check: async () => {
      const faults: FieldFault[] = [];
      if (!(await recipeIsThere(tx, householdId, body.recipeId))) faults.push({ path: "recipeId", message: "there is no such recipe" });
      if (body.by < today) faults.push({ path: "by", message: `must not be before today, ${today}` });
      return faults.length > 0 ? badFields(faults, "The target cannot be written down like this.").problem : undefined;
    },
    insert: () => insertTarget(tx, householdId, id, body),
    update: (stored) => updateTarget(tx, stored, body),
  });
}
