/** Which methods an address of the interface takes, so that a wrong one is told from a wrong address (RFC 9110 §15.5.6). */
import type { FastifyInstance } from "fastify";

/** Methods in the order of their names; empty where there is nothing at the address at all. */
export type MethodsAt = (path: string) => readonly string[];

/** Must be called before the routes are made. */
export function knownPaths(app: FastifyInstance): MethodsAt {
  const methods = new Map<string, Set<string>>();
  app.addHook("onRoute", ({ url, method }) => {
    if (!url.startsWith("/api/") || url.includes("*")) return;
    const known = methods.get(url) ?? new Set();
    for (const one of [method].flat()) known.add(one);
    methods.set(url, known);
  });
  return (path) => {
    const found = [...methods].filter(([pattern]) => fits(pattern, path)).flatMap(([, known]) => [...known]);
    return [...new Set(found)].sort();
  };
}

function fits(pattern: string, path: string): boolean {
  const [wanted, given] = [pattern.split("/"), path.split("/")];
  return wanted.length === given.length && wanted.every((part, i) => (part.startsWith(":") ? given[i] !== "" : part === given[i]));
}
