/**
 * No sign-in is asked on loopback, so a page elsewhere in the same browser must be able neither to write nor to read: only loopback names in `Host`
 * (a stranger's name that resolves to 127.0.0.1 is refused), and only same-origin calls by `Sec-Fetch-Site` (W3C Fetch Metadata), else by `Origin`
 * (RFC 6454). A call with neither comes from a program on the machine and is let in.
 */
import type { FastifyInstance, FastifyRequest } from "fastify";
import { Refusal } from "../problems.ts";

const LOOPBACK_HOST = /^(?:localhost|127(?:\.\d{1,3}){3}|\[::1\])(?::\d{1,5})?$/i;
const WRITES = new Set(["POST", "PUT", "PATCH", "DELETE"]);

export function guardLoopback(app: FastifyInstance): void {
  app.addHook("onRequest", async (request) => {
    const refusal = refusalOf(request);
    if (refusal === null) return;
    request.log.warn({ reason: refusal }, "refused at the door");
    throw new Refusal({ code: "forbidden", detail: refusal });
  });
}

function refusalOf(request: FastifyRequest): string | null {
  const { host, origin, "sec-fetch-site": site } = request.headers;
  if (host === undefined || !LOOPBACK_HOST.test(host)) return "This service answers only to localhost and loopback addresses.";
  if (site !== undefined) {
    if (site === "same-origin" || site === "none" || followsLinkToPage(request)) return null;
    return "Calls from other sites are not let in.";
  }
  if (origin !== undefined && origin.toLowerCase() !== `http://${host.toLowerCase()}`) return "Calls from other sites are not let in.";
  return null;
}

/** A link followed from elsewhere may open a page; it carries nothing in and the other site sees nothing of it. */
function followsLinkToPage(request: FastifyRequest): boolean {
  const { "sec-fetch-mode": mode, "sec-fetch-dest": dest } = request.headers;
  return !WRITES.has(request.method) && mode === "navigate" && dest === "document" && !request.url.startsWith("/api/");
}
