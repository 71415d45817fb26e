/** Whatever was thrown becomes a problem document: one plain sentence, never a stack, a statement or a path of the disk. */
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import type { Problem } from "#shared/kernel/outcome.ts";
import { PROBLEMS, problemBody, Refusal } from "../problems.ts";
import { databaseProblem } from "./database-errors.ts";

const BY_FASTIFY: Readonly<Record<string, Problem>> = {
  FST_ERR_CTP_INVALID_MEDIA_TYPE: { code: "unsupported-media-type", detail: "Send JSON with Content-Type: application/json; daily weather is sent as text/csv." },
  FST_ERR_CTP_BODY_TOO_LARGE: { code: "too-large", detail: "The body is too large: 1 MiB at most, 5 MiB for daily weather." },
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: { code: "bad-request", detail: "The body is not as long as Content-Length says." },
  FST_ERR_HANDLER_TIMEOUT: { code: "unavailable", detail: "This took too long and was given up. Try again in a moment." },
  FST_ERR_REOPENED_CLOSE_SERVER: { code: "unavailable", detail: "The service is stopping." },
};

/** The problem that an error stands for; null for a bug. */
export function problemOf(error: FastifyError | Error): Problem | null {
  if (error instanceof Refusal) return error.problem;
  const code = "code" in error && typeof error.code === "string" ? error.code : "";
  const known = BY_FASTIFY[code] ?? databaseProblem(error);
  if (known) return known;
  const status = "statusCode" in error ? error.statusCode : undefined;
  if (status !== undefined && status >= 400 && status < 500) return { code: "bad-request", detail: "The request could not be read." };
  return null;
}

export function sendProblem(request: FastifyRequest, reply: FastifyReply, problem: Problem): FastifyReply {
  const body = problemBody(problem, request.id);
  if (problem.code === "unavailable") reply.header("retry-after", "2");
  return reply
    .code(PROBLEMS[problem.code].status)
    .type("application/problem+json")
    .header("cache-control", "no-store")
    .serializer((value: unknown) => JSON.stringify(value))
    .send(body);
}

const BUG: Problem = { code: "internal", detail: "Something went wrong here; nothing was changed. The number of this request stands in the log." };

export function answerErrors(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const problem = problemOf(error);
    if (problem === null || problem.code === "unavailable") request.log.error({ err: error }, "request failed");
    return sendProblem(request, reply, problem ?? BUG);
  });
}

/** Addresses that cannot be read at all never reach a route. */
export function answerUnreadable(_error: FastifyError, request: FastifyRequest, reply: FastifyReply): void {
  void sendProblem(request, reply, { code: "bad-request", detail: "The address could not be read." });
}
