/** Sends the household whole: each form of the page changes its own part and leaves the rest as it is stored. */
import { putHousehold } from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import type { NewHousehold } from "#shared/contracts/household.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { LABELS } from "./household-form.ts";

export interface Attempt {
  /** Rises with each failed try, so that the note takes the focus again. */
  readonly n: number;
  readonly lead: string;
  readonly faults: readonly FieldProblem[];
}

/** Null when it was saved, otherwise what stands in the way. */
export async function saveHousehold(body: NewHousehold): Promise<Omit<Attempt, "n"> | null> {
  try {
    await putHousehold(body);
    return null;
  } catch (thrown) {
    const problem = asProblem(thrown);
    if (problem.stale) return { lead: "Somebody else changed the household meanwhile. Load the page again, then make your change.", faults: [] };
    return {
      lead: problem.message,
      faults: problem.fields.map(({ path, message }) => {
        const field = path.split(".").findLast((part) => part in LABELS) ?? "name";
        return { field, text: `${LABELS[field] ?? path}: ${message}` };
      }),
    };
  }
}
