/** One table from the name of a refusal to its status and title. Routes do not invent statuses. */
import type { Problem as ProblemBody } from "#shared/contracts/problem.ts";
import type { Problem, ProblemCode, Result } from "#shared/kernel/outcome.ts";

interface Row {
  readonly status: number;
  readonly title: string;
}

export const PROBLEMS: Readonly<Record<ProblemCode, Row>> = {
  "bad-request": { status: 400, title: "Something in the request does not fit" },
  forbidden: { status: 403, title: "Not from here" },
  "not-found": { status: 404, title: "There is nothing at this address" },
  "method-not-allowed": { status: 405, title: "Not with this method" },
  conflict: { status: 409, title: "What is stored does not allow this" },
  "precondition-failed": { status: 412, title: "It was changed meanwhile" },
  "too-large": { status: 413, title: "Too large" },
  "unsupported-media-type": { status: 415, title: "This kind of content is not taken here" },
  "precondition-required": { status: 428, title: "Say which version you are changing" },
  internal: { status: 500, title: "Something went wrong here" },
  unavailable: { status: 503, title: "Not possible just now" },
};

/** A refusal on its way to the error handler. */
export class Refusal extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.detail);
    this.problem = problem;
  }
}

/** The value of a result, or the refusal thrown. */
export function granted<T>(result: Result<T>): T {
  if (!result.ok) throw new Refusal(result.problem);
  return result.value;
}

export const notFound = (what: string): Refusal => new Refusal({ code: "not-found", detail: `There is no such ${what}.` });

/** The body of RFC 9457; `instance` names the request, so that a line in the log can be found by it. */
export function problemBody(problem: Problem, requestId: string): ProblemBody {
  const { status, title } = PROBLEMS[problem.code];
  const body = { type: `urn:stillroom:problem:${problem.code}`, title, status, detail: problem.detail, instance: `urn:uuid:${requestId}`, ...(problem.left ? { left: { ...problem.left } } : {}) };
  return problem.fields ? { ...body, fields: problem.fields.map(({ path, message }) => ({ path, message })) } : body;
}
