/** Sends the household whole: each form of the page changes its own part and leaves the rest as it is stored. */
import { household, putHousehold } from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import type { Household, NewHousehold } from "#shared/contracts/household.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { fieldAt, LABELS } from "./household-form.ts";

export interface Attempt {
  /** Rises with each failed try, so that the note takes the focus again. */
  readonly n: number;
  readonly lead: string;
  readonly faults: readonly FieldProblem[];
}

export type Saved =
  | { readonly kind: "saved" }
  | { readonly kind: "refused"; readonly lead: string; readonly faults: readonly FieldProblem[] }
  /** Somebody else was faster. Their version has been read, so that the next try is taken. */
  | { readonly kind: "conflict"; readonly theirs: Household };

export async function saveHousehold(body: NewHousehold): Promise<Saved> {
  try {
    await putHousehold(body);
    return { kind: "saved" };
  } catch (thrown) {
    const problem = asProblem(thrown);
    const theirs = problem.stale ? await household().catch(() => null) : null;
    if (theirs) return { kind: "conflict", theirs };
    const faults = problem.fields.map(({ path, message }) => {
      const field = fieldAt(path.split("."));
      return { field, text: `${LABELS[field] ?? path}: ${message}` };
    });
    return { kind: "refused", lead: problem.message, faults };
  }
}
