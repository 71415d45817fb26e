/** The one header that a route reads by itself. */
import type { FastifyRequest } from "fastify";

/** If-Match as it was sent; several lines of it count as one list (RFC 9110 §5.3). */
export function ifMatchOf(request: FastifyRequest): string | undefined {
  const sent: string | string[] | undefined = request.headers["if-match"];
  return Array.isArray(sent) ? sent.join(",") : sent;
}
