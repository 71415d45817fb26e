/** Hands out the built pages. Files whose name carries a hash of their content may be kept for ever; all others are asked for again. */
import path from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance, FastifyRequest } from "fastify";
import { sendProblem } from "./errors.ts";
import type { MethodsAt } from "./known-paths.ts";

const A_YEAR_S = 31_536_000;

/** `folder` is null where no pages are served, as in most tests. `methodsAt` tells a wrong method from a wrong address. */
export async function servePages(app: FastifyInstance, folder: string | null, methodsAt: MethodsAt): Promise<void> {
  if (folder !== null) {
    const assets = path.join(path.resolve(folder), "assets") + path.sep;
    await app.register(fastifyStatic, {
      root: path.resolve(folder),
      // the build lays a smaller copy beside each file
      preCompressed: true,
      dotfiles: "ignore",
      cacheControl: false,
      setHeaders: (reply, file) => {
        reply.header("cache-control", file.startsWith(assets) ? `public, max-age=${A_YEAR_S}, immutable` : "no-cache");
      },
    });
  }
  app.setNotFoundHandler((request, reply) => {
    if (folder !== null && asksForPage(request)) return reply.code(200).header("cache-control", "no-cache").sendFile("index.html");
    const allowed = methodsAt(pathOf(request));
    if (allowed.length > 0) return sendProblem(request, reply.header("allow", allowed.join(", ")), { code: "method-not-allowed", detail: `${request.method} is not for this address; it takes ${allowed.join(", ")}.` });
    return sendProblem(request, reply, { code: "not-found", detail: "There is nothing at this address." });
  });
}

const pathOf = (request: FastifyRequest): string => request.url.split("?")[0] ?? "";

/** The pages have addresses of their own, all served by the one document; a file that is missing is missing. */
function asksForPage(request: FastifyRequest): boolean {
  const address = pathOf(request);
  const reads = request.method === "GET" || request.method === "HEAD";
  return reads && !/^\/api(?:\/|$)/.test(address) && !address.startsWith("/assets/") && (request.headers.accept ?? "").includes("text/html");
}
