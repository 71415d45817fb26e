/**
 * What is written down about a request: when (UTC), which, by which household, with what outcome. Never what was sent: no bodies, no names, no notes,
 * no questions, and of an error of the database neither the statement's values nor the row.
 */
import type { FastifyError, FastifyInstance, FastifyServerOptions } from "fastify";
import type { MemberOf } from "./member.ts";

/** Where lines go: as JSON for a machine, as short lines for a person, or nowhere. */
export type LogStyle = "json" | "lines" | "none";

export function loggerOf(style: LogStyle, write?: (line: string) => void): Exclude<FastifyServerOptions["logger"], undefined> {
  if (style === "none") return false;
  const readably = (line: string): boolean => process.stderr.write(`${readable(line)}\n`);
  const writer = write ?? (style === "lines" ? readably : undefined);
  return {
    level: style === "json" ? "info" : "warn",
    base: null,
    timestamp: () => `,"time":"${new Date().toISOString()}"`,
    serializers: { err: bareError },
    ...(writer ? { stream: { write: (line: string) => void writer(line) } } : {}),
  };
}

/** One line for each request when it has been answered. */
export function logAnswers(app: FastifyInstance, memberOf: MemberOf): void {
  app.addHook("onResponse", async (request, reply) => {
    request.log.info(
      {
        household: memberOf(request).householdId,
        method: request.method,
        // the pattern of the route, not the address
        route: request.routeOptions.url ?? "no route",
        status: reply.statusCode,
        ms: Math.round(reply.elapsedTime),
      },
      "answered",
    );
  });
}

/** Kind, place and code of an error. Messages of the database driver repeat what was sent, so only their code is kept. */
export function bareError(error: FastifyError | Error): { type: string; message: string; stack: string } {
  const code = deepestCode(error);
  return {
    type: error.name,
    message: code === null && error.cause === undefined ? error.message : [`code ${code ?? "unknown"}`, ...fieldsOf(error.cause)].join(" "),
    stack: (error.stack ?? "").split("\n").filter((line) => /^\s+at /.test(line)).join("\n"),
  };
}

/** Of an answer that does not fit its contract: where, not what. */
function fieldsOf(cause: unknown): string[] {
  if (typeof cause !== "object" || cause === null || !("issues" in cause) || !Array.isArray(cause.issues)) return [];
  return (cause.issues as { path?: unknown[]; code?: unknown }[]).map(({ path = [], code }) => `${path.join(".")}: ${String(code)}`);
}

function deepestCode(error: Error): string | null {
  let code: string | null = null;
  for (let at: unknown = error, depth = 0; at instanceof Error && depth < 4; at = at.cause, depth++) if ("code" in at && typeof at.code === "string") code = at.code;
  return code;
}

interface Line {
  readonly time: string;
  readonly msg?: string;
  readonly method?: string;
  readonly route?: string;
  readonly status?: number;
  readonly reason?: string;
  readonly err?: { readonly message: string };
}

function readable(line: string): string {
  const { time, msg, method, route, status, reason, err } = JSON.parse(line) as Line;
  return [time.slice(11, 19), msg, method, route, status, reason, err?.message].filter((part) => part !== undefined).join(" ");
}
