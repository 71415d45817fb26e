/** A form that could not be saved: the lead line and the fields to put right. */
import { asProblem } from "../../api/problem.ts";
import { leadFor, type FieldProblem } from "../../parts/field-problem.ts";
import { controlFor } from "./slip.ts";

export interface Failure {
  /** Rises with each attempt, so that the note takes the focus again. */
  readonly attempt: number;
  readonly lead: string;
  readonly faults: readonly FieldProblem[];
}

let attempts = 0;

/** From the page's own reading (a list of faults) or from what the service answered. */
export function failureOf(cause: unknown, form: string, what: string): Failure {
  attempts++;
  if (Array.isArray(cause)) return { attempt: attempts, lead: leadFor(cause.length, what), faults: cause as FieldProblem[] };
  const problem = asProblem(cause);
  const faults = problem.fields.map(({ path, message }) => ({ field: controlFor(path, form), text: message }));
  return { attempt: attempts, lead: problem.message, faults };
}
