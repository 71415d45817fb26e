/** What went wrong with a call, in words that can be shown, and the fields they belong to. */
import { Problem } from "#shared/contracts/problem.ts";
import type { FieldFault } from "#shared/kernel/outcome.ts";

export class ApiProblem extends Error {
  /** HTTP status; 0 when no answer came. */
  readonly status: number;
  readonly fields: readonly FieldFault[];

  constructor(status: number, detail: string, fields: readonly FieldFault[] = []) {
    super(detail);
    this.name = "ApiProblem";
    this.status = status;
    this.fields = fields;
  }

  get noAnswer(): boolean {
    return this.status === 0;
  }

  /** Somebody else changed the thing since it was read. */
  get stale(): boolean {
    return this.status === 412;
  }
}

/** Reads an error answer; the service writes RFC 9457 problem documents. */
export function problemOf(status: number, body: unknown): ApiProblem {
  const read = Problem.safeParse(body);
  if (!read.success) return new ApiProblem(status, `The service answered ${status} without a reason.`);
  return new ApiProblem(status, read.data.detail || read.data.title, read.data.fields ?? []);
}

/** Anything thrown on the way to an answer, as a problem with words. */
export function asProblem(thrown: unknown): ApiProblem {
  if (thrown instanceof ApiProblem) return thrown;
  return new ApiProblem(-1, thrown instanceof Error ? `This page met a fault of its own: ${thrown.message}` : "This page met a fault of its own.");
}
