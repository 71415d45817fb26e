/** JSON bodies: an empty one is no body, a broken one is refused with the place where it breaks, poisoned keys are refused. */
import type { FastifyInstance } from "fastify";
import { badFields } from "./contract.ts";

export function readJson(app: FastifyInstance): void {
  app.removeAllContentTypeParsers();
  const parse = app.getDefaultJsonParser("error", "error");
  app.addContentTypeParser<string>("application/json", { parseAs: "string" }, (request, body, done) => {
    if (body === "") return done(null, undefined);
    return parse(request, body, (error, value) => {
      if (error === null) return done(null, value);
      done(badFields([{ path: "", message: whatIsWrong(body) }], "The body does not fit."));
    });
  });
}

function whatIsWrong(body: string): string {
  try {
    JSON.parse(body);
    return "must not have fields named __proto__ or constructor.prototype";
  } catch (error) {
    return `is not JSON that can be read: ${error instanceof Error ? error.message : "it breaks off"}`;
  }
}
