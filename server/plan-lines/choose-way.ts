/** Puts a way down for a week: so many batches of a recipe that is there. */
import type { Tx } from "#db/client.ts";
import type { NewPlanLine } from "#shared/contracts/plan-lines.ts";
import { refuse, type Problem, type Result } from "#shared/kernel/outcome.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, type Put } from "../http/put-once.ts";
import { insertPlanLine, lockPlanLine, recipeIsThere, updatePlanLine, type PlanLineRow } from "./store.ts";

export interface AskedLine {
  readonly id: string;
  readonly body: NewPlanLine;
  readonly ifMatch: string | undefined;
  /** What of the line does not fit beside what else is chosen; asked of a line that is new or another. */
  readonly fits?: () => Promise<Problem | undefined>;
}

export function chooseWay(tx: Tx, householdId: string, { id, body: asked, ifMatch, fits }: AskedLine): Promise<Result<Put<PlanLineRow>>> {
  const { week, recipeId, batches } = asked;
  const body = { week, recipeId, batches };
  return putEditable<PlanLineRow, NewPlanLine>({
    body,
    bodyOf: ({ week, recipeId, batches }) => ({ week, recipeId, batches }),
    ifMatch,
    tagOf,
    find: () => lockPlanLine(tx, householdId, id),
    check: async () =>
      (await recipeIsThere(tx, householdId, body.recipeId)) ? fits?.() : refuse("bad-request", "The line names a recipe that is not there.", [{ path: "recipeId", message: "there is no such recipe" }]).problem,
    insert: () => insertPlanLine(tx, householdId, id, body),
    update: (stored) => updatePlanLine(tx, stored, body),
  });
}
