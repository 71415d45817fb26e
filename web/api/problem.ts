/** What went wrong with a call, in words that can be shown, and the fields they belong to. */
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
  const { title, detail, fields } = (typeof body === "object" && body !== null ? body : {}) as { title?: unknown; detail?: unknown; fields?: unknown };
  const words = typeof detail === "string" && detail !== "" ? detail : title;
  if (typeof words !== "string" || words === "") return new ApiProblem(status, `The service answered ${status} without a reason.`);
  return new ApiProblem(status, words, Array.isArray(fields) ? fields.filter(isFault) : []);
}

const isFault = (given: unknown): given is FieldFault => typeof given === "object" && given !== null && "path" in given && typeof given.path === "string" && "message" in given && typeof given.message === "string";

/** Anything thrown on the way to an answer, as a problem with words. */
export function asProblem(thrown: unknown): ApiProblem {
  if (thrown instanceof ApiProblem) return thrown;
  return new ApiProblem(-1, thrown instanceof Error ? `This page met a fault of its own: ${thrown.message}` : "This page met a fault of its own.");
}
