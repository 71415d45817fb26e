/** What an engine or a verb answers: a best effort that owns up, or a refusal with its fields. */

/** A row of published or typed-in facts that an answer rests on. */
export interface SourceRef {
  /** Id in seed-data/sources.csv, or "household" for the household's own record. */
  readonly id: string;
  readonly text: string;
}

/** Engines degrade with a note, they do not throw for thin data. */
export interface Outcome<T> {
  readonly value: T;
  readonly basis: readonly SourceRef[];
  readonly notes: readonly string[];
}

/** One bad field; `path` is dotted as on the wire: steps.2.handsOnMin, rows.17.tmax_c. */
export interface FieldFault {
  readonly path: string;
  readonly message: string;
}

/** Stable names of refusals; server/problems.ts gives each its status and title. */
export type ProblemCode =
  | "bad-request"
  | "not-found"
  | "method-not-allowed"
  | "conflict"
  | "precondition-required"
  | "precondition-failed"
  | "forbidden"
  | "too-large"
  | "unsupported-media-type"
  | "unavailable"
  | "internal";

export interface Problem {
  readonly code: ProblemCode;
  /** One plain sentence: what is wrong and what would work. */
  readonly detail: string;
  readonly fields?: readonly FieldFault[];
  /** Where more was taken than there is: what is left, in both ways of counting; null where nobody has weighed a portion. */
  readonly left?: { readonly grams: number | null; readonly portions: number | null };
}

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const refuse = (code: ProblemCode, detail: string, fields?: readonly FieldFault[]): { ok: false; problem: Problem } => ({
  ok: false,
  problem: fields ? { code, detail, fields } : { code, detail },
});
