/** A read that names the tag of what it has already is told so in a few bytes: 304 (RFC 9110 §13.1.2, §15.4.5). */
import type { FastifyInstance } from "fastify";
import { namesWeakly, tagOfBytes } from "./etag.ts";

/** Every read of the interface carries a tag: the stored version's where a route gives one, which If-Match takes, else a digest of the answer. */
export function answerNotModified(app: FastifyInstance): void {
  app.addHook("onSend", async (request, reply, payload) => {
    const reads = request.method === "GET" || request.method === "HEAD";
    if (!reads || reply.statusCode !== 200 || !request.url.startsWith("/api/") || !(typeof payload === "string" || Buffer.isBuffer(payload))) return payload;
    const tag = String(reply.getHeader("etag") ?? tagOfBytes(payload));
    reply.header("etag", tag);
    const sent = request.headers["if-none-match"];
    if (sent === undefined || !namesWeakly(sent, tag)) return payload;
    reply.code(304).removeHeader("content-length").removeHeader("content-type");
    return "";
  });
}
