/** Writes down what there is of jars, lids, bags and dry goods, or changes it. */
import type { Tx } from "#db/client.ts";
import type { NewSupply } from "#shared/contracts/supplies.ts";
import type { Result } from "#shared/kernel/outcome.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, type Put } from "../http/put-once.ts";
import { insertSupply, lockSupply, updateSupply, type SupplyRow } from "./store.ts";

export interface AskedSupply {
  readonly id: string;
  readonly body: NewSupply;
  readonly ifMatch: string | undefined;
}

export function recordSupply(tx: Tx, householdId: string, { id, body, ifMatch }: AskedSupply): Promise<Result<Put<SupplyRow>>> {
  return putEditable<SupplyRow, NewSupply>({
    body,
    bodyOf: ({ kind, name, amount, unit, holdsMl, bestUntil, note }) => ({
      kind: kind as NewSupply["kind"],
      name,
      amount,
      unit: unit as NewSupply["unit"],
      holdsMl: holdsMl ?? undefined,
      bestUntil: bestUntil ?? undefined,
      note: note ?? undefined,
    }),
    ifMatch,
    tagOf,
    find: () => lockSupply(tx, householdId, id),
    insert: () => insertSupply(tx, householdId, id, body),
    update: (stored) => updateSupply(tx, stored, body),
  });
}
